"""The paces of earlier takes, as takes.yaml keeps them."""

from typing import NamedTuple

from scriptkit.model.base import NOWHERE, Spot


class KeptTake(NamedTuple):
    """The pace of one episode's take and what it was measured on.

    `pace` is in words a minute, its ordinary pauses in it; `letters` is in letters a second, without them.
    """

    episode: str = ""
    pace: float | None = None
    letters: float | None = None
    words: int | None = None
    seconds: float | None = None
    at: Spot = NOWHERE
