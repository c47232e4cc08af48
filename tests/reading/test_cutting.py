"""Entries and paragraphs are taken out whole, and every other byte stays."""

from __future__ import annotations

import pytest

from scriptkit.places import Place, SourceFile
from scriptkit.reading import cutting, nodes


def without_entries(order: str, *numbers: int) -> str | None:
    file = SourceFile("outline.yaml", f"title: One\n{order}pace: 150\n")
    top = nodes.read(file).top
    assert top is not None
    entries = next(value for key, value in top.pairs() if key.value == "order").members()
    spans = cutting.order_entries(file, [file.place(entries[number].start) for number in numbers])
    if spans is None:
        return None
    text = cutting.without(file.text.encode(), spans).decode()
    return text.removeprefix("title: One\n").removesuffix("pace: 150\n")


BLOCK = (
    "order:\n"
    "  - one  # first\n"
    "  # about two\n"
    "  - {segment: two, optional: 2}   # may go\n"
    "  - segment: three # as well\n"
    "    optional: 1\n"
    "\n"
    "  - four\n"
)


@pytest.mark.parametrize(
    ("order", "numbers", "left"),
    [
        (BLOCK, (1,), BLOCK.replace("  - {segment: two, optional: 2}   # may go\n", "")),
        (BLOCK, (2,), BLOCK.replace("  - segment: three # as well\n    optional: 1\n", "")),
        (BLOCK, (1, 2), "order:\n  - one  # first\n  # about two\n\n  - four\n"),
        ("order:\n-\n  segment: a\n  optional: 1\n- b\n", (0,), "order:\n- b\n"),
        ("order:\n  - # why\n    segment: a\n    # more\n    optional: 1 # now\n  - b\n", (0,), "order:\n  - b\n"),
        ("order:\n  - &x {segment: a, optional: 1}\n  - b\n", (0,), "order:\n  - b\n"),
        ("order:\n- a\n- segment: b\n  shots:\n  - of: |\n      one\n      two\n- c\n", (1,), "order:\n- a\n- c\n"),
        ("order:\n- a\n- {segment: b, kind: 'x: # y'} # z\n- c\n", (1,), "order:\n- a\n- c\n"),
        ("order: [a, {segment: b, optional: 1}, c]\n", (1,), "order: [a, c]\n"),
        ("order: [a, {segment: b, optional: 1}]\n", (1,), "order: [a]\n"),
        ("order: [{segment: b, optional: 1} , a]\n", (0,), "order: [a]\n"),
        ("order: [a,\n  {segment: b, optional: 1},\n  c]\n", (1,), "order: [a,\n  \n  c]\n"),
        ("order: [a, {segment: b, optional: 1}, {segment: c, optional: 1}, d]\n", (1, 2), "order: [a, d]\n"),
    ],
)  # fmt: skip
def test_an_entry_goes_with_its_lines_or_its_comma(order: str, numbers: tuple[int, ...], left: str) -> None:
    assert without_entries(order, *numbers) == left


def test_an_entry_that_is_not_there_is_told() -> None:
    file = SourceFile("outline.yaml", "title: One\norder: [a, b]\n")
    assert cutting.order_entries(file, [Place("outline.yaml", 1, 1)]) is None
    assert cutting.order_entries(SourceFile("outline.yaml", "title: One\n"), [Place("outline.yaml", 1, 1)]) is None
    assert cutting.order_entries(SourceFile("outline.yaml", "order: soon\n"), [Place("outline.yaml", 1, 8)]) is None


def test_bytes_around_a_span_stay_as_they_are() -> None:
    data = b"\xef\xbb\xbfone\r\ntwo \xc3\xa9\r\nthree\rfour\n"
    text = "one\ntwo é\nthree\nfour\n"
    assert cutting.without(data, [(text.index("two"), text.index("three"))]) == b"\xef\xbb\xbfone\r\nthree\rfour\n"
    assert cutting.without(data, [(0, 4)]) == b"\xef\xbb\xbftwo \xc3\xa9\r\nthree\rfour\n"
    assert cutting.without(data, []) == data
    assert cutting.without(b"abcdef", [(3, 5), (1, 4)]) == b"af"
