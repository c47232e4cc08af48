"""Spoken text: Markdown to paragraphs and marks, each with its place. The only module that knows Markdown."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token

from scriptkit import codes
from scriptkit.findings import Finding
from scriptkit.model import Allow, SegmentText
from scriptkit.places import SourceFile
from scriptkit.reading import faults
from scriptkit.reading.nodes import allow_comment

_COMMENT = re.compile(r"<!--(.*?)-->", re.DOTALL)
_JINJA_OPEN = re.compile(r"\{[{%#]")
_JINJA_CLOSE = {
    "{{": re.compile(r"\"[^\"\n]*\"|'[^'\n]*'|\}\}"),
    "{%": re.compile(r"\"[^\"\n]*\"|'[^'\n]*'|%\}"),
    "{#": re.compile(r"#\}"),
}
_NOT_SPOKEN = {
    "fence": "code",
    "code_block": "code (a line indented by four spaces or more)",
    "html_block": "HTML",
    "code_inline": "code",
    "html_inline": "HTML",
}


def jinja_end(text: str, start: int) -> int:
    """The offset behind the Jinja tag that opens at `start`; -1 where none opens or it is not closed."""
    closing = _JINJA_CLOSE.get(text[start : start + 2])
    if not closing:
        return -1
    for found in closing.finditer(text, start + 2):
        if found[0][-1] in "}" and found[0][0] not in "\"'":
            return found.end()
    return -1


def bracket_end(text: str, start: int) -> int:
    """The offset behind the bracket that opens at `start`, brackets and Jinja tags inside it understood; -1 where it is not closed."""
    depth, at = 0, start
    for found in _BRACKET_PARTS.finditer(text, start):
        if found.start() < at or found[0][0] == "\\":
            continue
        if found[0] == "[":
            depth += 1
        elif found[0] == "]":
            depth -= 1
            if depth == 0:
                return found.end()
        else:
            at = max(at, jinja_end(text, found.start()))
    return -1


_BRACKET_PARTS = re.compile(r"\\.|\[|\]|\{[{%#]", re.DOTALL)


def _jinja_rule(state: StateInline, silent: bool) -> bool:
    """A Jinja tag is one piece, whatever it holds."""
    if state.src[state.pos] != "{" or state.env.get("open tag"):
        return False
    end = jinja_end(state.src, state.pos)
    if end < 0:
        if _JINJA_OPEN.match(state.src, state.pos):
            state.env["open tag"] = True  # nothing after it closes either: do not look again, it would take too long
        return False
    if not silent:
        token = state.push("jinja", "", 0)
        token.content, token.meta = state.src[state.pos : end], {"at": state.pos}
    state.pos = end
    return True


def _mark_rule(state: StateInline, silent: bool) -> bool:
    """A bracket that is no link is a mark."""
    if state.src[state.pos] != "[" or state.env.get("open bracket", state.pos + 1) <= state.pos:
        return False
    end = bracket_end(state.src, state.pos)
    if end < 0:
        state.env["open bracket"] = state.pos
        return False
    if not silent:
        token = state.push("mark", "", 0)
        token.content, token.meta = state.src[state.pos + 1 : end - 1], {"at": state.pos}
    state.pos = end
    return True


def _parser() -> MarkdownIt:
    md = MarkdownIt("commonmark").enable("table")
    # a line of dashes under a paragraph is a rule: as a heading it would make the words above it silent
    md.disable("lheading")
    md.inline.ruler.after("text", "jinja", _jinja_rule)
    md.inline.ruler.after("link", "mark", _mark_rule)
    return md


_PARSER: list[MarkdownIt] = []


def read(segment_id: str, origin: str, file: SourceFile, findings: list[Finding], allows: list[Allow]) -> SegmentText:
    """The text of a segment: paragraphs of speech and marks, with codes for their places; faults and allow-comments are added to the lists."""
    text = _clean(file, findings)
    comments = list(_COMMENT.finditer(text)) if "<!--" in text else []
    if comments:
        text = _COMMENT.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)
    if not _PARSER:
        _PARSER.append(_parser())
    tokens = _PARSER[0].parse(text)
    reading = _Reading(file, text, findings)
    reading.walk(tokens)
    allows.extend(_allows(file, comments, reading.lines, findings))
    return SegmentText(segment_id, origin, file, "".join(reading.parts), tuple(reading.lines))


def _clean(file: SourceFile, findings: list[Finding]) -> str:
    text = file.text
    found = codes.ANY.search(text)
    if found:
        findings.append(faults.unreadable_character(file.place(found.start()), found[0]))
        text = codes.ANY.sub(" ", text)
    return text


class _Reading:
    """What walking over the tokens of one text gathers."""

    def __init__(self, file: SourceFile, text: str, findings: list[Finding]) -> None:
        self.file, self.findings = file, findings
        self.source = SourceFile(file.name, text)
        self.raw_lines = text.split("\n")
        self.parts: list[str] = []
        self.lines: list[tuple[int, int]] = []
        self.flow = _Flow("", [])

    def walk(self, tokens: list[Token]) -> None:
        """Take the tokens of the whole text in order."""
        heading = False
        table = 0
        for token in tokens:
            if token.type in ("heading_open", "heading_close"):
                heading = token.type == "heading_open"
            elif token.type == "table_open":
                table += 1
                self._note(token, "a table")
            elif token.type == "table_close":
                table -= 1
            elif token.type in _NOT_SPOKEN:
                self._note(token, _NOT_SPOKEN[token.type])
            elif token.type == "inline" and not table:
                self._heading(token) if heading else self._paragraph(token)

    def _note(self, token: Token, what: str) -> None:
        line = token.map[0] if token.map else 0
        start = self.source.starts()[line]
        words = self.raw_lines[line]
        self.findings.append(
            faults.not_spoken(self.file.place(start + len(words) - len(words.lstrip())), what, words.strip())
        )

    def _offsets(self, token: Token) -> _Flow:
        """Where each line of an inline token's content stands in the file."""
        first = token.map[0] if token.map else 0
        starts = self.source.starts()
        flow: list[tuple[int, int]] = []
        at = 0
        for number, line in enumerate(token.content.split("\n")):
            raw = self.raw_lines[min(first + number, len(self.raw_lines) - 1)]
            column = max(0, len(raw.rstrip()) - len(line.rstrip()))
            flow.append((at, starts[min(first + number, len(starts) - 1)] + column))
            at += len(line) + 1
        return _Flow(token.content, flow)

    def _heading(self, token: Token) -> None:
        flow = self._offsets(token)
        for child in token.children or []:
            if child.type == "mark":
                self.findings.append(
                    faults.mark_out_of_place(self.file.place(flow.offset(child.meta["at"])), f"[{child.content}]")
                )

    def _paragraph(self, token: Token) -> None:
        self.flow = self._offsets(token)
        self.parts.append(codes.code(codes.PARAGRAPH, len(self.lines)))
        first = token.map[0] + 1 if token.map else 1
        self.lines.append((first, first + token.content.count("\n")))
        for offset, child in _placed(token.content, token.children or []):
            self._piece(offset, child)

    def _piece(self, offset: int, child: Token) -> None:
        at = self.flow.offset(offset)
        if child.type == "text":
            stripped = child.content
            if self.parts[-1].endswith(("-}}", "-%}", "-#}")):
                # the tag before takes the space away; a code in between would keep it
                stripped = stripped.lstrip()
                at += len(child.content) - len(stripped)
            if stripped:
                self.parts.append(codes.code(codes.AT, at) + stripped)
        elif child.type in ("softbreak", "hardbreak"):
            self.parts.append("\n")
        elif child.type == "jinja":
            self.parts.append(child.content)
        elif child.type == "mark":
            self.parts.append(codes.code(codes.MARK, at) + child.content + codes.CLOSE)
        elif child.type in _NOT_SPOKEN:
            self.findings.append(faults.not_spoken(self.file.place(at), _NOT_SPOKEN[child.type], child.content))


class _Flow:
    """Offsets in a paragraph's content to offsets in the file."""

    def __init__(self, content: str, lines: list[tuple[int, int]]) -> None:
        self.lines = lines
        self._at = 0

    def offset(self, offset: int) -> int:
        """The offset in the file; asked for in rising order."""
        if self._at and self.lines[self._at][0] > offset:
            self._at = 0
        while self._at + 1 < len(self.lines) and self.lines[self._at + 1][0] <= offset:
            self._at += 1
        start, there = self.lines[self._at]
        return there + offset - start


def _placed(content: str, children: list[Token]) -> Iterator[tuple[int, Token]]:
    """The inline tokens with the offset of each in the paragraph's content."""
    at = 0
    for child in children:
        if child.type in ("mark", "jinja"):
            at = int(child.meta["at"])
            yield at, child
            at += len(child.content) + (2 if child.type == "mark" else 0)
        elif child.type in ("softbreak", "hardbreak"):
            found = content.find("\n", at)
            at = found + 1 if found >= 0 else at
            yield at, child
        elif child.type == "link_close":
            target = content.find("](", at, at + 2)
            found = content.find(")" if target >= 0 else "]", at)
            at = found + 1 if found >= 0 else at
        elif child.type in ("text", "code_inline", "html_inline"):
            found = content.find(child.content, at, at + len(child.content) + 300)
            if found >= 0:
                yield found, child
                at = found + len(child.content)
            else:
                yield from _letter_by_letter(content, at, child)
                at = min(len(content), at + len(child.content))


def _letter_by_letter(content: str, at: int, child: Token) -> Iterator[tuple[int, Token]]:
    """A text with escapes or entities in it: the first word's place is exact, the rest follows."""
    first: Any = child.content[:1]
    found = content.find(first, at, at + 200) if first else at
    yield (found if found >= 0 else at), child


def _allows(
    file: SourceFile, comments: list[re.Match[str]], lines: list[tuple[int, int]], findings: list[Finding]
) -> list[Allow]:
    allows = []
    for comment in comments:
        wanted = re.match(r"\s*allow:(.*)", comment[1], re.DOTALL)
        if not wanted:
            continue
        place = file.place(comment.start())
        # lines are in order: the first paragraph that ends on or after the comment's line holds it or follows it
        covered = next((span for span in lines if span[1] >= place.line), (place.line, place.line))
        allow, fault = allow_comment(wanted[1], place, *covered)
        findings.extend([fault] if fault else [])
        allows.extend([allow] if allow else [])
    return allows
