"""What the page of the grades and the way in show of them."""

from __future__ import annotations

from scriptkit.model import Facts
from scriptkit.rendering import grade_pictures, grade_rows, grade_words
from scriptkit.rendering.grade_rows import Row


def names(facts: Facts) -> Row:
    """What the templates use, by name."""
    ranked = [_exercise(row, facts) for row in grade_rows.ranked(facts)]
    return {
        "ranked": ranked,
        "checklist": grade_rows.checklist(facts),
        "grade_picture": grade_pictures.grades(facts),
        "firmness": grade_rows.firmness(facts),
        "first_place": _first_place(facts, ranked),
        "again": grade_rows.again(facts),
        "steps": [f"{name} {grade_words.number(least)}" for name, least in facts.grade_steps],
        "uncertain": bool(facts.ranking and facts.ranking.uncertain),
        "unsettled": [row for row in ranked if facts.ranking and row["id"] in facts.ranking.unsettled],
        "wavering": [row for row in ranked if facts.ranking and row["id"] in facts.ranking.wavering],
    }


def _exercise(row: Row, facts: Facts) -> Row:
    return {
        **row,
        "earned_words": grade_words.earned(row),
        "score_words": "" if row["score"] is None else grade_words.score(row, facts),
        "changes_words": list(grade_words.changes(row, facts)),
        "told": list(grade_words.told(row, facts)),
    }


def _first_place(facts: Facts, ranked: list[Row]) -> Row | None:
    """Who comes first, and how firmly that may be said; None where nothing is scored."""
    if facts.ranking is None or not ranked:
        return None
    leaders = [row for row in ranked if row["id"] in facts.ranking.first]
    tied = [row for row in ranked if row["id"] in leaders[0]["tied"] and row not in leaders]
    unrated = [row["name"] for row in ranked if row["score"] is None]
    return {
        "names": grade_words.both(row["name"] for row in leaders),
        "share": leaders[0]["first_share"],
        "verdict": facts.ranking.verdict,
        "tied": grade_words.both(
            f"{row['name']} ({grade_words.percent(row['first_share'])})" for row in [*leaders, *tied]
        ),
        "not_counted": grade_words.both(unrated),
        "groups": _groups(facts),
    }


def _groups(facts: Facts) -> list[Row]:
    """Who comes first in each group under most weightings."""
    best: dict[str, tuple[float, str]] = {}
    for one in facts.ranking.standings.values() if facts.ranking else ():
        if one.first_in_group is not None and one.first_in_group > best.get(one.group, (-1.0, ""))[0]:
            best[one.group] = (one.first_in_group, one.id)
    return [
        {"group": group, "name": str(facts.episode.exercises[name].name), "share": share}
        for group, (share, name) in best.items()
    ]
