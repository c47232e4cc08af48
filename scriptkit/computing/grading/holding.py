"""Holds what a script says of first places, and of one exercise ahead of another, against how firm they are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.grading.firm_words import CLAIMS, PAIR, FirmWords
from scriptkit.computing.grading.ranking import AHEAD, CLEAR
from scriptkit.model import Graded, GradeDoubt, Ranking, Standing


def find(words: Sequence[FirmWords], ranking: Ranking | None, graded: Mapping[str, Graded]) -> Iterator[GradeDoubt]:
    """What is doubtful about words of first places and of one exercise ahead of another."""
    if ranking is None or len(ranking.standings) < 2:
        return
    depends = {one.passage.segment for one in words if one.kind == "depends"}
    for one in words:
        if one.kind == PAIR:
            yield from _pair(one, graded, ranking)
        elif one.kind in CLAIMS:
            yield from _first(one, ranking, said=one.passage.segment in depends and not one.passage.what)
        elif one.kind == "depends" and "depends" in one.words.lower():
            yield from _depends(one, ranking)


def _first(one: FirmWords, ranking: Ranking, *, said: bool) -> Iterator[GradeDoubt]:
    """`said`: its segment says that it depends on the weights."""
    leaders = _leaders(one, ranking)
    exercise = one.exercise or leaders[0]
    standing = ranking.standings.get(exercise)
    if standing is None or standing.rank is None:
        return
    share = standing.first_in_group if one.group else standing.first_all
    if share is None:
        return
    if ranking.open and not one.group:
        yield GradeDoubt("still-open", one.place, one.words, exercise, ranking.open[0])
        return
    if exercise not in leaders:
        yield GradeDoubt("not-first", one.place, one.words, exercise, leaders[0])
        return
    level = [name for name in standing.tied if not one.group or name in leaders]
    if level:
        yield GradeDoubt("tie-won", one.place, one.words, exercise, level[0])
        return
    flat = one.kind == "best" and not one.owned
    if (one.kind == "clear" and share < CLEAR) or (share < AHEAD and not said):
        yield GradeDoubt(
            "too-firm", one.place, one.words, exercise, _best_rival(exercise, one, ranking), f"{share:.2f}"
        )
    elif not one.group and _shaken(standing, share):
        rival = _best_rival(exercise, one, ranking)
        yield GradeDoubt("too-firm", one.place, one.words, exercise, rival, f"{standing.first_ratings or 0.0:.2f}")
    elif flat and share < CLEAR:
        yield GradeDoubt(
            "said-flat", one.place, one.words, exercise, _best_rival(exercise, one, ranking), f"{share:.2f}"
        )


def _shaken(standing: Standing, share: float) -> bool:
    """Whether uncertain ratings take a first place away more often than not, however the weights bear it."""
    return share >= AHEAD > (standing.first_ratings if standing.first_ratings is not None else 1.0)


def _leaders(one: FirmWords, ranking: Ranking) -> tuple[str, ...]:
    """The exercises that are first, of the group that the words speak of or of all."""
    if not one.group:
        return ranking.first
    members = [standing for standing in ranking.standings.values() if standing.first_in_group is not None]
    own = [standing for standing in members if standing.group == one.group]
    best = min((standing.rank or 0 for standing in own), default=0)
    return tuple(standing.id for standing in own if standing.rank == best) or ranking.first


def _best_rival(exercise: str, one: FirmWords, ranking: Ranking) -> str:
    """Who is first under most of the other weightings."""
    others = [other for name, other in ranking.standings.items() if name != exercise]
    if one.group:
        others = [other for other in others if other.group == one.group]
    return max(others, key=lambda other: _share(other, one), default=Standing("")).id


def _share(standing: Standing, one: FirmWords) -> float:
    return (standing.first_in_group if one.group else standing.first_all) or 0.0


def _depends(one: FirmWords, ranking: Ranking) -> Iterator[GradeDoubt]:
    """A place that hardly any weighting changes, and the script says that it depends."""
    first = ranking.standings[ranking.first[0]]
    shares = [standing.first_in_group or 0.0 for standing in ranking.standings.values()]
    firm_groups = sum(share >= CLEAR for share in shares)
    if (first.first_all or 0.0) >= CLEAR and not (any(shares) and firm_groups < len({*_groups(ranking)})):
        yield GradeDoubt("firm-though", one.place, one.words, first.id, "", f"{first.first_all or 0.0:.2f}")


def _groups(ranking: Ranking) -> Iterator[str]:
    return (standing.group for standing in ranking.standings.values() if standing.group)


def _pair(one: FirmWords, graded: Mapping[str, Graded], ranking: Ranking) -> Iterator[GradeDoubt]:
    """One that is said to beat another by the checklist: it has to be ahead, and not level with it."""
    mine, theirs = graded[one.exercise], graded[one.other]
    if mine.score is None or theirs.score is None:
        return
    if one.other in ranking.standings[one.exercise].tied:
        yield GradeDoubt("tie-won", one.place, one.words, one.exercise, one.other)
    elif mine.score < theirs.score:
        yield GradeDoubt("behind", one.place, one.words, one.exercise, one.other)
