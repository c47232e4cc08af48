"""What the house tests look at: the project's files, and its modules as syntax trees."""

from __future__ import annotations

import ast
import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
ROOMS = ("reading", "computing", "checking", "rendering")


@cache
def files() -> tuple[Path, ...]:
    """Every file of the project, relative to its top: what git follows, and what it would follow if added."""
    git = ["git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(git, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return tuple(sorted(path for name in set(listed.split("\0")) if name and (ROOT / (path := Path(name))).is_file()))


def modules(*tops: str) -> list[Path]:
    """The Python files below these top-level folders, relative to its top; what a program made is no module."""
    return [path for path in files() if path.suffix == ".py" and path.parts[0] in tops and not made(path)]


def made(path: Path) -> bool:
    """Whether a file is one that tests/house/stock.py makes."""
    return path.parent == Path("scriptkit/stock") and path.stem != "__init__"


@cache
def tree(path: Path) -> ast.Module:
    """The syntax tree of a module."""
    return ast.parse((ROOT / path).read_text(encoding="utf-8"))


def functions(path: Path) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function of a module, methods and inner ones included."""
    return [node for node in ast.walk(tree(path)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]
