"""Commands end with the right status, and speak in sentences where they cannot do what they were told."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.running import SMALLEST, Done, run

Writer = Callable[[dict[str, str | bytes]], Path]
FINDING = {"name", "severity", "file", "line", "column", "message", "help", "stage"}
COMMANDS = ("new", "draft", "check", "claims", "runtime", "shots", "build", "explain", "schema")


@pytest.fixture
def smallest(episode: Writer) -> Path:
    """The smallest outline: no error, no warning."""
    return episode({"outline.yaml": SMALLEST})


@pytest.fixture
def faulty(episode: Writer) -> Path:
    """An outline with an error: a source that nobody knows."""
    return episode({"outline.yaml": SMALLEST.replace("source: mora-2022", "source: nobody-2020")})


def no_traceback(done: Done) -> None:
    assert "Traceback" not in done.out + done.err
    assert "fault of its own" not in done.err


def test_an_episode_without_fault_is_passed_at_each_stage(smallest: Path) -> None:
    for stage in ("draft", "record", "publish"):
        done = run("check", smallest, "--stage", stage, "--strict")
        assert (done.status, done.out, done.err) == (0, f"Nothing to mend at stage {stage}.\n", "")


def test_check_shows_the_line_and_ends_with_1(faulty: Path) -> None:
    done = run("check", faulty)
    assert done.status == 1
    assert "outline.yaml, line 8, column 17  unknown-source" in done.out
    assert "        source: nobody-2020\n" in done.out
    assert done.out.splitlines()[-1].startswith("1 error")


def test_check_answers_a_program(faulty: Path) -> None:
    done = run("check", faulty, "--format", "json")
    assert done.status == 1
    assert done.json.keys() >= {"episode", "findings", "summary"}
    assert done.json["episode"] == "episode"
    found = done.json["findings"][0]
    assert found.keys() >= FINDING
    assert (found["name"], found["file"], found["line"], found["column"]) == ("unknown-source", "outline.yaml", 8, 17)
    assert done.json["summary"]["errors"] == 1


def test_strict_counts_warnings_for_the_status_only(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST.replace("title:", "runtime: 30:00\n    title:", 1)})
    lax, strict = run("check", folder), run("check", folder, "--strict")
    assert (lax.status, strict.status) == (0, 1)
    assert lax.out == strict.out
    assert (run("build", folder).status, run("build", folder, "--strict").status) == (0, 1)


def test_what_a_later_stage_demands_is_a_note_until_then(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST.replace("source: mora-2022", "# nothing yet")})
    early, late = run("check", folder, "--stage", "draft"), run("check", folder, "--stage", "record")
    assert (early.status, late.status) == (0, 1)
    assert "note  outline.yaml" in early.out
    assert "due by record" in early.out


BROKEN: dict[str, bytes | None] = {
    "missing": None,
    "empty": b"",
    "a list": b"- one\n",
    "no UTF-8": b"title: \xff\n",
    "a syntax error": b"title: [\n",
    "too large": b"# " + b"x" * 5_000_000,
    "control character": b"title: \x1b[2J\n",
}


@pytest.mark.parametrize("outline", BROKEN.values(), ids=BROKEN)
@pytest.mark.parametrize("command", ["check", "claims", "runtime", "shots"])
def test_an_outline_that_cannot_be_read_still_gives_findings(
    episode: Writer, command: str, outline: bytes | None
) -> None:
    folder = episode({"outline.yaml": outline} if outline is not None else {})
    done = run(command, folder, "--format", "json")
    assert done.status == 2
    assert [found["severity"] for found in done.json["findings"]].count("error") == done.json["summary"]["errors"] > 0
    text = run(command, folder)
    assert text.status == 2
    assert "error  outline.yaml, line " in text.out
    assert "\x1b" not in text.out
    no_traceback(text)


@pytest.mark.parametrize(
    "arguments",
    [
        ["--bogus"], ["bogus"], ["check", "--bogus"], ["check", "--format", "xml"], ["check", "--stage", "never"],
        ["check", "one", "two"], ["runtime", "--pace", "fast"], ["runtime", "--pace", "10"],
        ["shots", "--order", "alphabet"], ["runtime", "--fit", "soon"], ["runtime", "--fit", "0s"],
        ["runtime", "--write", "copy"], ["new"], ["schema", "poem"],
        ["explain", "nothing-of-the-kind"], ["preview"],
    ],
)  # fmt: skip
def test_a_wrong_command_line_is_told_in_a_sentence_and_ends_with_2(arguments: list[str]) -> None:
    done = run(*arguments)
    assert (done.status, done.out) == (2, "")
    assert done.err.strip()
    no_traceback(done)


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help(command: str) -> None:
    done = run(command, "--help")
    assert done.status == 0
    assert f"scriptkit {command}" in done.out
    assert command in run("--help").out


def test_explain_prints_one_or_all() -> None:
    assert "Raises it:" in run("explain", "claim-without-source").out
    assert "\n  claim-without-source " in run("explain").out
    assert 'Did you mean "claim-without-source"?' in run("explain", "claim-without-sorce").err


def test_a_fault_of_the_program_is_one_sentence(smallest: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from scriptkit import build

    def fails(folder: Path) -> None:
        raise ZeroDivisionError("a \x1b[2J fault")

    monkeypatch.setattr(build, "read", fails)
    monkeypatch.delenv("SCRIPTKIT_DEBUG", raising=False)
    done = run("check", smallest)
    assert done.status == 1
    assert done.err.startswith("scriptkit has a fault of its own")
    assert "\x1b" not in done.err
    monkeypatch.setenv("SCRIPTKIT_DEBUG", "1")
    with pytest.raises(ZeroDivisionError):
        run("check", smallest)
