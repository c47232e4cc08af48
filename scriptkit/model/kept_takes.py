"""The paces of earlier takes, as takes.yaml keeps them."""

from typing import NamedTuple

from scriptkit.model.base import NOWHERE, Spot


class KeptTake(NamedTuple):
    """The pace of one episode's take, in words a minute, and what it was measured on."""

    episode: str = ""
    pace: float | None = None
    words: int | None = None
    seconds: float | None = None
    at: Spot = NOWHERE
