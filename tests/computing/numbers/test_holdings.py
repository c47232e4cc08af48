"""What the register holds for a link: the numbers written there, and what people make of them."""

from __future__ import annotations

from scriptkit.computing.numbers.holdings import Holdings, Together, described, label_stems
from scriptkit.computing.numbers.quantities import vocabulary
from scriptkit.model import Source, StudyFinding
from scriptkit.reading.words import load

KNOWN = vocabulary(load())
SOURCE = Source(
    id="hang",
    title="Six weeks of hangs on a 20 mm edge",
    year="2022",
    population="climbers, 30 to 55",
    comparison="between-group",
    n=38,
    duration_weeks=6,
    findings={
        "hang": StudyFinding(id="hang", values={"before": "40 s", "after": "50 s"}, effect=0.4, ci=(-0.1, 0.9)),
        "grip": StudyFinding(id="grip", result="plus 3 kg", baseline="30 kg"),
    },
)


def amounts(held: object, family: str) -> set[float]:
    return {round(one.amount, 2) for one in held if one.family == family}  # type: ignore[attr-defined]


def test_the_fields_for_numbers_come_first() -> None:
    core = Holdings(SOURCE, "hang", KNOWN).core
    assert amounts(core, "people") == {38}
    assert amounts(core, "long") == {42}
    assert amounts(core, "short") == {40, 50}
    assert amounts(core, "year") == {2022}
    assert amounts(core, "") == {0.4, 0.1, 0.9}


def test_other_texts_are_read_too() -> None:
    assert amounts(Holdings(SOURCE, "hang", KNOWN).texts, "length") == {20}


def test_what_people_make_of_two_values() -> None:
    derived = Holdings(SOURCE, "hang", KNOWN).derived
    assert amounts(derived, "short") == {10}
    assert amounts(derived, "change") == {25, 20}
    assert amounts(derived, "ratio") == {1.25, 0.8}
    assert amounts(derived, "people") == {19}


def test_a_change_on_top_of_a_baseline() -> None:
    derived = Holdings(SOURCE, "grip", KNOWN).derived
    assert 33000 in amounts(derived, "mass")
    assert 10 in amounts(derived, "percent")


def test_a_named_finding_leaves_the_others_elsewhere() -> None:
    assert amounts(Holdings(SOURCE, "hang", KNOWN).elsewhere, "mass") == {3000, 30000}
    assert Holdings(SOURCE, "", KNOWN).elsewhere == ()


def test_several_sources_have_their_people_together() -> None:
    one = Holdings(SOURCE, "", KNOWN)
    assert amounts(Together([one, one]).derived, "people") == {76}


def test_words_for_people_and_labels() -> None:
    assert described(SOURCE) == {"climbers"}
    assert label_stems(("ledges", "of")) == {"ledge"}
