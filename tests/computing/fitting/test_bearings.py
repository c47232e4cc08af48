"""Where things fall on the clock, held against times that are counted by hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from scriptkit.computing.fitting import bearings
from scriptkit.model.fitting import Bearings
from tests.scripts import timed, worked_out

Writer = Callable[[Mapping[str, str | bytes]], Path]
OUTLINE = """\
title: Ways to train your grip
promises: {swap: which one to drop, rest: how long to rest}
sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this., window: {after: 10s, before: 50%}}
exercises: {hang: {name: Bar hang}, row: {name: Ring row}, curl: {name: Rope curl}}
order: [opening, hang, sponsor, row, curl, chat, close]
"""
CAMERA, BAR = "[shot MS front: presenter to camera]", "[shot CU side: hands on the bar]"
TEXTS = {
    "opening": f"{CAMERA} Which one to drop? [promise swap]",
    "hang": f"{CAMERA} Here it is. [hold 20s: the bar] {BAR} It is fine. [screen: fine] [hold 30s: more]",
    "sponsor": f"{CAMERA} Ad. Quennick Socks paid for this.",
    "row": f"{CAMERA} Ring row. [hold 10s: the ring] I'd drop it. [payoff swap]",
    "curl": f"{BAR} Rope curl. [hold 10s: the rope] I'd still drop it. [payoff swap]",
    "chat": f"{CAMERA} So.",
    "close": f"{CAMERA} Bye.",
}


def found(episode: Writer, **texts: str) -> tuple[Bearings, dict[str, tuple[float, float]]]:
    """The bearings of the small episode, and start and length of its segments."""
    files = {f"segments/{name}.md": f"{text}\n" for name, text in {**TEXTS, **texts}.items()}
    facts = worked_out(episode({"outline.yaml": OUTLINE, **files}))
    return bearings.find(facts), {one: (timed(facts, one).start, timed(facts, one).total) for one in TEXTS}


def test_the_sponsor_lands_where_its_segment_stands(episode: Writer) -> None:
    where, clock = found(episode)
    (landing,) = where.sponsor
    whole = sum(total for _, total in clock.values())
    assert (landing.segment, landing.start, landing.end) == ("sponsor", clock["sponsor"][0], sum(clock["sponsor"]))
    assert landing.after == 10.0
    assert landing.before == pytest.approx(whole / 2)


def test_the_same_picture_goes_on_over_segments_and_words_do_not_change_it(episode: Writer) -> None:
    where, clock = found(episode)
    assert where.still
    assert (where.still.segment, where.still.seen) == ("hang", "hands on the bar")
    assert where.still.end == pytest.approx(sum(clock["hang"]))
    assert 30 < where.still.end - where.still.start < 34
    where, clock = found(episode, chat=f"{CAMERA} So. [hold 40s: nothing]")
    assert where.still
    assert (where.still.segment, where.still.start) == ("chat", clock["chat"][0])
    assert where.still.end == pytest.approx(sum(clock["close"]))


def test_promises_are_told_with_each_time_they_are_made_and_kept(episode: Writer) -> None:
    where, clock = found(episode)
    swap, rest = where.promises
    assert (swap.id, len(swap.made), len(swap.paid)) == ("swap", 1, 2)
    assert clock["row"][0] < swap.paid[0] < clock["curl"][0] < swap.paid[1] < clock["chat"][0]
    assert (rest.made, rest.paid) == ((), ())


def test_an_exercise_of_more_than_twice_the_middle_one_is_out_of_proportion(episode: Writer) -> None:
    where, clock = found(episode)
    (hang,) = where.outweighs
    assert (hang.segment, hang.than) == ("hang", "median")
    assert hang.limit == sorted(clock[name][1] for name in ("hang", "row", "curl"))[1]
    assert found(episode, hang=TEXTS["row"])[0].outweighs == ()


def test_so_is_what_grades_nothing_and_takes_longer_than_each_exercise(episode: Writer) -> None:
    where, clock = found(episode, chat="So. [hold 99s: nothing]", hang=TEXTS["row"], sponsor="Ad. [hold 90s: socks]")
    (chat,) = where.outweighs
    assert (chat.segment, chat.total, chat.than) == ("chat", clock["chat"][1], "longest")
