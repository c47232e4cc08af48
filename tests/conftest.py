"""What the tests of every room may ask for: whole outputs held against golden files, and small episodes to work on."""

from __future__ import annotations

import gc
import os
from collections.abc import Callable, Generator, Mapping
from pathlib import Path
from textwrap import dedent

import pytest

GOLDEN = Path(__file__).parent / "golden"
UPDATE = "pytest --update-golden"
HELD: set[Path] = set()  # the golden files this run has looked at
OUTCOMES: set[str] = set()
Files = Mapping[str, str | bytes]


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the one command that writes golden files."""
    parser.addoption("--update-golden", action="store_true", help="write tests/golden/ from what the program gives now")


def pytest_collection_finish() -> None:
    """Let Python look for garbage as rarely as in a command, and not among the tests themselves."""
    gc.freeze()
    gc.set_threshold(1_000_000, 20, 100)


class Golden:
    """Holds outputs against the files below tests/golden/, or writes them with --update-golden."""

    def __init__(self, *, update: bool) -> None:
        self._update = update

    def __call__(self, name: str, got: str | bytes) -> None:
        """Demand that `got` is byte for byte what tests/golden/NAME holds."""
        data = got.encode() if isinstance(got, str) else got
        path = GOLDEN / name
        HELD.add(path)
        if self._update:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        elif not path.is_file():
            pytest.fail(f"there is no golden file {name}; look at the output, then write it: {UPDATE}", pytrace=False)
        elif (kept := path.read_bytes()) != data:
            told = f"{name} is no longer what it was: {difference(kept, data)}"
            pytest.fail(f"{told}\nIf it should be so, write it: {UPDATE}", pytrace=False)

    def folder(self, name: str, got: Mapping[str, bytes]) -> None:
        """Demand that tests/golden/NAME/ holds the files of `got` (file name to bytes) and no other one."""
        strangers = {path.relative_to(GOLDEN / name).as_posix() for path in files_below(GOLDEN / name)} - got.keys()
        for stranger in sorted(strangers) if self._update else ():
            (GOLDEN / name / stranger).unlink()
        if strangers and not self._update:
            pytest.fail(f"tests/golden/{name} holds {sorted(strangers)}, not made any more: {UPDATE}", pytrace=False)
        for file, data in sorted(got.items()):
            self(f"{name}/{file}", data)


def difference(kept: bytes, got: bytes) -> str:
    """The first line that differs, as it was and as it is."""
    before, after = kept.split(b"\n"), got.split(b"\n")
    at = next((i for i, pair in enumerate(zip(before, after, strict=False)) if pair[0] != pair[1]), None)
    if at is None:
        return f"{len(before)} lines before, {len(after)} now"
    return f"line {at + 1}\n  was {before[at][:300]!r}\n  is  {after[at][:300]!r}"


def files_below(folder: Path) -> list[Path]:
    """Every file below a folder, sorted; none if there is no such folder."""
    return sorted(path for path in folder.rglob("*") if path.is_file())


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:
    """`golden(NAME, output)` and `golden.folder(NAME, {file: bytes})`: see Golden."""
    return Golden(update=request.config.getoption("--update-golden"))


@pytest.fixture
def episode(tmp_path: Path) -> Callable[[Files], Path]:
    """`episode({"outline.yaml": "...", "segments/x.md": "..."})` writes the files and gives the episode's folder.

    Texts are dedented, so that they can stand indented in a test; bytes are written as they are. A name that starts
    with `../` lands in the channel's folder. Called again, it adds to the same episode.
    """
    folder = tmp_path / "channel" / "episode"

    def write(files: Files) -> Path:
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content if isinstance(content, bytes) else dedent(content).lstrip("\n").encode())
        return folder

    return write


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Let a skipped test in another program count as failed where SCRIPTKIT_BROWSER=required is set (.ci/run does)."""
    report = yield
    outside = next(filter(None, map(item.get_closest_marker, ("browser", "office", "ffmpeg", "speech"))), None)
    if report.skipped and outside and os.environ.get("SCRIPTKIT_BROWSER") == "required":
        report.outcome, report.longrepr = "failed", f"skipped, but a {outside.name} is required here: {report.longrepr}"
    return report


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Remember how the tests went: which golden files are dead is known only after a run in which all passed."""
    OUTCOMES.add(report.outcome)


def pytest_deselected() -> None:
    """Remember that this run is not a whole one."""
    OUTCOMES.add("deselected")


def dead_files(config: pytest.Config) -> list[Path]:
    """The golden files that no test of a whole and green run has looked at."""
    asked = (
        config.args_source is pytest.Config.ArgsSource.ARGS,
        config.getoption("lf", default=False),
        config.option.ignore,
    )
    if any(asked) or OUTCOMES - {"passed"}:
        return []
    return [path for path in files_below(GOLDEN) if path not in HELD]


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Take dead golden files away with --update-golden; fail a run that finds one without."""
    for path in dead_files(session.config):
        if session.config.getoption("--update-golden"):
            path.unlink()
        else:
            session.exitstatus = pytest.ExitCode.TESTS_FAILED


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Name the dead golden files and the command that takes them away."""
    for path in dead_files(config):
        terminalreporter.write_line(f"FAILED {path.relative_to(GOLDEN)}: no test looks at this golden file; {UPDATE}")
