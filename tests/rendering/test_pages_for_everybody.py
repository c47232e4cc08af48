"""No page shuts anybody out: axe-core finds nothing serious on any of them, on a telephone and on a desk."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest

from tests.browsing import show
from tests.rendering.test_pages import PAGES

pytestmark = pytest.mark.browser
RUN = """
const done = arguments[arguments.length - 1];
axe.run(document, {resultTypes: ['violations']}).then(
  (found) => done(found.violations.map((one) => [one.impact, one.id, one.nodes.map((node) => node.html)])),
  (error) => done([['serious', String(error), []]]));
"""
BARE = "<!doctype html><title>x</title><img src='data:,'><p style='color:#ccc;background:#fff'>Pale words</p>"


@pytest.fixture(scope="module")
def axe() -> str:
    """The text of axe-core, from npm; .ci/run installs it and says where it is."""
    path = Path(os.environ.get("SCRIPTKIT_AXE", "node_modules/axe-core/axe.min.js"))
    if not path.is_file():
        pytest.skip("axe-core is not installed; npm install --no-save axe-core puts it where it is looked for")
    return path.read_text(encoding="utf-8")


def violations(browser: Any, axe: str) -> list[list[Any]]:
    browser.set_script_timeout(60)
    browser.execute_script(axe)
    found: list[list[Any]] = browser.execute_async_script(RUN)
    return found


@pytest.mark.parametrize("page", PAGES)
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("name", ["sample", "hostile"])
def test_a_page_has_no_serious_finding(
    browser: Any, axe: str, folders: dict[str, Path], page: str, width: int, name: str
) -> None:
    show(browser, folders[name] / page, width)
    assert [one for one in violations(browser, axe) if one[0] in ("serious", "critical")] == []


def test_a_page_with_faults_would_be_seen(browser: Any, axe: str, tmp_path: Path) -> None:
    (tmp_path / "bare.html").write_text(BARE, encoding="utf-8")
    show(browser, tmp_path / "bare.html", 390)
    assert {"image-alt", "color-contrast", "html-has-lang"} <= {one[1] for one in violations(browser, axe)}
