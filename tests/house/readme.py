"""Reads README.md: its `sh` blocks, and the blocks between `begin` and `end` comments, which it can write anew.

`python -m tests.house.readme --write` writes the generated blocks; `python3 tests/house/readme.py --sh 2` prints the
second `sh` block, which .ci/run runs as it stands, and needs the standard library only.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path

README = Path(__file__).resolve().parents[2] / "README.md"
FENCED = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
MARKED = re.compile(r"(?<=<!-- begin )([\w-]+)( -->\n)(.*?)(?=<!-- end \1 -->)", re.DOTALL)


def findings() -> str:
    """The table of findings."""
    from scriptkit.explaining import findings_table

    return findings_table()


GENERATED: dict[str, Callable[[], str]] = {"findings": findings}


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
