"""Everything on screen, in its order: cards, labels, and the sources of numbers that are spoken."""

from __future__ import annotations

import pytest

from scriptkit import build
from scriptkit.computing import graphics
from scriptkit.model import Graphic, Source
from scriptkit.shipped import shipped
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    MORE
    exercises: {hang: {name: Bar hang, grade: A}}
    sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid.}
    sources:
      orre-2021: {title: One, authors: [Orre B, Lind P], year: 2021, journal: Made-up Journal, invented: true}
      vell-2020: {title: Two, authors: [Vell S], year: 2020, invented: true}
    """
HANG = """
    [screen: Bar hang: A] It builds 12 percent more grip. [from orre-2021] And 14 percent more nerve. [from orre-2021]
    It builds a stronger grip. [from vell-2020] Over eight weeks they gained 4 kilos. [from vell-2020]
    """


def shown(episode: Write, hang: str = HANG, more: str = "") -> list[Graphic]:
    files = {
        "outline.yaml": OUTLINE.replace("MORE", more),
        "segments/hang.md": hang,
        "segments/sponsor.md": "[screen: Ad. Quennick Socks paid.] Ad. Quennick Socks paid. They're grey. [aside]",
    }
    return list(build.as_built(worked_out(episode(files))).graphics)


def sources(found: list[Graphic]) -> list[Graphic]:
    return [one for one in found if one.kind == "citation"]


def test_a_number_that_is_spoken_brings_its_source_once_for_sentences_in_a_row(episode: Write) -> None:
    found = sources(shown(episode))
    assert [one.sources for one in found] == [("orre-2021",), ("vell-2020",)]
    assert [one.text for one in found] == ["Orre & Lind 2021, Made-up Journal, invented", "Vell 2020, invented"]


def test_a_sentence_without_a_number_brings_none(episode: Write) -> None:
    assert sources(shown(episode, "It builds a stronger grip. [from vell-2020]")) == []


def test_it_stands_until_it_is_read_and_makes_room_for_the_next(episode: Write) -> None:
    first, last = sources(shown(episode))
    assert first.end <= last.start
    assert last.end - last.start >= last.reads


def test_it_can_be_switched_off(episode: Write) -> None:
    assert sources(shown(episode, more="cards: {citations: no}")) == []


def test_grades_disclosures_and_the_checklist_are_told_apart(episode: Write) -> None:
    kinds = {one.text: one.kind for one in shown(episode)}
    assert kinds["Bar hang: A"] == "grade"
    assert kinds["Ad. Quennick Socks paid."] == "disclosure"
    sample = build.as_built(build.work_out(build.read(shipped("sample_episode")))).graphics
    assert {one.kind for one in sample if one.segment == "checklist"} == {"checklist"}


def test_all_of_it_is_in_the_order_in_which_it_comes(episode: Write) -> None:
    starts = [one.start for one in shown(episode)]
    assert starts == sorted(starts)


@pytest.mark.parametrize(
    ("source", "text"),
    [
        (Source(title="One", authors=("Orre B", "Lind P", "Moor T"), year="2021"), "Orre et al. 2021"),
        (Source(title="A count of calf exercises among runners in two gyms", year="2026"),
         "A count of calf exercises among runners… 2026"),
        (Source(id="tally"), "tally"),
        (Source(title="One", authors=("Orre B",), year="2021", status="retracted"), "Orre 2021, retracted"),
    ],
)  # fmt: skip
def test_a_source_is_named_as_short_as_it_can_be_found_by(source: Source, text: str) -> None:
    assert graphics.short(source) == text
