"""What a build of a very long episode costs: 200 exercises, 1,600 shots, 40 sources, every file.

The draws by which grades are judged firm are left out of the time and printed beside it; `grades_cpu` measures them by
the number of exercises and of doubtful ratings. Memory is the most that the process held.

Run: python -m tests.benchmarks.whole_build
"""

from __future__ import annotations

import os
import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from scriptkit import build
from scriptkit.computing.grading import ranking, scores
from tests.benchmarks.check_ratio import ROOT
from tests.benchmarks.shooting_order import outline

EXERCISES, SHOTS, STUDIES = 200, 8, 40
CRITERIA = ("long", "steady", "load", "quick")
LIMITS = "at most 10 s of wall time without the draws, at most 300 MB"


def episode() -> str:
    """The outline of the long day, each exercise with ratings and two claims."""
    chance = random.Random(3)  # noqa: S311 - nothing secret
    lines = []
    for line in outline(EXERCISES, SHOTS).split("\n"):
        head, found, tail = line.partition(": {name: Gym lift ")
        lines.append(f"{head}: {{{_exercise(int(head.strip()[1:]), chance)}, name: Gym lift {tail}" if found else line)
    asks = "".join(f"\n    {name}: {{ask: 'Is it {name}?'}}" for name in CRITERIA)
    lines.append(f"checklist:\n  criteria:{asks}\ngrades: {{A: 4, B: 3, C: 2, D: 1}}\nsources:")
    for study in range(STUDIES):
        finding = f"{{outcome: grip strength, result: {study % 9 + 2} percent, baseline: 50 kg, absolute: 2 kg}}"
        lines.append(
            f"  made-up-{study}: {{title: Made-up study {study}, year: 2021, doi: 10.5555/made-up.{study}, design: "
            f"randomised trial, n: {study + 12}, duration_weeks: 10, invented: true, findings: {{grip: {finding}}}}}"
        )
    return "\n".join(lines) + "\n"


def _exercise(number: int, chance: random.Random) -> str:
    ratings = ", ".join(f"{name}: {chance.randint(1, 5)}" for name in CRITERIA)
    study = number % STUDIES
    said = f"In one trial of {study + 12} lifters, grip grew by {study % 9 + 2} percent."
    claims = f"{{say: '{said}', source: made-up-{study}}}, {{say: 'I think it is worth a try.', opinion: true}}"
    return f"ratings: {{{ratings}}}, claims: [{claims}]"


def draws(folder: Path) -> float:
    """CPU seconds of the draws alone."""
    material = build.read(folder)
    graded = scores.grades(material.episode)
    start = time.process_time()
    ranking.rank(material.episode, graded)
    return time.process_time() - start


def main() -> None:
    """Print one row."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "long"
        folder.mkdir()
        (folder / "outline.yaml").write_text(episode(), encoding="utf-8")
        command = [sys.executable, "-m", "scriptkit", "build", str(folder)]
        rows = []
        for _ in range(3):
            child = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            _, status, used = os.wait4(child.pid, 0)
            child.returncode = os.waitstatus_to_exitcode(status)
            rows.append((used.ru_utime + used.ru_stime, used.ru_maxrss / 1024))
        drawn = draws(folder)
        cpu, memory = sorted(rows)[1]  # of three runs the middle one
        files = [one for one in (folder / "build").iterdir() if not one.name.startswith(".")]
        size = sum(one.stat().st_size for one in files) / 1e6
    print(f"Python {sys.version.split()[0]}; {EXERCISES} exercises, {EXERCISES * SHOTS} shots; wanted: {LIMITS}")
    print(f"{'CPU s':>8} {'of it draws':>12} {'without':>8} {'MB held':>8} {'files':>6} {'MB written':>11}")
    print(f"{cpu:>8.1f} {drawn:>12.1f} {cpu - drawn:>8.1f} {memory:>8.0f} {len(files):>6} {size:>11.1f}")


if __name__ == "__main__":
    main()
