"""Errata of a published episode: which segment each is about, and whether the script still has the wrong words."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.computing.taking.tokens import keys_of
from scriptkit.model import Episode, Erratum, Segment, Sentence, Timeline
from scriptkit.model.publishing import Correction


def corrections(episode: Episode, segments: Sequence[Segment], timeline: Timeline) -> tuple[Correction, ...]:
    """The errata in the order of the outline."""
    heard = _Heard(segments)
    starts = [one.start for one in timeline.segments]
    return tuple(_correction(one, episode, heard, starts) for one in episode.errata)


class _Heard:
    """The sentences of the script as they are compared, made when they are first asked for."""

    def __init__(self, segments: Sequence[Segment]) -> None:
        self.segments = segments
        self._words: dict[str, list[str]] = {}
        self._whole: dict[str, str] = {}

    def words(self, segment: Segment) -> list[str]:
        """The words of each sentence of a segment."""
        if segment.id not in self._words:
            self._words[segment.id] = [_words(sentence.text) for sentence in segment.sentences]
        return self._words[segment.id]

    def whole(self, segment: Segment) -> str:
        """All words of a segment in a row."""
        if segment.id not in self._whole:
            self._whole[segment.id] = f" {' '.join(one.strip() for one in self.words(segment))} "
        return self._whole[segment.id]


def _correction(erratum: Erratum, episode: Episode, heard: _Heard, starts: Sequence[float]) -> Correction:
    own = next((at for at, segment in enumerate(heard.segments) if segment.id == erratum.where), None)
    said = _still_said(erratum, heard, heard.segments if own is None else heard.segments[own : own + 1])
    place, text = (said.place, said.text) if said else (None, "")
    if own is None:
        exercise = episode.exercises.get(erratum.where)
        return Correction(erratum, "", str(exercise.name) if exercise else "", None, place, text)
    segment = heard.segments[own]
    return Correction(erratum, segment.id, segment.title, starts[own], place, text)


def _still_said(erratum: Erratum, heard: _Heard, segments: Sequence[Segment]) -> Sentence | None:
    """The sentence that has the wrong words, or begins them. "Ten" and "10" are the same."""
    was, now = _words(erratum.was), _words(erratum.now)
    if not was.strip():
        return None
    reach = was.count(" ")  # wrong words may run on into as many sentences
    for segment in segments:
        spoken = heard.words(segment)
        if was not in heard.whole(segment):
            continue  # most errata are about words that are gone, and one look tells it
        for number, words in enumerate(spoken):
            text = " ".join(one.strip() for one in spoken[number : number + reach])
            # the right words may hold the wrong ones
            text = f" {text} ".replace(now, " | ") if was in now else f" {text} "
            if 0 <= text.find(was) < len(words) - 1:
                return segment.sentences[number]
    return None


def _words(text: str) -> str:
    """The words of a text as they are compared, with a space at both ends."""
    return f" {' '.join(keys_of(text))} "
