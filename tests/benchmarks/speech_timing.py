"""How far the seconds of a passage are from those it took, over captioned talks of many speakers; prints a table.

The file has a row a passage: `speaker`, its seconds `dur`, and the counts `words`, `letters` (numbers written out),
`commas`, `sents` (sentence ends), `slides` (changes of topic). Passages of 20 s or more are predicted, each from its
speaker's other ones: by letters and pauses with the rate of these passages, by the same with their pace in words a
minute made into a rate as the product does, and by plain words. A speaker's errors come first, then the median over
speakers, since a few speakers hold most of the rows; beside it all passages together.

Run: python -m tests.benchmarks.speech_timing [FILE]
"""

from __future__ import annotations

import csv
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median, quantiles
from typing import NamedTuple

from scriptkit.computing.timing import SEGMENT_RANGE, letters_a_second, pauses_of, rate_of_sample

FILE = Path(__file__).resolve().parents[3] / "shared" / "data" / "speech-timing-dev.csv"  # beside the project
SHORTEST = 20  # seconds
LIMITS = "passage at most 6.5 %, p90 at most 15 %, range holds 75 to 88 %, both errors below those of plain words"


class Passage(NamedTuple):
    """What was counted of a stretch of speech, and its seconds; added up, of several."""

    seconds: float
    words: float
    letters: float
    pauses: float

    def without(self, other: Passage) -> Passage:
        """The rest, where one passage is taken out of a sum."""
        return Passage(*(whole - part for whole, part in zip(self, other, strict=True)))


class Errors(NamedTuple):
    """Of one or many speakers: the median error of a passage, of one in ten, and the share the range holds."""

    middle: float
    worst_tenth: float
    held: float


def by_letters(one: Passage, rest: Passage) -> float:
    """Seconds by letters and pauses, the rate from the speaker's other passages, as a take keeps it."""
    rate = rate_of_sample(rest.letters, rest.seconds, rest.pauses)
    return one.letters / rate + one.pauses if rate else 0.0


def by_pace(one: Passage, rest: Passage) -> float:
    """The same, the rate from their pace in words a minute, which is all that an outline says."""
    return one.letters / letters_a_second(60 * rest.words / rest.seconds) + one.pauses


def by_words(one: Passage, rest: Passage) -> float:
    """Seconds by words alone."""
    return one.words * rest.seconds / rest.words


WAYS = {
    "letters and pauses, rate of a sample": by_letters,
    "the same, from words a minute": by_pace,
    "plain words": by_words,
}


def read(path: Path) -> dict[str, list[Passage]]:
    """The passages of each speaker that are long enough."""
    found: dict[str, list[Passage]] = {}
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            pauses = pauses_of(float(row["commas"]), float(row["sents"]), float(row["slides"]))
            one = Passage(float(row["dur"]), float(row["words"]), float(row["letters"]), pauses)
            if one.seconds >= SHORTEST:
                found.setdefault(row["speaker"], []).append(one)
    return {speaker: passages for speaker, passages in found.items() if len(passages) > 1}


def misses(passages: Sequence[Passage], way: Callable[[Passage, Passage], float]) -> list[tuple[float, bool]]:
    """Of each passage of a speaker the share it was missed by, and whether the range holds it."""
    whole = Passage(*(sum(part) for part in zip(*passages, strict=True)))
    down, up = SEGMENT_RANGE
    found = []
    for one in passages:
        told = way(one, whole.without(one))
        found.append((abs(told / one.seconds - 1), (1 - down) * told <= one.seconds <= (1 + up) * told))
    return found


def errors(missed: Sequence[tuple[float, bool]]) -> Errors:
    """What many passages come to, in percent."""
    shares = [100 * share for share, _ in missed]
    held = 100 * sum(inside for _, inside in missed) / len(missed)
    return Errors(median(shares), quantiles(shares, n=10, method="inclusive")[-1], held)


def main() -> None:
    """Print a row for each way to predict."""
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else FILE
    if not path.is_file():
        sys.exit(f"{path} is not there. Give the file of measured passages as the argument.")
    speakers = read(path)
    if not speakers:
        sys.exit(f"{path} has no speaker with two passages of {SHORTEST} s or more.")
    print(f"{sum(map(len, speakers.values()))} passages of {SHORTEST} s or more, {len(speakers)} speakers; errors in %")
    print(f"{'':38}{'median over speakers':^27}{'all passages':^27}")
    print(f"{'':38}{'passage':>9}{'p90':>9}{'held':>9}{'passage':>9}{'p90':>9}{'held':>9}")
    for name, way in WAYS.items():
        each = [misses(passages, way) for passages in speakers.values()]
        own = [errors(one) for one in each]
        middle = [median(part) for part in zip(*own, strict=True)]
        pooled = errors([miss for one in each for miss in one])
        print(f"{name:38}" + "".join(f"{figure:9.1f}" for figure in (*middle, *pooled)))
    print(f"Wanted, over speakers: {LIMITS}")


if __name__ == "__main__":
    main()
