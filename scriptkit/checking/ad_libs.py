"""Checks of what a recording has beyond its script."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.times import clock
from scriptkit.wording import quoted


@check("error", "publish")
def ad_lib_without_source(facts: Facts) -> Iterator[Found]:
    """A claim was said in front of the camera that is not in the script, so nothing stands behind it.

    Rule: the trade's; what is said on the spot is taken into the ledger with its source or as opinion, or it is cut.
    `scriptkit take` finds it and keeps it in take.json. A sentence that may be a claim is in the ledger alone.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [hang]
        --- segments/hang.md
        I like this one. [opinion]
        --- take.json
        {"length": 30, "sentences": [], "ad_libs": [
          {"segment": "hang", "text": "It builds a stronger grip than any row.", "start": 12.5, "end": 15}]}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [hang]
        --- segments/hang.md
        I like this one. [opinion]
        In my view it builds a stronger grip than any row. [opinion]
        --- take.json
        {"length": 30, "sentences": [], "ad_libs": [
          {"segment": "hang", "text": "It builds a stronger grip than any row.", "start": 12.5, "end": 15}]}
    """
    for one in facts.ad_libs:
        if one.judgement.sure:
            yield (
                one.place,
                f"{quoted(one.text)} was said {clock(one.start)} into the recording; no line of the script says it.",
                "Write it into the script with its source or as your opinion; where you cut it, allow this here.",
            )
