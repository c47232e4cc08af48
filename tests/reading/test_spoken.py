"""Spoken text as an author writes it: what is said, what is not, marks, and where everything stands."""

from __future__ import annotations

import time

import pytest

from scriptkit import build, model
from scriptkit.places import SourceFile
from scriptkit.reading import spoken
from tests.reading.episodes import GOOD, seen, spoken_findings


def read(episode, text: str) -> model.Segment:
    """The segment of an exercise whose text this is."""
    material = build.read(episode({"outline.yaml": GOOD, "segments/hang.md": text.encode()}))
    return next(segment for segment in build.work_out(material).segments if segment.id == "hang")


def said(episode, text: str) -> list[str]:
    """What is spoken, a paragraph a line."""
    paragraphs = read(episode, text).paragraphs
    return [" ".join(sentence.text for sentence in one.sentences) for one in paragraphs if one.sentences]


def marks(episode, text: str) -> list[tuple[str, int, int]]:
    """Every mark with its line and column."""
    segment = read(episode, text)
    found = [mark for sentence in segment.sentences for _, mark in sentence.cues]
    found += [mark for paragraph in segment.paragraphs for _, mark in paragraph.loose]
    return [(mark.raw, mark.place.line, mark.place.column) for mark in found]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("One thought\nover two lines.", ["One thought over two lines."]),
        ("One.\n\nTwo.", ["One.", "Two."]),
        ("- One.\n- Two\n  goes on.", ["One.", "Two goes on."]),
        ("1. One.\n2. Two.", ["One.", "Two."]),
        ("> Quoted.\n> On.", ["Quoted. On."]),
        ("> - Deep.\n\n* * *\n", ["Deep."]),
        ("*Soft* and **loud** and ***both***.", ["Soft and loud and both."]),
        ("# A heading\n\nSaid.", ["Said."]),
        ("Said.\n---\nMore.", ["Said.", "More."]),
        ("Said.\n\n***\n", ["Said."]),
        ("<!-- a note -->Said.<!-- another -->", ["Said."]),
        ("Said, <!-- a note\nover lines --> still.", ["Said, still."]),
        ("<!-- a note\nover\n\nlines -->     Said.", ["Said."]),
        ("A [link](https://example.org 'its title') here.", ["A link here."]),
        (
            "A [link][1] and [another].\n\n[1]: https://example.org\n[another]: <https://example.org/a>\n",
            ["A link and another."],
        ),
        ("An ![image](x.png) here.", ["An here."]),
        ("See <https://example.org>.", ["See https://example.org."]),
        ("Salt &amp; pepper caf&eacute; &#8211; &nosuch;", ["Salt & pepper café – &nosuch;"]),
        ("\\*Not soft\\*", ["*Not soft*"]),
        ("Hard  \nbreak\\\nhere.", ["Hard break here."]),
        ("2 * 3 * 4", ["2 * 3 * 4"]),
        ("a_b_c", ["a_b_c"]),
        ("I like {{ exercise.name }}.", ["I like Bar hang."]),
        ("I like {{ '[opinion] }}' }} it.", ["I like [opinion] }} it."]),
        ("", []),
        ("\n\n \n", []),
    ],
)
def test_what_is_spoken(episode, text: str, words: list[str]) -> None:
    assert said(episode, text) == words


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a\n\n| a | b |\n|---|---|\n| 1 | 2 |\n", [("not-spoken", 3, 1)]),
        ("I `like` it.", [("not-spoken", 1, 3)]),
        ("```\n[from x]\n```\n", [("not-spoken", 1, 1)]),
        ("a\n\n    code\n", [("not-spoken", 3, 5)]),
        ("<div>\nx\n</div>\n", [("not-spoken", 1, 1)]),
        ("I <b>like</b> it.", [("not-spoken", 1, 3), ("not-spoken", 1, 10)]),
        ("- a\n- b `c`\n", [("not-spoken", 2, 5)]),
        ("> a\n> b `c`\n", [("not-spoken", 2, 5)]),
        ("<!-- not closed\n\nb", [("not-spoken", 1, 1)]),
        ("<!-- x -->a `b` <!-- y --> `c`", [("not-spoken", 1, 13), ("not-spoken", 1, 28)]),
        ("# H [opinion] #\n\na", [("mark-out-of-place", 1, 5)]),
        ("## H\u2028 [x]\n", [("mark-out-of-place", 1, 7)]),
    ],
)
def test_what_cannot_be_spoken_is_found_where_it_stands(text: str, found) -> None:
    assert spoken_findings(text) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("I like it. [opinion]", [("opinion", 1, 12)]),
        ("It works. [from\norre-2021,\nlind-2019] More.", [("from orre-2021, lind-2019", 1, 11)]),
        ("> It works.\n> [from a]\n", [("from a", 2, 3)]),
        ("- x\n- It works. [from a]\n", [("from a", 2, 13)]),
        ("*It works.* [from a] [opinion]", [("from a", 1, 13), ("opinion", 1, 22)]),
        ("Salt &amp; \\* it. [from a]", [("from a", 1, 19)]),
        ("[link](x_(y) 'opinion') it. [opinion]", [("opinion", 1, 29)]),
        ("a <!-- a\nb --> it. [opinion]", [("opinion", 2, 11)]),
        ("x\n\n[shot CU side: a [small] step; reps 3]", [("shot CU side: a [small] step; reps 3", 3, 1)]),
        ("x\n\n[screen: {{ exercise.name }}: A]", [("screen: Bar hang: A", 3, 1)]),
        ("[screen: {{ '] [' }}]", [("screen: ] [", 1, 1)]),
        ("[opinion]: yes", [("opinion", 1, 1)]),
        ("Yes. [opinion]\n\n[opinion]: no\n", [("opinion", 1, 6), ("opinion", 3, 1)]),
        ("Open [ here. I like it. [opinion]", [("opinion", 1, 25)]),
        ("Shut ] here. I like it. [opinion]", [("opinion", 1, 25)]),
        ("Open ![ here. I like it. [opinion]", [("opinion", 1, 26)]),
        ("Escaped \\[opinion] here.", []),
        ("Open {{ here. [opinion]", [("opinion", 1, 15)]),
        ("é🙂 it. [opinion]", [("opinion", 1, 8)]),
        ("a\u2028b [opinion]\nc [aside]", [("opinion", 1, 5), ("aside", 2, 3)]),
        ("{# a [from x] #}It. [opinion]", [("opinion", 1, 21)]),
    ],
)
def test_marks_are_read_where_they_stand(episode, text: str, found) -> None:
    assert marks(episode, text) == found


def test_an_unclosed_bracket_or_tag_does_not_reach_into_the_next_paragraph(episode) -> None:
    assert marks(episode, "Open [ and {{ here.\n\nIt. [opinion]") == [("opinion", 3, 5)]
    assert said(episode, "Open [ here.\n\nI like {{ exercise.name }}.")[1] == "I like Bar hang."


def test_a_word_keeps_its_place_behind_anything(episode) -> None:
    text = "x\n\n> &amp; \\* [a b](c 'd') ![e](f) <!-- g --> **h** {{ exercise.name }} last.\n"
    (sentence,) = read(episode, text).paragraphs[1].sentences
    place = sentence.place_of(sentence.text.index("last"))
    assert (place.line, place.column) == (3, text.splitlines()[2].index("last") + 1)


COMMENT = "<!-- allow: NAME because meant -->"


@pytest.mark.parametrize(
    ("text", "covered"),
    [
        ("COMMENT I like it.", [(1, 1)]),
        ("I like it. COMMENT", [(1, 1)]),
        ("I like\nit. COMMENT\nMore.", [(1, 3)]),
        ("One.\n\nCOMMENT\nTwo.\nThree.", [(4, 5)]),
        ("One.\n\nCOMMENT\n\n\nTwo.", [(6, 6)]),
        ("One.\nCOMMENT\n\nTwo.", [(1, 1)]),
        ("One.\n<!-- x -->\nCOMMENT\n\nTwo.", [(1, 1)]),
        ("COMMENT\nCOMMENT\nOne.", [(3, 3), (3, 3)]),
        ("COMMENT COMMENT\n\nOne.", [(3, 3), (3, 3)]),
        ("- One.\n- Two. COMMENT\n- Three.", [(2, 2)]),
        ("# H\n\nCOMMENT\n\nOne.", [(5, 5)]),
        ("One.\n\n<!-- allow: NAME\nbecause it\nis meant -->\nTwo.", [(6, 6)]),
        ("One.\n\nCOMMENT", [(3, 3)]),
    ],
)
def test_an_allow_comment_covers_its_paragraph_or_the_next_one(text: str, covered) -> None:
    allows: list[model.Allow] = []
    text = text.replace("COMMENT", COMMENT)
    spoken.read("hang", "episode", SourceFile("segments/hang.md", text), [], allows)
    assert [(allow.first, allow.last) for allow in allows] == covered
    assert {allow.name for allow in allows} == {"NAME"}


@pytest.mark.parametrize(
    "words", ["allow:", "allow: not-spoken", "allow: not-spoken because", "allow: because x", "allow: a because ?"]
)
def test_an_allow_comment_needs_a_name_and_a_reason(words: str) -> None:
    assert spoken_findings(f"a\n\nb <!-- {words} -->") == [("allow-without-reason", 3, 3)]


def test_an_allowed_finding_is_allowed_and_an_unused_comment_is_found(episode) -> None:
    text = "<!-- allow: not-spoken because I read it out -->\nI `like` it.\n\n"
    text += "<!-- allow: not-spoken because x -->\nMore.\n"
    folder = episode({"outline.yaml": GOOD, "segments/hang.md": text})
    assert ("allow-unused", "segments/hang.md", 4, 1) in seen(folder)
    allowed = [one for one in build.check(build.work_out(build.read(folder)), "draft") if one.allowed]
    assert [(one.name, one.allowed) for one in allowed] == [("not-spoken", "I read it out")]


UNITS = [
    "[", "]", "[a", "![", "[a](", "[a](b", "[a][", "[[]", "]:", "{{", "{%", "{#", "}}", "{{ x }}", "{{ ' ", "[{{",
    "[{{]", "*", "**a ", "_a ", "*a **b ", "`", "`a", "<", "<a", "<!--", "<!-- a", "-->", "<!---->", COMMENT + "\n",
    "a " + COMMENT, "\\", "\\[", "&", "&amp;", "&#", "> ", "- ", "-\n", "1. ", "| a ", "|-", "# ", "\n# a",
    "[a]: b\n", "[a]: /b\n", "[a]: <", "[a]: /b '", "http://", "<http://", "a@b.", "\n", "a\n", "\t", "```\n",
    "    a\n", " ", "\u2028", "<?", "<![CDATA[", "{{ a[0] }}", "[from x] ", "{% if x %}", '"{{', "''",
]  # fmt: skip


@pytest.mark.parametrize("unit", UNITS)
def test_400_kb_of_anything_are_read_in_time(unit: str) -> None:
    file = SourceFile("segments/hang.md", (unit * (400_000 // len(unit) + 1))[:400_000])
    start = time.process_time()
    spoken.read("hang", "episode", file, [], [])
    assert time.process_time() - start < 15  # one or two seconds; a square would take minutes


@pytest.mark.parametrize(
    "text",
    [
        "\n".join(">" * depth for depth in range(1, 890)),
        "\n".join(" " * depth + "- a" for depth in range(1, 890)),
        ">" * 200_000 + "a",
        "- " * 100_000 + "a",
        "[" * 150_000 + "]" * 150_000,
        "*a " * 60_000 + "a* " * 60_000,
        "|" + "a|" * 90_000 + "\n|" + "-|" * 90_000 + "\n",
        "".join(f"[a{number}]: /b\n" for number in range(20_000)) + "[a1] " * 20_000,
    ],
    ids=["quotes", "lists", "one quote", "one list", "brackets", "emphasis", "table", "references"],
)
def test_nesting_without_end_is_read_in_time(text: str) -> None:
    start = time.process_time()
    spoken.read("hang", "episode", SourceFile("segments/hang.md", text), [], [])
    assert time.process_time() - start < 15
