"""Takes README's picture of the script page from a real build of the sample: python -m tests.house.picture."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PICTURE = ROOT / ".github" / "script-page.png"
SIZE = "1180,1500"


def take(picture: Path = PICTURE) -> None:
    """Build the sample into a folder of its own, open its script page in Chromium and keep what the screen shows."""
    chromium = shutil.which("chromium")
    if not chromium:
        sys.exit("There is no chromium on this machine, and the picture is taken with it.")
    with tempfile.TemporaryDirectory() as folder:
        built = Path(folder) / "build"
        subprocess.run(
            [sys.executable, "-m", "scriptkit", "build", "sample_episode", "--out", built], cwd=ROOT, check=True
        )
        flags = ["--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", f"--window-size={SIZE}"]
        profile = [f"--user-data-dir={folder}/profile", "--force-prefers-color-scheme=light"]
        page = f"{(built / 'script.html').as_uri()}#segment-4"
        subprocess.run([chromium, *flags, *profile, f"--screenshot={picture}", page], check=True, capture_output=True)


if __name__ == "__main__":
    take()
