"""What is heard and when: the sentences of the script without the pauses and holds that stand in them."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from scriptkit.computing.timing import SILENT
from scriptkit.model import Segment, Sentence, TimedMark, TimedSentence, Timeline
from scriptkit.wording import word_end


class Piece(NamedTuple):
    """Words said in one go, in seconds from the start. A sentence is one piece, or several where a pause cuts it.

    `part` is the number of the segment and of the paragraph in it; `words` are the start and end of each word, where
    a recording gives them.
    """

    text: str
    start: float
    end: float
    part: tuple[int, int] = (0, 0)
    words: tuple[tuple[float, float], ...] = ()


def planned(segments: Sequence[Segment], timeline: Timeline) -> list[Piece]:
    """The pieces of a script as the plan has them: the voice alone, without the pause at the end of a sentence."""
    found: list[Piece] = []
    for number, (segment, timed) in enumerate(zip(segments, timeline.segments, strict=True)):
        at = 0
        marks: dict[int, list[TimedMark]] = {}
        for one in timed.marks:
            marks.setdefault(one.sentence, []).append(one)
        for paragraph_number, paragraph in enumerate(segment.paragraphs):
            for sentence in paragraph.sentences:
                at += 1
                said = timed.sentences[at - 1]
                voice = max(0.0, said.spoken - said.closing)
                found += [
                    Piece(text, start, end, (number, paragraph_number))
                    for text, start, end in _between_pauses(
                        sentence, said, voice, _own_marks(sentence, marks.get(at - 1, []))
                    )
                ]
    return found


def _own_marks(sentence: Sentence, listed: Sequence[TimedMark]) -> Sequence[TimedMark]:
    """The marks that stand in a sentence; of those of the clock, the ones that stand before it come first."""
    return listed[len(listed) - len(sentence.cues) :]


def _between_pauses(
    sentence: Sentence, said: TimedSentence, voice: float, marks: Sequence[TimedMark]
) -> Iterator[tuple[str, float, float]]:
    """The stretches of a sentence between its pauses and holds, with their times. No word is cut in two."""
    done, start, silent = 0, said.start, 0.0
    for (offset, mark), timed in zip(sentence.cues, marks, strict=True):
        if mark.name not in SILENT or not mark.seconds or offset >= len(sentence.text):
            continue
        until = word_end(sentence.text, offset)
        if sentence.text[done:until].strip():
            yield sentence.text[done:until].strip(), start, timed.start
            done = until
        silent += mark.seconds
        start = timed.start + mark.seconds
    if sentence.text[done:].strip():
        yield sentence.text[done:].strip(), start, max(start, said.start + voice + silent)
