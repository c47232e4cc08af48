"""Finds where something the presenter earns from is spoken of in a graded segment before that is disclosed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards.phrases import spots
from scriptkit.computing.safeguards.watching import Lists
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Risk, Segment
from scriptkit.places import Place, Text

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

_COMPANY = re.compile(r" (?:ltd|limited|inc|llc|gmbh|co|company|plc|ag|bv|ab|oy|sa|srl)$")
NEXT = 2  # sentences behind the name that may still disclose it, before the grade is said


def find(script: Script, undisclosed: Sequence[str], lists: Lists) -> Iterator[Risk]:
    """Each interest that is named too early, at the first place; and each that the recap is silent about."""
    whole = {name: " ".join(texts) for name, texts in script.plain.items()}
    for shown, name in _payers(script):
        inside = [segment for segment in script.segments if _is_named(name, whole[segment.id])]
        graded = [segment for segment in inside if _is_graded(script, segment)]
        if not graded:
            continue
        early = _too_early(script, inside, name, undisclosed, lists)
        if early:
            yield early._replace(hint=shown)
        recap = [segment for segment in script.segments if segment.kind == "recap"]
        if recap and not any(
            _tells(script, one, number, name, lists) for one in recap for number in range(len(one.sentences))
        ):
            yield Risk("not-in-recap", recap[0].id, _recap_place(recap[0], shown), shown, "")


def _recap_place(recap: Segment, shown: str) -> Place:
    """Where the recap begins, or where the interest stands in the outline if the recap has no text of its own."""
    if recap.drafted and isinstance(shown, Text):
        return shown.place()
    return recap.sentences[0].place if recap.sentences else recap.at.place


def _payers(script: Script) -> list[tuple[str, str]]:
    """Who the presenter earns from: as written, and as plain words."""
    sponsor = [script.episode.sponsor.name] if script.episode.sponsor else []
    names: dict[str, str] = {}
    for who in [*sponsor, *(one.who for one in script.episode.interests)]:
        bare = _COMPANY.sub("", plain(who))
        if bare:
            names.setdefault(bare, who)
    return [(who, bare) for bare, who in names.items()]


def _is_graded(script: Script, segment: Segment) -> bool:
    graded = script.grades.get(segment.exercise) if segment.exercise else None
    return bool(graded and graded.grade)


def _too_early(
    script: Script, inside: Sequence[Segment], name: str, undisclosed: Sequence[str], lists: Lists
) -> Risk | None:
    """The first place at which it is named in a graded segment, where nothing disclosed it by then."""
    for segment in inside:
        if segment.kind == "sponsor" and segment.id not in undisclosed:
            return None
        for number, text in enumerate(script.plain[segment.id]):
            if not _is_named(name, text):
                continue
            if _tells(script, segment, number, "", lists):
                return None
            if _is_graded(script, segment):
                sentence = segment.sentences[number]
                return Risk(
                    "interest", segment.id, sentence.place_of(_offset(sentence.text, name)), name, sentence.text
                )
    return None


def _tells(script: Script, segment: Segment, number: int, name: str, lists: Lists) -> bool:
    """Whether a sentence, or one of the next two, discloses an interest; with a name, where that is in the first."""
    texts = script.plain[segment.id]
    if name and not _is_named(name, texts[number]):
        return False
    following = segment.sentences[number : number + 1 + NEXT]
    return any(lists.holds("interest-words", spots(one.text)) for one in following)


def _is_named(name: str, text: str) -> bool:
    """Whether plain words name somebody, or what is theirs."""
    return f" {name} " in f" {text} ".replace("'s ", " ")


def _offset(text: str, name: str) -> int:
    """Where a name begins in a text."""
    said = spots(text)
    words = name.split()
    for at in range(len(said) - len(words) + 1):
        if [spot.word for spot in said[at : at + len(words)]] == [word.removesuffix("'s") for word in words]:
            return said[at].start
    return 0
