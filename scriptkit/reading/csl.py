"""CSL-JSON to entries of an export; names, dates and numbers in all the shapes that programs write."""

from __future__ import annotations

import re
from collections.abc import Mapping

from scriptkit.places import SourceFile, Text
from scriptkit.reading import json_nodes
from scriptkit.reading.exports import (
    MOST_ENTRIES,
    Author,
    Entry,
    Export,
    add_from_notes,
    day_in,
    is_preprint,
    is_too_long,
    person,
    year_in,
)
from scriptkit.reading.nodes import Node

_KINDS = {
    "article": "article", "article-journal": "article", "article-magazine": "article", "article-newspaper": "article",
    "paper-conference": "article", "journal-article": "article", "proceedings-article": "article",
    "posted-content": "article", "book": "book", "monograph": "book", "edited-book": "book", "chapter": "chapter",
    "book-chapter": "chapter", "entry-encyclopedia": "chapter", "webpage": "page", "post": "page",
    "post-weblog": "page", "report": "report", "standard": "standard", "thesis": "thesis", "dataset": "data",
}  # fmt: skip
# our names, and the keys that may hold them, best first
_KEYS = {
    "title": ("title",),
    "journal": ("container-title", "container-title-short", "journalAbbreviation"),
    "publisher": ("publisher", "institution"),
    "doi": ("DOI", "doi"),
    "pmid": ("PMID", "pmid"),
    "pmcid": ("PMCID", "pmcid"),
    "isbn": ("ISBN", "isbn"),
    "url": ("URL", "url"),
    "note": ("note", "annote"),
}
_MARKUP = re.compile(r"</?(?:i|b|sup|sub|sc|em|strong|span[^<>]{0,80}|scp|jats:[a-z]{1,20})>")


def items_of(top: Node | None) -> list[Node]:
    """The records of a file: a list, one record alone, or what stands under `items` or `message`."""
    if top is None or top.kind == "text":
        return []
    if top.kind == "list":
        return [one for member in top.items for one in (items_of(member) if _is_wrapped(member) else [member])]
    inner = _inner(top)
    return [top] if inner is None else items_of(inner)


def _is_wrapped(node: Node) -> bool:
    return node.kind == "mapping" and _inner(node) is not None


def _inner(node: Node) -> Node | None:
    """What a wrapper holds; None where the node is a record itself."""
    by_name = {key.value: value for key, value in node.pairs()}
    if "title" in by_name or "DOI" in by_name:
        return None
    held = next((by_name[name] for name in ("message", "items", "references") if name in by_name), None)
    return held if held is not None and held.kind != "text" else None


def read(file: SourceFile) -> Export:
    """The entries of a file."""
    tree = json_nodes.read(file)
    export = Export([], tree.findings, tree.whole)
    for node in items_of(tree.top):
        if len(export.entries) >= MOST_ENTRIES and is_too_long(export, len(export.entries), node.start, file):
            return export._replace(whole=False)
        if _is_record(node):
            export.entries.append(_Item(node, file).entry())
    return export


def _is_record(node: Node) -> bool:
    return any(key.value in ("id", "title", "DOI", "type") for key, _ in node.pairs())


class _Item:
    """One record, by key."""

    def __init__(self, node: Node, file: SourceFile) -> None:
        self.node, self.file = node, file
        self.by_name: Mapping[str, Node] = {key.value: value for key, value in reversed(node.pairs())}

    def entry(self) -> Entry:
        """The record as an entry."""
        values = {}
        for name, keys in _KEYS.items():
            text = self._text(*keys)
            if text is not None:
                values[name] = text
        self._add_dates(values)
        self._add_kind(values)
        add_from_notes(values)
        key = self._text("citation-key") or self._text("id")
        words = self._words(self.by_name.get("keyword")) or ""
        keywords = tuple(word for part in re.split(r"[,;]", words) if (word := part.strip()))
        return Entry(key, self.node.start, values, self._authors(), keywords)

    def _text(self, *names: str) -> Text | None:
        """The first of these keys that holds a text, or a list that begins with one."""
        for name in names:
            node = self.by_name.get(name)
            if node is not None and node.kind == "list" and node.items:
                node = node.items[0]
            words = self._words(node)
            if node is not None and words:
                start = node.words_start(self.file)
                return Text(words, self.file, start, max(start, node.end - bool(node.style)))
        return None

    def _words(self, node: Node | None) -> str:
        if node is None or node.kind != "text" or node.nothing:
            return ""
        words = node.value
        if "<" in words:
            words = _MARKUP.sub("", words)
        return words if "\n" in words else " ".join(words.split())

    def _add_dates(self, values: dict[str, Text]) -> None:
        for name in ("issued", "published", "published-print", "published-online", "original-date"):
            node = self.by_name.get(name)
            date = _date(node)
            year = year_in(date)
            if node is not None and year:
                values["year"] = Text(year, self.file, node.start, node.start)
                break
        node = self.by_name.get("accessed")
        day = day_in(_date(node))
        if node is not None and day:
            values["accessed"] = Text(day, self.file, node.start, node.start)

    def _add_kind(self, values: dict[str, Text]) -> None:
        kind = self._text("type")
        if kind is None:
            return
        if kind in _KINDS:
            values["kind"] = kind.like(_KINDS[kind])
        told = self._text("genre", "subtype") or ""
        bare_article = kind == "article" and "journal" not in values
        if kind == "posted-content" or bare_article or is_preprint(told):
            values["status"] = kind.like("preprint")

    def _authors(self) -> tuple[tuple[Author, Text], ...]:
        node = self.by_name.get("author") or self.by_name.get("editor")
        if node is None:
            return ()
        members = node.items if node.kind == "list" else [node]
        at = Text("", self.file, node.start, node.start)
        named = [_author(member) for member in members]
        return tuple((author, at) for author in named if author is not None)


def _author(node: Node) -> Author | None:
    if node.kind == "text":
        return person(node.value) if node.value.strip() else None
    parts = {key.value: " ".join(value.value.split()) for key, value in node.pairs() if value.kind == "text"}
    whole = parts.get("literal") or parts.get("name")
    if whole and not parts.get("family"):
        return Author(whole)
    particle = parts.get("non-dropping-particle", "")
    family = f"{particle} {parts.get('family', '')}".strip()
    given = person(f"x, {parts.get('given', '')}").initials
    return Author(family, given) if family else person(parts["given"]) if parts.get("given") else None


def _date(node: Node | None) -> str:
    """A date in words: of `date-parts`, `raw` or `literal`, of a text, or of a number."""
    if node is None:
        return ""
    if node.kind == "text":
        return node.value
    if node.kind == "list":
        first = node.items[0] if node.items else None
        if first is not None and first.kind == "list":
            return _date(first)
        return "-".join(one.value for one in node.items[:3] if one.kind == "text" and not one.nothing)
    parts = {key.value: value for key, value in node.pairs()}
    for name in ("date-parts", "date-time", "raw", "literal", "year"):
        told = _date(parts.get(name))
        if told:
            return told
    return ""
