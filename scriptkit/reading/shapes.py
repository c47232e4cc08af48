"""Shapes of values: one description that reads YAML nodes into nouns, notes every fault, and gives the JSON Schema."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from scriptkit import times
from scriptkit.findings import Finding
from scriptkit.model import Extent, Spot
from scriptkit.places import Place, SourceFile, Text
from scriptkit.reading import faults
from scriptkit.reading.nodes import Node

MISSING: Any = object()
ID = re.compile(r"[A-Za-z0-9_-]{1,64}")
KIND_NAMES = {"mapping": "keys and values", "list": "a list", "text": "a text"}


class Reader:
    """What reading one file needs: its text, and where findings go."""

    __slots__ = ("file", "findings")

    def __init__(self, file: SourceFile, findings: list[Finding]) -> None:
        self.file = file
        self.findings = findings

    def place(self, node: Node) -> Place:
        """Where the first word of a node stands."""
        return self.file.place(node.words_start() if node.kind == "text" else node.start)

    def wrong(self, node: Node, what: str, wanted: str) -> Any:
        """Note that a node is of the wrong kind."""
        given = KIND_NAMES[node.kind]
        if node.nothing:
            given = "nothing"
        elif node.kind == "text":
            given = faults.quoted(node.value)
        self.findings.append(faults.wrong_type(self.place(node), what, wanted, given))
        return MISSING


class Shape:
    """A kind of value. `read` gives the value or MISSING, and notes what is wrong; `schema` is its JSON Schema."""

    wanted = "a value"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The value of a node; `what` is the key it stands under."""
        raise NotImplementedError

    def schema(self) -> dict[str, Any]:
        """The JSON Schema of what may be written."""
        return {}


class Words(Shape):
    """A text as written, whatever YAML would make of it."""

    wanted = "a text"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        if node.kind != "text" or node.nothing:
            return reader.wrong(node, what, self.wanted)
        return node.text(reader.file)

    def schema(self) -> dict[str, Any]:
        return {"type": ["string", "number", "boolean"]}


class Path(Words):
    """A path of a file, kept as written; the reading room decides whether it may be opened."""

    wanted = "a file name"


class Ident(Words):
    """An id."""

    wanted = "an id"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        value = super().read(node, reader, what)
        if value is not MISSING and not ID.fullmatch(value):
            reader.findings.append(faults.bad_id(reader.place(node), value))
            return MISSING
        return value

    def schema(self) -> dict[str, Any]:
        return {"type": ["string", "integer"], "pattern": f"^{ID.pattern}$"}


class Number(Shape):
    """A number within bounds; `whole` for counts."""

    def __init__(self, low: float, high: float, whole: bool = False) -> None:
        self.low, self.high, self.whole = low, high, whole
        self.wanted = "a whole number" if whole else "a number"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        written = node.value.strip() if node.kind == "text" else ""
        if not re.fullmatch(r"[-+]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})", written):
            return reader.wrong(node, what, self.wanted)
        value = float(written)
        if self.whole:
            if value != int(value):
                return reader.wrong(node, what, self.wanted)
            value = int(value)
        if not self.low <= value <= self.high:
            reader.findings.append(
                faults.out_of_range(reader.place(node), what, written, f"{self.low:g} to {self.high:g}")
            )
            return MISSING
        return value

    def schema(self) -> dict[str, Any]:
        kind = "integer" if self.whole else "number"
        return {
            "anyOf": [
                {"type": kind, "minimum": self.low, "maximum": self.high},
                {"type": "string", "pattern": r"^[-+]?[0-9.]+$"},
            ]
        }


class Flag(Shape):
    """Yes or no."""

    wanted = "true or false"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        value = (
            {"true": True, "yes": True, "on": True, "false": False, "no": False, "off": False}.get(node.value.lower())
            if node.kind == "text"
            else None
        )
        return reader.wrong(node, what, self.wanted) if value is None else value

    def schema(self) -> dict[str, Any]:
        return {"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no", "on", "off", "true", "false"]}]}


class Seconds(Shape):
    """A length of time: 9:30, 570s, 9m30s, 570."""

    wanted = "a time such as 9:30, 45s or 9m30s"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        value = times.seconds(node.value) if node.kind == "text" else None
        if value is None:
            return reader.wrong(node, what, self.wanted)
        if value > 86400:
            reader.findings.append(faults.out_of_range(reader.place(node), what, node.value, "at most a day"))
            return MISSING
        return value

    def schema(self) -> dict[str, Any]:
        return {"type": ["string", "number"]}


class Length(Seconds):
    """A length of time or a share of the runtime, as an Extent."""

    wanted = "a time such as 45s, or a share such as 15%"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        found = re.fullmatch(r"(\d{1,3}(?:\.\d+)?)\s*%", node.value.strip()) if node.kind == "text" else None
        if found and float(found[1]) <= 100:
            return Extent(share=float(found[1]) / 100)
        value = super().read(node, reader, what)
        return value if value is MISSING else Extent(seconds=value)


class Share(Number):
    """A share of 0 to 1, also written as a percentage."""

    def __init__(self) -> None:
        super().__init__(0, 1)
        self.wanted = "a share of 0 to 1, or a percentage"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        found = re.fullmatch(r"(\d{1,3}(?:\.\d+)?)\s*%", node.value.strip()) if node.kind == "text" else None
        if found and float(found[1]) <= 100:
            return float(found[1]) / 100
        return super().read(node, reader, what)

    def schema(self) -> dict[str, Any]:
        return {"type": ["string", "number"]}


class Choice(Words):
    """One of some words; case does not matter."""

    def __init__(self, what: str, options: tuple[str, ...]) -> None:
        self.what, self.options = what, options
        self.wanted = "one of " + ", ".join(options)

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        for option in self.options:
            if option.lower() == value.lower().strip():
                return value.like(option)
        nearest = faults.near(value, self.options)
        reader.findings.append(
            faults.unknown_word(reader.place(node), self.what, value, nearest, ", ".join(self.options))
        )
        return MISSING

    def schema(self) -> dict[str, Any]:
        return {"enum": list(self.options)}


class Day(Words):
    """A date as YYYY-MM-DD, perhaps without day or month."""

    wanted = "a date such as 2026-03-02"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        value = super().read(node, reader, what)
        if value is MISSING or re.fullmatch(r"\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?", value):
            return value
        return reader.wrong(node, what, self.wanted)


class Listed(Shape):
    """A list; a single value stands for a list of one. Gives a tuple."""

    def __init__(self, member: Shape, least: int = 0, most: int = 100_000) -> None:
        self.member, self.least, self.most = member, least, most
        self.wanted = "a list" if least < 2 else f"a list of {least}"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        nodes = node.members() if node.kind == "list" else [node]
        if node.nothing or not self.least <= len(nodes) <= self.most:
            return reader.wrong(node, what, self.wanted)
        values = [self.member.read(member, reader, what) for member in nodes]
        kept = tuple(value for value in values if value is not MISSING)
        return kept if len(kept) >= self.least else MISSING

    def schema(self) -> dict[str, Any]:
        item = self.member.schema()
        listed: dict[str, Any] = {"type": "array", "items": item}
        if self.least:
            return {**listed, "minItems": self.least, "maxItems": self.most}
        return {"anyOf": [item, listed]}


class Mapped(Shape):
    """Keys of the author's choosing, each with a value of one shape. Gives a mapping in the order written."""

    wanted = "keys and values"

    def __init__(self, member: Shape, ids: bool = True) -> None:
        self.member, self.ids = member, ids

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        if node.kind != "mapping":
            return reader.wrong(node, what, self.wanted)
        values: dict[str, Any] = {}
        for key, child in own_pairs(node, reader):
            if self.ids and not ID.fullmatch(key.value):
                reader.findings.append(faults.bad_id(reader.place(key), key.value))
                continue
            name = key.text(reader.file)
            value = (
                self.member.read_named(name, key, child, reader)
                if isinstance(self.member, Record)
                else self.member.read(child, reader, name)
            )
            if value is not MISSING:
                values[name] = value
        return MappingProxyType(values)

    def schema(self) -> dict[str, Any]:
        made: dict[str, Any] = {"type": "object", "additionalProperties": self.member.schema()}
        if self.ids:
            made["propertyNames"] = {"pattern": f"^{ID.pattern}$"}
        return made


class Field:
    """One key of a record: its shape, whether it must be there, and a line that explains it."""

    __slots__ = ("about", "needed", "shape")

    def __init__(self, shape: Shape, about: str = "", needed: bool = False) -> None:
        self.shape, self.about, self.needed = shape, about, needed


class Record(Shape):
    """Fixed keys, read into a noun. `short` is the key that a bare value stands for, `named` the field that takes the key it stands under."""

    wanted = "keys and values"

    def __init__(self, noun: Callable[..., Any], fields: Mapping[str, Field], short: str = "", named: str = "") -> None:
        self.noun, self.fields, self.short, self.named = noun, fields, short, named

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        return self._read(node, reader, what, reader.place(node), {})

    def read_named(self, name: Text, key: Node, node: Node, reader: Reader) -> Any:
        """The noun of a node that stands under the author's own key `name`."""
        return self._read(node, reader, name, reader.place(key), {self.named: name} if self.named else {})

    def _read(self, node: Node, reader: Reader, what: str, place: Place, given: dict[str, Any]) -> Any:
        if node.kind != "mapping":
            return self._read_short(node, reader, what, place, given)
        keys: dict[str, Place] = {}
        values = dict(given)
        tried: set[str] = set()
        for key, child in own_pairs(node, reader):
            field = self.fields.get(key.value)
            if field is None:
                nearest = faults.near(key.value, self.fields)
                reader.findings.append(
                    faults.unknown_key(reader.place(key), key.value, nearest, ", ".join(self.fields))
                )
                continue
            if child.nothing and not field.needed:
                continue
            tried.add(key.value)
            keys[key.value] = reader.place(child)
            value = field.shape.read(child, reader, key.value)
            if value is not MISSING:
                values[key.value] = value
        for name, field in self.fields.items():
            if field.needed and name not in tried:
                reader.findings.append(faults.missing_value(place, name))
        return self.noun(at=Spot(place, keys), **values)

    def _read_short(self, node: Node, reader: Reader, what: str, place: Place, given: dict[str, Any]) -> Any:
        if node.nothing and not any(field.needed for field in self.fields.values()):
            return self.noun(at=Spot(place), **given)
        if not self.short or node.nothing:
            return reader.wrong(node, what, self.wanted)
        value = self.fields[self.short].shape.read(node, reader, what)
        if value is MISSING:
            return MISSING
        return self.noun(at=Spot(place, {self.short: reader.place(node)}), **{self.short: value}, **given)

    def schema(self) -> dict[str, Any]:
        properties = {}
        for name, field in self.fields.items():
            properties[name] = (
                {"description": field.about, **field.shape.schema()} if field.about else field.shape.schema()
            )
        made: dict[str, Any] = {"type": "object", "properties": properties, "additionalProperties": False}
        needed = [name for name, field in self.fields.items() if field.needed]
        if needed:
            made["required"] = needed
        if not needed:
            made = {**made, "type": ["object", "null"]}
        return {"anyOf": [self.fields[self.short].shape.schema(), made]} if self.short else made


def own_pairs(node: Node, reader: Reader) -> list[tuple[Node, Node]]:
    """Keys and values of a mapping without those whose key is no text or was there before; both are noted."""
    seen: dict[str, int] = {}
    kept = []
    for key, child in node.pairs():
        place = reader.place(key)
        if key.kind != "text":
            reader.wrong(key, "a key", "a text")
        elif key.value in seen:
            reader.findings.append(faults.key_twice(place, key.value, str(seen[key.value])))
        else:
            seen[key.value] = place.line
            kept.append((key, child))
    return kept
