"""Lines and sizes of what is published."""

from __future__ import annotations

from scriptkit.model import Chapter, Publication, Reference
from scriptkit.places import Place


def test_a_line_begins_with_its_time_or_number() -> None:
    assert Chapter(3723, "Bar hang", "Bar hang", Place("outline.yaml", 1, 1)).line == "1:02:03 Bar hang"
    assert Reference(12, "mora-2022", (), "Timed hangs.").line == "12. Timed hangs."


def test_the_size_is_in_bytes() -> None:
    assert Publication(description="a – b\n").size == 8
