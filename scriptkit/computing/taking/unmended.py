"""What a take told to mend and nobody has mended: by the hash of its line, it lasts as long as the line's words do."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit import keys
from scriptkit.model import Segment, Sentence, TakeChange, Unmended
from scriptkit.model.taking import KeptChange, KeptRecording

WEIGHTS = ("stop", "cut")


def kept(changes: Sequence[TakeChange], segments: Sequence[Segment]) -> tuple[KeptChange, ...]:
    """Those of the changes that have to be mended before the episode comes out."""
    lines = {(one.id, at): keys.of(line.text) for one in segments for at, line in enumerate(one.sentences)}
    return tuple(
        KeptChange(one.segment, lines[one.segment, one.line], one.weight, one.kind, one.what, one.at, one.said)
        for one in changes
        if one.weight in WEIGHTS and (one.segment, one.line) in lines
    )


def find(recording: KeptRecording, segments: Sequence[Segment]) -> tuple[Unmended, ...]:
    """Each of them whose line the script still has, in the order of the file; a line may have moved elsewhere."""
    lines: dict[tuple[str, str], Sentence] = {}
    for segment in segments:
        for sentence in segment.sentences:
            key = keys.of(sentence.text)
            for of in ("", segment.id):
                lines.setdefault((of, key), sentence)
    made = []
    for one in recording.changes:
        line = lines.get((str(one.segment), str(one.key))) or lines.get(("", str(one.key)))
        if line:
            told = str(one.weight), str(one.what), one.start, str(one.said)
            made.append(Unmended(line.place, str(line.text), *told))
    return tuple(made)
