"""What `take` costs with a script of 30,000 words: prints CPU seconds and peak memory of the whole command.

The script is made up, no two sentences alike. It is said with 3 % fillers, and of its little words 1 % each dropped,
doubled and misheard, and written as WebVTT. The limit is 10 s.

Run: python -m tests.benchmarks.long_take
"""

from __future__ import annotations

import os
import platform
import random
import subprocess
import sys
import tempfile
from pathlib import Path

from scriptkit import build
from scriptkit.model.recording import TimedWord
from tests.recorded import recording

ROOT = Path(__file__).resolve().parents[2]
WORDS, A_SEGMENT = 30_000, 90
LIMIT = 10.0
RUNS = 3
A_CAPTION = 9  # words
STUDIES = 20
SLOTS = {
    "start": "Now|Next|Early on|After that|On most days|In the second week|For a tall person|When the room is cold|"
    "Before you load it|Once it feels easy|At home|Outdoors|With a friend beside you|On a slow morning",
    "who": "a climber|the runner|your training partner|a rower I know|somebody new|the taller lifter|a dancer|"
    "my neighbour|the whole group|a tired swimmer|the coach in the corner|a patient beginner",
    "does": "lowers|raises|holds|carries|pulls|pushes|turns|presses|swings|lifts|slides|drops|rolls|drags|hoists",
    "thing": "sandbag|kettle|rope|barbell|ring|plank|sled|ball|crate|log|band|bucket|bench|ladder|strap|wedge|brick",
    "look": "heavy|red|short|worn|broad|round|light|wooden|narrow|plain|soft|square|long|dusty|new|borrowed",
    "how": "slowly|with a straight back|without a sound|to the left|in one go|from the hip|with both arms|"
    "near the wall|over the knee|at an even speed|with a wide stance|while breathing out|under control|"
    "from a dead stop",
    "why": "because the ankle is free|so the shoulder stays low|and the grip tires first|while the ribs stay down|"
    "since the heel carries most of it|and nobody rushes|until the thigh is level|but the elbow never leads|"
    "so that the neck can rest|although the wrist complains|and the toes point ahead|before the back takes over",
    "part": "calf|thigh|forearm|hip|shoulder|upper back|lower back|chest|wrist|ankle|neck|upper arm",
    "feel": "warm|busy|long|steady|quiet|awake|stretched|solid|slack|springy|square|settled",
}
SHAPES = (
    "{start}, {who} {does} the {look} {thing} {how}, {why}.",
    "Watch how {who} {does} a {look} {thing} {how}.",
    "The {part} should feel {feel} {how}, {why}.",
    "If the {thing} is too {look}, {who} {does} the {look} {thing} instead.",
    "{start}, think of the {part}, and keep the {thing} {how}.",
    "I think the {look} {thing} suits the {part} {how}, {why}.",
    "Take the {thing}, then the {look} {thing}, and let the {part} go {feel}.",
)  # fmt: skip
CLAIM = "In one trial of {n} runners, the {part} grew by {grew} percent over ten weeks. [from made-up-{study} growth]"
SOURCE = """  made-up-{at}:
    title: Made-up study {at}
    year: 2021
    doi: 10.5555/made-up.{at}
    design: randomised trial
    n: {n}
    duration_weeks: 10
    findings: {{growth: {{outcome: muscle growth, result: {grew} percent, baseline: 50 mm}}}}
    invented: true
"""


def write(folder: Path) -> int:
    """An episode of many exercises, each with its own text; how many words all of them have."""
    chance, seen, said = random.Random(7), set[str](), 0  # noqa: S311 - nothing secret
    slots = {name: row.split("|") for name, row in SLOTS.items()}
    outline = ["title: A very long day in the gym", "exercises:"]
    (folder / "segments").mkdir()
    while said < WORDS:
        number = len(outline) - 2
        study = number % STUDIES
        lines = [CLAIM.format(n=study + 12, grew=study % 9 + 2, study=study, part=chance.choice(slots["part"]))]
        while sum(len(line.split()) for line in lines) < A_SEGMENT:
            shape = chance.choice(SHAPES)
            line = shape.format(**{name: chance.choice(words) for name, words in slots.items()})
            if line not in seen:
                seen.add(line)
                lines.insert(chance.randrange(len(lines) + 1), line[0].upper() + line[1:])
        said += sum(len(line.partition(" [")[0].split()) for line in lines)
        (folder / "segments" / f"e{number}.md").write_text("\n".join(lines) + "\n", encoding="utf-8")
        outline.append(f"  e{number}: {{name: Gym lift {number}}}")
    sources = "".join(SOURCE.format(at=at, n=at + 12, grew=at % 9 + 2) for at in range(STUDIES))
    (folder / "outline.yaml").write_text("\n".join([*outline, "sources:", sources]), encoding="utf-8")
    return said


def captions(words: tuple[TimedWord, ...]) -> str:
    """A recording as WebVTT."""
    lines = ["WEBVTT", ""]
    for at in range(0, len(words), A_CAPTION):
        some = words[at : at + A_CAPTION]
        lines += [f"{_time(some[0].start)} --> {_time(some[-1].end)}", " ".join(one.text for one in some), ""]
    return "\n".join(lines)


def _time(seconds: float) -> str:
    return f"{int(seconds // 3600):02}:{int(seconds // 60) % 60:02}:{seconds % 60:06.3f}"


def used(call: list[str]) -> tuple[float, float]:
    """CPU seconds of a command and its peak memory in MB; a difference that was found (status 1) is an answer."""
    env = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    child = subprocess.Popen(call, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=env)
    _, status, spent = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)  # so that the child is not waited for again
    if child.returncode not in (0, 1):
        sys.exit(f"{' '.join(call)} ended with status {child.returncode}")
    return spent.ru_utime + spent.ru_stime, spent.ru_maxrss / (1024 * 1024 if sys.platform == "darwin" else 1024)


def main() -> None:
    """Make script and recording, and measure."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "long"
        folder.mkdir()
        written = write(folder)
        facts = build.work_out(build.read(folder))
        made, _, _ = recording(facts, fillers=0.03, dropped=0.01, doubled=0.01, misheard=0.01)
        take = Path(place) / "take.vtt"
        take.write_text(captions(made.words), encoding="utf-8")
        sentences = sum(len(segment.sentences) for segment in facts.segments)
        print(
            f"{written} words written, {len(facts.segments)} segments, {sentences} sentences; {len(made.words)} heard"
        )
        for command in ("check", "take"):
            call = [
                sys.executable,
                "-m",
                "scriptkit",
                command,
                str(folder),
                *([str(take)] if command == "take" else []),
            ]
            runs = [used(call) for _ in range(RUNS)]
            print(f"{command}: {min(runs)[0]:.1f} s of CPU, {max(peak for _, peak in runs):.0f} MB", flush=True)
        print(
            f"Best of {RUNS}; limit for take {LIMIT:.0f} s; Python {platform.python_version()}, {os.cpu_count()} cores"
        )


if __name__ == "__main__":
    main()
