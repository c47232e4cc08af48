"""YAML text to a tree of nodes that keep their places. The only module that knows YAML."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import yaml

from scriptkit.findings import Finding
from scriptkit.model import Allow
from scriptkit.places import NO_TEXT, SourceFile, Text
from scriptkit.reading import allowing, faults

MOST_REPEATED = 200_000  # values that aliases may repeat in one file: some fifty times a long outline
MOST_DEPTH = 60

# Events are taken one by one, and no tree of the library's own: it would follow nested brackets until Python gives up,
# and it works out types that no field asks for, at twice the time.
_PARSER: Any = vars(yaml.cyaml)["CParser"] if yaml.__with_libyaml__ else yaml.SafeLoader

# These end a line to the library, and to no editor: an author cannot see them.
_NO_LINE_ENDS = re.compile("[\x85\u2028\u2029]")

_PROBLEMS = {
    "mapping values are not allowed": "a colon with a space behind it stands where no key can be; a text that holds one"
    " needs quotes",
    "did not find expected key": "a key was expected here; perhaps the indent is off, or a quote stands inside a text",
    "cannot start any token": "a text that starts with this character needs quotes",
    "did not find expected alphabetic": "a text that starts with * or & needs quotes",
    "found unexpected end of stream": "a quote is opened here and not closed",
    "did not find expected ',' or ']'": "a list in square brackets is not closed, or has no comma here",
    "did not find expected ',' or '}'": "keys in curly brackets are not closed, or have no comma here",
    "did not find expected '-' indicator": "a dash was expected here, as before the other members of this list",
    "could not find expected ':'": "a colon was expected behind this key",
    "found unknown escape character": "a backslash in double quotes has a meaning of its own; write two, or use single"
    " quotes",
    "sequence entries are not allowed": "a dash that begins a member of a list stands where no list can be",
    "did not find expected <document start>": "the lines before this one are no keys and values",
}


class Node:
    """A YAML node with the offsets of its text. `kind` is mapping, list or text; `style` the sign that opens a text."""

    __slots__ = ("end", "items", "kind", "size", "start", "style", "value")

    def __init__(self, kind: str, start: int, end: int, value: str = "", style: str | None = None) -> None:
        self.kind, self.start, self.end, self.value, self.style = kind, start, end, value, style
        self.items: list[Node] = []  # members of a list; keys and values of a mapping in turn
        self.size = 1  # values in it, those that aliases repeat included

    @property
    def nothing(self) -> bool:
        """Whether no value was given: an empty plain text or `~`."""
        return self.kind == "text" and self.value in ("", "~") and self.style is None

    def pairs(self) -> list[tuple[Node, Node]]:
        """Key and value nodes of a mapping."""
        return list(zip(self.items[::2], self.items[1::2], strict=True)) if self.kind == "mapping" else []

    def members(self) -> list[Node]:
        """The nodes of a list."""
        return self.items if self.kind == "list" else []

    def words_start(self, file: SourceFile) -> int:
        """The offset of the first word: behind quotes, behind `|` or `>` and what stands in its line."""
        if self.style in ("|", ">"):
            first = re.compile(r"[^\n]*\s*").match(file.text, self.start, self.end)
            return first.end() if first and first.end() < self.end else self.start
        return self.start + 1 if self.style else self.start

    def text(self, file: SourceFile) -> Text:
        """The text as written."""
        return Text(self.value, file, self.words_start(file), self.end)


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
    builder = _Builder(file)
    trouble = builder.build(file.text)
    if trouble and "\t" in file.text:
        builder, trouble = _with_spaces(builder, trouble)
    tree.findings.extend(builder.findings)
    if trouble:
        tree.findings.append(trouble)
        return tree
    tree.top = builder.top
    for one in allowing.in_yaml(file, builder.texts):
        (tree.allows if isinstance(one, Allow) else tree.findings).append(one)  # type: ignore[arg-type]
    return tree


def _with_spaces(before: _Builder, trouble: Finding) -> tuple[_Builder, Finding | None]:
    """Read once more with each tab of an indent as a space. If that goes well, the tabs were all that was wrong."""
    file = before.file
    first = _first_tab(file, trouble)
    builder = _Builder(file)
    spaced = re.sub(r"^[ \t]+", lambda found: " " * len(found[0]), file.text, flags=re.MULTILINE)
    if spaced == file.text or builder.build(spaced):
        return before, first or trouble
    noted = [] if first is None else [first]
    number = 0
    for indent in re.finditer(r"^[ \t]++(?=[^\s#])", file.text, re.MULTILINE):
        while number < len(builder.texts) and builder.texts[number][1] < indent.end():
            number += 1
        in_text = number < len(builder.texts) and builder.texts[number][0] < indent.end()
        if "\t" in indent[0] and not in_text:
            noted.append(faults.tab_indent(file.place(indent.start() + indent[0].index("\t"))))
    harmless = (
        not file.line(trouble.place.line).partition("#")[0].strip()
    )  # a tab in an empty line, or before a comment
    builder.findings.extend(dict.fromkeys(noted or [trouble] * (not harmless)))
    return builder, None


def _first_tab(file: SourceFile, trouble: Finding) -> Finding | None:
    line = file.line(trouble.place.line)
    indent = line[: len(line) - len(line.lstrip())]
    if "\t" not in indent or not line.partition("#")[0].strip():
        return None
    return faults.tab_indent(trouble.place._replace(column=indent.index("\t") + 1))


class _Builder:
    """Builds the tree of one file from YAML's events."""

    def __init__(self, file: SourceFile) -> None:
        self.file = file
        self.top: Node | None = None
        self.texts: list[tuple[int, int]] = []  # spans of all texts, in order
        self.findings: list[Finding] = []
        self.anchors: dict[str, Node] = {}
        self.open: list[Node] = []
        self.documents = 0
        self.repeated = 0
        self.endless = False

    def build(self, text: str) -> Finding | None:
        """Take all events; the finding that ended the reading, if one did."""
        parser = None
        try:
            parser = _PARSER(text if text.isascii() else _NO_LINE_ENDS.sub("\xa0", text))
            return self._take(parser)
        except yaml.MarkedYAMLError as error:
            return _syntax_fault(self.file, error)
        except yaml.YAMLError:
            return faults.yaml_syntax(self.file.place(0), "it does not follow the rules of YAML", "")
        finally:
            if parser is not None:
                parser.dispose()

    def _take(self, parser: Any) -> Finding | None:
        take: dict[type, Callable[[Any], Finding | None]] = {
            yaml.DocumentStartEvent: self._document,
            yaml.ScalarEvent: self._scalar,
            yaml.AliasEvent: self._alias,
            yaml.MappingStartEvent: self._opened,
            yaml.MappingEndEvent: self._closed,
            yaml.SequenceStartEvent: self._opened,
            yaml.SequenceEndEvent: self._closed,
        }
        trouble = None
        while trouble is None and self.documents < 2:
            event = parser.get_event()
            if event.__class__ in take:
                trouble = take[event.__class__](event)
            elif event.__class__ is yaml.StreamEndEvent:
                break
        return trouble

    def _document(self, event: Any) -> None:
        self.documents += 1
        if self.documents > 1:
            self.findings.append(faults.second_document(self.file.place(event.start_mark.index)))

    def _scalar(self, event: Any) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        if event.anchor is not None or event.tag is not None:
            start = self._behind_properties(event)
        self.texts.append((start, end))
        value = event.value
        if event.style == '"' and NO_TEXT.search(value):
            value = NO_TEXT.sub(self._no_text, value)
        node = Node("text", start, end, value, event.style or None)
        self._keep(node, event.anchor)

    def _no_text(self, found: re.Match[str]) -> str:
        """What stands for an escape that gives no text."""
        self.findings.append(faults.unreadable_character(self.file.place(self.texts[-1][0]), found[0], ""))
        return " "

    def _opened(self, event: Any) -> Finding | None:
        start = event.start_mark.index
        if len(self.open) >= MOST_DEPTH:
            return faults.too_deep(self.file.place(start))
        if event.anchor is not None or event.tag is not None:
            start = self._behind_properties(event)
        kind = "mapping" if event.__class__ is yaml.MappingStartEvent else "list"
        node = Node(kind, start, event.end_mark.index)
        self._keep(node, event.anchor)
        self.open.append(node)
        return None

    def _closed(self, event: Any) -> None:
        node = self.open.pop()
        node.end = event.end_mark.index
        if self.open:
            self.open[-1].size += node.size

    def _keep(self, node: Node, anchor: str | None) -> None:
        """Put a node where it belongs."""
        if anchor is not None:
            self.anchors[anchor] = node
        if self.open:
            parent = self.open[-1]
            parent.items.append(node)
            if node.kind == "text":
                parent.size += node.size
        elif self.top is None:
            self.top = node

    def _behind_properties(self, event: Any) -> int:
        """The offset behind an anchor and a tag; a tag is noted."""
        at: int = event.start_mark.index
        end: int = event.end_mark.index
        pattern = re.compile(r"([&!][^\s,\[\]{}]*)(?:\s+|#[^\n]*\n)*")
        while found := pattern.match(self.file.text, at):
            if found[0][0] == "!":
                self.findings.append(faults.unknown_tag(self.file.place(at), found[1]))
            at = found.end()
        return min(at, end) if event.__class__ is yaml.ScalarEvent else at

    def _alias(self, event: Any) -> None:
        start, end = event.start_mark.index, event.end_mark.index
        node = self.anchors.get(event.anchor)
        nothing = Node("text", start, end)
        if node is None:
            problem = f'"*{event.anchor}" repeats a piece that is not there; a text that starts with * needs quotes'
            self.findings.append(faults.yaml_syntax(self.file.place(start), problem, ""))
        elif node in self.open or self.repeated + node.size > MOST_REPEATED:
            if not self.endless:
                self.findings.append(faults.endless_anchor(self.file.place(node.start), event.anchor))
            self.endless = True
            node = None
        else:
            self.repeated += node.size
        self._repeat(node or nothing)

    def _repeat(self, node: Node) -> None:
        if self.open:
            self.open[-1].items.append(node)
            self.open[-1].size += node.size


def _syntax_fault(file: SourceFile, error: yaml.MarkedYAMLError) -> Finding:
    problem = str(error.problem or "")
    broken, opened = error.problem_mark, error.context_mark
    at = 0 if broken is None else broken.index
    line = 0 if broken is None else broken.line
    begins_wrong = "end of stream" in problem or "expected alphabetic" in problem
    if opened is not None and (begins_wrong or ("',' or" in problem and opened.line < line)):
        at = opened.index  # the quote or bracket that was opened, the sign that needs quotes
    place = file.place(at)
    if "maximum nesting depth" in f"{problem} {error.context}":
        return faults.too_deep(place)
    told = next((words for start, words in _PROBLEMS.items() if start in problem), problem)
    return faults.yaml_syntax(place, told or "it does not follow the rules of YAML", file.line(place.line).strip())
