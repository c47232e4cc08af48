"""Shapes of lists and keys: one description reads YAML nodes into nouns, notes faults, and gives the JSON Schema."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from types import MappingProxyType
from typing import Any

from scriptkit.findings import Finding
from scriptkit.model import Spot
from scriptkit.places import Place, SourceFile, Text
from scriptkit.reading import faults
from scriptkit.reading.nodes import Node

MISSING: Any = object()
ID = re.compile(r"[A-Za-z0-9_-]{1,64}")
KIND_NAMES = {"mapping": "keys and values", "list": "a list", "text": "a text"}
MOST_NEAR = 200  # near names looked for in one file: more unknown keys than these are no slips of the finger


class Reader:
    """What reading one file needs: its text, and where findings go."""

    __slots__ = ("_looked", "file", "findings")

    def __init__(self, file: SourceFile, findings: list[Finding]) -> None:
        self.file = file
        self.findings = findings
        self._looked = 0

    def place(self, node: Node) -> Place:
        """Where the first word of a node stands."""
        return self.file.place(node.words_start(self.file) if node.kind == "text" else node.start)

    def near(self, word: str, known: Iterable[str]) -> str:
        """The known word nearest to `word`, or nothing."""
        self._looked += 1
        return faults.near(word, known) if self._looked <= MOST_NEAR else ""

    def wrong(self, node: Node, what: str, wanted: str, holder: Place | None = None) -> Any:
        """Note that a node is of the wrong kind; where it is nothing, at its holder if that is given."""
        given = KIND_NAMES[node.kind]
        if node.nothing:
            given = "nothing"
        elif node.kind == "text":
            given = faults.quoted(node.value)
        place = holder if node.nothing and holder else self.place(node)
        self.findings.append(faults.wrong_type(place, what, wanted, given))
        return MISSING


class Shape:
    """A kind of value."""

    wanted = "a value"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The value of a node that stands under the key `what`, or MISSING; what is wrong with it is noted."""
        raise NotImplementedError

    def schema(self) -> dict[str, Any]:
        """The JSON Schema of what may be written."""
        raise NotImplementedError


class Listed(Shape):
    """A list; a single value stands for a list of one. Gives a tuple."""

    def __init__(self, member: Shape, count: int = 0) -> None:
        self.member, self.count = member, count
        self.wanted = f"a list of {count}" if count else "a list"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """A tuple of the members that can be read."""
        nodes = node.members() if node.kind == "list" else [node]
        if node.nothing or (self.count and len(nodes) != self.count):
            return reader.wrong(node, what, self.wanted)
        values = [self.member.read(member, reader, what) for member in nodes]
        kept = tuple(value for value in values if value is not MISSING)
        return kept if len(kept) >= self.count else MISSING

    def schema(self) -> dict[str, Any]:
        """An array, or a single member."""
        item = self.member.schema()
        listed: dict[str, Any] = {"type": "array", "items": item}
        if self.count:
            return {**listed, "minItems": self.count, "maxItems": self.count}
        return {"anyOf": [item, listed]}


class Mapped(Shape):
    """Keys of the author's choosing, each with a value of one shape. Gives a mapping in the order written."""

    wanted = "keys and values"

    def __init__(self, member: Shape, *, ids: bool = True) -> None:
        self.member, self.ids = member, ids

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """A mapping of the keys and values that can be read."""
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
        """An object with values of one schema."""
        made: dict[str, Any] = {"type": "object", "additionalProperties": self.member.schema()}
        if self.ids:
            made["propertyNames"] = {"pattern": f"^{ID.pattern}$"}
        return made


class Field:
    """One key of a record: its shape, a line that explains it, and whether it must be there."""

    __slots__ = ("about", "needed", "shape")

    def __init__(self, shape: Shape, about: str = "", *, needed: bool = False) -> None:
        self.shape, self.about, self.needed = shape, about, needed


class Record(Shape):
    """Fixed keys, read into a noun.

    `short` is the key that a bare value stands for, `named` the field that takes the key the record stands under.
    """

    wanted = "keys and values"

    def __init__(self, noun: Callable[..., Any], fields: Mapping[str, Field], short: str = "", named: str = "") -> None:
        self.noun, self.fields, self.short, self.named = noun, fields, short, named

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The noun."""
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
                nearest = reader.near(key.value, self.fields)
                known = ", ".join(self.fields)
                reader.findings.append(faults.unknown_key(reader.place(key), key.value, nearest, known))
                continue
            tried.add(key.value)
            if child.nothing:
                if field.needed:
                    reader.findings.append(faults.missing_value(reader.place(key), key.value))
                continue
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
            return reader.wrong(node, what, self.wanted, place)
        value = self.fields[self.short].shape.read(node, reader, what)
        if value is MISSING:
            return MISSING
        return self.noun(at=Spot(place, {self.short: reader.place(node)}), **{self.short: value}, **given)

    def schema(self) -> dict[str, Any]:
        """An object with these keys and no others, or the bare value."""
        properties = {}
        for name, field in self.fields.items():
            about = {"description": field.about} if field.about else {}
            properties[name] = {**about, **field.shape.schema()}
        made: dict[str, Any] = {"type": "object", "properties": properties, "additionalProperties": False}
        needed = [name for name, field in self.fields.items() if field.needed]
        made = {**made, "required": needed} if needed else {**made, "type": ["object", "null"]}
        return {"anyOf": [self.fields[self.short].shape.schema(), made]} if self.short else made


def own_pairs(node: Node, reader: Reader) -> list[tuple[Node, Node]]:
    """Keys and values of a mapping without those whose key is no text or was there before; both are noted."""
    seen: dict[str, int] = {}
    kept: list[tuple[Node, Node]] = []
    for key, child in node.pairs():
        if kept and _goes_on(node, kept[-1][1], key, child, reader.file):
            before, text = kept[-1]
            reader.findings.append(faults.comma_in_brackets(reader.place(key), text.value, key.value))
            kept[-1] = before, Node("text", text.start, key.end, f"{text.value}, {key.value}")
            continue
        if key.kind != "text" or key.nothing:
            reader.wrong(key, "key", "a text")
        elif key.value in seen:
            line = reader.file.place(seen[key.value]).line
            reader.findings.append(faults.key_twice(reader.place(key), key.value, str(line)))
        else:
            seen[key.value] = key.start
            kept.append((key, child))
    return kept


def _goes_on(node: Node, text: Node, key: Node, child: Node, file: SourceFile) -> bool:
    """Whether a key in curly brackets is the rest of the text before it: several words without quotes and colon."""
    return (
        file.text.startswith("{", node.start)
        and child.nothing
        and key.kind == text.kind == "text"
        and key.style is text.style is None
        and " " in key.value
        and not text.nothing
        and text.end <= key.start  # an alias stands elsewhere
        and ":" not in file.text[key.end : child.end]
    )
