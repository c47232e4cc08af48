"""How far a long piece of work is: told late, seldom, to a terminal alone, and wiped at the end."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

import pytest

from scriptkit import progress, taking
from scriptkit.progress import Progress
from scriptkit.session import Session
from scriptkit.shipped import shipped
from tests.test_taking import captions

Step = Callable[[float], None]


class Terminal(io.StringIO):
    """A stream that is a terminal, and what is to be seen on its last line."""

    def isatty(self) -> bool:
        return True

    def seen(self) -> str:
        line = ""
        for part in self.getvalue().split("\r"):
            line = part + line[len(part) :]
        return line.rstrip()


@pytest.fixture
def later(monkeypatch: pytest.MonkeyPatch) -> Step:
    """Lets time pass, which otherwise stands still."""
    now = [100.0]
    monkeypatch.setattr(progress, "monotonic", lambda: now[0])

    def step(seconds: float) -> None:
        now[0] += seconds

    return step


def test_work_of_two_seconds_is_not_told(later: Step) -> None:
    terminal = Terminal()
    with Progress("Comparing", terminal) as told:
        later(1.9)
        told.tell(99, 100)
    assert terminal.getvalue() == ""


def test_longer_work_is_told_at_most_five_times_a_second(later: Step) -> None:
    terminal = Terminal()
    with Progress("Comparing", terminal) as told:
        later(2.1)
        for done in range(10):
            told.tell(done, 10)
            later(0.0625)
        assert terminal.getvalue() == "\rComparing: 0 %\rComparing: 40 %\rComparing: 80 %"
        assert terminal.seen() == "Comparing: 80 %"


def test_the_line_is_wiped_also_where_the_work_breaks_off(later: Step) -> None:
    terminal = Terminal()

    def work() -> None:
        with Progress("Comparing", terminal) as told:
            later(3)
            told.tell(1, 2)
            assert terminal.seen() == "Comparing: 50 %"
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        work()
    assert terminal.seen() == ""
    assert terminal.getvalue().endswith("\r")


def test_a_shorter_line_leaves_nothing_of_a_longer_one(later: Step) -> None:
    terminal = Terminal()
    with Progress("Comparing", terminal) as told:
        later(3)
        told.tell(100, 100)
        later(1)
        told.tell(1, 100)
        assert terminal.seen() == "Comparing: 1 %"


def test_a_file_a_program_and_nobody_are_told_nothing(later: Step, monkeypatch: pytest.MonkeyPatch) -> None:
    file = io.StringIO()
    monkeypatch.setattr(sys, "stderr", None)
    for stream in (file, None):
        with Progress("Comparing", stream) as told:
            later(3)
            told.tell(1, 2)
    assert file.getvalue() == ""


def test_a_terminal_that_is_gone_does_not_stop_the_work(later: Step) -> None:
    class Gone(Terminal):
        def write(self, _text: str) -> int:
            raise BrokenPipeError

    with Progress("Comparing", Gone()) as told:
        for done in range(3):
            later(3)
            told.tell(done, 3)


@pytest.fixture
def hours(monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    """A clock on which every look takes two seconds."""
    clock = count(0, 2)
    monkeypatch.setattr(progress, "monotonic", lambda: next(clock))
    return clock


@pytest.mark.parametrize("colour", ["", "1"])
def test_a_long_recording_is_told_up_to_its_end_with_and_without_colour(
    hours: Iterator[int], colour: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    monkeypatch.setenv("NO_COLOR", colour)
    work = Session(shipped("sample_episode"))
    taking.hold(work, work.readable(), [captions(work.material.folders.episode, tmp_path / "take.vtt")])
    shown = [int(part.split()[-2]) for part in terminal.getvalue().split("\r") if part.strip()]
    assert shown == sorted(set(shown))
    assert shown[-1] == 100
    assert len(shown) > 50
    assert terminal.seen() == ""
    assert max(map(len, terminal.getvalue().split("\r"))) < 40
