"""Designs in authors' words, where each starts, and how many people stand on each side."""

from __future__ import annotations

import pytest

from scriptkit.computing.evidence.designs import design, has_no_comparison, people_in_a_group
from scriptkit.computing.evidence.lexicon import Lexicon
from scriptkit.model import Source
from scriptkit.reading import words

LEXICON = Lexicon(words.load())


@pytest.mark.parametrize(
    ("written", "kind", "level"),
    [
        ("randomised trial", "randomised", 2),
        ("Randomized controlled trial", "randomised", 2),
        ("RCT", "randomised", 2),
        ("cluster-randomised trial", "randomised", 2),
        ("crossover", "crossover", 2),
        ("cross-over study", "crossover", 2),
        ("systematic review", "review", 1),
        ("Systematic review and meta-analysis of randomised trials", "review", 1),
        ("meta-analyses of RCTs", "review", 1),
        ("systematic review of cohort studies", "observed-review", 3),
        ("non-randomised controlled trial", "controlled", 3),
        ("nonrandomized trial", "controlled", 3),
        ("controlled trial", "controlled", 3),
        ("prospective cohort", "cohort", 3),
        ("cross-sectional", "case-control", 4),
        ("pre-post", "before-after", 4),
        ("case series", "before-after", 4),
        ("laboratory", "laboratory", 4),
        ("survey", "survey", 4),
        ("narrative review", "overview", 5),
        ("expert opinion", "opinion", 5),
        ("maker's data sheet", "sheet", 5),
        ("experiment in mice", "animal", 5),
        ("textbook", "textbook", None),
        ("position stand", "standard", None),
        ("standard", "standard", None),
        ("vibes", "", None),
        ("", "", None),
    ],
)
def test_a_design_is_known_by_its_words(written: str, kind: str, level: int | None) -> None:
    found = design(Source(design=written), LEXICON)
    assert (found.kind, found.level) == (kind, level)


def test_animals_are_known_by_the_population_too() -> None:
    assert design(Source(design="randomised trial", population="40 rats"), LEXICON).kind == "animal"


def test_a_laboratory_that_compares_starts_higher() -> None:
    alone, compared = Source(design="laboratory"), Source(design="laboratory", comparison="crossover")
    assert design(compared, LEXICON).start == design(alone, LEXICON).start + 1


def test_what_it_compares_tells_a_design_that_is_not_given() -> None:
    assert design(Source(comparison="pre-post"), LEXICON).kind == "before-after"
    assert design(Source(comparison="within-person"), LEXICON).kind == ""


def test_one_group_from_before_to_after_compares_nothing() -> None:
    assert has_no_comparison(Source(comparison="pre-post"), "cohort")
    assert has_no_comparison(Source(), "before-after")
    assert not has_no_comparison(Source(comparison="between-group"), "cohort")


@pytest.mark.parametrize(
    ("source", "kind", "people"),
    [
        (Source(n=38), "randomised", 19),
        (Source(n=38, comparison="within-person"), "randomised", 38),
        (Source(n=38), "crossover", 38),
        (Source(n=45, n_per_group=15), "randomised", 15),
        (Source(n=38), "cohort", 38),
        (Source(), "randomised", None),
    ],
)
def test_how_many_people_stand_on_a_side(source: Source, kind: str, people: int | None) -> None:
    assert people_in_a_group(source, kind) == people


def test_a_randomised_crossover_has_everyone_on_both_sides() -> None:
    source = Source(design="randomised crossover", n=28)
    kind = design(source, LEXICON).kind
    assert (kind, people_in_a_group(source, kind)) == ("crossover", 28)
