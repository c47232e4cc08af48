"""How the CPU of a check grows with one sentence of nothing but a few words; prints seconds and how they grow.

Where time grows with length and no faster, twice the length takes about twice as long.

Run: python -m tests.benchmarks.long_sentences
"""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

from scriptkit import build

SIZES = (25, 50, 100)  # thousand letters
WORDS = (
    "a, ", "and it is ", "it can, ", "I think ", "if it hurts, ", "12 kg and ", "3 to 5 reps, ", "12 beats, ", "than ",
    "a 2021 trial and ", "everyone, nothing and ", "every, ", "someone had a beer, ", "it is proven, ", "Mora Hang, ",
)  # fmt: skip
OUTLINE = """title: One
exercises: {hang: {name: Bar hang}}
sources:
  made-up: {title: Hangs, n: 12, design: randomised trial, invented: true, findings: {grip: {result: 12 percent}}}
"""


def seconds(folder: Path, words: str, letters: int) -> float:
    """CPU that one check takes."""
    text = "Hang " + (words * (letters // len(words))).rstrip(" ,") + ". [from made-up grip]"
    (folder / "segments" / "hang.md").write_text(text)
    start = time.process_time()
    build.check(build.work_out(build.read(folder)), "record")
    return time.process_time() - start


def main() -> None:
    """Print a row for each run of words."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        (folder / "segments").mkdir()
        (folder / "outline.yaml").write_text(OUTLINE)
        seconds(folder, "a, ", 100)  # modules and word lists are read
        for words in WORDS:
            spent = [seconds(folder, words, size * 1000) for size in SIZES]
            told = ", ".join(f"{size} kB {one:.2f} s" for size, one in zip(SIZES, spent, strict=True))
            print(f"{words!r:26} {told}; from {SIZES[-2]} to {SIZES[-1]} kB {spent[-1] / spent[-2]:.1f} times")


if __name__ == "__main__":
    main()
