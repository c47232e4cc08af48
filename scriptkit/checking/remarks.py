"""What was remarked of the script, by kind: each check puts one kind of it into words."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.model import Doubt, Facts, GradeDoubt, Risk


def risks(facts: Facts, *kinds: str) -> Iterator[Risk]:
    """What may mislead about who pays, or may hurt a viewer, in the order in which it was found."""
    return (risk for risk in facts.risks if risk.kind in kinds)


def doubts(facts: Facts, *kinds: str) -> Iterator[Doubt]:
    """What is doubtful about sentences and their sources, in the order of the script."""
    for row in facts.weights.values():
        for weight in row:
            if weight is not None and weight.doubts:
                yield from (doubt for doubt in weight.doubts if doubt.kind in kinds)


def grade_doubts(facts: Facts, *kinds: str) -> Iterator[GradeDoubt]:
    """What the grades do not bear out, in the order in which it was found."""
    return (one for one in facts.grade_doubts if one.kind in kinds)
