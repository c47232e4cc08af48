"""Claims of a recording that stood in no script: those that the script still has not, and where they belong."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scriptkit import keys
from scriptkit.computing.hearing.claims import Cues, judge
from scriptkit.computing.taking.aligning import compare
from scriptkit.computing.taking.tokens import FILLERS, keys_of
from scriptkit.model import AdLib, Segment
from scriptkit.model.taking import KeptAdLib, KeptRecording

ALIKE = 0.75  # share of its words, in their order, from which on a sentence of the script says it


def find(recording: KeptRecording, segments: Sequence[Segment], cues: Cues) -> tuple[AdLib, ...]:
    """Each claim that was said and that no sentence of the script says, in the order in which they were said."""
    spoken = [keys_of(str(sentence.text)) for segment in segments for sentence in segment.sentences]
    if not spoken:
        return ()
    return tuple(_placed(one, segments, cues) for one in recording.ad_libs if not _is_written(one.text, spoken))


def _is_written(text: str, spoken: Sequence[Sequence[str]]) -> bool:
    """Whether a sentence of the script has most of the words in their order."""
    said = [key for key in keys_of(text) if key not in FILLERS]
    enough = ALIKE * len(said)
    for keys_there in spoken:
        if len(set(said) & set(keys_there)) >= ALIKE * len(set(said)):
            match = compare(said, keys_there, 0, len(keys_there))
            if match and match.score >= enough:
                return True
    return False


def _placed(one: KeptAdLib, segments: Sequence[Segment], cues: Cues) -> AdLib:
    segment, line = next(_lines(one, segments))
    judgement = judge(one.text, str(segment.sentences[line].text), segment.kind, cues)
    place = segment.sentences[line].place
    return AdLib(segment.id, line, place, str(one.text), one.start or 0.0, judgement)


def _lines(one: KeptAdLib, segments: Sequence[Segment]) -> Iterator[tuple[Segment, int]]:
    """Behind which line it belongs: the one it was said behind, else the last of its segment, else the last of all."""
    there = [segment for segment in segments if segment.sentences]
    for segment in there:
        if segment.id == one.segment:
            for line, sentence in enumerate(segment.sentences):
                if keys.of(sentence.text) == one.after:
                    yield segment, line
            yield segment, len(segment.sentences) - 1
    yield there[-1], len(there[-1].sentences) - 1
