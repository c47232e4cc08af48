"""What README.md and DEVELOPERS.md say is true: commands, flags, files, pictures, generated blocks."""

from __future__ import annotations

import re
import subprocess
import sys
from functools import cache

import pytest

from tests.house import readme
from tests.house.tree import ROOT, files

PAGES = ("README.md", "DEVELOPERS.md")
EVERY_PAGE = pytest.mark.parametrize("page", PAGES)
# What exists on an author's or a contributor's disk and not in the project.
ELSEWHERE = re.compile(
    r"""(?x) channel\.yaml | (\.\./)?takes\.yaml | take\.json | outline\.schema\.json
      | (sample_episode/)? build/(index\.html)?
      | \.venv/.* | library\.bib | verdicts\.yaml | \.(yaml|bib|ris|json) | (my-episode|hill-calves)/.* | \.\./.* """
)
BUILT = "tests/golden/sample_episode"


def text_of(page: str) -> str:
    return (ROOT / page).read_text(encoding="utf-8")


def code_of(page: str) -> list[str]:
    """Every line of code of a page: inline code, and the lines of `sh` blocks without their comments."""
    text = text_of(page)
    shell = [block for language, block in readme.fences(text) if language in {"sh", "console"}]
    lines = [line for block in shell for line in block.splitlines()]
    inline = re.findall(r"`([^`\n]+)`", readme.FENCED.sub("", text))
    return [re.sub(r"(^|\s)#.*", "", line) for line in lines] + inline


def test_readme_opens_with_one_paragraph_and_two_blocks_of_commands() -> None:
    text = text_of("README.md")
    before = [part for part in text[: text.index("```")].split("\n\n") if part.strip() and not part.startswith("# ")]
    assert len(before) == 1, before
    assert [language for language, _ in readme.fences(text)[:2]] == ["sh", "sh"]
    set_up, tests = (block for _, block in readme.fences(text)[:2])
    assert "scriptkit build sample_episode" in set_up
    assert "pytest" in tests


@cache
def options(*command: str) -> set[str]:
    """The options that `scriptkit COMMAND --help` shows; without a command, the names of the commands too."""
    call = [sys.executable, "-m", "scriptkit", *command, "--help"]
    done = subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False, env={"COLUMNS": "200"})
    assert done.returncode == 0, f"there is no command {' '.join(command)!r}: {done.stderr}"
    commands = re.findall(r"^ {2}([a-z]+)\b", done.stdout.partition("Commands:")[2], re.MULTILINE)
    return set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", done.stdout)) | set(commands)


def test_help_is_read_as_it_is_written() -> None:
    assert {"check", "build", "--help"} <= options()
    assert {"--stage", "--strict", "--format"} <= options("check")


@EVERY_PAGE
def test_every_command_and_flag_that_is_named_exists(page: str) -> None:
    wrong = []
    for line in code_of(page):
        for command, rest in re.findall(r"(?:^|[\s/])scriptkit ([a-z]+)\b([^&|;]*)", line):
            if command not in options():
                wrong.append(f"scriptkit {command}")
            else:
                flags = re.findall(r"(?<![\w-])--[a-z][a-z-]*", rest)
                wrong += [f"scriptkit {command} {flag}" for flag in flags if flag not in options(command)]
    assert wrong == []


def test_every_command_is_named_in_the_readme() -> None:
    named = set(re.findall(r"scriptkit ([a-z]+)\b", " ".join(code_of("README.md"))))
    assert {name for name in options() if not name.startswith("-")} <= named


def paths_of(page: str) -> list[str]:
    """What looks like a path in a page's inline code: a slash or a known ending, and no placeholder in capitals."""
    inline = re.findall(r"`([^`\s]+)`", readme.FENCED.sub("", text_of(page)))
    endings = r"\.(py|md|yaml|toml|txt|csv|html|json|svg|j2|css|yml|bib|vtt|srt|xlsx|png)"
    shape = re.compile(rf"[\w./-]+/[\w./-]*|[\w./-]*{endings}|\.[\w.-]+")
    placeholder = re.compile(r"\b(?!README|DEVELOPERS|LICENSE)[A-Z]{2,}\b")
    return [name for name in inline if shape.fullmatch(name) and not placeholder.search(name)]


def exists(name: str) -> bool:
    """Whether a name is a file or folder of the project, of the package, of the sample, or of what a build makes."""
    known = {path.as_posix() for path in files()}
    known |= {parent.as_posix() for path in files() for parent in path.parents}
    tops = ("", "scriptkit/", "tests/", "sample_episode/", f"{BUILT}/")
    return any(top + name.rstrip("/") in known for top in tops)


@EVERY_PAGE
def test_every_path_that_is_named_exists(page: str) -> None:
    named = paths_of(page)
    assert named, "no path found: is the page read as it is written?"
    assert [name for name in named if not exists(name) and not ELSEWHERE.fullmatch(name)] == []


def test_a_path_that_does_not_exist_would_be_seen() -> None:
    assert exists("pyproject.toml")
    assert exists("shipped.py")
    assert not exists("scriptkit/no_such_thing.py")


@EVERY_PAGE
def test_every_picture_and_link_to_a_file_is_there(page: str) -> None:
    links = re.findall(r"\]\(([^)#\s]+)\)", text_of(page)) + re.findall(r'(?:src|href)="([^"#]+)"', text_of(page))
    assert [link for link in links if "://" not in link and not (ROOT / link).exists()] == []


def test_the_generated_blocks_of_the_readme_are_up_to_date() -> None:
    text = text_of("README.md")
    assert readme.blocks(text).keys() == readme.GENERATED.keys()
    assert text == readme.renewed(text), "write them anew: python -m tests.house.readme --write"
