"""Takes README's picture of the script page from a real build of the sample: python -m tests.house.picture."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PICTURE = ROOT / ".github" / "script-page.png"
SEGMENT = "segment-4"  # the first exercise
SIZE = "1180,1200"


def take(picture: Path = PICTURE) -> None:
    """Build the sample into a folder of its own, open its script page in Chromium and keep what the screen shows."""
    if not shutil.which("chromium"):
        sys.exit("There is no chromium on this machine, and the picture is taken with it.")
    from selenium import webdriver

    options = webdriver.ChromeOptions()
    for flag in ("headless=new", "no-sandbox", "disable-gpu", "hide-scrollbars", f"window-size={SIZE}"):
        options.add_argument(f"--{flag}")
    options.binary_location = str(shutil.which("chromium"))
    with tempfile.TemporaryDirectory() as folder:
        built = Path(folder) / "build"
        call = [sys.executable, "-m", "scriptkit", "build", "sample_episode", "--out", str(built)]
        subprocess.run(call, cwd=ROOT, check=True)
        browser = webdriver.Chrome(options=options, service=webdriver.ChromeService(shutil.which("chromedriver")))
        try:
            browser.get((built / "script.html").as_uri())
            browser.execute_script("document.getElementById(arguments[0]).scrollIntoView()", SEGMENT)
            browser.save_screenshot(str(picture))
        finally:
            browser.quit()


if __name__ == "__main__":
    take()
