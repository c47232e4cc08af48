"""What other places of a script lean on a passage for: what a viewer would miss without it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Facts, Paragraph, Segment, Sentence
from scriptkit.wording import listed, quoted

MOST = 3  # places that are named
_POINTING = re.compile(
    r"(?:and |but |so )?(that|this|these|those|it|its|which|such|they|both)(?:'s|’s)?\b", re.IGNORECASE
)


class Script:
    """The sentences of a script by where they stand, and their plain words."""

    def __init__(self, facts: Facts) -> None:
        self.facts = facts
        self.plain = {
            id(sentence): f" {plain(sentence.text)} " for segment in facts.segments for sentence in segment.sentences
        }

    def others(self, gone: Sequence[Sentence]) -> Iterator[tuple[Segment, Sentence]]:
        """Every other sentence with its segment, in running order."""
        away = {id(sentence) for sentence in gone}
        for segment in self.facts.segments:
            yield from ((segment, sentence) for sentence in segment.sentences if id(sentence) not in away)


def breaks(script: Script, segment: Segment, paragraphs: Sequence[Paragraph], *, whole: bool) -> tuple[str, ...]:
    """What goes with a passage, in short words."""
    gone = [sentence for paragraph in paragraphs for sentence in paragraph.sentences]
    told = [*_promises(script, gone), *_terms(script, gone), *_sources(script, gone)]
    if whole:
        told += _exercise(script, segment)
    else:
        told += [*_grades(script, segment, paragraphs), *_next(segment, paragraphs)]
    return tuple(told)


def _promises(script: Script, gone: Sequence[Sentence]) -> Iterator[str]:
    """Promises that are made nowhere else."""
    made = {name for one in gone for _, mark in one.cues if mark.name == "promise" for name in mark.ids}
    for segment in script.facts.timeline.segments if made else ():
        away = {id(mark) for one in gone for _, mark in one.cues}
        for one in segment.marks:
            if one.mark.name == "promise" and id(one.mark) not in away:
                made -= set(one.mark.ids)
    for name in sorted(made):
        yield f"the promise {quoted(script.facts.episode.promises.get(name, name))} is made only here"


def _terms(script: Script, gone: Sequence[Sentence]) -> Iterator[str]:
    """Trade words that are heard first here and again elsewhere."""
    away = {id(sentence) for sentence in gone}
    for term, about in script.facts.episode.terms.items():
        words = f" {plain(term)} "
        if not about.gloss or not words.strip():
            continue
        every = (one for segment in script.facts.segments for one in segment.sentences)
        used = [one for one in every if words in script.plain[id(one)]]
        if used and id(used[0]) in away and any(id(one) not in away for one in used):
            yield f"{quoted(term)} is heard here first, and again later"


def _sources(script: Script, gone: Sequence[Sentence]) -> Iterator[str]:
    """Sources that are mentioned nowhere else."""
    here = dict.fromkeys(str(link.id) for one in gone for link in one.links)
    if here:
        for _, sentence in script.others(gone):
            for link in sentence.links:
                here.pop(str(link.id), None)
    if here:
        yield f"nothing else mentions {listed(here, MOST)}"


def _exercise(script: Script, segment: Segment) -> Iterator[str]:
    """The grade of an exercise is not given, and texts of the author's own that name it do so for nothing."""
    exercise = script.facts.episode.exercises.get(segment.exercise) if segment.exercise else None
    if exercise is None or not exercise.name:
        return
    yield f"{exercise.name} gets no grade"
    name = f" {plain(exercise.name)} "
    named = [
        sentence
        for other, sentence in script.others(segment.sentences)
        if not other.drafted and other.id != segment.id and name in script.plain[id(sentence)]
    ]
    places = listed(dict.fromkeys(f"{one.place.file}, line {one.place.line}" for one in named), MOST)
    if named:
        yield f"it is named in {places}"


def _grades(script: Script, segment: Segment, paragraphs: Sequence[Paragraph]) -> Iterator[str]:
    """Grades that are given nowhere else."""
    away = {line for one in paragraphs for line in range(one.first_line, one.last_line + 1)}
    here: dict[str, None] = {}
    elsewhere: set[str] = set()
    for one in script.facts.spoken_grades:
        if one.segment == segment.id and one.place.line in away:
            here.update(dict.fromkeys(one.exercises))
        else:
            elsewhere.update(one.exercises)
    for name in here:
        exercise = script.facts.episode.exercises.get(name)
        if name not in elsewhere and exercise:
            yield f"the grade of {exercise.name or name} is given only here"


def _next(segment: Segment, paragraphs: Sequence[Paragraph]) -> Iterator[str]:
    """The next sentence begins with a word that points back."""
    spoken = [paragraph for paragraph in segment.paragraphs if paragraph.sentences]
    after = spoken.index(paragraphs[-1]) + 1 if paragraphs[-1] in spoken else len(spoken)
    if after < len(spoken):
        first = spoken[after].sentences[0].text
        if _POINTING.match(first):
            yield f"what follows points back: {quoted(first, 40)}"
