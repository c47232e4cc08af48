"""Prints what `check` costs in CPU beside the floor: python tests/benchmarks/check_ratio.py.

An episode that claims how firm its grades are is drawn for; what these draws take is measured alone, taken off the
CPU of `check` before the ratio, and printed beside it.
"""

from __future__ import annotations

import os
import platform
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

ROOT = Path(__file__).resolve().parents[2]
FLOOR = Path(__file__).with_name("floor.py")
RUNS = 9
LONG = 200
DRAWS = """
import sys, time
from pathlib import Path
from scriptkit import build
material = build.read(Path(sys.argv[1]))
claims = build.work_out(material).ranking is not None
sys.modules.pop("scriptkit.computing.grading.ranking", None)
graded = build.scores.grades(material.episode)
start = time.process_time()
if claims:
    from scriptkit.computing.grading import ranking
    ranking.rank(material.episode, graded)
print(1000 * (time.process_time() - start))
"""


def cpu(call: list[str]) -> float:
    """Milliseconds of CPU, user and system, that a command takes; it must end with status 0."""
    # byte code is kept, as it is anywhere: where that is switched off, every module would be compiled in each run
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    child = subprocess.Popen(call, cwd=ROOT, stdout=subprocess.DEVNULL, env=env)
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)  # so that the child is not waited for again
    if child.returncode:
        sys.exit(f"{' '.join(call)} ended with status {child.returncode}")
    return (used.ru_utime + used.ru_stime) * 1000


def of_draws(episode: Path) -> float:
    """Milliseconds of CPU that the draws of an episode take alone; 0 where nothing in it claims firmness."""
    call = [sys.executable, "-c", DRAWS, str(episode)]
    return float(subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=True).stdout)


def measure(episode: Path) -> tuple[float, float, float]:
    """Median CPU of the floor, of `check` and of its draws, in milliseconds, over runs taken in turn."""
    floor = [sys.executable, str(FLOOR), str(episode)]
    check = [sys.executable, "-m", "scriptkit", "check", str(episode)]
    for call in (floor, check):
        cpu(call)  # one run each that does not count: byte code is written, files are in memory
    runs = [(cpu(floor), cpu(check), of_draws(episode)) for _ in range(RUNS)]
    medians = [median(one[part] for one in runs) for part in range(3)]
    return medians[0], medians[1], medians[2]


def long_outline() -> str:
    """An outline of many exercises, each with a grade, two claims and a shot, on forty invented sources."""
    text = ["title: Two hundred ways to train a calf", "exercises:"]
    for number in range(LONG):
        study = number % (LONG // 5)
        text += [
            f"  raise-{number}:",
            f"    name: Ledge raise number {number}",
            f"    grade: {'ABCD'[number % 4]}",
            "    claims:",
            f"      - say: In one trial of {study + 12} runners, the calf grew by {study % 9 + 2} percent.",
            f"        source: made-up-{study}",
            "      - say: I think it is the one to start with.",
            "        opinion: true",
            "    shots:",
            "      - {size: CU, plane: side, of: heel below the ledge, reps: 3}",
        ]
    text.append("sources:")
    for number in range(LONG // 5):
        text += [
            f"  made-up-{number}:",
            f"    title: Made-up study {number}",
            "    year: 2021",
            f"    doi: 10.5555/made-up.{number}",
            "    design: randomised trial",
            f"    n: {number + 12}",
            "    duration_weeks: 10",
            "    findings:",
            "      growth:",
            "        outcome: muscle growth",
            f"        result: {number % 9 + 2} percent",
            "        baseline: 50 mm",
            f"        absolute: {(number % 9 + 2) / 2:g} mm",
            "    invented: true",
        ]
    return "\n".join(text) + "\n"


def main() -> None:
    """Measure both episodes and print the table."""
    print(f"CPU in ms, median of {RUNS} runs taken in turn; Python {platform.python_version()}, {os.cpu_count()} cores")
    print(f"{'episode':<24}{'floor':>8}{'check':>8}{'draws':>8}{'ratio less draws':>18}")
    with tempfile.TemporaryDirectory() as folder:
        long = Path(folder) / "long"
        long.mkdir()
        (long / "outline.yaml").write_text(long_outline(), encoding="utf-8")
        for name, episode in {"sample_episode": ROOT / "sample_episode", f"{LONG} exercises": long}.items():
            floor, check, draws = measure(episode)
            ratio = (check - draws) / floor
            print(f"{name:<24}{floor:>8.1f}{check:>8.1f}{draws:>8.1f}{ratio:>18.2f}", flush=True)


if __name__ == "__main__":
    main()
