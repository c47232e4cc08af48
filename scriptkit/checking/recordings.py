"""Checks of what a recording has otherwise than its script."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.times import clock
from scriptkit.wording import quoted

_AGAIN = (
    "Record it again and run `scriptkit take` anew, or write what was said; where a pickup was cut in, allow this here."
)
_CUT = "Cut it in, and run `scriptkit take` with the film as it was cut, or allow this here."


@check("error", "publish", protects=True)
def recorded_otherwise(facts: Facts) -> Iterator[Found]:
    """A line was recorded otherwise than it is written, in a way that stops a release.

    That is another number, grade or "not", for example, or another word in a caution or a disclosure.

    Rule: ours; what was checked is the script, and what viewers hear is the recording. `scriptkit take` finds it and
    keeps it in take.json until another take, or until the line is written otherwise.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: B}}
        order: [hang]
        --- segments/hang.md
        My grade is a B. [opinion]
        --- take.json
        {"length": 30, "sentences": [], "changes": [
          {"segment": "hang", "key": "s-4cae94788c080c55", "weight": "stop", "kind": "grade",
           "what": "the grade is another one", "start": 12.5, "said": "is a C."}]}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: C}}
        order: [hang]
        --- segments/hang.md
        My grade is a C. [opinion]
        --- take.json
        {"length": 30, "sentences": [], "changes": [
          {"segment": "hang", "key": "s-4cae94788c080c55", "weight": "stop", "kind": "grade",
           "what": "the grade is another one", "start": 12.5, "said": "is a C."}]}
    """
    for one in facts.unmended:
        when = "" if one.start is None else f", {clock(one.start)} into the recording"
        said = f"; said was {quoted(one.said)}" if one.said else ""
        yield (
            one.place,
            f"{quoted(one.text)} was recorded otherwise{when}: {one.what}{said}.",
            _CUT if one.weight == "cut" else _AGAIN,
        )
