"""Says where the shipped folders are: inside the package of a wheel, or beside it in a checkout."""

from pathlib import Path


def shipped(name: str) -> Path:
    """The folder `name` (templates, segments, sample_episode, words), wherever scriptkit was installed from."""
    package = Path(__file__).resolve().parent
    for place in (package / name, package.parent / name):
        if place.is_dir():
            return place
    raise FileNotFoundError(f"this installation of scriptkit has no folder called {name!r}")
