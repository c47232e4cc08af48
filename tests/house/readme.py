"""Reads README.md: its `sh` blocks, and the blocks between `begin` and `end` comments, which it can write anew.

`python -m tests.house.readme --write` writes the generated blocks; `python3 tests/house/readme.py --sh 2` prints the
second `sh` block, which .ci/run runs as it stands, and needs the standard library only.
"""

from __future__ import annotations

import inspect
import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path

README = Path(__file__).resolve().parents[2] / "README.md"
FENCED = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
MARKED = re.compile(r"(?<=<!-- begin )([\w-]+)( -->\n)(.*?)(?=<!-- end \1 -->)", re.DOTALL)


OUTLINE = """\
title: Two ways to train your grip
pace: 150
exercises:
  bar-hang:
    name: Bar hang
    grade: A
    claims:
      - say: In one trial of 38 climbers, hang time rose by about a fifth.
        source: mora-2022
      - say: I think it is the easiest one to do anywhere.
        opinion: true
  towel-hang:
    name: Towel hang
    grade: B
    claims:
      - say: A thick grip builds more strength than a thin one.
sources:
  mora-2022:
    title: Six weeks of timed hangs
    year: 2022
    doi: 10.5555/grip.22
    design: randomised trial
    n: 38
    duration_weeks: 6
    findings: {hang: {outcome: hang time, values: {before: 41 s, after: 50 s}}}
    invented: true  # an example, not a study
"""


@cache
def _session() -> dict[str, str]:
    """What the commands of the five-minute start really print, in a folder of its own."""
    with tempfile.TemporaryDirectory() as folder:
        episode = Path(folder) / "my-episode"
        episode.mkdir()
        (episode / "outline.yaml").write_text(OUTLINE, encoding="utf-8")
        printed = {name: _printed(folder, name, "my-episode") for name in ("check", "runtime", "shots", "draft")}
        printed["text"] = (episode / "segments" / "bar-hang.md").read_text(encoding="utf-8")
    return printed


def _printed(folder: str, *command: str) -> str:
    call = [sys.executable, "-m", "scriptkit", *command]
    paths = os.pathsep.join([str(README.parent), os.environ.get("PYTHONPATH", "")]).rstrip(os.pathsep)
    env = {"PYTHONPATH": paths, "COLUMNS": "100", "PYTHONIOENCODING": "utf-8"}
    done = subprocess.run(call, cwd=folder, capture_output=True, text=True, check=False, encoding="utf-8", env=env)
    return f"$ scriptkit {' '.join(command)}\n{done.stdout.rstrip()}"


def _fenced(language: str, text: str) -> str:
    return f"```{language}\n{text.strip()}\n```"


def findings() -> str:
    """The table of findings."""
    from scriptkit.explaining import findings_table

    return findings_table()


def outputs() -> str:
    """The table of the files that a build writes."""
    from scriptkit.rendering.outputs import OUTPUTS

    return "\n".join(["| file | for |", "| --- | --- |", *(f"| `{one.name}` | {one.about} |" for one in OUTPUTS)])


def commands() -> str:
    """The table of commands, from what their own help says first."""
    from scriptkit.cli import app

    rows = ["| command | does |", "| --- | --- |"]
    for command in app.registered_commands:
        does = inspect.getdoc(command.callback) or ""
        name = command.name or getattr(command.callback, "__name__", "")
        rows.append(f"| `scriptkit {name}` | {does.splitlines()[0]} |")
    return "\n".join(rows)


def grades() -> str:
    """What `grades` really prints of the sample."""
    return _fenced("console", _printed(str(README.parent), "grades", "sample_episode"))


def fit() -> str:
    """What `runtime --fit` really prints of the sample, from where it says what to cut."""
    command, _, told = _printed(str(README.parent), "runtime", "sample_episode", "--fit", "10:05").partition("\n")
    return _fenced("console", f"{command}\n...\n{told[told.index('To fit') :]}")


def _table(name: str) -> Callable[[], str]:
    """A table of keys, made when it is asked for: this file needs the standard library only."""

    def made() -> str:
        from tests.house import key_tables

        table: Callable[[], str] = getattr(key_tables, name)
        return table()

    return made


TABLES = ("outline_keys", "exercise_keys", "sponsor_keys", "step_keys", "shot_keys", "cautions")
GENERATED: dict[str, Callable[[], str]] = {
    "outline": lambda: _fenced("yaml", OUTLINE),
    "check": lambda: _fenced("console", _session()["check"]),
    "runtime": lambda: _fenced("console", _session()["runtime"]),
    "shots": lambda: _fenced("console", _session()["shots"]),
    "draft": lambda: _fenced("markdown", _session()["text"]),
    "grades": grades,
    "fit": fit,
    "commands": commands,
    "findings": findings,
    "outputs": outputs,
    **{name.replace("_", "-"): _table(name) for name in TABLES},
}


def fences(text: str) -> list[tuple[str, str]]:
    """The fenced blocks of a page, in order: language (may be empty) and content."""
    return [(match[1], match[2]) for match in FENCED.finditer(text)]


def blocks(text: str) -> dict[str, str]:
    """The generated blocks of a page: name to content."""
    return {match[1]: match[3] for match in MARKED.finditer(text)}


def renewed(text: str) -> str:
    """The page with its generated blocks as they should be."""
    return MARKED.sub(lambda block: f"{block[1]}{block[2]}{GENERATED[block[1]]().strip()}\n", text)


def sh_block(number: int) -> str:
    """The README's `sh` block of that number, from 1; leaves with a message if README does not open as it must."""
    opening = fences(README.read_text(encoding="utf-8"))[:2] if README.is_file() else []
    if [language for language, _ in opening] != ["sh", "sh"]:
        sys.exit("README.md must have two `sh` blocks before any other fenced block: the sample, then the tests")
    return opening[number - 1][1]


def main(arguments: list[str]) -> None:
    """Do what the opening of this file says."""
    match arguments:
        case ["--sh", "1" | "2" as number]:
            sys.stdout.write(sh_block(int(number)))
        case ["--write"]:
            README.write_text(renewed(README.read_text(encoding="utf-8")), encoding="utf-8")
        case _:
            sys.exit("say --write, or --sh 1, or --sh 2")


if __name__ == "__main__":
    main(sys.argv[1:])
