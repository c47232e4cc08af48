"""The table that `grades` prints for a person: every grade with its sum, how firm it is, and what would change it."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.listings import table
from scriptkit.model import Facts
from scriptkit.rendering import grade_pages, grade_rows, grade_words
from scriptkit.rendering.grade_rows import Row
from scriptkit.terminal import Ink, cut, listed, visible, width, wrap

_RATING = 6  # most letters of the name of a question above its ratings
_MOST_TIES = 4
_VERDICTS = {
    "clear": "a clear winner",
    "ahead": "it comes out ahead; say that it is by your weights",
    "open": "open, while others are not rated",
    "depends": "it depends on what you value; say so",
}


def grades(facts: Facts, ink: Ink) -> str:
    """The table, best first, and under it what a reader has to know of it."""
    names = grade_pages.names(facts)
    if not names["ranked"]:
        return "There is no exercise yet.\n"
    notes = [line for told in _notes(facts, names) for line in wrap(told, ink.columns)]
    legend = wrap(_legend(facts, names["ranked"]), ink.columns)
    return "\n".join([_table(names["ranked"], ink), *notes, *([""] if notes else []), *legend]) + "\n"


def _table(rows: list[Row], ink: Ink) -> str:
    criteria = [part["criterion"] for part in next((row["working"] for row in rows if row["working"]), [])]
    head = ["", "exercise", "grade", "score", "keeps", "first"]
    body = [_fixed(row) for row in rows]
    if criteria and _fits(head, body, criteria, ink):
        head += [cut(name, _RATING) for name in criteria]
        body = [[*line, *_ratings(row, criteria)] for line, row in zip(body, rows, strict=True)]
    return table(head, body, ink, right=(0, 3, 4, 5, *range(6, len(head))), gives=1)


def _fits(head: list[str], body: list[list[str]], criteria: list[str], ink: Ink) -> bool:
    """Whether the ratings find room beside the rest."""
    whole = sum(max(width(visible(line[column])) for line in [head, *body]) + 2 for column in range(len(head)))
    return whole + sum(max(3, min(_RATING, width(name))) + 2 for name in criteria) - 2 <= ink.columns


def _fixed(row: Row) -> list[str]:
    score = row["score_words"]
    if row["score"] is None and row["score_low"] is not None:
        score = f"{row['score_low']:.2f}-{row['score_high']:.2f}"
    grade = row["grade"] or "none"
    if row["earned_words"] and not row["agrees"]:
        grade += f" (earns {row['earned_words']})"
    elif not row["given"] and row["earned_words"] and row["grade"] != row["earned_words"]:
        grade = row["earned_words"]
    rank = "" if row["rank"] is None else str(row["rank"])
    return [rank, row["name"], grade, score, _share(row["firmness"]), _share(row["first_share"])]


def _share(value: float | None) -> str:
    return "" if value is None else f"{round(100 * value)} %"


def _ratings(row: Row, criteria: list[str]) -> list[str]:
    parts = {part["criterion"]: part for part in row["working"]}
    return [_rating(parts.get(name)) for name in criteria]


def _rating(part: Row | None) -> str:
    if part is None or part["rating"] is None:
        return "?"
    unsure = "~" if part["low"] < part["high"] else ""
    return f"{unsure}{grade_words.number(part['rating'])}{'!' if part['below_floor'] else ''}"


def _notes(facts: Facts, names: Row) -> Iterator[str]:
    first = names["first_place"]
    if first:
        share = grade_words.percent(first["share"])
        if first["verdict"] == "tied":
            yield f"First, tied: {first['tied']} of all weightings."
        else:
            yield f"First: {first['names']}, {share} of all weightings: {_VERDICTS[first['verdict']]}."
        if first["not_counted"]:
            yield f"Not counted until it is rated: {first['not_counted']}."
    for one in first["groups"] if first else ():
        yield f"First of {one['group']}: {one['name']}, {grade_words.percent(one['share'])} of all weightings."
    yield from _ties(names["ranked"])
    for row in names["ranked"]:
        if not row["agrees"]:
            yield f"{row['name']}: given {row['given']}, earns {row['earned_words']}. " + (
                f"Reason: {row['override']}" if row["override"] else "No reason is given."
            )
        if row["capped"]:
            floors = grade_words.both(row["capped"])
            yield f"{row['name']}: below the floor of {floors}, so nothing better than {facts.grade_cap} is earned."
    if facts.again and facts.again.exact is not None:
        again = names["again"]
        yield (
            f"Second rating: {grade_words.percent(again['exact'])} of {again['ratings']} ratings are the same, the "
            f"largest gap is {grade_words.number(again['largest_gap'])}; with it {_other_grades(again['changed'])}."
        )


def _ties(rows: list[Row]) -> Iterator[str]:
    """The pairs of neighbours between which one step on the lightest question decides."""
    pairs = [
        f"{one['name']} with {other['name']}"
        for at, one in enumerate(rows)
        for other in rows[at + 1 :]
        if other["id"] in one["tied"]
    ]
    if pairs:
        more = f"; and {len(pairs) - _MOST_TIES} more" if len(pairs) > _MOST_TIES else ""
        yield f"Tied: {'; '.join(pairs[:_MOST_TIES])}{more}."


def _other_grades(changed: list[Row]) -> str:
    return listed(f"{one['name']} would get {one['again']} instead of {one['first']}" for one in changed) or (
        "no grade would change"
    )


def _legend(facts: Facts, rows: list[Row]) -> str:
    how = grade_rows.firmness(facts)
    if how is None:
        return "Nothing is rated against a checklist, so there is nothing to work out."
    marks = [
        words
        for words, there in (
            ("~: uncertain", any(part["low"] < part["high"] for row in rows for part in row["working"])),
            ("!: below the floor", any(row["capped"] for row in rows)),
        )
        if there
    ]
    error = grade_words.number(100 * how["error"])
    return (
        f"keeps: share of weightings around yours that leave the earned grade as it is. first: share of all weightings "
        f"that put it first ({how['draws']:,} draws, seed {how['seed']}, within {error} point). "
        + ("".join(f"{mark}. " for mark in marks))
        + "What would change each grade: grades.html of a build, or --format json."
    )
