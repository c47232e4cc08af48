"""Every module keeps to the form of the house: sizes, docstrings, names, and a test file of its own."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from tests.house.tree import ROOT, files, functions, modules, tree

FILE_LINES = 300
FUNCTION_LINES = 40
DRAWERS = {"utils", "util", "common", "helpers", "helper", "misc", "shared", "tools"}
EVERY_MODULE = pytest.mark.parametrize("path", modules("scriptkit", "tests"), ids=str)
PRODUCT = modules("scriptkit")


@EVERY_MODULE
def test_a_file_is_not_too_long(path: Path) -> None:
    lines = (ROOT / path).read_text(encoding="utf-8").count("\n")
    assert lines <= FILE_LINES


def body_lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines of a function from `def` to its end, its docstring and the decorators left out."""
    told = node.body[0] if ast.get_docstring(node) else None
    return (node.end_lineno or 0) - node.lineno + 1 - ((told.end_lineno or 0) - told.lineno + 1 if told else 0)


@EVERY_MODULE
def test_a_function_is_not_too_long(path: Path) -> None:
    assert [f"{node.name}: {body_lines(node)}" for node in functions(path) if body_lines(node) > FUNCTION_LINES] == []


@EVERY_MODULE
def test_a_module_opens_with_one_sentence_that_says_what_it_is_for(path: Path) -> None:
    opening = (ast.get_docstring(tree(path)) or "").split("\n")[0]
    assert re.fullmatch(r"[A-Z\"`].*[.?]", opening), f"opens with {opening!r}"


def public_parts(node: ast.Module | ast.ClassDef, prefix: str = "") -> list[tuple[str, bool]]:
    """The public functions, classes and methods of a module, each with whether it has a docstring."""
    found = []
    for part in node.body:
        if isinstance(part, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef) and not part.name.startswith("_"):
            found.append((prefix + part.name, ast.get_docstring(part) is not None))
            found += public_parts(part, f"{part.name}.") if isinstance(part, ast.ClassDef) else []
    return found


@pytest.mark.parametrize("path", PRODUCT, ids=str)
def test_whatever_is_public_says_what_it_is(path: Path) -> None:
    assert [name for name, told in public_parts(tree(path)) if not told] == []


@EVERY_MODULE
def test_no_module_is_a_drawer(path: Path) -> None:
    assert DRAWERS.isdisjoint({*path.parts[:-1], path.stem})


def has_logic(path: Path) -> bool:
    """Whether a module has a function or method for others to call."""
    return path.stem[0] != "_" and any(node.name[0] != "_" for node in functions(path))


@pytest.mark.parametrize("path", [path for path in PRODUCT if has_logic(path)], ids=str)
def test_a_module_with_logic_has_its_test_file(path: Path) -> None:
    """scriptkit/ROOM/NAME.py is tested by tests/ROOM/test_NAME.py; a module of a family folder also by the family's."""
    inner = path.relative_to("scriptkit")
    family = [parent.with_name(f"test_{parent.name}.py") for parent in inner.parents if len(parent.parts) > 1]
    wanted = [Path("tests") / name for name in (inner.with_name(f"test_{inner.name}"), *family)]
    assert any(name in files() for name in wanted), f"none of {[str(name) for name in wanted]}"


def test_the_top_level_is_what_it_should_be() -> None:
    tops = {path.parts[0] for path in files()}
    assert {top for top in tops if not top.startswith(".")} == {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "scriptkit",
        "templates",
        "segments",
        "tests",
        "sample_episode",
    }


# Early releases of Python 3.11 never come back from a possessive quantifier behind a group.
POSSESSIVE_GROUP = re.compile(r"(?<!\\)(?:\)[*+?]|\)?\{\d*,?\d*\})\+")


@pytest.mark.parametrize("path", modules("scriptkit"), ids=str)
def test_no_pattern_holds_a_possessive_group(path: Path) -> None:
    texts = [
        node.value for node in ast.walk(tree(path)) if isinstance(node, ast.Constant) and isinstance(node.value, str)
    ]
    assert [text for text in texts if POSSESSIVE_GROUP.search(text)] == []


def test_a_possessive_group_would_be_seen() -> None:
    assert POSSESSIVE_GROUP.search("(?:ab)" + "*+")
    assert not POSSESSIVE_GROUP.search("[ab]*+(?:cd)*")
