"""What goes under a published video: its limits, chapters, references, corrections and description."""

from math import inf
from typing import NamedTuple

from scriptkit.model.outline import Erratum, PublicLink
from scriptkit.places import Place
from scriptkit.times import clock

STYLES = ("vancouver", "ama", "apa")  # the first where none is asked for


class Limits(NamedTuple):
    """What a page that shows videos takes; characters, bytes of UTF-8 and seconds. What is not given limits nothing."""

    title_characters: float = inf
    description_bytes: float = inf
    chapters: float = 0  # so many at least
    chapter_seconds: float = 0  # each at least
    chapter_title_characters: float = inf


class Chapter(NamedTuple):
    """A chapter from `start`, in whole seconds. `title` is what is shown of the `whole` one."""

    start: int
    title: str
    whole: str
    place: Place

    @property
    def line(self) -> str:
        """The chapter as a description has it, the time first."""
        return f"{clock(self.start)} {self.title}"


class Author(NamedTuple):
    """An author; without initials where it is an organisation, or where only the surname is known."""

    family: str
    initials: str = ""


class Reference(NamedTuple):
    """A source by its id, in the order it is first spoken, numbered from 1; `text` in the style of the list."""

    number: int
    id: str
    authors: tuple[Author, ...]
    text: str

    @property
    def line(self) -> str:
        """The reference in its list."""
        return f"{self.number}. {self.text}"


class Correction(NamedTuple):
    """An erratum, and where its segment is.

    `segment` is "" where it names none that is spoken, `start` None with it; `title` is that of the segment or
    exercise. `said` is where the script still has the wrong words, in `sentence`.
    """

    erratum: Erratum
    segment: str
    title: str
    start: float | None
    said: Place | None
    sentence: str


class Replaced(NamedTuple):
    """Words with an angle bracket, which no description may hold, and what stands there instead."""

    words: str
    instead: str
    place: Place


class Labelled(NamedTuple):
    """A link for viewers.

    `paid`: it says so, or names or leads to who pays; `sign`: the part of the address that looks so.
    """

    link: PublicLink
    paid: bool
    sign: str


class Publication(NamedTuple):
    """What is published beside the video.

    `chapters` is empty where there would be fewer than are needed; `parts` is how many there would be. `steps` are
    the steps by which the description was shortened, in words; `listed` says whether the references are in it.
    """

    chapters: tuple[Chapter, ...] = ()
    parts: int = 0
    references: tuple[Reference, ...] = ()
    corrections: tuple[Correction, ...] = ()
    links: tuple[Labelled, ...] = ()
    description: str = ""
    steps: tuple[str, ...] = ()
    listed: bool = True
    replaced: tuple[Replaced, ...] = ()

    @property
    def size(self) -> int:
        """The bytes of the description in UTF-8."""
        return len(self.description.encode(errors="replace"))
