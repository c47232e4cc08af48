"""BibTeX to entries of an export, each field with its place; a broken entry is noted and the rest is read."""

from __future__ import annotations

import re

from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults
from scriptkit.reading.bibtex_fields import Fields, entry, inherit
from scriptkit.reading.exports import Export, is_too_long

_OPENING = re.compile(r"@[ \t]*([A-Za-z]+)\s*([{(])")
_NEXT_ENTRY = r"\n[ \t]*@[A-Za-z]+[ \t]*[{(]"  # no value goes on over the start of another entry
_NEXT = re.compile(_NEXT_ENTRY)
_BRACES = re.compile(r"[{}]|" + _NEXT_ENTRY)
_QUOTES = re.compile(r'[{}"]|' + _NEXT_ENTRY)
_KEY = re.compile(r"\s*((?:[^@,={}\"\n][^,={}\"\n]*)?)")
_FIELD = re.compile(r"([A-Za-z][\w:.+/-]*)\s*=\s*")
_WORD = re.compile(r"[\w:.+/-]+")
_SPACE = re.compile(r"[\s,]*")
_SWALLOWED = re.compile(r",\s*[A-Za-z]+\s*=\s*[{\"0-9]")  # inside a value: it is closed too late
_JOINED = re.compile(r"\s*#\s*")
_MONTHS = {name: name for name in "jan feb mar apr may jun jul aug sep oct nov dec".split()}
MOST_EXPANDED = 5_000_000  # characters that abbreviations of one file may stand for in all
_LEFT_OUT = {"comment", "preamble"}


class _Broken(Exception):  # noqa: N818 - it is caught three functions up, and nobody else sees it
    """An entry cannot be read further: at which offset, and why."""

    def __init__(self, at: int, why: str) -> None:
        super().__init__(why)
        self.at, self.why = at, why


def read(file: SourceFile) -> Export:
    """The entries of a file."""
    return _Bibliography(file).read()


class _Bibliography:
    def __init__(self, file: SourceFile) -> None:
        self.file, self.text = file, file.text
        self.export = Export([], [], whole=True)
        self.words = dict(_MONTHS)  # what stands for a longer text
        self.expanded = 0  # characters that such words stood for so far

    def read(self) -> Export:
        read: list[Fields] = []
        at = 0
        while found := _OPENING.search(self.text, at):
            if is_too_long(self.export, len(read), found.start(), self.file):
                self.export = self.export._replace(whole=False)
                break
            kind = found[1].lower()
            if kind in _LEFT_OUT:
                at = self._skip(found)
                continue
            fields = Fields(kind, found.start())
            at = self._read_entry(fields, found)
            if kind == "string":
                self.words.update({name: str(value) for name, value in fields.raw.items()})
            elif fields.raw or fields.key:
                read.append(fields)
        inherit(read)
        self.export.entries.extend(entry(fields) for fields in read)
        return self.export

    def _skip(self, found: re.Match[str]) -> int:
        """The offset behind a remark; where it is not closed, that of the next entry."""
        try:
            return self._closing(found.end() - 1) + 1
        except _Broken:
            following = _NEXT.search(self.text, found.end())
            return following.start() if following else len(self.text)

    def _read_entry(self, fields: Fields, found: re.Match[str]) -> int:
        """Read an entry as far as it goes; the offset behind it."""
        at = found.end()
        closing = "}" if found[2] == "{" else ")"
        try:
            if fields.kind != "string":
                at = self._read_key(fields, at)
            return self._read_fields(fields, at, closing)
        except _Broken as broken:
            behind = self._closed_too_late(fields, closing) if broken.at == fields.start else None
            if behind is not None:
                return behind
            self._note(broken.at, fields, broken.why)
            following = _NEXT.search(self.text, max(broken.at - 1, at - 1))
            if following is None:
                self.export = self.export._replace(whole=False)
            return following.start() if following else len(self.text)

    def _closed_too_late(self, fields: Fields, closing: str) -> int | None:
        """The offset behind an entry of which a value swallowed the fields behind it, once these are read as well."""
        for name, value in fields.raw.items():
            inside = _SWALLOWED.search(value)
            if inside and self.text.startswith(value, value.start):
                opened = value.start - 1
                fields.raw[name] = Text(value[: inside.start()], self.file, value.start, value.start + inside.start())
                try:
                    behind = self._read_fields(fields, value.start + inside.start(), closing)
                except _Broken:
                    return None
                self._note(opened, fields, "a brace or quote is opened here and not closed")
                return behind
        return None

    def _note(self, at: int, fields: Fields, why: str) -> None:
        """Note what is wrong with an entry."""
        name = str(fields.key or fields.kind)
        self.export.findings.append(faults.broken_entry(self.file.place(at), name, why))

    def _read_key(self, fields: Fields, at: int) -> int:
        found = _KEY.match(self.text, at)
        if found is None:
            return at
        behind = self.text[found.end() : found.end() + 1]
        if behind == "=":
            return at  # no key: the fields begin at once
        key = found[1].strip()
        if key:
            fields.key = Text(key, self.file, found.start(1), found.start(1) + len(key))
        return found.end()

    def _read_fields(self, fields: Fields, at: int, closing: str) -> int:
        missing = None
        while True:
            gap = _SPACE.match(self.text, at)
            start = gap.end() if gap else at
            if self.text.startswith(closing, start):
                at = start + 1
                break
            if fields.raw and "," not in self.text[at:start]:
                missing = missing or start
            found = _FIELD.match(self.text, start)
            if found is None:
                raise _Broken(*self._why_no_field(fields, start))
            value, at = self._value(found.end())
            fields.raw.setdefault(found[1].lower(), value)
        if missing is not None:
            self._note(missing, fields, "a comma is missing before this field")
        return at

    def _why_no_field(self, fields: Fields, at: int) -> tuple[int, str]:
        if at >= len(self.text):
            return fields.start, "the file ends before its last brace"
        if self.text[at] == "@":
            return fields.start, "it has no closing brace before the next entry begins"
        return at, "a field such as `title = {...}` was expected here"

    def _value(self, at: int) -> tuple[Text, int]:
        """A value and the offset behind it: texts in braces or quotes, numbers and words, joined by #."""
        start, words = at, ""
        while True:
            sign = self.text[at : at + 1]
            if sign in ("{", '"') and sign:
                end = self._closing(at)
                words += self.text[at + 1 : end]
                if start == at:
                    start += 1
                at = end + 1
            else:
                found = _WORD.match(self.text, at)
                if found is None:
                    raise _Broken(at, "a value is missing here")
                words += self._meant(found[0], at)
                at = found.end()
            joined = _JOINED.match(self.text, at)
            if joined is None:
                return Text(words, self.file, start, at), at
            at = joined.end()

    def _meant(self, word: str, at: int) -> str:
        """What a word or number stands for."""
        meant = self.words.get(word.lower(), word)
        self.expanded += len(meant)
        if self.expanded > MOST_EXPANDED:
            raise _Broken(at, "abbreviations stand for more text than any list of works holds")
        return meant

    def _closing(self, at: int) -> int:
        """The offset at which a brace or quote that is opened at `at` is closed."""
        quote = self.text[at] == '"'
        depth = 0
        for found in (_QUOTES if quote else _BRACES).finditer(self.text, at if not quote else at + 1):
            sign = found[0]
            if sign == "{":
                depth += 1
            elif sign == "}":
                depth -= 1
                if depth == 0 and not quote:
                    return found.start()
            elif sign == '"':
                if depth == 0:
                    return found.start()
            else:
                break
            if depth < 0:
                break
        raise _Broken(at, f"a {'quote' if quote else 'brace'} is opened here and not closed")
