"""Prints what `grades` costs in CPU: python -m tests.benchmarks.grades_cpu.

The limit is 1.2 s for twenty exercises and eight criteria, in plain Python.
"""

from __future__ import annotations

import os
import platform
import random
import sys
import tempfile
from pathlib import Path
from statistics import median

from tests.benchmarks.check_ratio import cpu

RUNS = 5
SIZES = ((10, 4, 0.0), (20, 8, 0.0), (20, 8, 0.2), (20, 8, 1.0), (200, 8, 0.2))


def outline(exercises: int, criteria: int, unsure: float) -> str:
    """An outline with ratings made by chance, the same every time; a share of them is uncertain."""
    chance = random.Random(5)  # noqa: S311 - nothing secret
    lines = ["title: Made up", "grades: {A: 4.2, B: 3.4, C: 2.6, D: 1}", "checklist:", "  criteria:"]
    lines += [f"    c{at}: {{ask: 'Question {at}?', weight: {chance.randint(5, 30)}}}" for at in range(criteria)]
    lines.append("exercises:")
    for number in range(exercises):
        ratings = []
        for at in range(criteria):
            score = chance.randint(1, 5)
            span = f", range: [{max(1, score - 1)}, {min(5, score + 1)}]" if chance.random() < unsure else ""
            ratings.append(f"c{at}: {{score: {score}{span}}}")
        lines.append(f"  e{number}: {{name: Exercise {number}, ratings: {{{', '.join(ratings)}}}}}")
    return "\n".join(lines) + "\n"


def main() -> None:
    """Measure and print a row for each size."""
    print(
        f"CPU in ms of a whole `grades`, median of {RUNS}; Python {platform.python_version()}, {os.cpu_count()} cores"
    )
    print(f"{'exercises':>10}{'criteria':>10}{'uncertain':>11}{'grades':>9}")
    with tempfile.TemporaryDirectory() as place:
        for exercises, criteria, unsure in SIZES:
            (Path(place) / "outline.yaml").write_text(outline(exercises, criteria, unsure), encoding="utf-8")
            call = [sys.executable, "-m", "scriptkit", "grades", place]
            cpu(call)
            took = median(cpu(call) for _ in range(RUNS))
            print(f"{exercises:>10}{criteria:>10}{unsure:>11.0%}{took:>9.0f}", flush=True)


if __name__ == "__main__":
    main()
