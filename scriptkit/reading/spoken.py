"""Spoken text: Markdown to paragraphs and marks, each with its place. The only module that knows Markdown."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Callable, Iterator
from itertools import pairwise

from markdown_it import MarkdownIt, rules_inline
from markdown_it.rules_block import StateBlock, reference
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token

from scriptkit import codes
from scriptkit.findings import Finding
from scriptkit.model import Allow, SegmentText
from scriptkit.places import SourceFile
from scriptkit.reading import allowing, faults
from scriptkit.reading.comments import Left
from scriptkit.reading.pieces import Pieces

InlineRule = Callable[[StateInline, bool], bool]
BlockRule = Callable[[StateBlock, int, int, bool], bool]

_NOT_SPOKEN = {
    "fence": "code",
    "code_block": "code (a line indented by four spaces or more)",
    "html_block": "HTML",
    "code_inline": "code",
    "html_inline": "HTML",
}
_A_LINK = re.compile(r"[a-z][a-z0-9+.-]*:|/|#|\.", re.IGNORECASE)
_INLINE_RULES = {  # with the sign that each looks for
    "newline": ("\n", rules_inline.newline),
    "escape": ("\\", rules_inline.escape),
    "backticks": ("`", rules_inline.backtick),
    "link": ("[", rules_inline.link),
    "image": ("!", rules_inline.image),
    "autolink": ("<", rules_inline.autolink),
    "html_inline": ("<", rules_inline.html_inline),
    "entity": ("&", rules_inline.entity),
}


def _pieces(state: StateInline) -> Pieces:
    known: dict[str, Pieces] = state.env.setdefault("pieces", {})
    if state.src not in known:
        known[state.src] = Pieces(state.src)
    return known[state.src]


def _piece_rule(kind: str, opens: str) -> InlineRule:
    """A rule that makes one token of a Jinja tag, or of a bracket that is no link."""

    def rule(state: StateInline, silent: bool) -> bool:  # noqa: FBT001 - the library's signature
        start = state.pos
        if state.src[start] != opens:
            return False
        pieces = _pieces(state)
        end = (pieces.tags if kind == "jinja" else pieces.brackets).get(start, 0)
        if not start < end <= state.posMax:
            return False
        if not silent:
            token = state.push(kind, "", 0)
            token.content = state.src[start:end]
            token.meta["at"], token.meta["end"] = start, end
        state.pos = end
        return True

    return rule


def _lone_bracket(state: StateInline, silent: bool) -> bool:  # noqa: FBT001 - the library's signature
    """A bracket that nothing closes is text: without this the library looks for the end of a link at each one."""
    start = state.pos
    sign = state.src[start : start + 2]
    if sign[0] == "[":
        sign = "["
    if sign not in ("[", "![") or start + len(sign) - 1 in _pieces(state).brackets:
        return False
    if not silent:
        state.push("text", "", 0).content = sign
    state.pos += len(sign)
    return True


def _ending(opens: str, rule: InlineRule) -> InlineRule:
    """A rule of the library that also notes where what it made ends; asked only at the sign it looks for."""

    def noted(state: StateInline, silent: bool) -> bool:  # noqa: FBT001 - the library's signature
        if state.src[state.pos] != opens:
            return False
        tokens = len(state.tokens)
        made = rule(state, silent)
        if made and not silent and len(state.tokens) > tokens:
            state.tokens[-1].meta["end"] = state.pos
        return made

    return noted


def _only_links(rule: BlockRule) -> BlockRule:
    """Let `[opinion]: yes` be a mark and speech: only what looks like a link defines one."""

    def checked(state: StateBlock, first: int, last: int, silent: bool) -> bool:  # noqa: FBT001 - the library's signature
        known = len(state.env.get("references", ()))
        if not rule(state, first, last, silent):
            return False
        references = state.env.get("references", {})
        label, made = next(reversed(references.items())) if len(references) > known else ("", {"href": "#"})
        if _A_LINK.match(made["href"]):
            return True
        del references[label]
        state.line = first
        return False

    return checked


def _parser() -> MarkdownIt:
    md = MarkdownIt("commonmark").enable("table")
    # A line of dashes under a paragraph is a rule: as a heading it would make the words above it silent.
    # Escapes stay tokens of their own, so that what follows them keeps its place.
    md.disable(["lheading", "text_join"])
    for name, (opens, rule) in _INLINE_RULES.items():
        md.inline.ruler.at(name, _ending(opens, rule))
    md.block.ruler.at("reference", _only_links(reference))
    md.inline.ruler.after("text", "jinja", _piece_rule("jinja", "{"))
    md.inline.ruler.before("link", "bracket", _lone_bracket)
    md.inline.ruler.after("link", "mark", _piece_rule("mark", "["))
    return md


_PARSER: list[MarkdownIt] = []


def read(segment_id: str, origin: str, file: SourceFile, findings: list[Finding], allows: list[Allow]) -> SegmentText:
    """The text of a segment: paragraphs of speech and marks, with codes for their places.

    Faults and allow-comments are added to the lists.
    """
    if not _PARSER:
        _PARSER.append(_parser())
    left = Left(file.text)
    reading = _Reading(file, left, findings)
    reading.walk(_PARSER[0].parse(left.text))
    for one in reading.allows():
        (allows if isinstance(one, Allow) else findings).append(one)  # type: ignore[arg-type]
    return SegmentText(segment_id, origin, file, "".join(reading.parts), tuple(reading.paragraphs))


class _Reading:
    """What walking over the tokens of one text gathers."""

    def __init__(self, file: SourceFile, left: Left, findings: list[Finding]) -> None:
        self.file, self.left, self.findings = file, left, findings
        self.source = SourceFile(file.name, left.text)
        self.raw_lines = left.text.split("\n")
        self.parts: list[str] = []
        self.paragraphs: list[tuple[int, int]] = []  # first and last line in the file, from 1
        self.left_lines: list[tuple[int, int]] = []  # the same in the text without comments

    def walk(self, tokens: list[Token]) -> None:
        """Take the tokens of the whole text in order."""
        heading = table = False
        for token in tokens:
            if token.type in ("heading_open", "heading_close"):
                heading = token.type == "heading_open"
            elif token.type in ("table_open", "table_close"):
                table = token.type == "table_open"
                if table:
                    self._note(token, "a table")
            elif token.type in _NOT_SPOKEN:
                self._note(token, _NOT_SPOKEN[token.type])
            elif token.type == "inline" and not table:
                self._heading(token) if heading else self._paragraph(token)

    def allows(self) -> Iterator[Allow | Finding]:
        """The allow-comments. Each covers the paragraph it stands in, else the next one."""
        number = 0
        for comment in self.left.comments:
            wanted = re.match(r"\s*allow:(.*)", comment.words, re.DOTALL)
            if not wanted:
                continue
            line = self.source.place(comment.belongs).line
            while number < len(self.left_lines) and self.left_lines[number][1] < line:
                number += 1
            place = self.file.place(comment.start)
            covered = self.paragraphs[number] if number < len(self.paragraphs) else (place.line, place.line)
            yield allowing.read(wanted[1], place, *covered)

    def _note(self, token: Token, what: str) -> None:
        line = token.map[0] if token.map else 0
        words = self.raw_lines[line]
        at = self.source.starts()[line] + len(words) - len(words.lstrip())
        self.findings.append(faults.not_spoken(self.file.place(self.left.origin(at)), what, words.strip()))

    def _flow(self, token: Token) -> Callable[[int], int]:
        """From offsets in a token's content, asked for in rising order, to offsets in the text without comments."""
        first = token.map[0] if token.map else 0
        starts = self.source.starts()
        lines: list[tuple[int, int]] = []
        at = 0
        for number, line in enumerate(token.content.split("\n"), first):
            raw = self.raw_lines[min(number, len(self.raw_lines) - 1)]
            column = len(raw.rstrip()) - len(line.rstrip())
            if not raw.startswith(line, column):
                column = max(0, raw.find(line))
            lines.append((at, starts[min(number, len(starts) - 1)] + column))
            at += len(line) + 1
        current = 0

        def offset(wanted: int) -> int:
            nonlocal current
            while current + 1 < len(lines) and lines[current + 1][0] <= wanted:
                current += 1
            return lines[current][1] + wanted - lines[current][0]

        return offset

    def _heading(self, token: Token) -> None:
        flow = self._flow(token)
        for at, child in _placed(token.children or []):
            if child.type == "mark":
                place = self.file.place(self.left.origin(flow(at)))
                self.findings.append(faults.mark_out_of_place(place, child.content))

    def _paragraph(self, token: Token) -> None:
        flow = self._flow(token)
        self.parts.append(codes.code(codes.PARAGRAPH, len(self.paragraphs)))
        first = token.map[0] if token.map else 0
        last = first + token.content.count("\n")
        self.left_lines.append((first + 1, last + 1))
        starts = self.source.starts()
        ends = [
            self.left.origin(starts[first]),
            self.left.origin(starts[last] + len(self.raw_lines[last].rstrip()) - 1),
        ]
        self.paragraphs.append((self.file.place(ends[0]).line, self.file.place(ends[1]).line))
        for at, child in _placed(token.children or []):
            self._piece(flow(at), child)

    def _piece(self, at: int, child: Token) -> None:
        """Add one inline token that stands at offset `at` of the text without comments."""
        if child.type in ("text", "text_special"):
            self._words(at, child.content)
        elif child.type in ("softbreak", "hardbreak"):
            self.parts.append("\n")
        elif child.type == "jinja":
            self.parts.append(child.content)
        elif child.type == "mark":
            self.parts.append(codes.code(codes.MARK, self.left.origin(at)) + child.content[1:-1] + codes.CLOSE)
        elif child.type in _NOT_SPOKEN:
            place = self.file.place(self.left.origin(at))
            self.findings.append(faults.not_spoken(place, _NOT_SPOKEN[child.type], child.content))

    def _words(self, at: int, words: str) -> None:
        """Add words; where a comment was taken out of them, what follows it gets a place of its own."""
        if self.parts[-1].endswith(("-}}", "-%}", "-#}")):
            # the tag before takes the space away; a code in between would keep it
            at += len(words) - len(words.lstrip())
            words = words.lstrip()
        cuts = self.left.cuts
        first, last = bisect_right(cuts, at), bisect_right(cuts, at + len(words) - 1)
        edges = [at, *cuts[first:last], at + len(words)]
        for start, end in pairwise(edges):
            if end > start:
                self.parts.append(codes.code(codes.AT, self.left.origin(start)) + words[start - at : end - at])


def _placed(children: list[Token]) -> Iterator[tuple[int, Token]]:
    """The inline tokens with the offset of each in the paragraph's content."""
    at = 0
    for child in children:
        at = child.meta.get("at", at)
        yield at, child
        if "end" in child.meta:
            at = child.meta["end"]
        elif child.type == "text":
            at += len(child.content)
        elif child.type == "link_open":
            at += 1
        else:
            at += len(child.markup)  # of emphasis
