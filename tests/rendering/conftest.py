"""What the tests of pages share: one browser for all of them, and two episodes built."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from textwrap import dedent
from typing import Any

import pytest

from scriptkit import build
from scriptkit.rendering import outputs
from scriptkit.shipped import shipped
from tests.rendering.test_pages import HOSTILE


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """A Chromium without a window, and the commands that only it knows."""
    chromium, driver = shutil.which("chromium"), shutil.which("chromedriver")
    if not chromium or not driver:
        pytest.skip("there is no chromium with its chromedriver on this machine")
    webdriver = pytest.importorskip("selenium.webdriver", reason="selenium is not installed")
    options = webdriver.ChromeOptions()
    options.binary_location = chromium
    for argument in ("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--disable-dev-shm-usage"):
        options.add_argument(argument)
    made = webdriver.Chrome(options=options, service=webdriver.ChromeService(driver))
    yield made
    made.quit()


@pytest.fixture(scope="session")
def folders(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The sample and a hostile episode, built."""
    hostile = tmp_path_factory.mktemp("hostile")
    (hostile / "outline.yaml").write_text(dedent(HOSTILE["outline.yaml"]), encoding="utf-8")
    made = {}
    for name, source in {"sample": shipped("sample_episode"), "hostile": hostile}.items():
        facts = build.as_built(build.work_out(build.read(source), drawn=True))
        made[name] = tmp_path_factory.mktemp(name)
        for file, data in outputs.render(outputs.Asked(facts, build.check(facts, "record"), "record", name)).items():
            (made[name] / file).write_bytes(data)
    return made
