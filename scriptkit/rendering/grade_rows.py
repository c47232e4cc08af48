"""Grades as plain rows: for programs, and for the words and pictures made of them. No new figures."""

from __future__ import annotations

from typing import Any

from scriptkit.model import Facts, Part, Standing, Swap, Tip, Tips

Row = dict[str, Any]
FIGURES = 4  # decimals of a share


def grades(facts: Facts) -> list[Row]:
    """Every exercise in running order, then those that no segment speaks of."""
    spoken = [segment.exercise for segment in facts.segments if segment.exercise]
    rest = [str(name) for name in facts.episode.exercises if name not in spoken]
    return [_exercise(facts, name) for name in dict.fromkeys([*spoken, *rest])]


def ranked(facts: Facts) -> list[Row]:
    """The same by score, best first; those without a score come last, as they are spoken."""
    rows = grades(facts)
    return sorted(rows, key=lambda row: (row["score"] is None, -(row["score"] or 0.0)))


def checklist(facts: Facts) -> Row | None:
    """The checklist with the share of each criterion of all weights."""
    one = facts.episode.checklist
    if one is None:
        return None
    shares = facts.criteria_shares
    return {
        "id": str(one.id),
        "scale": [min(one.scale), max(one.scale)],
        "cap": str(one.cap),
        "best_below_floor": facts.grade_cap,
        "criteria": [
            {
                "id": str(name),
                "ask": str(criterion.ask),
                "weight": criterion.weight,
                "share": None if name not in shares else round(shares[name], FIGURES),
                "floor": criterion.floor,
                "anchors": {str(key): str(words) for key, words in criterion.anchors.items()},
            }
            for name, criterion in one.criteria.items()
        ],
    }


def firmness(facts: Facts) -> Row | None:
    """How the firmness was found out; None where it was not asked for."""
    one = facts.ranking
    if one is None:
        return None
    return {"draws": one.draws, "seed": one.seed, "error": one.error, "first": list(one.first), "verdict": one.verdict}


def again(facts: Facts) -> Row | None:
    """The second rating beside the first; None where there is none."""
    one = facts.again
    if one is None:
        return None
    names = facts.episode.exercises
    return {
        "by": str(one.by),
        "on": str(one.on),
        "ratings": len(one.pairs),
        "not_rated_again": one.unrated,
        "exact": None if one.exact is None else round(one.exact, FIGURES),
        "largest_gap": one.largest,
        "changed": [
            {"id": name, "name": str(names[name].name), "first": first, "again": second}
            for name, first, second in one.changed
        ],
        "gaps": [
            {
                "id": pair.exercise,
                "name": str(names[pair.exercise].name),
                "criterion": pair.criterion,
                "first": pair.first,
                "again": pair.again,
                "answer": str(pair.answer),
            }
            for pair in one.pairs
            if pair.apart > 0
        ],
    }


def _exercise(facts: Facts, name: str) -> Row:
    exercise, one = facts.episode.exercises[name], facts.grades[name]
    standing = facts.ranking.standings.get(name) if facts.ranking else None
    return {
        "id": str(name),
        "name": str(exercise.name),
        "group": str(exercise.group),
        "score": one.score,
        "score_low": one.score_low,
        "score_high": one.score_high,
        "earned": one.earned,
        "earned_low": one.earned_low,
        "earned_high": one.earned_high,
        "given": one.given,
        "grade": one.grade,
        "agrees": one.agrees,
        "override": str(exercise.override),
        "firmness": _rounded(one.firmness),
        "band_firmness": _rounded(one.band_firmness),
        "otherwise": one.neighbour,
        "spread": one.spread,
        "capped": list(one.capped),
        "missing": list(one.missing),
        "ratings": {part.criterion: part.rating for part in one.parts},
        "working": [_part(part) for part in one.parts],
        **_standing(facts, standing),
    }


def _part(part: Part) -> Row:
    return {
        "criterion": part.criterion,
        "rating": part.rating,
        "low": part.low,
        "high": part.high,
        "share": round(part.share, FIGURES),
        "points": _rounded(part.points),
        "below_floor": part.below_floor,
    }


def _standing(facts: Facts, one: Standing | None) -> Row:
    """How firm place and grade are; None in every figure where that was not asked for."""
    one = one or Standing("")
    rival = facts.episode.exercises.get(one.rival)
    return {
        "rank": one.rank,
        "first_share": _rounded(one.first_all),
        "first_share_near": _rounded(one.first_near),
        "first_share_ratings": _rounded(one.first_ratings),
        "first_share_group": _rounded(one.first_in_group),
        "firmness_all": _rounded(one.kept_all),
        "firmness_ratings": _rounded(one.kept_ratings),
        "tied": list(one.tied),
        "rival": {"id": one.rival, "name": str(rival.name), "gap": one.gap} if rival else None,
        "swaps": [_swap(swap) for swap in one.swaps],
        "changes": [_tips(tips) for tips in one.tips],
    }


def _swap(swap: Swap) -> Row:
    return {"kind": swap.kind, "criterion": swap.criterion, "was": swap.was, "to": swap.to, "whose": swap.whose}


def _tips(tips: Tips) -> Row:
    return {
        "criterion": tips.criterion,
        "rating_up": _tip(tips.rating_up),
        "rating_down": _tip(tips.rating_down),
        "weight_up": _tip(tips.weight_up),
        "weight_down": _tip(tips.weight_down),
        "first_from": _rounded(tips.first_low),
        "first_to": _rounded(tips.first_high),
    }


def _tip(tip: Tip | None) -> Row | None:
    return tip and {"at": tip.at, "grade": tip.grade, "under": tip.under}


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, FIGURES)
