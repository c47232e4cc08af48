"""YAML as an author may write it, or break it: what arrives, what is found, and where."""

from __future__ import annotations

import time

import pytest

from scriptkit import build
from scriptkit.places import SourceFile
from scriptkit.reading import nodes
from tests.reading.episodes import GOOD, of_kind, one, seen


@pytest.mark.parametrize(
    "written", ["NO", "9:30", "0123", "10.5555", "2026-01-01", "1e3", "on", "0x1F", "null", "1_000"]
)
def test_a_text_arrives_as_it_was_written(episode, written: str) -> None:
    folder = episode({"outline.yaml": f"title: {written}\nexercises: {{hang: {{name: Hang, grade: {written}}}}}\n"})
    read = build.read(folder).episode
    assert (read.title, read.exercises["hang"].grade) == (written, written)


@pytest.mark.parametrize("written", ["", "~"])
def test_a_key_without_a_value_is_a_key_left_out(episode, written: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}question: {written}\npace: {written}\nsponsor: {written}\n"})
    assert seen(folder) == []
    assert build.read(folder).episode.pace is None


def test_a_quoted_tilde_is_a_text(episode) -> None:
    assert build.read(episode({"outline.yaml": f'{GOOD}question: "~"\n'})).episode.question == "~"


def test_a_syntax_error_ends_the_reading_of_its_own_file_alone(episode) -> None:
    folder = episode(
        {
            "outline.yaml": f"{GOOD}evidence: [evidence.yaml, more.yaml]\npase: 150\n",
            "evidence.yaml": "sources:\n  a: {title: One: two}\n",
            "more.yaml": "sources: {b: {titel: Three}}\n",
        }
    )
    assert seen(folder) == [
        ("yaml-syntax", "evidence.yaml", 2, 17),
        ("unknown-key", "more.yaml", 1, 15),
        ("unknown-key", "outline.yaml", 4, 1),
    ]


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("title: One: two\n", (1, 11), "needs quotes"),
        ('title: "One\nexercises: {}\n', (1, 8), "a quote is opened here and not closed"),
        ("title: One\nmarkets: [US,\nexercises: {}\n", (2, 10), "not closed"),
        ("title: One\n  pace: 3\n", (2, 7), "needs quotes"),
        ("title: *very* good\n", (1, 8), "starts with * or & needs quotes"),
        ("title: *very\n", (1, 8), "starts with * needs quotes"),
        ("title: %good\n", (1, 8), "needs quotes"),
        ('title: "a\\d"\n', (1, 10), "a backslash in double quotes"),
        ("title: One\n- two\n", (2, 1), "key was expected"),
        ("title: 'One' two\n", (1, 14), "key was expected"),
    ],
)
def test_a_syntax_error_is_told_in_plain_words_where_it_is(episode, text: str, place, words: str) -> None:
    (found,) = of_kind(episode({"outline.yaml": text}), "yaml-syntax")
    assert (found.place[1:], words in found.message) == (place, True), found.message


def test_every_line_indented_with_a_tab_is_found_and_the_rest_is_read(episode) -> None:
    folder = episode({"outline.yaml": b"title: One\nexercises:\n\thang:\n\t\tname: Hang\n\t\tgrad: A\npase: 1\n"})
    assert seen(folder) == [
        ("tab-indent", "outline.yaml", 3, 1),
        ("tab-indent", "outline.yaml", 4, 1),
        ("tab-indent", "outline.yaml", 5, 1),
        ("unknown-key", "outline.yaml", 5, 3),
        ("unknown-key", "outline.yaml", 6, 1),
    ]


def test_a_tab_that_indents_nothing_is_no_fault(episode) -> None:
    text = b'title:\tOne\t# a\ttab\nquestion: "a\tb"\nexercises: {hang:\t{name: Hang}}\n\t\n\t# alone\n'
    folder = episode({"outline.yaml": text})
    assert seen(folder) == []
    assert build.read(folder).episode.question == "a\tb"


def test_a_tab_inside_a_long_text_is_found_where_it_breaks_the_indent(episode) -> None:
    assert one(episode({"outline.yaml": GOOD.encode() + b"question: |\n\twhy\n"}), "tab-indent") == (
        "outline.yaml",
        4,
        1,
    )


def test_an_anchor_repeats_a_piece(episode) -> None:
    folder = episode(
        {"outline.yaml": f"{GOOD}paces: {{opening: &p 170, close: *p}}\nquestion: &p what\naudience: *p\n"}
    )
    read = build.read(folder).episode
    assert (dict(read.paces), read.audience, seen(folder)) == ({"opening": 170, "close": 170}, "what", [])


def test_an_anchor_that_contains_itself_is_found_and_the_rest_is_read(episode) -> None:
    folder = episode({"outline.yaml": f"{GOOD}terms: &t {{a: *t}}\npase: 150\n"})
    assert seen(folder) == [("endless-anchor", "outline.yaml", 3, 11), ("unknown-key", "outline.yaml", 4, 1)]


def test_anchors_that_expand_without_end_take_no_time(episode) -> None:
    lines = ["a: &a [x, x, x, x, x, x, x, x, x, x]"]
    lines += [
        f"{new}: &{new} [{', '.join([f'*{old}'] * 10)}]" for old, new in zip("abcdefghij", "bcdefghijk", strict=True)
    ]
    folder = episode({"outline.yaml": GOOD + "\n".join(lines) + "\n"})
    start = time.process_time()
    found = of_kind(folder, "endless-anchor")
    assert len(found) == 1
    assert time.process_time() - start < 5


@pytest.mark.parametrize("unit", ["[", "{", "- ", "? ", "a: {", "[{a: "])
def test_nesting_without_end_is_found_and_goes_no_deeper(unit: str) -> None:
    tree = nodes.read(SourceFile("outline.yaml", unit * 50_000))
    assert [found.name for found in tree.findings] == ["too-deep"]


def test_a_second_document_is_found_and_the_first_is_read(episode) -> None:
    folder = episode({"outline.yaml": f"---\n{GOOD}pase: 1\n---\ntitle: Two\n"})
    assert seen(folder) == [("unknown-key", "outline.yaml", 4, 1), ("second-document", "outline.yaml", 5, 1)]
    assert build.read(folder).episode.title == "One"


def test_a_tag_runs_nothing_and_is_told(episode, tmp_path) -> None:
    mark = tmp_path / "ran"
    folder = episode(
        {"outline.yaml": f"{GOOD}question: !!python/object/apply:os.mkdir [{mark}]\naudience: !Wow runners\n"}
    )
    assert seen(folder) == [
        ("unknown-tag", "outline.yaml", 3, 11),
        ("wrong-type", "outline.yaml", 3, 42),
        ("unknown-tag", "outline.yaml", 4, 11),
    ]
    assert build.read(folder).episode.audience == "runners"
    assert not mark.exists()


@pytest.mark.parametrize(
    ("line", "name", "column"),
    [
        ("? [a, b]\n: c", "wrong-type", 3),
        ("? {a: b}\n: c", "wrong-type", 3),
        ("~: c", "wrong-type", 1),
        ("<<: {pace: 150}", "unknown-key", 1),
        ('"pase": 150', "unknown-key", 2),
    ],
)
def test_a_strange_key_is_found_where_it_stands(episode, line: str, name: str, column: int) -> None:
    assert seen(episode({"outline.yaml": f"{GOOD}{line}\n"})) == [(name, "outline.yaml", 3, column)]


def test_an_escape_that_gives_no_text_is_found(episode) -> None:
    folder = episode({"outline.yaml": 'title: "O\\x01\\0ne"\nexercises: {hang: {name: "\\ehang"}}\n'})
    assert {found.name for found in of_kind(folder, "unreadable-character")} == {"unreadable-character"}
    assert build.read(folder).episode.title == "O  ne"


def test_the_place_of_a_text_is_its_first_word(episode) -> None:
    text = (
        "title: One\n"
        "pace: 'fast'\n"
        "paces: {opening: &x slow}\n"
        "checklist:\n"
        "  scale: |2 # from 1 to 5\n"
        "    wide\n"
        "  criteria: {long: {ask: Long?, weight: !!str heavy}}\n"
        "exercises: {hang: {name: Bar hang}}\n"
    )
    found = {one.place[1:] for one in of_kind(episode({"outline.yaml": text}), "wrong-type")}
    assert found == {(2, 8), (3, 21), (6, 5), (7, 47)}


def test_a_map_of_200_000_keys_is_read_in_time() -> None:
    text = GOOD + "terms:\n" + "".join(f"  k{number}: x\n" for number in range(200_000))
    start = time.process_time()
    tree = nodes.read(SourceFile("outline.yaml", text))
    assert time.process_time() - start < 20
    assert tree.findings == []
    assert tree.top is not None
    assert len(tree.top.pairs()[2][1].pairs()) == 200_000


@pytest.mark.parametrize(
    "unit",
    [
        "\t",
        " ",
        "# ",
        "'",
        '"',
        '"\n',
        "*",
        "&a ",
        ": ",
        "- a\n",
        "a\n",
        "|\n",
        "\\",
        "\u2028",
        "\t\n",
        "[]",
        "{}",
        "!",
    ],
)
def test_a_large_file_of_anything_is_read_in_time(unit: str) -> None:
    file = SourceFile("outline.yaml", (GOOD + unit * (1_000_000 // len(unit))))
    start = time.process_time()
    nodes.read(file)
    assert time.process_time() - start < 15
