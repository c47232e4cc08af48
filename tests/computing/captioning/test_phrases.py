"""Where a line may end, as a table: a stroke marks the place."""

from __future__ import annotations

import pytest

from scriptkit.computing.captioning import phrases

NEVER = """
    the | muscle                    a | ledge                       an | inch
    under the | big one             my | calf                       of those | weights
    it is | growing                 they were | tested              the floor is | overused
    you can | push                  it would | have grown           it would have | grown
    we don't | know                 I've | put                      it's | growing
    that's | force                  they'd | bet                    you'll | know
    is never | said                 are only | told                 was slowly | lifted
    has not | grown                 I | wobble                      when she | wobbles
    before you | add weight         if it | hurts                   can you | push it
    to | lift                       want to | know                  not | growing
    he said — you | wobble          rose | —                        nice | 👍
    there's | a preprint
    """
AT_A_PRICE = """
    of | muscle                     and | slow                      because | floors fall
    which | hurts                   10 | weeks                      four | questions
    Smith | Machine                 the flat | muscle               the big calf | muscle
    for hill | runners              single-leg | raise              out | of five
    just | below it                 the calf's | bigger half
    """
PLAIN = """
    muscles | grow                  push it | slowly                give you | weeks
    """
WELL = """
    it grew | in weeks              grew | and shrank               the calf | of a runner
    runners | who wobble            put it down | because it hurts  the ledge | that's best
    """
BEST = """
    if it hurts, | stop             I'd say this: | stop            it grew — | a lot
    the ledge (the high one) | was  "so," | she said
    """


def rows(table: str) -> list[str]:
    return [cell.strip() for line in table.splitlines() for cell in line.split("  ") if cell.strip()]


def cost(row: str) -> int:
    before, after = row.split(" | ")
    return phrases.cost([*before.split(), *after.split()], len(before.split()))


@pytest.mark.parametrize("row", rows(NEVER))
def test_no_break_parts_what_belongs_together(row: str) -> None:
    assert cost(row) == phrases.NEVER


@pytest.mark.parametrize("row", rows(AT_A_PRICE))
def test_some_breaks_come_only_where_no_other_does(row: str) -> None:
    assert phrases.PLAIN < cost(row) < phrases.NEVER


@pytest.mark.parametrize("row", rows(PLAIN))
def test_most_breaks_are_plain(row: str) -> None:
    assert cost(row) == phrases.PLAIN


@pytest.mark.parametrize("row", rows(WELL))
def test_a_line_ends_well_before_a_conjunction_and_a_preposition(row: str) -> None:
    assert phrases.CLAUSE < cost(row) < phrases.PLAIN


@pytest.mark.parametrize("row", rows(BEST))
def test_a_line_ends_best_where_a_clause_does(row: str) -> None:
    assert cost(row) == phrases.CLAUSE
