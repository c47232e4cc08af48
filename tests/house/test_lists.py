"""Lists that two rooms need agree, since the rooms do not know each other."""

from __future__ import annotations

from scriptkit.model import KINDS
from scriptkit.rendering.rows import KIND_TITLES


def test_every_kind_of_segment_has_a_title_on_the_pages() -> None:
    assert set(KIND_TITLES) == set(KINDS)
