"""README's tables of keys, made from the shapes that read them, and of the cautions that come with the tool."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scriptkit.reading import outline
from scriptkit.reading.filming import SHOT
from scriptkit.reading.shapes import Field, Listed, Mapped, Record, Shape
from scriptkit.reading.values import Number
from scriptkit.reading.words import stock_cautions

HEAD = ("| key | form | what it is |", "| --- | --- | --- |")


def form(shape: Shape) -> str:
    """What may stand behind a key, in a few words."""
    if isinstance(shape, Record):
        return f"keys, or what `{shape.short}` holds" if shape.short else "keys"
    if isinstance(shape, Mapped):
        return "a value under each name of your own"
    if isinstance(shape, Listed):
        each = form(shape.member)
        return f"a list of {shape.count}, each {each}" if shape.count else f"{each}; or a list of these"
    return shape.wanted.partition(" such as ")[0] if isinstance(shape, Number) else shape.wanted


def rows(fields: Mapping[str, Field], before: str = "") -> Iterator[str]:
    """A row a key; keys inside a key follow it, with a point between."""
    for name, field in fields.items():
        key = f"{before}{name}"
        needed = "; needed" if field.needed else ""
        yield f"| `{key}` | {form(field.shape)} | {field.about}{needed} |"
        if before and isinstance(field.shape, Record):
            yield from rows(field.shape.fields, f"{key}.")


def keys(**records: Mapping[str, Field]) -> str:
    """The tables of some records in one, each key with the name before it under which it stands."""
    return "\n".join([*HEAD, *(row for name, fields in records.items() for row in rows(fields, f"{name}."))])


def outline_keys() -> str:
    """What may stand at the top of an outline."""
    return "\n".join([*HEAD, *rows(outline.FIELDS)])


def exercise_keys() -> str:
    """The keys of an exercise, a rating and a claim."""
    return keys(
        exercise=outline.EXERCISE.fields,
        rating=outline.RATING.fields,
        claim=outline.CLAIM.fields,
        source=outline.LINK.fields,
    )


def sponsor_keys() -> str:
    """The keys of a sponsor, an interest and a term."""
    return keys(sponsor=outline.SPONSOR.fields, interest=outline.INTEREST.fields, term=outline.TERM.fields)


def step_keys() -> str:
    """The keys of a step of the running order."""
    return keys(step=outline.STEP.fields)


def shot_keys() -> str:
    """The keys of a shot."""
    return keys(shot=SHOT.fields)


def cautions() -> str:
    """The cautions that come with the tool."""
    told = (f"| `{name}` | {line} |" for name, line in stock_cautions().items())
    return "\n".join(["| caution | line |", "| --- | --- |", *told])
