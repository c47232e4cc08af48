"""What a sentence says that training does, what a study measured, and how far one is from the other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.evidence.lexicon import Lexicon, Words
from scriptkit.model import Judgement, Source, StudyFinding

# most telling first: "activity was higher, so it builds more muscle" is about growth
ORDER = ("growth", "strength", "pain", "performance", "range", "benefit", "growth?", "activity", "plain")
EFFECTS = frozenset(("growth", "strength", "pain", "performance", "benefit"))
TRAINED_FOR = frozenset(("growth", "strength", "benefit"))  # what one session cannot show
ABOVE = frozenset("more better best superior beat beats outperform outperforms than".split())
EVENS = frozenset(  # with one of these, a comparison may say that both do the same
    (
        "no not nor never neither nothing nobody none little hardly barely scarcely same similar similarly alike equal "
        "equally even match matches matched either or whether if both as tie close may might could"
    ).split()
)
NEAR = ({"strength", "performance"}, {"performance", "range"})  # a measure of one says something of the other


class Measured(NamedTuple):
    """What a study measured: the outcome ("" unknown), whether within one session, and how a muscle was sized."""

    outcome: str
    acute: bool
    how: str = ""  # direct, indirect, rough or "" unknown
    words: str = ""  # outcome and measure as the register has them


def kind_of(text: str, lexicon: Lexicon) -> str:
    """The kind of outcome that a text speaks of, "" where it has no word of any; with a "?" if the word is vague."""
    kinds = lexicon.kinds("outcomes", text)
    return next((one for one in ORDER if one in kinds), "")


def is_one_session(source: Source, design: str) -> bool:
    """Whether all was measured within a session."""
    if source.timeframe:
        return source.timeframe == "acute"
    if {"acute", "session"} & set(source.design.lower().split()):
        return True
    return design == "laboratory" and not (source.duration_weeks and source.duration_weeks >= 1)


def measured(source: Source, finding: StudyFinding | None, design: str, lexicon: Lexicon) -> Measured:
    """What one finding measured."""
    session = is_one_session(source, design)
    if finding is None:
        return Measured("", session)
    words = f"{finding.outcome}, {finding.measure}".strip(", ")
    every = lexicon.look(words).get("outcomes", ())
    named = {one.kind for one in every if one.end <= len(finding.outcome)} or {one.kind for one in every}
    outcome = next((one for one in ORDER if one in named), "").rstrip("?")
    hows = lexicon.kinds("measures", words)
    how = next((one for one in ("rough", "indirect", "direct") if one in hows), "")
    return Measured(outcome, session or "acute" in hows or outcome == "activity", how, words)


def pick(source: Source, named: str, said: str, design: str, lexicon: Lexicon) -> StudyFinding | None:
    """The finding a link means: the one it names, the only one, or the first of the kind that is said."""
    if named:
        return source.findings.get(named)
    every = list(source.findings.values())
    if len(every) == 1:
        return every[0]
    kinds = [measured(source, one, design, lexicon).outcome for one in every]
    fitting = [one for one, kind in zip(every, kinds, strict=True) if kind == said.rstrip("?") != ""]
    if fitting:
        return fitting[0]
    return every[0] if every and all(kinds) and len(set(kinds)) == 1 else None


def claimed(said: str, tested: Sequence[Measured]) -> str:
    """The outcome that a sentence claims, where `said` is the kind of its words."""
    known = next((one for one in tested if one.outcome), None)
    if said in ("growth?", "benefit") and known and known.outcome != "activity":
        return known.outcome
    if said == "growth?":
        return "growth"
    return said or (known.outcome if known else "")


def is_effect(outcome: str, judgement: Judgement) -> bool:
    """Whether it is said that something comes of training, and not only what there is, weighs or costs."""
    return outcome in EFFECTS or (outcome != "plain" and "causal" in judgement.flags)


def says_more(text: str, lexicon: Lexicon) -> bool:
    """Whether a comparison says that one does more, and no word in it that both do the same."""
    words = text.lower().replace("’", "'").replace(",", " ").rstrip(".!?").split()
    if ABOVE.isdisjoint(words) or any(word in EVENS or word.endswith("n't") for word in words):
        return False
    return lexicon.first("no-difference", text) is None


def differ(said: str, tested: str) -> bool:
    """Whether another outcome was measured than is said."""
    if said == tested or not said or not tested or "plain" in (said, tested) or said not in EFFECTS:
        return False
    if said == "benefit":
        return False
    return not any({said, tested} <= pair for pair in NEAR)


def says_of_trained(text: str, lexicon: Lexicon) -> Words | None:
    """The words by which a text speaks of people who have trained for long."""
    return lexicon.first("people-kinds", text, "trained")


def untrained(source: Source, lexicon: Lexicon) -> bool:
    """Whether the people of a study had not trained before."""
    if source.training:
        return source.training == "untrained"
    kinds = lexicon.kinds("people-kinds", source.population)
    return "untrained" in kinds and "trained" not in kinds and "trained and" not in source.population
