"""Commands start fast: they load none of the libraries that they do not need, and Python has nothing to warn of."""

from __future__ import annotations

import json
import subprocess
import sys

from tests.house.tree import ROOT

RUN = """
import json, sys
from scriptkit.cli import main
sys.argv = ["scriptkit", *sys.argv[1:]]
try:
    status = main()
except SystemExit as end:
    status = end.code
print("\\n" + json.dumps({"status": status or 0, "loaded": sorted(sys.modules)}))
"""


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, *arguments], cwd=ROOT, capture_output=True, text=True, check=False)


def loaded(*arguments: str) -> set[str]:
    """The modules loaded once `scriptkit ARGUMENTS` has run and found no error."""
    done = run("-c", RUN, *arguments)
    assert done.stdout, done.stderr
    told = json.loads(done.stdout.splitlines()[-1])
    assert told["status"] == 0, done.stdout
    return set(told["loaded"])


def test_check_loads_neither_pydantic_nor_rich() -> None:
    """While this holds with typer 0.29 or later, the limit in pyproject.toml can go."""
    names = loaded("check", "sample_episode")
    assert {"typer", "yaml", "markdown_it"} <= names, "check did not do its work"
    assert {"pydantic", "rich", "num2words", "jsonschema"}.isdisjoint(names)


def test_help_loads_no_library_that_reads_or_writes() -> None:
    names = loaded("check", "--help")
    assert "typer" in names
    assert {"yaml", "markdown_it", "jinja2", "pydantic", "rich"}.isdisjoint(names)


def test_python_has_nothing_to_warn_of() -> None:
    done = run("-X", "dev", "-W", "error", "-m", "scriptkit", "check", "sample_episode")
    assert (done.returncode, done.stderr) == (0, "")
