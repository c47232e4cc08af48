"""Grades in words: shares as percentages, and what would change a grade or a place."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, floor

from scriptkit.model import Checklist, Facts
from scriptkit.rendering.grade_rows import Row


def percent(share: float) -> str:
    """A share as a whole percentage; one that is not quite nought or all says so."""
    whole = round(100 * share)
    if whole == 100 and share < 1 - 1e-6:
        return "over 99 %"
    return "under 1 %" if whole == 0 and share > 1e-6 else f"{whole} %"


def weight_from(at: float) -> str:
    """A share of weight from which on something is so, rounded up so that it is true as it is written."""
    return f"{ceil(1000 * at - 1e-6) / 10:g} %"


def weight_to(at: float) -> str:
    """A share of weight down from which something is so, rounded down."""
    return f"{floor(1000 * at + 1e-6) / 10:g} %"


def number(value: float) -> str:
    """A rating or a score: at most two decimals."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def changes(row: Row, facts: Facts) -> Iterator[Row]:
    """What one criterion could do to a grade, in words, a row for each criterion of an exercise."""
    checklist_ = facts.episode.checklist
    for part, tips in zip(row["working"], row["changes"] or [{}] * len(row["working"]), strict=True):
        criterion = checklist_.criteria[part["criterion"]] if checklist_ else None
        yield {
            **part,
            "ask": str(criterion.ask) if criterion else "",
            "anchor": _anchor(checklist_, part),
            "rating_words": _rating_words(part),
            "weight_words": percent(part["share"]),
            "points_words": "" if part["points"] is None else f"{part['points']:.2f}",
            "by_rating": [
                words for words in map(_by_rating, (tips.get("rating_up"), tips.get("rating_down"))) if words
            ],
            "by_weight": _by_weight(tips),
        }


def _anchor(checklist_: Checklist | None, part: Row) -> str:
    if checklist_ is None or part["rating"] is None:
        return ""
    anchors = checklist_.criteria[part["criterion"]].anchors
    return str(anchors.get(f"{part['rating']:g}", ""))


def _rating_words(part: Row) -> str:
    if part["rating"] is None:
        return f"none: {number(part['low'])} to {number(part['high'])}"
    span = f" ({number(part['low'])} to {number(part['high'])})" if part["low"] < part["high"] else ""
    return number(part["rating"]) + span


def _by_rating(tip: Row | None) -> str:
    if tip is None:
        return ""
    return f"{'under ' if tip['under'] else ''}{number(tip['at'])}: {tip['grade']}"


def _by_weight(tips: Row) -> list[str]:
    found = []
    if tips.get("weight_up"):
        found.append(f"from {weight_from(tips['weight_up']['at'])}: {tips['weight_up']['grade']}")
    if tips.get("weight_down"):
        found.append(f"at {weight_to(tips['weight_down']['at'])} or less: {tips['weight_down']['grade']}")
    return found


def swaps(row: Row, facts: Facts) -> list[str]:
    """What brings an exercise level with its closest rival, in words."""
    rival, names = row["rival"], facts.episode.exercises
    if not rival:
        return []
    if not row["swaps"]:
        return [f"It is level with {rival['name']}."] if abs(rival["gap"]) < 1e-9 else []
    way = "ahead of" if rival["gap"] > 0 else "behind"
    told = [f"Its closest rival is {rival['name']}: it is {number(abs(rival['gap']))} {way} it."]
    for swap in row["swaps"]:
        if swap["kind"] == "weight":
            told.append(
                f"They are level where “{swap['criterion']}” weighs {100 * swap['to']:.1f} % instead of "
                f"{100 * swap['was']:.0f} %, the other questions keeping their proportions."
            )
        else:
            whose = "this one" if swap["whose"] == row["id"] else names[swap["whose"]].name
            rating = f"{number(swap['to'])} instead of {number(swap['was'])}"
            told.append(f"A rating of {rating} for “{swap['criterion']}” of {whose} closes the gap as well.")
    if not any(swap["kind"] == "weight" for swap in row["swaps"]):
        told.append("No single weight brings them level.")
    return told


def first_holds(row: Row) -> list[str]:
    """Between which weights the first place holds, in words; nothing for those that are not first."""
    told = []
    for tips in row["changes"]:
        low, high = tips["first_from"], tips["first_to"]
        if low is None or (low <= 0 and high >= 1):
            continue
        if low > 0 and high < 1:
            told.append(f"“{tips['criterion']}” from {weight_from(low)} to {weight_to(high)}")
        elif low > 0:
            told.append(f"“{tips['criterion']}” from {weight_from(low)} up")
        else:
            told.append(f"“{tips['criterion']}” up to {weight_to(high)}")
    return told


def earned(row: Row) -> str:
    """What the ratings earn, as far as it is known; "" without ratings."""
    if row["earned"]:
        return str(row["earned"])
    if row["earned_low"]:
        return (
            f"{row['earned_low']} to {row['earned_high']}"
            if row["earned_low"] != row["earned_high"]
            else row["earned_low"]
        )
    return ""


def told(row: Row, facts: Facts) -> Iterator[str]:
    """What has to be known of a grade beside its sum, a sentence or two each."""
    if row["missing"]:
        yield f"Not rated: {', '.join(row['missing'])}. Until then its score lies anywhere in that range."
    if row["capped"]:
        yield f"Capped: {', '.join(f'“{name}”' for name in row['capped'])} is below its floor, whatever the sum."
    if not row["agrees"]:
        reason = f" The reason given: {row['override']}" if row["override"] else " No reason is given."
        yield f"Its ratings earn {earned(row)}, and it is given {row['given']}.{reason}"
    if row["firmness"] is not None:
        yield _kept(row)
    if row["first_share"] is not None:
        yield _first(row)
    if row["tied"]:
        names = [str(facts.episode.exercises[name].name) for name in row["tied"]]
        yield f"Tied with {', '.join(names)}: one step on the question that weighs least decides."
    yield from swaps(row, facts)
    holds = first_holds(row)
    if holds:
        yield f"It stays first with {'; '.join(holds)}, the other questions keeping their proportions."


def _kept(row: Row) -> str:
    words = f"{percent(row['firmness'])} of the weightings around yours keep {row['earned']}"
    if row["firmness_all"] is not None:
        words += f", {percent(row['firmness_all'])} of all weightings"
    if row["firmness_ratings"] is not None and any(part["low"] < part["high"] for part in row["working"]):
        words += f", {percent(row['firmness_ratings'])} with its uncertain ratings drawn as well"
    return words + (f"; most others make it {row['otherwise']}." if row["otherwise"] else ".")


def _first(row: Row) -> str:
    if not row["first_share"] and not row["first_share_near"] and not row["first_share_group"]:
        return "No weighting puts it first."
    every, near = percent(row["first_share"]), percent(row["first_share_near"])
    words = f"{every} of all weightings put it first, {near} of those around yours"
    if row["first_share_group"]:
        words += f"; in its group {percent(row['first_share_group'])}"
    return words + "."
