"""Which lines of the script may be in which stretch of sound, by a first rough hearing; and where speech is."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Mapping, Sequence

from scriptkit.computing.aloud import saying
from scriptkit.computing.taking import hearing_out
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.model.recording import TimedWord, Utterance

ROOM = 2  # lines before and behind one that was heard, which may be there too
RUN = 12  # lines between two that were heard, which may all be between them
TOUCHES = 0.05  # seconds by which a line that ends where an utterance begins may overlap it
JOINED = 0.3  # seconds between words of one stretch
_WORD = re.compile(r"[a-z]+(?:'[a-z]+)*")


def lines(script: Sequence[Spoken], says: Mapping[str, str] | None = None) -> list[list[str]]:
    """The words of each line as they are spoken, in lower case, numbers in words."""
    return [_WORD.findall(saying.as_spoken(str(one.sentence.text), says).lower().replace("’", "'")) for one in script]


def near(script: Sequence[Spoken], rough: Sequence[TimedWord], utterances: Sequence[Utterance]) -> list[list[int]]:
    """For each utterance the numbers of the lines that may be in it, in the order of the script."""
    recorded = Recorded(rough)
    matches = hearing_out.match(script, recorded)
    found = sorted(
        (recorded.start(one.first), recorded.end(one.last), number) for number, one in enumerate(matches) if one
    )
    starts = [one[0] for one in found]
    made = []
    for utterance in utterances:
        last = bisect_left(starts, utterance.end - TOUCHES)
        first = last
        while first and found[first - 1][1] > utterance.start + TOUCHES:
            first -= 1
        before = found[first - 1][2] if first else -1
        behind = found[last][2] if last < len(found) else len(script)
        likely = {at for _, _, number in found[first:last] for at in range(number - ROOM, number + ROOM + 1)}
        likely |= {*range(before, before + ROOM + 1), *range(behind - ROOM, behind + 1)}
        if first == last and 0 < behind - before < RUN:
            likely |= set(range(before, behind + 1))
        made.append(sorted(number for number in likely if 0 <= number < len(script)))
    return made


def speech(rough: Sequence[TimedWord]) -> tuple[Utterance, ...]:
    """The stretches in which somebody speaks, by words in the order of time."""
    found: list[Utterance] = []
    for word in rough:
        if found and word.start - found[-1].end <= JOINED:
            found[-1] = Utterance(found[-1].start, max(found[-1].end, word.end))
        else:
            found.append(Utterance(word.start, word.end))
    return tuple(found)
