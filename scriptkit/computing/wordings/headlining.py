"""Judges title, question, answer and promises as sentences, and finds what in the script stands behind them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.hearing.claims import judge
from scriptkit.computing.hearing.clauses import split_words, take_apart
from scriptkit.computing.numbers.quantities import stem
from scriptkit.computing.wordings.firmness import weigh
from scriptkit.computing.wordings.ladder import as_worded, proofs, with_ready
from scriptkit.computing.wordings.rungs import Rungs
from scriptkit.model import LADDER, Episode, Headline, Segment, Weight, Worded
from scriptkit.places import Place, Text

PRESUPPOSES = re.compile(
    r"\W*(?:here's\s|that's\s)?(?:\d+\sreasons\s(?:why\s)?|why\s|how\s(?=\w+\s\w+s?\s))", re.IGNORECASE
)
ASKS = re.compile(r"(?:which|whether|what|who|where|when|if)\b", re.IGNORECASE)
COMMON = frozenset(
    "the and for with your you that this than more most best exercise exercises graded ranked tested from into over "
    "about which what when how why who all any one two three week weeks session sessions train training worth short "
    "only just make makes get are has have may can will not better bigger stronger".split()
)
ENOUGH = 0.5  # share of a headline's own words that a sentence and its exercise have to hold


class _Sourced(NamedTuple):
    """What a sentence with a source is about, how certain that is, and the exercise it belongs to."""

    about: frozenset[str]
    certainty: str
    exercise: str


def headlines(
    episode: Episode,
    segments: Sequence[Segment],
    weights: Mapping[str, tuple[Weight | None, ...]],
    ladder: Rungs,
) -> tuple[Headline, ...]:
    """Those that state an effect on people; a title that names its list, and a plain question, state none."""
    found: list[Headline] = []
    sourced: list[_Sourced] = []
    for what, text, place in _texts(episode):
        judgement = judge(text, "", "opening", ladder.cues)
        opening = PRESUPPOSES.match(text)
        start = opening.end() if opening else 0
        asks = text.rstrip().endswith("?") or (what.startswith("promise ") and ASKS.match(text) is not None)
        if (asks and not _presupposed(text)) or judgement.kind in ("instruction", "opinion"):
            continue
        speech = take_apart(text[start:].rstrip(" ?"), ladder.cues)
        if 0 in speech.numbers and "that" not in speech.words:
            continue  # "Five pulls for swimmers" names a list
        firmness = weigh(speech, ladder)
        worded = as_worded(speech, firmness, ladder)._replace(banned=proofs(speech, firmness))
        if not worded.step and not worded.banned:
            continue
        sourced = sourced or list(_sourced(segments, weights, episode))
        certainty, exercise, backed = _behind(text, sourced)
        ready = with_ready(speech, firmness, worded, LADDER.get(certainty, 0), ladder).ready
        shifted = _shifted(worded, start)._replace(ready="" if asks or not ready else text[:start] + ready)
        at = text.place(shifted.words[0]) if isinstance(text, Text) else place
        found.append(Headline(what, text, at, judgement, shifted, certainty, exercise, backed))
    return tuple(found)


def _texts(episode: Episode) -> Iterator[tuple[str, str, Place]]:
    """Title, question, answer and promises, with what each is called."""
    if episode.title:
        yield "title", episode.title, episode.at.of("title")
    if episode.question:
        yield "question", episode.question, episode.at.of("question")
    if episode.answer:
        yield "answer", episode.answer, episode.at.of("answer")
    for name, text in episode.promises.items():
        if text:
            yield f"promise {name}", text, episode.at.of("promises")


def _presupposed(text: str) -> bool:
    """Whether a question takes for granted what it asks the reason of: "Why do ledges beat floors?"."""
    return text.lstrip().lower().startswith("why ")


def _shifted(worded: Worded, start: int) -> Worded:
    spans = [(a + start, b + start) for a, b in (worded.words, *worded.banned)]
    return worded._replace(words=spans[0], banned=tuple(spans[1:]))


def _content(text: str) -> frozenset[str]:
    """The words of a text that tell what it is about."""
    return frozenset(stem(word) for word in split_words(text)[0] if len(word) > 2 and word not in COMMON)


def _sourced(
    segments: Sequence[Segment], weights: Mapping[str, tuple[Weight | None, ...]], episode: Episode
) -> Iterator[_Sourced]:
    """Each sentence that has a weight."""
    for segment in segments:
        named = episode.exercises.get(segment.exercise)
        name = _content(named.name) if named else frozenset()
        for sentence, weight in zip(segment.sentences, weights[segment.id], strict=True):
            if weight is not None:
                about = _content(sentence.text) | name | _content(weight.outcome)
                yield _Sourced(about, weight.certainty, segment.exercise)


def _behind(text: str, sourced: Sequence[_Sourced]) -> tuple[str, str, bool]:
    """The best certainty of what the script says of the same, the exercise it is about, and whether there is any."""
    wanted = _content(text)
    least = max(2, ENOUGH * len(wanted))
    alike = [one for one in sourced if len(wanted & one.about) >= least]
    best = max(alike, key=lambda one: LADDER.get(one.certainty, 0), default=None)
    if best is None or not LADDER.get(best.certainty, 0):
        return "", "", bool(alike)
    return best.certainty, best.exercise, True
