"""YAML text to a tree of nodes that keep their places. The only module that knows YAML."""

from __future__ import annotations

import re
from bisect import bisect_right
from typing import Any

import yaml

from scriptkit.findings import Finding
from scriptkit.model import Allow
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults

MOST_VALUES = 200_000  # values in one file once its anchors are followed: some fifty times a long outline
MOST_DEPTH = 60

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_ALLOW = re.compile(r"(^|\s)#[ \t]*allow:[ \t]*([^\n]*)", re.MULTILINE)


class Node:
    """A YAML node with the offsets of its text. `kind` is mapping, list or text; `plain` is true for text without quotes."""

    __slots__ = ("end", "items", "kind", "plain", "start", "value")

    def __init__(self, kind: str, start: int, end: int) -> None:
        self.kind, self.start, self.end = kind, start, end
        self.plain = True
        self.value = ""
        self.items: list[tuple[Node, Node]] | list[Node] = []

    @property
    def nothing(self) -> bool:
        """Whether no value was given: an empty plain text or `~`."""
        return self.kind == "text" and self.plain and self.value in ("", "~")

    def pairs(self) -> list[tuple[Node, Node]]:
        """Key and value nodes of a mapping."""
        return self.items if self.kind == "mapping" else []  # type: ignore[return-value]

    def members(self) -> list[Node]:
        """The nodes of a list."""
        return self.items if self.kind == "list" else []  # type: ignore[return-value]

    def words_start(self) -> int:
        """The offset of the first word: behind the quote of quoted text."""
        return self.start if self.plain else self.start + 1

    def text(self, file: SourceFile) -> Text:
        """The text as written."""
        return Text(self.value, file, self.words_start(), self.end)


class Tree:
    """What was read from one file: its top node (None where there is none), findings, and allow-comments."""

    __slots__ = ("allows", "file", "findings", "top")

    def __init__(self, file: SourceFile) -> None:
        self.file = file
        self.top: Node | None = None
        self.findings: list[Finding] = []
        self.allows: list[Allow] = []


def read(file: SourceFile) -> Tree:
    """The tree of a file. A syntax error ends the reading of that file alone and is a finding in the tree."""
    tree = Tree(file)
    try:
        composed = _compose(file.text)
    except yaml.reader.ReaderError as error:
        offset = error.position if isinstance(error.position, int) else 0
        offset = min(_reader_offset(file.text, offset), len(file.text))
        tree.findings.append(faults.unreadable_character(file.place(offset), file.text[offset : offset + 1]))
        return tree
    except yaml.MarkedYAMLError as error:
        tree.findings.append(_syntax_fault(file, error))
        return tree
    except (RecursionError, MemoryError):
        tree.findings.append(faults.too_deep(file.place(0)))
        return tree
    if composed is None:
        return tree
    trouble = _measure(composed)
    if trouble:
        where = file.place(trouble[1].start_mark.index)
        tree.findings.append(faults.endless_anchor(where) if trouble[0] == "endless" else faults.too_deep(where))
        return tree
    tree.top = _convert(composed)
    tree.allows = _allows(file, composed, tree.findings)
    return tree


def _compose(text: str) -> Any:
    loader = _LOADER(text)
    try:
        return loader.get_single_node()
    finally:
        loader.dispose()


def _reader_offset(text: str, offset: int) -> int:
    """The offset of the first character YAML does not take, near what the library reports (it may count bytes)."""
    bad = re.search("[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]", text)
    return bad.start() if bad else offset


def _syntax_fault(file: SourceFile, error: yaml.MarkedYAMLError) -> Finding:
    mark = error.problem_mark or error.context_mark
    offset = min(mark.index, len(file.text)) if mark else 0
    place = file.place(offset)
    line = file.line(place.line)
    indent = line[: len(line) - len(line.lstrip())]
    if "\t" in indent:
        return faults.tab_indent(file.place(offset - place.column + 1 + indent.index("\t")))
    if "expected a single document" in str(error.context):
        return faults.second_document(place)
    return faults.yaml_syntax(place, error.problem or "it does not follow the rules of YAML", line.strip())


def _measure(top: Any) -> tuple[str, Any] | None:
    """What makes a tree unreadable: an anchor that contains itself or expands past all measure, or too deep nesting."""
    sizes: dict[int, int] = {}
    open_nodes: set[int] = set()
    stack: list[tuple[Any, bool]] = [(top, False)]
    depth = 0
    while stack:
        node, done = stack.pop()
        key = id(node)
        if done:
            open_nodes.discard(key)
            depth -= 1
            sizes[key] = 1 + sum(sizes.get(id(child), 1) for child in _children(node))
            if sizes[key] > MOST_VALUES:
                return "endless", node
            continue
        if key in open_nodes:
            return "endless", node
        if key in sizes:
            continue
        if isinstance(node, yaml.ScalarNode):
            sizes[key] = 1
            continue
        open_nodes.add(key)
        depth += 1
        if depth > MOST_DEPTH:
            return "deep", node
        stack.append((node, True))
        stack.extend((child, False) for child in _children(node))
    return None


def _children(node: Any) -> list[Any]:
    if isinstance(node, yaml.MappingNode):
        return [part for pair in node.value for part in pair]
    return node.value if isinstance(node, yaml.SequenceNode) else []


def _convert(node: Any) -> Node:
    start, end = node.start_mark.index, node.end_mark.index
    if isinstance(node, yaml.MappingNode):
        made = Node("mapping", start, end)
        made.items = [(_convert(key), _convert(value)) for key, value in node.value]
    elif isinstance(node, yaml.SequenceNode):
        made = Node("list", start, end)
        made.items = [_convert(member) for member in node.value]
    else:
        made = Node("text", start, end)
        made.value, made.plain = node.value, node.style not in ("'", '"')
    return made


def _scalar_spans(node: Any) -> list[tuple[int, int]]:
    spans: list[tuple[int, int]] = []
    seen: set[int] = set()
    stack = [node]
    while stack:
        node = stack.pop()
        if id(node) in seen:
            continue
        seen.add(id(node))
        if isinstance(node, yaml.ScalarNode):
            spans.append((node.start_mark.index, node.end_mark.index))
        stack.extend(_children(node))
    return sorted(spans)


def _allows(file: SourceFile, top: Any, findings: list[Finding]) -> list[Allow]:
    if "allow:" not in file.text:
        return []
    spans = _scalar_spans(top)
    starts = [start for start, _ in spans]
    allows: list[Allow] = []
    below = _next_lines_with_content(file.text)
    for found in _ALLOW.finditer(file.text):
        at = found.start() + len(found[1])
        span = bisect_right(starts, at) - 1
        if span >= 0 and at < spans[span][1]:
            continue
        place = file.place(at)
        alone = not file.line(place.line)[: place.column - 1].strip()
        covered = below[place.line - 1] if alone else place.line
        allow, fault = allow_comment(found[2], place, covered, covered)
        findings.extend([fault] if fault else [])
        allows.extend([allow] if allow else [])
    return allows


def _next_lines_with_content(text: str) -> list[int]:
    """For each line the number of the next line that is neither empty nor a comment."""
    lines = text.split("\n")
    below = [len(lines)] * len(lines)
    following = len(lines)
    for number in range(len(lines), 0, -1):
        below[number - 1] = following
        content = lines[number - 1].strip()
        if content and not content.startswith("#"):
            following = number
    return below


def allow_comment(text: str, place: Any, first: int, last: int) -> tuple[Allow | None, Finding | None]:
    """`NAME because REASON` as an Allow for those lines, or the finding that its name or reason is missing."""
    found = re.match(r"([A-Za-z0-9_-]+)(?:\s+because\b\s*(.*))?", text.strip(), re.DOTALL)
    reason = (found[2] or "").strip() if found else ""
    if not found or not re.search(r"\w", reason):
        return None, faults.allow_without_reason(place, text.strip())
    return Allow(found[1], reason, place, first, last), None
