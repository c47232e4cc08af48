"""What a recording made of the script. Seconds from the start of the recording."""

from typing import NamedTuple

from scriptkit.model.base import NOWHERE, Spot
from scriptkit.model.script import Judgement
from scriptkit.places import Place


class HeardSentence(NamedTuple):
    """A sentence of the script and when it was said; `key` is the hash of its words, `share` of them that were said."""

    segment: str
    key: str
    start: float
    end: float
    share: float


class TakenSegment(NamedTuple):
    """A segment as it was recorded; None where it was not. `state`: said, moved, missing, added or unclear.

    Unclear is what was not made out in sound, where somebody speaks in its place.
    `words` of the script were said in it, and `silent` seconds of pauses and holds were planned.
    """

    id: str
    kind: str
    planned: float
    start: float | None
    end: float | None
    state: str
    words: int = 0
    silent: float = 0.0


class TakeChange(NamedTuple):
    """Where the recording differs. `weight`: stop, cut (said rightly elsewhere), claim or wording.

    `kind` says what differs, `what` says it in words.
    """

    weight: str
    kind: str
    what: str
    at: float | None
    segment: str
    place: Place
    script: str
    said: str
    line: int = -1  # number of the sentence in its segment; -1 for what is beside the script


class Pickup(NamedTuple):
    """A whole sentence to record again, with the set-up of its picture."""

    setup: str
    segment: str
    place: Place
    line: str
    why: str


class KeptAdLib(NamedTuple):
    """A claim that was said and stood nowhere in the script; seconds of the recording.

    `segment` and `after` (the hash of its words) say behind which line it was said.
    """

    segment: str = ""
    after: str = ""
    text: str = ""
    start: float | None = None
    end: float | None = None
    at: Spot = NOWHERE


class AdLib(NamedTuple):
    """A claim of a recording that is not in the script yet, and behind which sentence of its segment it belongs.

    `place` is that of the sentence; `start` in seconds of the recording.
    """

    segment: str
    line: int
    place: Place
    text: str
    start: float
    judgement: Judgement


class KeptChange(NamedTuple):
    """What has to be mended of a line: `key` is the hash of its words, `start` in seconds of the recording.

    `weight`, `kind` and `what` are those of the `TakeChange`; `start` is None for what was not said.
    """

    segment: str = ""
    key: str = ""
    weight: str = ""
    kind: str = ""
    what: str = ""
    start: float | None = None
    said: str = ""
    at: Spot = NOWHERE


class Unmended(NamedTuple):
    """A change that has to be mended and whose line the script still has. `weight`: stop or cut.

    `place` is that of the line; `start` in seconds of the recording, None for what was not said.
    """

    place: Place
    text: str
    weight: str
    what: str
    start: float | None
    said: str


class ScriptOf(NamedTuple):
    """What the script said in a segment when it was recorded: the hashes of its sentences, in order."""

    segment: str = ""
    keys: tuple[str, ...] = ()
    at: Spot = NOWHERE


class Take(NamedTuple):
    """A recording held against the script.

    `pace` in words a minute, planned silence left out; `letters` a second, all pauses left out; None if unknown.
    Of sound `worded` is false, nothing is known of wording, fillers and retakes; `unclear` lines were not made out.
    """

    length: float
    pace: float | None
    letters: float | None
    segments: tuple[TakenSegment, ...]
    sentences: tuple[HeardSentence, ...]
    changes: tuple[TakeChange, ...]
    ad_libs: tuple[KeptAdLib, ...]
    pickups: tuple[Pickup, ...]
    fillers: int
    retakes: int
    script: tuple[ScriptOf, ...] = ()
    unmended: tuple[KeptChange, ...] = ()
    worded: bool = True
    unclear: int = 0


class KeptSentence(NamedTuple):
    """A sentence of take.json: by the hash of its words, when it was said."""

    segment: str = ""
    key: str = ""
    start: float | None = None
    end: float | None = None
    at: Spot = NOWHERE


class KeptRecording(NamedTuple):
    """What take.json keeps of a recording: its length in seconds, what was said, what was ad-libbed, the script then.

    `changes` are those that have to be mended. They and `script` are empty where an earlier version wrote the file.
    """

    length: float | None = None
    sentences: tuple[KeptSentence, ...] = ()
    ad_libs: tuple[KeptAdLib, ...] = ()
    changes: tuple[KeptChange, ...] = ()
    about: str = ""
    script: tuple[ScriptOf, ...] = ()
    at: Spot = NOWHERE


class Clocked(NamedTuple):
    """What a recording's times were made into; ids of segments.

    `stale` were recorded from other words than the script has now, `absent` not at all.
    """

    stale: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()
