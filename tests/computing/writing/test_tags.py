"""Tags are found as they stand, and those without their other half are put right for Jinja."""

from __future__ import annotations

import time

from scriptkit import codes
from scriptkit.computing.writing import tags
from scriptkit.model import SegmentText
from scriptkit.places import SourceFile


def kinds(template: str) -> list[tuple[int, str, str]]:
    return [(one.tag, one.kind, one.word) for one in tags.take_apart(template).troubles]


def test_a_tag_may_hold_its_own_end_between_quotes() -> None:
    tagged = tags.take_apart("a {{ '}}' }} b {% if x == \"%}\" %}c{% endif %}{# }} %} #}")
    assert [tag.text for tag in tagged.tags] == ["{{ '}}' }}", '{% if x == "%}" %}', "{% endif %}", "{# }} %} #}"]
    assert tagged.troubles == ()


def test_blocks_that_lack_a_half_are_told_at_the_tag_that_stands_alone() -> None:
    assert kinds("{% if a %}{% for b in c %}{% endif %}") == [(1, "syntax", "for")]
    assert kinds("{% endfor %}{% elif a %}") == [(0, "syntax", "endfor"), (1, "syntax", "elif")]
    assert kinds("{% for a in b %}{% else %}{% endfor %}") == []


def test_a_tag_that_spoken_text_cannot_use_is_told_once_for_both_its_halves() -> None:
    assert kinds("{% block a %}{% endblock %}{% block b %}{% endblock %}") == [
        (0, "forbidden", "block"),
        (2, "forbidden", "block"),
    ]


def test_an_opening_that_nothing_closes_ends_with_its_paragraph() -> None:
    tagged = tags.take_apart(f"a {{{{ b{codes.code(codes.PARAGRAPH, 1)}c {{{{ d }}}}")
    assert [(tag.text, number in tagged.instead) for number, tag in enumerate(tagged.tags)] == [
        ("{{", True),
        ("{{ d }}", False),
    ]


def test_what_stands_for_a_bad_tag_keeps_the_rest_in_shape() -> None:
    def stands_for(text: str) -> str:
        return tags.neutral(tags.take_apart(text).tags[0])

    assert stands_for("{{ a.b }}") == ""
    assert stands_for("{% if a.b %}") == "{% if false %}"
    assert stands_for("{%- for a in b -%}") == "{% for _ in [] %}"
    assert stands_for("{% set a = b %}") == '{% set a = "" %}'


def test_each_tag_is_found_in_the_authors_file() -> None:
    source = "- {{ a }} \\* and {{ a }}\n\n> {{ a\n> }} [from {{ b }}]\n"
    template = "".join(
        [
            codes.code(codes.PARAGRAPH, 0),
            "{{ a }}",
            codes.code(codes.AT, 9),
            " * and ",
            "{{ a }}",
            codes.code(codes.PARAGRAPH, 1),
            "{{ a\n}}",
            codes.code(codes.AT, 36),
            " ",
            codes.code(codes.MARK, 37),
            "from {{ b }}",
            codes.CLOSE,
        ]
    )
    text = SegmentText("a", "episode", SourceFile("a.md", source), template, ((1, 1), (3, 4)))
    assert tags.origins(tags.take_apart(template), text) == (2, 17, 28, source.index("{{ b"))


def test_openings_without_end_are_found_in_a_time_that_grows_with_the_text() -> None:
    started = time.process_time()
    for opening in ("{{ ", "{% '", '{# "', "{{ }"):
        tags.take_apart(opening * 100_000)
    assert time.process_time() - started < 10
