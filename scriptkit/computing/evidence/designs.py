"""What the design of a study is in the words of its author, and where it starts on the scales of evidence."""

from __future__ import annotations

from typing import NamedTuple

from scriptkit.computing.evidence.lexicon import Lexicon
from scriptkit.model import Source

VERY_LOW, LOW, MODERATE, HIGH = 1, 2, 3, 4
COMPARED = frozenset(("within-person", "crossover", "between-group"))
WITHIN = frozenset(("within-person", "crossover"))
NO_EFFECTS = frozenset(("textbook", "anatomy", "standard"))  # they say what is known or agreed, and test nothing


class Design(NamedTuple):
    """A design: its kind ("" unknown), its OCEBM 2011 level, its start in GRADE (0: none), and that in words."""

    kind: str
    level: int | None
    start: int
    told: str


DESIGNS = {
    one.kind: one
    for one in (
        Design("animal", 5, VERY_LOW, "animals or cells: starts very low"),
        Design("review", 1, HIGH, "a systematic review of trials: starts high"),
        Design("observed-review", 3, LOW, "a systematic review of studies without randomisation: starts low"),
        Design("randomised", 2, HIGH, "randomised: starts high"),
        Design("crossover", 2, HIGH, "a crossover, everyone did both: starts high"),
        Design("controlled", 3, LOW, "a comparison that was not randomised: starts low"),
        Design("laboratory", 4, LOW, "measured in a laboratory, nothing compared: starts low"),
        Design("cohort", 3, LOW, "observed and not randomised: starts low"),
        Design("case-control", 4, LOW, "looked at once or backwards: starts low"),
        Design("before-after", 4, LOW, "observed before and after: starts low"),
        Design("survey", 4, LOW, "people were asked or counted: starts low"),
        Design("overview", 5, LOW, "a review that was not systematic: starts low"),
        Design("opinion", 5, VERY_LOW, "an opinion and no study: starts very low"),
        Design("sheet", 5, VERY_LOW, "the maker's own word: starts very low"),
        Design("anatomy", None, 0, "anatomy says what is there and not what training does"),
        Design("textbook", None, 0, "a textbook sums up; weigh the studies that it names"),
        Design("standard", None, 0, "a standard or guideline is agreed on; weigh the studies that it names"),
    )
}
RANKS = tuple(DESIGNS)
NO_RANDOM = frozenset(("cohort", "case-control", "survey", "before-after"))
COMPARED_LABORATORY = Design(
    "laboratory", 3, MODERATE, "a laboratory comparison whose order is not said to be random: starts moderate"
)
UNKNOWN = Design("", None, 0, "the register does not say what design it is")


def design(source: Source, lexicon: Lexicon) -> Design:
    """The design of a source, from the words of its `design`, else from how it compares and whom."""
    found = lexicon.look(f"{source.design}; {source.population}")
    kinds = {one.kind for one in found.get("designs", ()) if one.end <= len(source.design)}
    if any(one.kind == "animals" for one in found.get("people-kinds", ())):
        kinds.add("animal")
    if not source.design and source.comparison in ("crossover", "pre-post"):
        kinds.add("crossover" if source.comparison == "crossover" else "before-after")
    if "review" in kinds:
        kinds = (kinds & {"animal"}) | {_of_what(kinds)}
    elif {"survey", "anatomy"} & kinds and "laboratory" in kinds:
        kinds -= {"survey"}
    if {"randomised", "crossover"} <= kinds:
        kinds -= {"randomised"}  # everyone did both, in an order that was drawn
    kind = next((one for one in RANKS if one in kinds), "")
    if kind == "laboratory" and (source.comparison in COMPARED or "controlled" in kinds):
        return COMPARED_LABORATORY
    return DESIGNS.get(kind, UNKNOWN)


def _of_what(kinds: set[str]) -> str:
    return "observed-review" if kinds & NO_RANDOM and "randomised" not in kinds else "review"


def has_no_comparison(source: Source, kind: str) -> bool:
    """Whether a study followed one group and set it against nothing."""
    return kind == "before-after" or (source.comparison == "pre-post" and kind not in ("review", "randomised"))


def people_in_a_group(source: Source, kind: str) -> int | None:
    """How many people each side of the comparison stands on."""
    if source.n_per_group is not None:
        return source.n_per_group
    together = source.comparison in WITHIN or kind == "crossover" or has_no_comparison(source, kind)
    if source.n is None or together or kind not in ("randomised", "controlled"):
        return source.n
    return source.n // 2
