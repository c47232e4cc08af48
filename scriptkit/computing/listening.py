"""What a listener makes of a sentence: its kind, opinion heard as such, signs that cannot be read, the disclosure."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from scriptkit.computing import claims, saying
from scriptkit.computing.likeness import plain
from scriptkit.model import Episode, Judgement, Segment, Sentence, TimedSegment, TimedSentence, Timeline, UnsayableSign

DISCLOSED_WITHIN = 3.0  # seconds from the start of a sponsor's passage


def judge(
    segments: Sequence[Segment], cues: claims.Cues
) -> tuple[dict[str, tuple[Judgement, ...]], dict[str, tuple[bool, ...]]]:
    """By segment: the judgement of each sentence, and whether it holds words that tell it is opinion."""
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
    """Whether every sponsor's passage says in its first seconds that it is paid for; None where there is none."""
    timed = {one.id: one for one in timeline.segments}
    passages = [segment for segment in segments if segment.kind == "sponsor" and segment.sentences]
    line = plain(episode.sponsor.disclosure) if episode.sponsor else ""
    return all(_starts_with_it(one, timed[one.id], line, disclosures) for one in passages) if passages else None


def _starts_with_it(segment: Segment, timed: TimedSegment, line: str, disclosures: Sequence[str]) -> bool:
    """Whether the disclosure as written, or other words that tell it, begin within three seconds of the start."""
    for number, (sentence, clock) in enumerate(zip(segment.sentences, timed.sentences, strict=True)):
        if clock.start - timed.start >= DISCLOSED_WITHIN:
            break
        following = plain(" ".join(one.text for one in segment.sentences[number : number + 4]))
        early = _heard_in_time(sentence, clock, timed.start + DISCLOSED_WITHIN)
        if line and early.strip() and f"{following} ".startswith(f"{line} "):
            return True
        if any(f" {plain(phrase)} " in early for phrase in disclosures):
            return True
    return False


def _heard_in_time(sentence: Sentence, clock: TimedSentence, until: float) -> str:
    """The plain words of a sentence that are begun by then, with a space at both ends."""
    length = clock.spoken / max(1, len(sentence.text))
    silent = [
        (offset, mark.seconds or 0.0)
        for offset, mark in sentence.cues
        if mark.seconds and mark.name in ("pause", "hold")
    ]
    end = 0
    for word in re.finditer(r"\S+", sentence.text):
        before = sum(seconds for offset, seconds in silent if offset <= word.start())
        if clock.start + before + word.start() * length >= until:
            break
        end = word.end()
    return f" {plain(sentence.text[:end])} "


def in_lists(words: Mapping[str, Sequence[str]], name: str) -> Sequence[str]:
    """The entries of a word list; none where the list is not there."""
    return words.get(name, ())
