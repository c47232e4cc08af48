"""JSON text to the same tree of nodes as YAML's; behind a fault the reading goes on with the next entry."""

from __future__ import annotations

import json
import re

from scriptkit.findings import Finding
from scriptkit.places import NO_TEXT, SourceFile
from scriptkit.reading import faults
from scriptkit.reading.nodes import MOST_DEPTH, Node

_TOKEN = re.compile(
    r'[ \t\n]*(?:"([^"\\\n]*(?:\\.[^"\\\n]*){0,100000})"|([{}\[\]:,])|(-?[0-9][0-9.eE+-]*|true|false|null)(?![\w.]))'
)
_NEXT_ENTRY = re.compile(r"\}\s*,\s*(?=\{)")
MOST_VALUES, MOST_FAULTS = 1_000_000, 2_000  # of one file; who has more has another kind of file
_UNKNOWN = "a text in quotes, a number or a bracket was expected here"
_CLOSES = {"}": "mapping", "]": "list"}


class JsonTree:
    """What was read of a JSON file. `whole` is false where a part of it was lost."""

    __slots__ = ("findings", "top", "whole")

    def __init__(self) -> None:
        self.top: Node | None = None
        self.findings: list[Finding] = []
        self.whole = True


def read(file: SourceFile) -> JsonTree:
    """The tree of a file, with a finding for each fault."""
    builder = _Builder(file)
    at: int | None = 0
    while at is not None:
        at = builder.build(at)
    return builder.tree


class _Builder:
    """Builds the tree of one file. `_wants`: a value, a key, a colon, or a comma."""

    def __init__(self, file: SourceFile) -> None:
        self.file = file
        self.tree = JsonTree()
        self._open: list[Node] = []
        self._wants = "value"
        self._values = 0

    def build(self, at: int) -> int | None:
        """Take tokens from an offset on; where to go on behind a fault, None at the end."""
        match, text = _TOKEN.match, self.file.text
        while found := match(text, at):
            if self._is_too_long(at):
                return None
            is_over = not self._open and self.tree.top is not None
            fault = "there is more behind the end" if is_over else self._take(found)
            if fault:
                return self._recover(found.start(found.lastindex or 0), fault)
            at = found.end()
        rest = re.compile(r"\s*").match(text, at)
        at = rest.end() if rest else at
        if at < len(text):
            return self._recover(at, _UNKNOWN if text[at] != '"' else "a quote is opened here and not closed")
        if self._open:
            self._fault(self._open[-1].start, "the file ends before the bracket that is opened here is closed")
            self._drop_key()
            self.tree.whole = False
        return None

    def _is_too_long(self, at: int) -> bool:
        """Whether there are more values or faults than are read; if so that is noted, and the reading stops."""
        if self._values <= MOST_VALUES and len(self.tree.findings) < MOST_FAULTS:
            return False
        what, most = ("values", MOST_VALUES) if self._values > MOST_VALUES else ("faults", MOST_FAULTS)
        self.tree.findings.append(faults.file_too_large(self.file.place(at), f"more than {most:,} {what}", f"{most:,}"))
        self._drop_key()
        self.tree.whole = False
        return True

    def _take(self, found: re.Match[str]) -> str:
        """Take one token; what is wrong with it, or nothing."""
        words, sign, plain = found.groups()
        if sign in ("{", "["):
            return self._opened(sign, found.start(2))
        if sign in ("}", "]"):
            return self._closed(sign, found.end())
        if sign is not None:
            return self._separated(sign)
        if self._wants == "comma" and self._open:
            self._fault(found.start(found.lastindex or 0) - (words is not None), "a comma is missing before this")
            self._wants = "key" if self._open[-1].kind == "mapping" else "value"
        if self._wants == "colon":
            return "a colon is missing before this"
        if plain is not None and self._wants.endswith("key"):
            return "a key in quotes was expected here"
        if plain is not None:
            value = "" if plain == "null" else plain
            self._keep(Node("text", found.start(3), found.end(), value))
        else:
            if "\\" in words:
                words = _unescaped(words)
            self._keep(Node("text", found.start(1) - 1, found.end(), words, '"'))
        return ""

    def _opened(self, sign: str, start: int) -> str:
        if self._wants == "comma":
            self._fault(start, "a comma is missing before this")
            self._wants = "member" if self._open[-1].kind == "list" else self._wants
        if self._wants not in ("value", "member"):
            return "no bracket can be opened here"
        if len(self._open) >= MOST_DEPTH:
            return "brackets are nested deeper than any record's"
        node = Node("mapping" if sign == "{" else "list", start, start)
        self._keep(node)
        self._open.append(node)
        self._wants = "first key" if sign == "{" else "member"
        return ""

    def _closed(self, sign: str, end: int) -> str:
        if not self._open or self._open[-1].kind != _CLOSES[sign]:
            return "this bracket closes nothing"
        if self._wants == "key" or (self._wants == "value" and sign == "]"):
            self._fault(end - 1, "a comma stands before this bracket, and nothing behind it")
        elif self._wants in ("value", "colon"):
            return "a value is missing before this bracket"
        self._open.pop().end = end
        self._wants = "comma"
        return ""

    def _separated(self, sign: str) -> str:
        if (sign == ":") != (self._wants == "colon") or self._wants not in ("colon", "comma"):
            return f"this {'colon' if sign == ':' else 'comma'} is one too many"
        self._wants = "value" if sign == ":" or self._open[-1].kind == "list" else "key"
        return ""

    def _keep(self, node: Node) -> None:
        """Put a node where it belongs."""
        self._values += 1
        if not self._open:
            self.tree.top = node
            self._wants = "comma"
            return
        self._open[-1].items.append(node)
        self._wants = "colon" if self._wants.endswith("key") else "comma"

    def _recover(self, at: int, fault: str) -> int | None:
        """Note a fault; where the next entry of the outermost list starts, None where there is none."""
        self._fault(at, fault)
        self.tree.whole = False
        lists = [number for number, node in enumerate(self._open) if node.kind == "list"]
        found = _NEXT_ENTRY.search(self.file.text, at) if lists else None
        if found is None:
            self._drop_key()
            return None
        while len(self._open) > lists[0] + 1:
            self._drop_key()
            self._open.pop().end = at
        self._wants = "value"
        return found.end()

    def _drop_key(self) -> None:
        """Take a key away that has no value."""
        for node in self._open:
            if node.kind == "mapping" and len(node.items) % 2:
                node.items.pop()

    def _fault(self, at: int, fault: str) -> None:
        self.tree.findings.append(faults.json_syntax(self.file.place(at), fault))


def _unescaped(words: str) -> str:
    """A text without its escapes; halves of characters and control signs become spaces."""
    try:
        return NO_TEXT.sub(" ", str(json.loads(f'"{words}"', strict=False)))
    except ValueError:
        return words


def plain(node: Node) -> object:
    """A node as Python's own lists, mappings and texts; a number is a text, and nothing is None."""
    if node.kind == "list":
        return [plain(one) for one in node.items]
    if node.kind == "mapping":
        return {key.value: plain(value) for key, value in reversed(node.pairs())}
    return None if node.nothing else node.value
