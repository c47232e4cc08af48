"""Checks of the sponsor's passage; whether the law is met is for the author to find out."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("error", "record", protects=True)
def sponsor_not_disclosed(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage does not say at its start that it is paid for.

    A listener has to hear it within the first three seconds, in plain words. This check is no legal advice, and
    passing it does not say
    that the law is met: which rules apply where you publish is for you to find out.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        I wear these socks every day, in the gym and on the hill, and on the way home. [sponsor says]

        Ad. Quennick Socks paid for this part.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part.

        I wear these socks every day. [sponsor says]
    """
    if facts.disclosed is not False:
        return
    for segment in facts.segments:
        if segment.kind == "sponsor" and segment.sentences:
            line = facts.episode.sponsor.disclosure if facts.episode.sponsor else ""
            first = segment.sentences[0]
            yield (
                first.place,
                f"The sponsor's passage starts with {quoted(first.text)} and does not say that it is paid for.",
                f"Start it with {quoted(line or 'Ad. NAME paid for this part.')}.",
            )


@check("error", "record")
def sponsor_not_spoken(facts: Facts) -> Iterator[Found]:
    """The outline has a sponsor, and the running order has no passage of theirs.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        order: [opening, hang, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        order: [opening, hang, sponsor, close]
    """
    sponsor = facts.episode.sponsor
    if sponsor and not any(segment.id == sponsor.segment or segment.kind == "sponsor" for segment in facts.segments):
        yield (
            sponsor.at.place,
            f"The passage of {quoted(sponsor.name)} is not in the running order.",
            f"Add `{sponsor.segment}` to `order:`, or delete `sponsor:`.",
        )
