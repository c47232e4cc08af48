"""Where the sponsor's passage keeps what was agreed: the disclosure, the points to say, the code, the link."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards import sponsoring
from scriptkit.model import Agreed, Segment

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

Holds = Callable[[str], bool]


def find(script: Script, paid: Sequence[Segment]) -> tuple[Agreed, ...]:
    """Each thing that was agreed, with the first sentence and the first words on screen that have it."""
    sponsor = script.episode.sponsor
    if sponsor is None:
        return ()
    ids = {segment.id for segment in paid}
    cards = [card.text for card in script.cards if card.segment in ids]
    made = []
    if sponsor.disclosure:
        line = str(sponsor.disclosure)
        made.append(Agreed("disclosure", line, _said(line, paid), _shown(_words(line), cards)))
    made += [Agreed("point", str(point), _said(point, paid), "") for point in sponsor.must_say]
    if sponsor.code:
        code = sponsoring.squeezed(sponsor.code)
        made.append(_signs("code", sponsor.code, lambda text: code in sponsoring.squeezed(text), paid, cards))
    if sponsor.link:
        link = str(sponsor.link)
        made.append(_signs("link", link, lambda text: sponsoring.leads_to(text, link), paid, cards))
    return tuple(made)


def _signs(what: str, words: str, holds: Holds, paid: Sequence[Segment], cards: Sequence[str]) -> Agreed:
    lines = ((segment.id, at) for segment in paid for at, one in enumerate(segment.sentences) if holds(one.text))
    return Agreed(what, str(words), next(lines, None), _shown(holds, cards))


def _words(line: str) -> Holds:
    wanted = sponsoring.said(line)
    return lambda text: bool(wanted.strip()) and wanted in sponsoring.said(text)


def _shown(holds: Holds, cards: Sequence[str]) -> str | None:
    return next((text for text in cards if holds(text)), None)


def _said(words: str, paid: Sequence[Segment]) -> tuple[str, int] | None:
    """The sentence in which some words begin; they may go on in the next one."""
    wanted = sponsoring.said(words)
    if not wanted.strip():
        return None
    for segment in paid:
        text, starts = "", []
        for sentence in segment.sentences:
            starts.append(len(text))
            text = f"{text.rstrip()}{sponsoring.said(sentence.text)}"
        at = text.find(wanted)
        if at >= 0:
            return segment.id, max(number for number, start in enumerate(starts) if start <= at + 1)
    return None
