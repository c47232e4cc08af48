"""What the tests of pages share: one browser for all of them."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from typing import Any

import pytest


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
