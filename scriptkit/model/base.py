"""What all nouns share: where a part of a file stands, and the trade's own lists of words."""

from collections.abc import Mapping
from types import MappingProxyType

from scriptkit.places import Place

EMPTY: Mapping[str, object] = MappingProxyType({})
SIZES = ("ELS", "LS", "FS", "MLS", "MS", "MCU", "CU", "BCU", "ECU", "INS", "2S", "OTS", "POV")
PLANES = ("side", "front", "back", "45", "top")
FORMS = ("correct", "fault")
PHASES = ("start", "end")
MOVES = ("static", "pan", "tilt", "push", "track", "handheld", "gimbal")
SOUNDS = ("sync", "wild", "MOS")
PRIORITIES = ("must", "should", "nice")
# what others call a size or a plane, for a near name
OTHER_NAMES = {
    "ws": "LS", "ews": "ELS", "xls": "ELS", "xcu": "ECU", "sag": "side", "sagittal": "side", "profile": "side",
    "frontal": "front", "rear": "back", "posterior": "back", "3/4": "45", "three-quarter": "45", "overhead": "top",
    "wrong": "fault", "bad": "fault", "right": "correct", "good": "correct", "bottom": "start",
}  # fmt: skip
COVERAGE = ("side", "front", "45", "back", "top", "start", "end", "close-up", "fault", "correct")
STANCES = ("supports", "against", "null", "mixed")
MARKS = (
    *("from", "opinion", "aside", "sponsor says", "caution", "override", "pause", "hold", "shot", "screen"),
    *("promise", "payoff", "optional"),
)
KINDS = ("opening", "checklist", "group", "verdict", "sponsor", "caution", "recap", "close", "talk")


class Spot:
    """Where a part of the outline stands, and where the value of each of its keys stands."""

    __slots__ = ("keys", "place")

    def __init__(self, place: Place, keys: Mapping[str, Place] | None = None) -> None:
        self.place = place
        self.keys = keys or {}

    def of(self, key: str) -> Place:
        """The place of the value of `key`; of the part itself where it has no such key."""
        return self.keys.get(key, self.place)


NOWHERE = Spot(Place("outline.yaml", 1, 1))
