"""Shows a page in Chromium as on a telephone or a desk, presses keys there, and reads what it prints."""

from __future__ import annotations

import base64
import re
from pathlib import Path
from typing import Any

ARROW = {"up": "\ue013", "down": "\ue015", "left": "\ue012", "right": "\ue014"}
TAB, SHIFT, CONTROL, ALT, META = "\ue004", "\ue008", "\ue009", "\ue00a", "\ue03d"
SHEETS = {"A4": (8.27, 11.69), "Letter": (8.5, 11.0)}  # inches


def show(browser: Any, path: Path, width: int, media: str = "", *, scheme: str = "light", motion: str = "") -> None:
    """Open a page at a width in CSS pixels; `motion` is what is asked of it: nothing, or `reduce`."""
    size = {"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": width < 500}
    features = [
        {"name": "prefers-color-scheme", "value": scheme},
        {"name": "prefers-reduced-motion", "value": motion},
    ]
    browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", size)
    browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": media, "features": features})
    browser.get(path.as_uri())


def press(browser: Any, *keys: str) -> None:
    """Press keys one after the other, where the focus is; those that change others are held to the end."""
    from selenium.webdriver import ActionChains  # where there is no browser, there need be none of this either

    held = [key for key in keys if key in {SHIFT, CONTROL, ALT, META}]
    chain = ActionChains(browser)
    for key in keys:
        chain = chain.key_down(key) if key in held else chain.send_keys(key)
    for key in held:
        chain = chain.key_up(key)
    chain.perform()


def printed(browser: Any, sheet: str) -> list[list[str]]:
    """What the links to row.example on each sheet of the printed page point at."""
    width, height = SHEETS[sheet]
    made = browser.execute_cdp_cmd("Page.printToPDF", {"paperWidth": width, "paperHeight": height})
    return _links_by_sheet(base64.b64decode(made["data"]))


def _links_by_sheet(data: bytes) -> list[list[str]]:
    parts = dict(re.findall(rb"(?:^|\n)(\d+) 0 obj\s(.*?)endobj", data, re.DOTALL))
    sheets = [body for body in parts.values() if re.search(rb"/Type\s*/Page\b", body)]
    links = []
    for sheet in sheets:
        listed = re.search(rb"/Annots\s*\[(.*?)\]", sheet, re.DOTALL)
        annotations = [parts[number] for number in re.findall(rb"(\d+) 0 R", listed[1] if listed else b"")]
        links.append([name.decode() for one in annotations for name in re.findall(rb"//row\.example/([^)]+)", one)])
    return links
