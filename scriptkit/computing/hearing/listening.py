"""What a listener makes of a sentence: its kind, opinion heard as such, signs that cannot be read."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.computing.aloud import saying
from scriptkit.computing.hearing import claims
from scriptkit.model import Judgement, Segment, UnsayableSign


def judge(
    segments: Sequence[Segment], cues: claims.Cues
) -> tuple[dict[str, tuple[Judgement, ...]], dict[str, tuple[bool, ...]]]:
    """By segment: the judgement of each sentence, and whether it holds words that tell it is opinion."""
    judged: dict[str, tuple[Judgement, ...]] = {}
    heard: dict[str, tuple[bool, ...]] = {}
    for segment in segments:
        before = ""
        found = []
        marked = []
        for sentence in segment.sentences:
            judgement = claims.judge(sentence.text, before, segment.kind, cues, caution=bool(sentence.cautions))
            found.append(judgement._replace(sure=True) if sentence.links else judgement)  # a source says it is one
            marked.append(claims.has_opinion_marker(sentence.text, cues))  # at once, while it is still taken apart
            before = sentence.text
        judged[segment.id] = tuple(found)
        heard[segment.id] = tuple(marked)
    return judged, heard


def signs(segments: Sequence[Segment]) -> tuple[UnsayableSign, ...]:
    """Signs and symbols that a presenter cannot read aloud."""
    return tuple(
        UnsayableSign(sentence.text[start:end], hint, sentence.place_of(start), sentence.text)
        for segment in segments
        for sentence in segment.sentences
        for start, end, hint in saying.unsayable(sentence.text)
    )


def word_counts(segments: Sequence[Segment]) -> dict[str, tuple[int, ...]]:
    """Words of each sentence, by segment."""
    return {segment.id: tuple(saying.words(sentence.text) for sentence in segment.sentences) for segment in segments}
