"""Heavy first, light in its rests, faults last; where nothing light is left before them, faults first."""

from __future__ import annotations

import pytest

from scriptkit.computing.shooting import arranging
from tests.computing.shooting.days import planned


@pytest.mark.parametrize(
    ("given", "wanted"),
    [
        ("", ""),
        ("lf", "lf"),
        ("fl", "lf"),
        ("fh", "fh"),
        ("hf", "fh"),
        ("lh", "hl"),
        ("hhl", "hlh"),
        ("llhh", "hlhl"),
        ("llllhh", "hlhlll"),
        ("fhl", "hlf"),
        ("fhhll", "hlhlf"),
    ],
)
def test_what_comes_after_what(given: str, wanted: str) -> None:
    assert "".join(arranging.arranged(given, lambda one: {"h": "heavy", "l": "light", "f": "fault"}[one])) == wanted


def test_shots_of_a_kind_keep_their_order() -> None:
    assert arranging.arranged([3, 1, 2], lambda _: "light") == [3, 1, 2]


@pytest.mark.parametrize(
    ("form", "heavy", "wanted"), [("fault", True, "fault"), ("correct", True, "heavy"), ("", False, "light")]
)
def test_the_kind_of_a_shot(form: str, heavy: bool, wanted: str) -> None:
    assert arranging.kind(planned(1, form=form, heavy=heavy)) == wanted


def test_the_kind_of_several_shots() -> None:
    heavy, fault, light = planned(1, heavy=True), planned(2, form="fault"), planned(3)
    assert arranging.kind_of_all([fault, heavy]) == "heavy"
    assert arranging.kind_of_all([fault, fault]) == "fault"
    assert arranging.kind_of_all([fault, light]) == "light"


@pytest.mark.parametrize(
    ("ours", "theirs", "shared"),
    [(["Ana"], ["ana "], True), (["Ana"], ["Ben"], False), (["Ana", "Ben"], ["Ben"], True), ([], ["Ben"], True)],
)
def test_who_shares_somebody(ours: list[str], theirs: list[str], shared: bool) -> None:
    one, other = planned(1, people=tuple(ours)), planned(2, people=tuple(theirs))
    assert arranging.share_somebody(one, other) is shared
