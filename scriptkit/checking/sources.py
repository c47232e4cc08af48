"""Which sources checks look at, and how many findings about one register are told."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from scriptkit.checking.evidence import links
from scriptkit.checking.rules import Found
from scriptkit.model import Facts, Source
from scriptkit.places import Place

MOST_OF_A_FILE = 10  # findings of one kind about one register; the rest are counted
_AUTHORS_FILES = (".yaml", ".yml")


def is_written(source: Source) -> bool:
    """Whether the author wrote of a source, who then can put it right; an export is as it is."""
    return source.at.place.file.lower().endswith(_AUTHORS_FILES)


def used(facts: Facts) -> set[str]:
    """The ids of the sources that something rests on."""
    return {str(link.id) for _, link in links(facts)}


def looked_at(facts: Facts) -> list[Source]:
    """What the author wrote, and what of an export is used: no export is asked to be perfect."""
    ids = used(facts)
    return [one for one in facts.register.values() if one.id in ids or is_written(one)]


def in_use(facts: Facts) -> list[Source]:
    """The sources that something rests on."""
    ids = used(facts)
    return [one for one in facts.register.values() if one.id in ids]


def some(found: Iterable[Found], rest: Callable[[int], str]) -> Iterator[Found]:
    """The first findings about each file; `rest` says how many more there are, at the first of them."""
    seen: dict[str, int] = {}
    first: dict[str, Place] = {}
    for one in found:
        file = one[0].file
        seen[file] = seen.get(file, 0) + 1
        if seen[file] <= MOST_OF_A_FILE:
            yield one
        else:
            first.setdefault(file, one[0])
    for file, place in first.items():
        yield place, rest(seen[file] - MOST_OF_A_FILE), "Those listed show what there is to do."
