"""The grammar of marks: what stands between square brackets, read into a Mark."""

from __future__ import annotations

import re
from functools import lru_cache

from scriptkit import times
from scriptkit.computing.writing import shot_marks
from scriptkit.model import MARKS, STANCES, Link, Mark, Spot
from scriptkit.places import Place

SOURCE_MARKS = frozenset({"from", "opinion", "aside"})  # these cover a whole paragraph when they stand alone behind it

_ID = re.compile(r"[A-Za-z0-9_-]{1,64}")


def read(raw: str, place: Place) -> Mark | str:
    """The mark with that text between its brackets, or what is wrong with it (empty: it is no mark at all)."""
    words = " ".join(unescaped(raw).split())
    lowered = words.lower()
    found = _name().match(lowered)
    if not found:
        return ""
    name = found[1]
    rest = words[len(name) :].strip()
    return _READ[name](Mark(name, words, place), rest)


@lru_cache(maxsize=1)
def _name() -> re.Pattern[str]:
    return re.compile(rf"({'|'.join(map(re.escape, MARKS))})(?:[\s:,]|\Z)")


def unescaped(raw: str) -> str:
    """What is meant where a sign has a backslash before it."""
    return re.sub(r"\\([^\w\s])", r"\1", raw) if "\\" in raw else raw


def _plain(mark: Mark, rest: str) -> Mark | str:
    return f"nothing stands behind `{mark.name}`" if rest.strip(" :") else mark


def _from(mark: Mark, rest: str) -> Mark | str:
    links = []
    for part in rest.split(","):
        words = part.split()
        if not words or not all(_ID.fullmatch(word) for word in words) or len(words) > 3:
            return "it names ids of sources, with commas between: `[from orre-2021, lind-2019 against]`"
        stance = words.pop() if len(words) > 1 and words[-1].lower() in STANCES else ""
        if len(words) > 2:
            return "behind the id of a source stands one finding and one stance: `[from orre-2021 growth against]`"
        links.append(Link(words[0], words[1] if len(words) > 1 else "", stance.lower() or "supports", Spot(mark.place)))
    return mark._replace(links=tuple(links), ids=tuple(link.id for link in links))


def _one_id(mark: Mark, rest: str) -> Mark | str:
    ids = tuple(rest.replace(",", " ").split())
    if not ids or not all(_ID.fullmatch(one) for one in ids):
        return f"it needs an id: `[{mark.name} some-id]`"
    return mark._replace(ids=ids)


def _pause(mark: Mark, rest: str) -> Mark | str:
    return _timed(mark, rest, "") if rest else "it needs a time: `[pause 1s]`"


def _hold(mark: Mark, rest: str) -> Mark | str:
    time, _, text = rest.partition(":") if not re.match(r"\d+:\d\d", rest) else rest.partition(": ")
    return _timed(mark, time, text.strip()) if time.strip() else "it needs a time: `[hold 6s: three slow reps]`"


def _timed(mark: Mark, time: str, text: str) -> Mark | str:
    value = times.seconds(time)
    if value is None or value > 3600:
        return f"`{time.strip()}` is no time: write it as `1s`, `2.5s` or `1:10`"
    return mark._replace(seconds=value, text=text)


def _screen(mark: Mark, rest: str) -> Mark | str:
    found = re.match(r"(?:(\d[\d.:]*\s*[a-z]*)\s*)?:\s*(.*)", rest, re.DOTALL)
    if not found or not found[2]:
        return "it needs a colon and the words on screen: `[screen: Grade A]` or `[screen 4s: Grade A]`"
    return _timed(mark, found[1], found[2]) if found[1] else mark._replace(text=found[2])


def _optional(mark: Mark, rest: str) -> Mark | str:
    return (
        mark._replace(number=int(rest))
        if re.fullmatch(r"[1-9]", rest)
        else "it needs a number from 1 to 9: `[optional 2]`"
    )


_READ = {
    "from": _from,
    "opinion": _plain,
    "aside": _plain,
    "sponsor says": _plain,
    "override": _plain,
    "caution": _one_id,
    "promise": _one_id,
    "payoff": _one_id,
    "pause": _pause,
    "hold": _hold,
    "shot": shot_marks.read,
    "screen": _screen,
    "optional": _optional,
}
