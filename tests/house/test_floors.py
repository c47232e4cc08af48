"""Imports only go down, the rooms do not know each other, and each library has its door."""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.tree import ROOT, modules, tree

DOORS = {
    "scriptkit/cli.py": {"typer"},
    "scriptkit/computing/writing/expanding.py": {"jinja2"},
    "scriptkit/reading/nodes.py": {"yaml"},
    "scriptkit/reading/spoken.py": {"markdown_it"},
    "scriptkit/reading/workbooks.py": {"openpyxl"},
    "scriptkit/rendering/pages.py": {"jinja2"},
    "scriptkit/rendering/workbooks.py": {"xlsxwriter"},
}
LINT = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports(no_cache=True))"


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-c", LINT], cwd=folder, capture_output=True, text=True, check=False)


def test_every_import_contract_of_pyproject_is_kept() -> None:
    done = lint_imports(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_contracts_break_when_a_wall_is_broken(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "scriptkit", tmp_path / "scriptkit", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    house = tmp_path / "scriptkit"
    (house / "loft.py").write_text("")
    for module, line in {
        "checking/__init__.py": "import scriptkit.rendering.pages",
        "computing/__init__.py": "import pathlib",
        "rendering/__init__.py": "import yaml, markdown_it, jinja2, typer, openpyxl, xlsxwriter",
    }.items():
        with (house / module).open("a", encoding="utf-8") as file:
            file.write(f"\n{line}\n")
    said = lint_imports(tmp_path).stdout
    kept = [line for line in said.splitlines() if line.endswith("KEPT")]
    assert kept == [], said
    assert "scriptkit.loft" in said
    assert "scriptkit.checking -> scriptkit.rendering.pages" in said


def top_imports(path: Path) -> set[str]:
    """The packages that a module imports as soon as it is imported itself."""
    names: set[str] = set()
    for node in tree(path).body:
        if isinstance(node, ast.Import):
            names.update(alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            names.add("scriptkit" if node.level else (node.module or "").split(".")[0])
    return names


@pytest.mark.parametrize("path", modules("scriptkit"), ids=str)
def test_the_top_of_a_module_imports_the_standard_library_only(path: Path) -> None:
    """Else every command pays for the libraries of all; a door alone may import its own library at once."""
    own = {"scriptkit"} | DOORS.get(path.as_posix(), set())
    assert top_imports(path) - own <= sys.stdlib_module_names


def calls(path: Path) -> list[tuple[int, str]]:
    """Every call of a module: its line, and the name called (`now` for `datetime.now()`)."""
    called = [(node.lineno, node.func) for node in ast.walk(tree(path)) if isinstance(node, ast.Call)]
    names = [(line, func.id) for line, func in called if isinstance(func, ast.Name)]
    return names + [(line, func.attr) for line, func in called if isinstance(func, ast.Attribute)]


@pytest.mark.parametrize("path", [path for path in modules("scriptkit") if path.name != "cli.py"], ids=str)
def test_nothing_below_the_commands_reads_the_clock(path: Path) -> None:
    """The date comes in as an argument, so that the same input gives the same bytes."""
    clocks = {"now", "today", "utcnow", "time", "time_ns", "localtime", "gmtime"}
    assert [call for call in calls(path) if call[1] in clocks] == []


def test_only_the_commands_and_the_terminal_print() -> None:
    printing = {path.name for path in modules("scriptkit") for call in calls(path) if call[1] in {"print", "echo"}}
    assert printing <= {"cli.py", "terminal.py"}
