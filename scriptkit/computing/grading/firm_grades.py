"""Holds how firmly a grade is said against the share of weightings that keep it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from scriptkit.computing.grading.scores import KEEPS, is_close
from scriptkit.computing.safeguards.phrases import Phrases, Spot, denied, spots
from scriptkit.model import Graded, GradeDoubt, Segment, SpokenGrade
from scriptkit.wording import grade_parts

BEFORE, BEHIND = 1, 2  # sentences before and behind a grade in which its reason counts as given
_LONG_ENOUGH = 3  # words behind a colon or a dash that are a reason


def find(
    spoken: Iterable[SpokenGrade],
    graded: Mapping[str, Graded],
    segments: Sequence[Segment],
    words: Mapping[str, Sequence[str]],
) -> Iterator[GradeDoubt]:
    """What is doubtful about the grades that are said at their own verdicts; of each exercise once."""
    homes = {segment.id: segment for segment in segments}
    firm, reasons, denials = (Phrases(words, name) for name in ("grade-firm", "grade-reasons", "denials"))
    seen: set[tuple[str, str]] = set()
    for said in spoken:
        home, one = homes.get(said.segment), graded.get(said.exercises[0]) if said.exercises else None
        if home is None or one is None or home.exercise != one.id or not one.agrees or one.firmness is None:
            continue
        band = one.band_firmness or 0.0
        share, other = (one.firmness, one.neighbour) if grade_parts(one.grade)[1] else (band, one.otherwise)
        kind = ""
        firmly = _is_firm(said, firm, denials)
        if share < KEEPS and firmly:
            kind = "solid-flips"
        elif firmly and _band(one.earned_low) != _band(one.earned_high):
            kind, other = "solid-unsure", f"{one.earned_low} to {one.earned_high}"
        elif is_close(one) and not _is_reasoned(said, home, reasons):
            kind, share, other = "flips", band, one.otherwise
        if kind and (kind, one.id) not in seen:
            seen.add((kind, one.id))
            yield GradeDoubt(kind, said.place, said.text, one.id, other, f"{share:.2f}")


def _band(grade: str | None) -> str:
    return grade_parts(grade or "")[0]


def _is_firm(said: SpokenGrade, firm: Phrases, denials: Phrases) -> bool:
    """Whether the words around a grade say that nothing could move it."""
    words = spots(said.text)
    base = grade_parts(said.grade)[0].lower().split()
    for hit in firm.find(words):
        if denied(words, hit, denials):
            continue
        behind = [spot.word for spot in words[hit.last + 1 : hit.last + 1 + len(base)]]
        if hit.entry.hint == "anywhere" or behind == base:
            return True
    return False


def _is_reasoned(said: SpokenGrade, home: Segment, reasons: Phrases) -> bool:
    """Whether a range or a reason is given with the grade, in its sentence or close to it."""
    sentences = [one.text for one in home.sentences]
    at = next((number for number, text in enumerate(sentences) if text == said.text), None)
    if at is None:
        return True  # a card has no room for reasons
    if _goes_on(spots(said.text)) or reasons.find(spots(said.text)):
        return True
    nearby = sentences[max(0, at - BEFORE) : at + BEHIND + 1]
    return any(hit.entry.hint == "near" for text in nearby for hit in reasons.find(spots(text)))


def _goes_on(words: Sequence[Spot]) -> bool:
    """Whether something is said of the grade behind a colon, a comma or a dash."""
    last = words[-1].clause if words else 0
    return last > 0 and sum(spot.clause == last for spot in words) >= _LONG_ENOUGH
