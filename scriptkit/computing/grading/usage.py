"""Overused, underused: words that need a figure of use, held against how good the exercise is by the checklist."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import sqrt
from typing import NamedTuple

from scriptkit.computing.grading.firm_words import Passage
from scriptkit.computing.grading.naming import names_of
from scriptkit.computing.safeguards.phrases import Phrases, denied, spots, written
from scriptkit.model import Episode, Graded, GradeDoubt, Use
from scriptkit.places import Place

LIST = "use-said"
SIGNS = ("use", "done", "popular", " do")  # every entry holds one of these
ENOUGH_TO_FIT = 8  # figures of use from which on use is fitted on merit; with fewer their places are compared
ENOUGH_TO_PLACE = 3
PLAIN = 0.3  # of the list: so many places between how good and how common it is are plain
FAR = 1.0  # standard deviations from the fit that make it plain


def find(
    heard: Sequence[Passage], episode: Episode, graded: Mapping[str, Graded], words: Mapping[str, Sequence[str]]
) -> Iterator[GradeDoubt]:
    """Such words without a figure that bears them, unless they are owned as opinion."""
    phrases, denials = Phrases(words, LIST), Phrases(words, "denials")
    off = leanings(episode, graded)
    for one in heard:
        lowered = one.text.lower()
        if not any(sign in lowered for sign in SIGNS) or one.text.rstrip("\"'”’) ").endswith("?"):
            continue
        said = spots(one.text)
        for hit in phrases.find(said):
            exercise = next((name.exercise for name in names_of(episode).find(one.text)), one.exercise)
            if not exercise or denied(said, hit, denials):
                continue
            place = one.at(said[hit.first].start)
            found = Said(hit.entry.hint, written(one.text, said, hit), place, exercise, one.opinion)
            yield from _held(found, episode.exercises[exercise].use, off.get(exercise))
            break


class Said(NamedTuple):
    """The words, which way they go, where they stand, and of which exercise; `owned` as opinion."""

    kind: str
    words: str
    place: Place
    exercise: str
    owned: bool


def _held(said: Said, use: Use | None, lean: float | None) -> Iterator[GradeDoubt]:
    """What the figure of use makes of them; `lean` is how much more it is done than its score would have it."""
    if use is None or use.share is None:
        if not said.owned:
            yield GradeDoubt("no-use", said.place, said.words, said.exercise)
        return
    if not (use.source and use.seen):
        yield GradeDoubt("bare-use", use.at.place, said.words, said.exercise, "", "date" if use.source else "source")
    if lean is None:
        return
    signed = lean if said.kind == "over" else -lean
    if signed <= 0:
        yield GradeDoubt("use-against", said.place, said.words, said.exercise, "", f"{use.share:.0%}")
    elif signed < FAR and not said.owned:
        yield GradeDoubt("use-slight", said.place, said.words, said.exercise, "", f"{use.share:.0%}")


def leanings(episode: Episode, graded: Mapping[str, Graded]) -> dict[str, float]:
    """How much more (above 0) or less each exercise is done than its score would have it, 1 being plain.

    With eight figures or more, use is fitted on merit and the distance is in standard deviations of the rest; with
    three to seven it is the gap between the two places, three tenths of the list being plain; with fewer,
    the share of people who do it is held against the share of the list that it scores above.
    """
    known = {
        str(name): (graded[name].score or 0.0, one.use.share)
        for name, one in episode.exercises.items()
        if one.use and one.use.share is not None and graded[name].score is not None
    }
    if len(known) >= ENOUGH_TO_FIT:
        return _fitted(known)
    if len(known) >= ENOUGH_TO_PLACE:
        plain = PLAIN * len(known)
        merit, use = (_places({name: pair[part] for name, pair in known.items()}) for part in (0, 1))
        return {name: (use[name] - merit[name]) / plain for name in known}
    scores = [one.score for one in graded.values() if one.score is not None]
    return {
        name: (share - _standing(score, scores)) / PLAIN for name, (score, share) in known.items() if len(scores) > 1
    }


def _standing(score: float, scores: Sequence[float]) -> float:
    """The share of the others that score lower, those that score the same counting half."""
    return (sum(other < score for other in scores) + (scores.count(score) - 1) / 2) / (len(scores) - 1)


def _places(values: Mapping[str, float]) -> dict[str, float]:
    """The place of each value from the lowest, equal ones sharing theirs."""
    every = list(values.values())
    return {
        name: sum(other < value for other in every) + (every.count(value) - 1) / 2 for name, value in values.items()
    }


def _fitted(known: Mapping[str, tuple[float, float]]) -> dict[str, float]:
    """The distance from the line of use on merit, in standard deviations of these distances."""
    merit, use = ([pair[part] for pair in known.values()] for part in (0, 1))
    middle, height = sum(merit) / len(merit), sum(use) / len(use)
    spread = sum((one - middle) ** 2 for one in merit)
    slope = sum((x - middle) * (y - height) for x, y in zip(merit, use, strict=True)) / spread if spread else 0.0
    rest = [y - height - slope * (x - middle) for x, y in zip(merit, use, strict=True)]
    deviation = sqrt(sum(one * one for one in rest) / (len(rest) - 1))
    return {name: one / deviation if deviation > 1e-12 else 0.0 for name, one in zip(known, rest, strict=True)}
