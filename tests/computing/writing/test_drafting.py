"""A draft is Markdown that reads well and says what the stock text said."""

from __future__ import annotations

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
