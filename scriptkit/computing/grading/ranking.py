"""How firm grades and order are: draws and exact figures of every exercise, put together."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf

from scriptkit.computing.grading import chance, draws, moving, scale, scores
from scriptkit.computing.grading.draws import Keep, Row, Span
from scriptkit.computing.grading.moving import Rules
from scriptkit.computing.grading.scale import GradeScale
from scriptkit.model import Episode, Graded, Ranking, Standing

CLEAR = 0.80  # share of all weightings that "clear winner" needs
AHEAD = 0.50  # and that "comes out ahead" needs; below it the script has to say that it depends


def rank(episode: Episode, graded: Mapping[str, Graded]) -> Ranking | None:
    """How firm everything is; None where there is no checklist with ratings."""
    on, checklist = scale.of(episode), episode.checklist
    rated = [graded[name] for name in sorted(graded) if graded[name].score is not None]
    if on is None or checklist is None or not rated:
        return None
    rules = Rules(on, checklist, moving.is_whole(checklist, graded))
    shares = _shares(episode, graded, rated, rules)
    best = max(_placed(one) for one in rated)
    field = sorted(rated, key=lambda one: -_placed(one))
    rivals = moving.field_of(field)
    standings = {
        name: _standing(graded[name], shares[name], (field, rivals), rules) if name in shares else Standing(name)
        for name in graded
    }
    first = tuple(name for name in graded if name in shares and _placed(graded[name]) >= best - scale.EDGE)
    uncertain = any(part.low < part.high for one in rated for part in one.parts)
    leader = standings[first[0]]
    open_ = tuple(name for name, one in graded.items() if one.score is None and _could_lead(one, best, on))
    verdict = "open" if open_ else "tied" if leader.tied else may_say(leader.first_all or 0.0)
    loose = [name for name, one in graded.items() if one.firmness is not None and one.firmness < scores.KEEPS]
    unsettled = tuple(name for name in loose if scores.is_close(graded[name]))
    wavering = tuple(name for name in loose if name not in unsettled)
    return Ranking(
        draws.DRAWS, draws.SEED, draws.ERROR, standings, first, verdict, uncertain, unsettled, wavering, open_
    )


def may_say(share: float) -> str:
    """How firmly a first place may be said that this share of all weightings bears."""
    return "clear" if share >= CLEAR else "ahead" if share >= AHEAD else "depends"


def _could_lead(one: Graded, best: float, on: GradeScale) -> bool:
    """Whether an exercise that is not rated whole could still come first."""
    if one.score_high is None:
        return bool(one.grade)  # graded, and not held against the checklist at all
    return min(one.score_high, on.ceiling(capped=bool(one.capped))) >= best - scale.EDGE


def _placed(one: Graded) -> float:
    """The score that an exercise is placed by."""
    return one.placed if one.placed is not None else one.score or 0.0


def _shares(
    episode: Episode, graded: Mapping[str, Graded], rated: Sequence[Graded], rules: Rules
) -> dict[str, Standing]:
    """What is drawn. Criteria and exercises go by their ids, so that the order of the outline changes nothing."""
    known = [place for place in range(len(rated[0].parts)) if all(one.parts[place].rating is not None for one in rated)]
    order = sorted(known, key=lambda place: rated[0].parts[place].criterion)  # what weighs nought may be unrated
    rows = [_row(one, order, rules) for one in rated]
    # without the draws of ratings, a floor that an uncertain rating breaks as it stands holds all the same
    certain = [
        row._replace(spans=(), floors=(), ceiling=rules.scale.ceiling(capped=bool(one.capped)))
        for row, one in zip(rows, rated, strict=True)
    ]
    evenly = draws.evenly(len(order))
    near = draws.around([rated[0].parts[place].share for place in order])
    first_all, first_near = draws.first(certain, evenly), draws.first(certain, near)
    drawn = any(row.spans for row in rows)
    first_ratings, kept = draws.unsure(rows, near) if drawn else (first_near, [0.0] * len(rows))
    in_group = _in_groups(episode, graded, rated, certain, evenly)
    return {
        one.id: Standing(
            one.id,
            first_all[number],
            first_near[number],
            first_ratings[number],
            in_group.get(one.id),
            _kept_all(one, order, rules),
            kept[number] if rows[number].spans else one.firmness,
            group=str(episode.exercises[one.id].group),
        )
        for number, one in enumerate(rated)
    }


def _row(one: Graded, order: Sequence[int], rules: Rules) -> Row:
    """What is drawn of an exercise, with the scores that keep its grade."""
    number = rules.scale.number(one.score or 0.0, capped=bool(one.capped))
    parts = [one.parts[place] for place in order]
    whole = [rules.whole and part.low.is_integer() and part.high.is_integer() for part in parts]
    spans = [Span(at, part.low, part.high, whole[at]) for at, part in enumerate(parts) if part.low < part.high]
    fixed = (part for place, part in enumerate(one.parts) if place not in order or part.low == part.high)
    broken = any(part.below_floor for part in fixed)
    floors = [(span.place, floor) for span in spans if (floor := rules.floor(parts[span.place])) is not None]
    open_, capped = (_keeps(number, rules, capped=below) for below in (broken, True))
    ratings, ceiling = tuple(part.rating or 0.0 for part in parts), rules.scale.ceiling(capped=broken)
    return Row(ratings, tuple(spans), open_, capped, tuple(floors), ceiling, rules.scale.ceiling(capped=True))


def _keeps(number: int, rules: Rules, *, capped: bool) -> Keep:
    """The scores that earn a step, with or without the cap; none where the cap puts it out of reach."""
    if capped and number < rules.scale.cap:
        return Keep(inf, inf)
    low, high = rules.scale.between(number, number, capped=capped)
    return Keep(low - scale.EDGE, high - scale.EDGE)


def _in_groups(
    episode: Episode,
    graded: Mapping[str, Graded],
    rated: Sequence[Graded],
    rows: Sequence[Row],
    weightings: draws.Weightings,
) -> dict[str, float]:
    """The share of all weightings that puts each exercise first in its group; nothing for those without a group."""
    groups: dict[str, list[int]] = {}
    for number, one in enumerate(rated):
        groups.setdefault(str(episode.exercises[one.id].group), []).append(number)
    found: dict[str, float] = {}
    for name, members in groups.items():
        whole = sum(str(episode.exercises[one].group) == name for one in graded) == len(members)
        if name and whole and len(members) < len(rated):
            shares = draws.first([rows[number] for number in members], weightings)
            found.update((rated[number].id, share) for number, share in zip(members, shares, strict=True))
    return found


def _kept_all(one: Graded, order: Sequence[int], rules: Rules) -> float:
    """The share of all weightings that keeps the earned grade."""
    number = rules.scale.number(one.score or 0.0, capped=bool(one.capped))
    low, high = rules.scale.between(number, number, capped=bool(one.capped))
    ratings = [one.parts[place].rating or 0.0 for place in order]
    return chance.between(ratings, [1 / len(order)] * len(order), low, high, concentration=float(len(order)))


def _standing(one: Graded, shares: Standing, among: tuple[Sequence[Graded], moving.Field], rules: Rules) -> Standing:
    """The rest of it, exact. `among` are all that are rated, in order of score, and what they are compared by."""
    field, rivals = among
    score = _placed(one)
    ahead = sum(_placed(other) > score + scale.EDGE for other in field)
    others = [other for other in field if other is not one]
    rival = min(others, key=lambda other: abs(_placed(other) - score), default=None)
    free = rival is not None and _placed(rival) == rival.score and score == one.score  # of the cap
    return shares._replace(
        rank=ahead + 1,
        tied=moving.tied(one, field, scale.step_of(rules.checklist)),
        rival=rival.id if rival else "",
        gap=round(score - _placed(rival), 9) if rival else 0.0,
        swaps=moving.swaps(one, rival, rules) if rival and free else (),
        tips=moving.tips(one, rules, rivals),
    )
