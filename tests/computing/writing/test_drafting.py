"""A draft is Markdown that reads well and says what the stock text said."""

from __future__ import annotations

import re

import pytest

from scriptkit import build, codes
from scriptkit.computing.writing.drafting import markdown
from scriptkit.computing.writing.paragraphs import RawParagraph
from tests.scripts import Write, words, worked_out

NAME = f"{codes.TAG}exercise.name|mid{codes.END}"


def drafted(text: str, *marks: tuple[int, str]) -> str:
    return markdown([RawParagraph(text, [], [(offset, raw, 0) for offset, raw in marks], 0)])


def test_marks_stand_where_they_stood_with_a_space_around_them() -> None:
    assert drafted("One. Two.", (0, "shot CU: a"), (4, "aside"), (9, "from b"), (9, "opinion")) == (
        "[shot CU: a] One. [aside] Two. [from b] [opinion]\n"
    )
    assert drafted("It grows, so.", (8, "from b")) == "It grows [from b], so.\n"


def test_names_and_grades_are_tags_in_words_and_in_marks() -> None:
    assert (
        drafted(f"Now {NAME}.", (0, f"screen: {NAME}"))
        == "[screen: {{ exercise.name | mid }}] Now {{ exercise.name | mid }}.\n"
    )


def test_what_markdown_or_a_tag_would_read_otherwise_has_a_backslash() -> None:
    assert drafted("# *a* _b_ `c` [d] <e> &amp; & {{ f }} {g}") == (
        "\\# \\*a\\* \\_b\\_ \\`c\\` \\[d\\] \\<e> \\&amp; & {{ '{' }}{ f }} {g}\n"
    )
    assert drafted("1. one") == "1\\. one\n"
    assert drafted("- one") == "\\- one\n"
    assert drafted("<!-- one -->") == "\\<\\!-- one -->\n"
    assert drafted(": one", (0, "aside")) == "[aside]\\: one\n"


def test_brackets_in_a_mark_have_a_backslash() -> None:
    assert drafted("One.", (4, "screen: a [b] \\c")) == "One. [screen: a \\[b\\] \\\\c]\n"


def test_paragraphs_have_an_empty_line_between_them() -> None:
    assert (
        markdown([RawParagraph("One.", [], [], 0), RawParagraph("", [], [(0, "aside", 0)], 1)]) == "One.\n\n[aside]\n"
    )


def test_a_segment_with_a_text_of_its_own_is_not_drafted(episode: Write) -> None:
    outline = "title: One\nexercises: {hang: {name: Bar hang, grade: A-}, row: {name: Row}}\n"
    drafts = build.drafts(build.read(episode({"outline.yaml": outline, "segments/row.md": "Mine. [aside]"})))
    assert list(drafts) == ["opening", "hang", "recap", "close"]
    assert "{{ exercise.grade | spoken | a }}" in drafts["hang"]
    assert "{{ exercises['hang'].name | mid }}" in drafts["recap"]
    assert "Bar hang" not in "".join(drafts.values())


def test_the_last_words_speak_of_one_exercise_as_one(episode: Write) -> None:
    for grade, asked in ((", grade: A", "If you'd grade it differently"), ("", "If you've tried it")):
        facts = worked_out(episode({"outline.yaml": f"title: One\nexercises: {{hang: {{name: Bar hang{grade}}}}}\n"}))
        assert [one for one in words(facts, "close") if one.startswith(asked)]


@pytest.mark.parametrize(
    ("claims", "told"),
    [
        ("[{say: I like it., opinion: true}, {say: I find it quick., opinion: true}]", True),
        ("[{say: I like it., opinion: true}, {say: Hang time rose., source: mora-2022}]", False),
        ("[{say: I like it., opinion: true}, {say: It builds grip.}]", False),
        ("[{say: I like it., opinion: true}, {say: It builds grip., sponsor_wording: true}]", False),
    ],
)
def test_a_draft_calls_it_all_opinion_only_where_the_outline_does(episode: Write, claims: str, told: bool) -> None:
    """Every wording of it, since neighbours on a list get different ones."""
    names = [f"hang{number}" for number in range(5)]
    hangs = "".join(f"      {name}: {{name: Hang, grade: A, claims: {claims}}}\n" for name in names)
    source = "    sources: {mora-2022: {title: Timed hangs, year: 2022, invented: true}}\n"
    facts = worked_out(episode({"outline.yaml": f"    title: One\n    exercises:\n{hangs}{source}"}))
    disowning = re.compile(r"\bno study\b|None of that comes|can't point you|all opinion")
    said = [[one for one in words(facts, name) if disowning.search(one)] for name in names]
    assert [len(lines) for lines in said] == [int(told)] * 5


def test_no_stock_wording_needs_an_article_before_a_name(episode: Write) -> None:
    """A name is often written without one: Romanian deadlift, single-leg bridge."""
    grades = ("A", "B", "C", "D", "A", "B", "A", "", "A", "A", "A", "A", "A", "", "")
    listed = "".join(
        f"      e{number}: {{name: Deadlift {chr(97 + number)}{f', grade: {grade}' if grade else ''}}}\n"
        for number, grade in enumerate(grades)
    )
    facts = worked_out(episode({"outline.yaml": f"    title: One\n    exercises:\n{listed}"}))
    said = [one.text for part in facts.segments for one in part.sentences if "eadlift" in one.text]
    assert len(said) > len(grades)
    bare = re.compile(r"(?:^|: |, | and |^Number \w+: )[Dd]eadlift|[Dd]eadlift \w, number")
    assert [
        one for one in said if not bare.search(one) or re.search(r"\b(?:to|for|with|of|grade) [Dd]eadlift", one)
    ] == []
