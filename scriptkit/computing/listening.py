"""What a listener makes of each sentence: its kind, whether opinion is heard as such, signs that cannot be read, the disclosure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing import claims, saying
from scriptkit.computing.script import plain
from scriptkit.model import Episode, Judgement, Segment, Timeline, UnsayableSign

DISCLOSED_WITHIN = 3.0  # seconds from the start of a sponsor's passage


def judge(
    segments: Sequence[Segment], cues: claims.Cues
) -> tuple[dict[str, tuple[Judgement, ...]], dict[str, tuple[bool, ...]]]:
    """By segment: the judgement of each sentence, and whether it holds words that tell it is opinion.
    What the author marked as opinion is of the kind opinion, unless it is nothing that could be one.
    """
    judged: dict[str, tuple[Judgement, ...]] = {}
    heard: dict[str, tuple[bool, ...]] = {}
    for segment in segments:
        before = ""
        found = []
        for sentence in segment.sentences:
            found.append(claims.judge(sentence.text, before, segment.kind, cues))
            before = sentence.text
        judged[segment.id] = tuple(found)
        heard[segment.id] = tuple(claims.has_opinion_marker(sentence.text, cues) for sentence in segment.sentences)
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


def disclosed(
    episode: Episode, segments: Sequence[Segment], timeline: Timeline, disclosures: Sequence[str]
) -> bool | None:
    """Whether every sponsor's passage says in its first seconds that it is paid for; None where there is no such passage."""
    timed = {one.id: one for one in timeline.segments}
    verdicts = []
    for segment in segments:
        if segment.kind != "sponsor" or not segment.sentences:
            continue
        clock = timed[segment.id]
        first = [
            plain(sentence.text)
            for sentence, one in zip(segment.sentences, clock.sentences, strict=True)
            if one.start - clock.start < DISCLOSED_WITHIN
        ]
        opening = f" {' '.join(first)} "
        line = plain(episode.sponsor.disclosure) if episode.sponsor else ""
        as_written = bool(line) and opening.startswith(f" {line[: len(opening) - 2]}")
        verdicts.append(as_written or any(f" {plain(word)} " in opening for word in disclosures))
    return all(verdicts) if verdicts else None


def in_lists(words: Mapping[str, Sequence[str]], name: str) -> Sequence[str]:
    """The entries of a word list; none where the list is not there."""
    return words.get(name, ())
