"""What is published is held to its limits, and what was shortened or changed for them is told."""

from __future__ import annotations

import pytest

from tests.running import run
from tests.scripts import Write, found, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang}, row: {name: Row}}\n"
CLAIM = """title: One
exercises: {hang: {name: Bar hang, claims: [{say: It rose., source: mora}]}}
sources: {mora: {title: Hangs}}
"""


def told(episode: Write, name: str, outline: str, **files: str) -> list[tuple[str, str]]:
    texts = {f"segments/{key}.md": text for key, text in files.items()}
    return found(worked_out(episode({"outline.yaml": outline, **texts})), name, "publish")


@pytest.mark.parametrize(("length", "times"), [(100, 0), (101, 1)])
def test_a_title_of_more_than_a_hundred_characters_is_too_long(episode: Write, length: int, times: int) -> None:
    outline = ONE.replace("title: One", f"title: {'é' * length}")
    assert [place for place, _ in told(episode, "title-too-long", outline)] == ["outline.yaml:1:8"] * times


def test_an_angle_bracket_in_the_title_is_told_at_the_sign(episode: Write) -> None:
    outline = ONE.replace("title: One", "title: Grip in <12 weeks")
    ((place, message),) = told(episode, "title-with-bracket", outline)
    assert (place, '"<"' in message) == ("outline.yaml:1:16", True)
    assert told(episode, "title-with-bracket", ONE.replace("One", "Grip & more")) == []


def test_it_is_an_error_when_the_episode_comes_out_and_a_note_before(episode: Write) -> None:
    folder = episode({"outline.yaml": ONE.replace("title: One", "title: Grip > all") + "question: Which?\n"})
    assert run("check", folder).status == 0
    assert run("check", folder, "--stage", "publish").status == 1


def test_a_text_with_a_bracket_is_told_with_what_stands_in_the_description(episode: Write) -> None:
    ((place, message),) = told(episode, "bracket-replaced", ONE + "credits: [N. N., the <3 people>]\n")
    assert place == "outline.yaml:3:22"
    assert message == '"the <3 people>" stands in the description as "the under 3 people›".'


def test_a_bracket_that_is_never_published_is_nobodys_fault(episode: Write) -> None:
    assert told(episode, "bracket-replaced", CLAIM.replace("title: Hangs", "title: Hangs, note: a < b")) == []
    assert len(told(episode, "bracket-replaced", CLAIM.replace("title: Hangs", "title: Hangs < rows"))) == 1


def test_too_few_chapters_are_told_from_a_minute_on(episode: Write) -> None:
    order = ONE + "order: [hang]\n"
    ((place, message),) = told(episode, "chapters-too-few", order, hang="Here it is. [aside] [hold 70s: hang]")
    assert place == "outline.yaml:3:8"
    assert message == "There are no chapters: 1 would come about, and 3 are needed."
    assert told(episode, "chapters-too-few", order, hang="Here it is. [aside] [hold 50s: hang]") == []


def test_a_title_that_is_cut_is_told_with_both(episode: Write) -> None:
    long = "Bar hang with straight arms and both feet off the floor"
    outline = ONE.replace("name: Bar hang", f"name: {long}")
    ((_, message),) = told(episode, "chapter-title-cut", outline, hang="Here it is. [aside] [hold 12s: hang]")
    assert message == (
        f'"{long}" has {len(long)} characters; the chapter is called "Bar hang with straight arms and both feet off…".'
    )


def test_a_link_that_looks_paid_is_told_unless_it_says_so(episode: Write) -> None:
    links = "links: [{to: 'https://example.org/?ref=me'}, {to: 'https://example.org/?aff=1', paid: affiliate}]"
    assert [place for place, _ in told(episode, "link-perhaps-paid", ONE + links)] == ["outline.yaml:3:15"]


LINKS = "links: [&a {to: https://example.org/" + "x" * 460 + "}" + ", *a" * 9 + "]\n"  # 4,820 bytes


def test_steps_are_told_and_links_are_not_dropped(episode: Write) -> None:
    ((_, message),) = told(episode, "description-shortened", CLAIM + LINKS + "credits: [N. N. held the camera]\n")
    assert message.startswith("To fit, the description was shortened: ")
    assert told(episode, "description-shortened", CLAIM) == []
    assert told(episode, "description-too-long", ONE) == []
    ((_, long),) = told(episode, "description-too-long", ONE + LINKS.replace("*a]", "*a, *a]"))
    assert "may have 5,000, shortened as far as it can be" in long


def test_references_that_stand_nowhere_are_told_unless_they_have_a_page(episode: Write) -> None:
    outline = CLAIM + LINKS
    assert [place for place, _ in told(episode, "references-not-listed", outline)] == ["outline.yaml:1:1"]
    assert told(episode, "references-not-listed", outline + "references: {page: https://example.org/hangs}\n") == []


def test_a_reference_style_with_a_slip_gets_a_near_name(episode: Write) -> None:
    ((place, message),) = told(episode, "unknown-word", ONE + "references: vancuver\n")
    assert (place, "vancuver" in message) == ("outline.yaml:3:13", True)
    assert "vancouver" in run("check", episode({"outline.yaml": ONE + "references: vancuver\n"})).out


@pytest.mark.parametrize(
    ("to", "count"),
    [
        ("https://example.org/a", 0),
        ("http://example.org", 0),
        ("example.org/a?b=c", 0),
        ("see my notes", 1),
        ("notes", 1),
    ],
)
def test_a_link_can_be_clicked(episode: Write, to: str, count: int) -> None:
    outline = f"title: One\nexercises: {{hang: {{name: Bar hang}}}}\nlinks: [{{to: '{to}', what: A plan}}]\n"
    assert len(found(worked_out(episode({"outline.yaml": outline})), "link-form", "publish")) == count
