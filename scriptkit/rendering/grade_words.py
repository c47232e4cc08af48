"""Grades in words: shares as percentages, and what would change a grade or a place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import ceil, floor

from scriptkit.model import Checklist, Facts
from scriptkit.rendering.grade_rows import Row

A_POINT = 0.001  # of weight: less than that is one weighting, and nobody's


def percent(share: float) -> str:
    """A share as a whole percentage; one that is not quite nought or all says so."""
    whole = round(100 * share)
    if whole == 100 and share < 1 - 1e-6:
        return "over 99 %"
    return "under 1 %" if whole == 0 and share > 1e-6 else f"{whole} %"


def weight_from(at: float, *, beyond: bool = False) -> str:
    """From which share of weight on something is so, rounded so that it is true as it is written."""
    return f"{'above' if beyond and _is_round(at) else 'from'} {ceil(1000 * at - 1e-6) / 10:g} %"


def weight_to(at: float, *, beyond: bool = False) -> str:
    """Down from which share of weight something is so, rounded so that it is true as it is written."""
    share = f"{floor(1000 * at + 1e-6) / 10:g} %"
    if at <= 0:
        return "at 0 %"
    return f"below {share}" if beyond and _is_round(at) else f"at {share} or less"


def _is_round(at: float) -> bool:
    """Whether a share is a number of tenths of a percent, so that rounding leaves it on the edge itself."""
    return abs(1000 * at - round(1000 * at)) < 1e-6


def score(row: Row, facts: Facts) -> str:
    """A score with two decimals, and with more where two would put it into another grade."""
    value = row["score"]
    for decimals in (2, 3, 4):
        if _step(round(value, decimals), facts) == _step(value, facts):
            return f"{value:.{decimals}f}"
    return f"{value:g}"


def _step(value: float, facts: Facts) -> str:
    return next((name for name, least in facts.grade_steps if value >= least - 1e-9), "")


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
            "open": not tips,
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
        tip = tips["weight_up"]
        found.append(f"{weight_from(tip['at'], beyond=tip['under'])}: {tip['grade']}")
    if tips.get("weight_down"):
        tip = tips["weight_down"]
        found.append(f"{weight_to(tip['at'], beyond=tip['under'])}: {tip['grade']}")
    return found


def swaps(row: Row, facts: Facts) -> list[str]:
    """What brings an exercise level with its closest rival, in words."""
    rival, names = row["rival"], facts.episode.exercises
    if not rival:
        return []
    apart = number(abs(rival["gap"]))
    if apart == "0":
        return [f"It is level with {rival['name']}."]
    way = "ahead of" if rival["gap"] > 0 else "behind"
    told_ = [f"It is {apart} {way} {rival['name']}, its closest rival."]
    for swap in row["swaps"]:
        if swap["kind"] == "weight":
            told_.append(
                f"They are level where “{swap['criterion']}” weighs {100 * swap['to']:.1f} % instead of "
                f"{100 * swap['was']:.0f} %, the other questions keeping their proportions."
            )
        else:
            name = names[swap["whose"]].name
            told_.append(
                f"Rated {number(swap['to'])} instead of {number(swap['was'])} on “{swap['criterion']}”, "
                f"{name} would {'fall behind or level' if swap['to'] < swap['was'] else 'draw level or ahead'}."
            )
    if row["swaps"] and not any(swap["kind"] == "weight" for swap in row["swaps"]):
        told_.append("No single weight brings them level.")
    return told_


def first_holds(row: Row) -> list[str]:
    """With which weights an exercise comes first, in words; nothing where all weights or none do it."""
    told_ = []
    for tips in row["changes"]:
        low, high = tips["first_from"], tips["first_to"]
        if low is None or (low <= 0 and high >= 1) or (row["rank"] != 1 and high - low < A_POINT):
            continue
        upper = f"{floor(1000 * high + 1e-6) / 10:g} %"
        if low > 0 and high < 1:
            told_.append(f"“{tips['criterion']}” {weight_from(low)} to {upper}")
        elif low > 0:
            told_.append(f"“{tips['criterion']}” {weight_from(low)} up")
        else:
            told_.append(f"“{tips['criterion']}” up to {upper}")
    return told_


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


def both(names: Iterable[str]) -> str:
    """Names with commas, and an "and" before the last."""
    return _joined(names, " and ")


def either(names: Iterable[str]) -> str:
    """Names with commas, and an "or" before the last."""
    return _joined(names, " or ")


def _joined(names: Iterable[str], last: str) -> str:
    every = [str(name) for name in names]
    return last.join([", ".join(every[:-1]), every[-1]] if len(every) > 1 else every)


def told(row: Row, facts: Facts) -> Iterator[str]:
    """What has to be known of a grade beside its sum, a sentence or two each."""
    if row["missing"]:
        yield (
            f"Not rated: {both(row['missing'])}. Until then its score lies anywhere in that range"
            + (f", and it earns {earned(row)}." if row["earned_low"] else ".")
        )
    if row["capped"]:
        names_ = both(f"“{name}”" for name in row["capped"])
        yield f"Capped: below the floor of {names_} nothing better than {facts.grade_cap} is earned, whatever the sum."
    if not row["agrees"]:
        reason = f" The reason given: {row['override']}" if row["override"] else " No reason is given."
        yield f"Its ratings earn {earned(row)}, and it is given {row['given']}.{reason}"
    if row["firmness"] is not None:
        yield _kept(row)
    if row["first_share"] is not None:
        yield _first(row)
    if row["tied"]:
        names = [str(facts.episode.exercises[name].name) for name in row["tied"]]
        yield f"Tied with {both(names)}: one step on the question that weighs least decides."
    yield from swaps(row, facts)
    holds = first_holds(row)
    if holds:
        first = row["rank"] == 1
        told_ = f"stays first with {both(holds)}" if first else f"would come first with {either(holds)}"
        yield f"It {told_}, the other questions keeping their proportions."


def _kept(row: Row) -> str:
    words = f"{percent(row['firmness'])} of the weightings around the author's keep {row['earned']}"
    if row["firmness_all"] is not None:
        words += f", {percent(row['firmness_all'])} of all weightings"
    if row["firmness_ratings"] is not None and any(part["low"] < part["high"] for part in row["working"]):
        words += f", {percent(row['firmness_ratings'])} where its uncertain ratings vary as well"
    return words + (f"; most others make it {row['otherwise']}." if row["otherwise"] else ".")


def _first(row: Row) -> str:
    if not row["first_share"] and not row["first_share_near"] and not row["first_share_group"]:
        return "No weighting puts it first."
    every, near = percent(row["first_share"]), percent(row["first_share_near"])
    words = f"{every} of all weightings put it first, {near} of those around the author's"
    if row["first_share_group"]:
        words += f"; in its group {percent(row['first_share_group'])}"
    return words + "."
