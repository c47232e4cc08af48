"""The kinds of the reading room, as a set; what each finds is tested where it is found."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from scriptkit.places import Place
from scriptkit.reading import faults
from scriptkit.reading.faults.kinds import KINDS, fault, perhaps

ROOM = Path(faults.__file__).parents[1]
PLACE = Place("outline.yaml", 1, 1)


def test_every_kind_is_raised_somewhere_in_the_room_and_only_by_its_name() -> None:
    used = {
        node.attr.replace("_", "-")
        for path in (*ROOM.glob("*.py"), ROOM.parent / "build.py", ROOM.parent / "material.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "faults"
    }
    assert set(KINDS) <= used


@pytest.mark.parametrize("name", sorted(KINDS))
def test_what_a_fault_says_is_a_sentence_with_something_to_do(name: str) -> None:
    kind = KINDS[name]
    details = ["x"] * kind.maker.__code__.co_argcount
    finding = getattr(faults, name.replace("-", "_"))(PLACE, *details)
    assert (finding.name, finding.place, finding.severity) == (name, PLACE, kind.severity)
    assert re.fullmatch(r"[A-Z\"].*\.", finding.message)
    assert re.fullmatch(r"[A-Z].*[.?]", finding.help)
    assert "None" not in finding.message + finding.help


def test_the_name_of_a_kind_is_that_of_its_function() -> None:
    before = dict(KINDS)
    try:

        @fault("warning", "record")
        def made_for_this_test(word: str) -> tuple[str, str]:
            return f"It is {word}.", "Do."

        finding = made_for_this_test(PLACE, "so")
        assert finding[:6] == ("made-for-this-test", "warning", "record", PLACE, "It is so.", "Do.")
    finally:
        KINDS.clear()
        KINDS.update(before)


def test_perhaps_offers_the_near_name_or_something_else() -> None:
    assert (perhaps("title", "x"), perhaps("", "x")) == ('Did you mean "title"?', "x")
