"""An erratum says what it corrects, since when, and the script does not say the wrong thing any more."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang}, row: {name: Row}}\norder: [opening, hang, close]\n"


def told(episode: Write, name: str, erratum: str, text: str = "Hello. [aside]") -> list[tuple[str, str]]:
    files = {"outline.yaml": f"{ONE}errata: [{{{erratum}}}]\n", "segments/hang.md": text}
    return found(worked_out(episode(files)), name, "publish")


@pytest.mark.parametrize("where", ["hang", "row", "opening"])
def test_segments_and_exercises_are_known(episode: Write, where: str) -> None:
    assert told(episode, "erratum-nowhere", f"was: a, now: b, where: {where}") == []


def test_another_id_is_told_with_a_near_one(episode: Write) -> None:
    assert [place for place, _ in told(episode, "erratum-nowhere", "was: a, now: b, where: hagn")] == [
        "outline.yaml:4:34"
    ]
    facts = worked_out(episode({"outline.yaml": ONE + "errata: [{was: a, now: b, where: hagn}]\n"}))
    assert helps(facts, "erratum-nowhere") == ['Did you mean "hang"?']


@pytest.mark.parametrize(
    ("erratum", "lacks"),
    [
        ("was: a, now: b", "which segment it is about or since when it is known"),
        ("was: a, now: b, where: hang", "since when it is known"),
        ("was: a, now: b, since: 2026-04-01", "which segment it is about"),
    ],
)
def test_what_an_erratum_does_not_say_is_told(episode: Write, erratum: str, lacks: str) -> None:
    assert told(episode, "erratum-incomplete", erratum) == [
        ("outline.yaml:4:10", f'The erratum "a" does not say {lacks}.')
    ]


def test_a_whole_erratum_is_left_in_peace(episode: Write) -> None:
    assert told(episode, "erratum-incomplete", "was: a, now: b, where: hang, since: 2026-04-01") == []


def test_what_is_still_said_is_told_at_its_sentence(episode: Write) -> None:
    erratum = "was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01"
    text = "Hello. [aside] It took 10 weeks. [aside]"
    assert told(episode, "erratum-still-said", erratum, text) == [
        ("segments/hang.md:1:16", 'This still says "ten weeks", which an erratum corrects: "It took 10 weeks."')
    ]
    assert told(episode, "erratum-still-said", erratum, text.replace("10", "8")) == []


@pytest.mark.parametrize("words", ["was: '', now: eight weeks", "was: ten, now: ' '", "was: ten weeks, now: ten weeks"])
def test_an_erratum_without_what_was_wrong_and_right_says_nothing(episode: Write, words: str) -> None:
    ((_, message),) = told(episode, "erratum-incomplete", f"{{{words}, where: hang, since: 2026-04-01}}")
    assert "what was wrong and what is right" in message
