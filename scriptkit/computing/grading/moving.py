"""What would have to change: which rating or weight makes another grade, and which brings two exercises level.

All of it is exact: a score is linear in each rating, and in each weight when the other weights keep their proportions.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil, inf
from typing import NamedTuple

from scriptkit.computing.grading.scale import EDGE, GradeScale
from scriptkit.model import Checklist, Graded, Part, Swap, Tip, Tips

_LESS = 1e-6  # by how much a score is under an edge that it just fails


class Rules(NamedTuple):
    """What all exercises are graded by. `whole` where every rating is a whole step of the scale."""

    scale: GradeScale
    checklist: Checklist
    whole: bool

    def floor(self, part: Part) -> float | None:
        """The floor of a part's criterion."""
        return self.checklist.criteria[part.criterion].floor


class Field(NamedTuple):
    """All exercises that are rated, by criterion: the weighted mean of their other ratings, and the rating itself.

    `known` is false where somebody has no rating.
    """

    rest: tuple[tuple[float, ...], ...]
    here: tuple[tuple[float, ...], ...]
    known: tuple[bool, ...]


def field_of(rated: Sequence[Graded]) -> Field:
    """What every exercise is compared with, worked out once."""
    places = range(len(rated[0].parts) if rated else 0)
    return Field(
        tuple(tuple(_others(one, place) for one in rated) for place in places),
        tuple(tuple(one.parts[place].rating or 0.0 for one in rated) for place in places),
        tuple(all(one.parts[place].rating is not None for one in rated) for place in places),
    )


def is_whole(checklist: Checklist, graded: Mapping[str, Graded]) -> bool:
    """Whether scale and ratings are whole numbers, so that a change of less than a step means nothing."""
    ratings = (part.rating for one in graded.values() for part in one.parts if part.rating is not None)
    return all(float(value).is_integer() for value in (*checklist.scale, *ratings))


def tips(one: Graded, rules: Rules, field: Field | Sequence[Graded]) -> tuple[Tips, ...]:
    """For each criterion, what other ratings and weights would make of a grade. `field`: all that are fully rated."""
    number = rules.scale.number(one.score or 0.0, capped=bool(one.capped))
    rivals = field if isinstance(field, Field) else field_of(field)
    made = []
    for place, part in enumerate(one.parts):
        if part.rating is None:  # it weighs nought, and nobody knows what it would do
            made.append(Tips(part.criterion, None, None, None, None, None, None))
            continue
        up, down = _ratings(one, place, number, rules)
        more, less = _weights(one, place, number, rules)
        low, high = _first(one, place, rivals)
        made.append(Tips(part.criterion, up, down, more, less, low, high))
    return tuple(made)


def _ratings(one: Graded, place: int, number: int, rules: Rules) -> tuple[Tip | None, Tip | None]:
    """The nearest higher rating that makes a better grade, and the nearest lower one that makes a worse one."""
    part = one.parts[place]
    was, score = part.rating or 0.0, _score(one)
    low, high = min(rules.checklist.scale), max(rules.checklist.scale)
    floor = rules.floor(part)
    others_below = any(other.below_floor for other in one.parts if other is not part)

    def at(rating: float) -> int:
        capped = others_below or (floor is not None and rating < floor)
        return rules.scale.number(score + part.share * (rating - was), capped=capped)

    edges = [was + (least - score) / part.share for least in rules.scale.least if least > -inf] if part.share else []
    edges = sorted(
        {edge for edge in (*edges, *([] if floor is None else [floor])) if low - EDGE <= edge <= high + EDGE}
    )
    hair = _LESS / max(part.share, 1e-3)
    up = down = None
    for edge in (edge for edge in edges if edge > was + EDGE):
        rating = min(high, float(ceil(edge - EDGE)) if rules.whole else edge)
        if at(rating) < number:
            up = Tip(rating, rules.scale.steps[at(rating)])
            break
    for edge in (edge for edge in reversed(edges) if edge <= was + EDGE):
        rating = float(ceil(edge - EDGE)) - 1 if rules.whole else edge
        under = rating if rules.whole else edge - hair
        if under >= low - EDGE and at(under) > number:
            down = Tip(rating, rules.scale.steps[at(under)], under=not rules.whole)
            break
    return up, down


def _score(one: Graded) -> float:
    """The score before it was rounded: a light weight would make much of what rounding took."""
    return sum(part.points or 0.0 for part in one.parts)


def _others(one: Graded, place: int) -> float:
    """The weighted mean of the other criteria, among themselves."""
    others = [part for at, part in enumerate(one.parts) if at != place]
    rest = sum(part.share for part in others)
    return sum(part.points or 0.0 for part in others) / rest if rest > EDGE else 0.0


def _weights(one: Graded, place: int, number: int, rules: Rules) -> tuple[Tip | None, Tip | None]:
    """The nearest larger and the nearest smaller share of one criterion that make another grade."""
    part = one.parts[place]
    if part.share > 1 - EDGE:
        return None, None  # there is no other weight to keep in proportion
    rating, others = part.rating or 0.0, _others(one, place)
    slope = rating - others
    if abs(slope) < EDGE:
        return None, None
    capped = bool(one.capped)
    least, most = rules.scale.between(number, number, capped=capped)
    steeper = (most - others) / slope if most < inf else None  # where the grade gets better
    flatter = (least - others) / slope if least > -inf else None  # where it gets worse
    found: list[Tip | None] = [None, None]
    for at, better in ((steeper, True), (flatter, False)):
        if at is None:
            continue
        # a better grade is earned at its edge, a worse one only beyond: not where the edge takes all or none of it
        slack = EDGE if better else -EDGE
        upward = (slope > 0) == better
        step = rules.scale.number(most if better else least - _LESS, capped=capped)
        if step != number and (at <= 1 + slack if upward else at >= -slack):
            side = max(at, part.share) if upward else min(at, part.share)
            found[0 if upward else 1] = Tip(min(1.0, max(0.0, side)), rules.scale.steps[step], under=not better)
    return found[0], found[1]


def _first(one: Graded, place: int, field: Field) -> tuple[float | None, float | None]:
    """The shares of one criterion between which an exercise comes first; None where there are none, or nobody knows."""
    part = one.parts[place]
    if one.placed != one.score:
        return None, None  # below a floor no weight decides
    if not field.known[place]:
        return None, None
    low, high = 0.0, 1.0
    rest, here_mine = _others(one, place), part.rating or 0.0
    for other_rest, other_here in zip(field.rest[place], field.here[place], strict=True):
        # ahead by `apart` on the other criteria and by `here` on this one: level where the two cancel out
        apart, here = rest - other_rest, here_mine - other_here
        if apart >= -EDGE and here >= -EDGE:
            continue
        if apart < -EDGE and here < -EDGE:
            return None, None
        level = apart / (apart - here)
        low, high = (max(low, level), high) if here > apart else (low, min(high, level))
    return (low, high) if low <= high + EDGE else (None, None)


def swaps(one: Graded, other: Graded, rules: Rules) -> tuple[Swap, ...]:
    """The smallest change of one weight, and of one rating of either exercise, that brings two of them level."""
    gap = _score(one) - _score(other)
    if abs(gap) < EDGE:
        return ()
    weights: list[tuple[float, Swap]] = []
    ratings: list[tuple[float, Swap]] = []
    low, high = min(rules.checklist.scale), max(rules.checklist.scale)
    for place, (mine, theirs) in enumerate(zip(one.parts, other.parts, strict=True)):
        if mine.rating is None or theirs.rating is None:
            continue
        here = mine.rating - theirs.rating
        apart = _others(one, place) - _others(other, place)
        if mine.share < 1 - EDGE and abs(here - apart) > EDGE:
            level = apart / (apart - here)
            if -EDGE <= level <= 1 + EDGE:
                swap = Swap("weight", mine.criterion, mine.share, min(1.0, max(0.0, level)))
                weights.append((round(abs(level - mine.share), 9), swap))
        for whose, part, sign in ((one, mine, -1), (other, theirs, 1)):
            if part.share > EDGE:
                to = (part.rating or 0.0) + sign * gap / part.share
                if rules.whole:
                    to = float(ceil(to - EDGE)) if to > (part.rating or 0.0) else -float(ceil(-to - EDGE))
                if low - EDGE <= to <= high + EDGE:
                    swap = Swap("rating", part.criterion, part.rating or 0.0, min(high, max(low, to)), whose.id)
                    ratings.append((abs(to - (part.rating or 0.0)), swap))
    # of changes of one size the first by name, whatever the order of the outline
    sized = (
        sorted((round(size, 9), swap.criterion, swap.whose, swap) for size, swap in found)
        for found in (weights, ratings)
    )
    return tuple(found[0][-1] for found in sized if found)


def tied(one: Graded, field: Sequence[Graded], step: float) -> tuple[str, ...]:
    """The exercises whose scores are nearer than one step on the criterion that weighs least."""
    lightest = min((part.share for part in one.parts if part.share > 0), default=0.0)
    near = step * lightest - EDGE
    return tuple(
        other.id for other in field if other is not one and abs((one.placed or 0.0) - (other.placed or 0.0)) < near
    )


def dominates(one: Graded, other: Graded) -> bool:
    """Whether an exercise is rated as good or better on every criterion with a weight, and better on one."""
    pairs = [(mine.rating, theirs.rating) for mine, theirs in zip(one.parts, other.parts, strict=True) if mine.share]
    if not pairs or any(mine is None or theirs is None for mine, theirs in pairs):
        return False
    known = [(mine or 0.0, theirs or 0.0) for mine, theirs in pairs]
    return all(mine >= theirs for mine, theirs in known) and any(mine > theirs for mine, theirs in known)
