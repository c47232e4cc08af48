"""The project speaks of itself alone: no word about its making, no place on a disk, no address of a package index."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.house.tree import ROOT, files

# Each pattern holds a class of one letter, so that this page does not match itself.
STRANGERS = re.compile(
    r"""(?ix) /w[o]rk/ | /f[a]rm/ | seed[ ]document | (?<!power\ )steer[i]ng | \bC[E]O\b | coding[ ]agent
      | A[I][ ]assistant | language[ ]model | \bL[L]M\b | (?-i:\bA[I]\b) | \bissue[ ]\#?\d
      | pypi[.]org | python[h]osted | index[-]url """
)


def strange_lines(text: str) -> list[str]:
    return [f"{number}: {line[:120]}" for number, line in enumerate(text.splitlines(), 1) if STRANGERS.search(line)]


@pytest.mark.parametrize("path", [path for path in files() if path.suffix != ".png"], ids=str)
def test_a_file_holds_no_word_that_does_not_belong_in_the_product(path: Path) -> None:
    assert strange_lines((ROOT / path).read_text(encoding="utf-8", errors="ignore")) == []
    assert strange_lines(str(path)) == []


def test_such_a_word_would_be_seen() -> None:
    text = "See /w" + "ork/x\nthe C" + "EO\npower steer" + "ing is fine\nis" + "sue 7\nGAIN a PAIR"
    assert [line.split(":")[0] for line in strange_lines(text)] == ["1", "2", "4"]
