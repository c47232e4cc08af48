"""Jinja in an author's text: facts go in, what cannot be used is told at its place, and the rest is still read."""

from __future__ import annotations

import time
from itertools import pairwise
from pathlib import Path

import pytest

from scriptkit import build
from tests.scripts import GRIP, Write, found, helps, with_hang, words

TAG = "tag-not-understood"


def test_facts_of_the_outline_are_filled_in(episode: Write) -> None:
    text = (
        "{{ exercise.name }} is number {{ exercise.place }}, and "
        "{{ exercises['row'].name | mid }} gets {{ exercises['row'].grade | a }}."
    )
    assert words(with_hang(episode, text)) == ["Bar hang is number 1, and ring row gets a B."]


def test_a_loop_and_a_choice_may_span_paragraphs_and_hold_marks(episode: Write) -> None:
    text = """
        {% for id in exercises %}{% if id == "row" %}

        {{ exercises[id].name }} is here. [aside]

        {% else %}

        Not that one. [aside]

        {% endif %}{% endfor %}
        """
    facts = with_hang(episode, text)
    assert words(facts) == ["Not that one.", "Ring row is here."]
    assert found(facts, TAG) == []


def test_a_comment_is_not_spoken_and_white_space_control_works(episode: Write) -> None:
    assert words(with_hang(episode, "Bar {#- not\nthis -#} bell, {{- ' so' }} they {{ 'say' -}} .")) == [
        "Barbell, so they say."
    ]


def test_every_misspelt_name_is_told_at_once_each_with_a_near_one(episode: Write) -> None:
    text = """
        Hello. [aside]

        - I like
          the {{ exercise.nam }}. [opinion]

        > And {{ exercises['rwo'].name }},
        > and {{ exercse.name }}. [opinion]
        """
    facts = with_hang(episode, text)
    assert found(facts, TAG) == [
        ("segments/hang.md:4:19", 'There is no "nam" to put into the text.'),
        ("segments/hang.md:6:21", 'There is no "rwo" to put into the text.'),
        ("segments/hang.md:7:10", 'There is no "exercse" to put into the text.'),
    ]
    assert helps(facts, TAG) == ['Did you mean "name"?', 'Did you mean "row"?', 'Did you mean "exercise"?']
    assert words(facts) == ["Hello.", "I like the .", "And , and ."]


@pytest.mark.parametrize(
    ("tag", "place", "message"),
    [
        ("{{ exercise.__class__ }}", 16, 'There is no "__class__" to put into the text.'),
        ("{{ ''['__class__'].__mro__ }}", 11, 'There is no "__class__" to put into the text.'),
        ("{{ exercise.update }}", 16, 'There is no "update" to put into the text.'),
        ("{{ exercise | attr('name') }}", 18, "Spoken text cannot use the filter `attr`."),
        ("{{ exercise.name | midd }}", 23, "Spoken text cannot use the filter `midd`."),
        ("{{ 1 is nosuch }}", 12, "Spoken text cannot use the test `nosuch`."),
        ("{{ exercise.name.upper() }}", 4, "Spoken text cannot use a call such as `name(...)`."),
        ("{% macro a() %}{% endmacro %}", 7, "Spoken text cannot use `macro`."),
        ("{% include '/etc/passwd' %}", 7, "Spoken text cannot use `include`."),
        ("{% raw %}{{ grade }}{% endraw %}", 7, "Spoken text cannot use `raw`."),
        ("{% set x %}y{% endset %}", 7, "Spoken text cannot use `set` without `=`."),
        ("{% 5 %}", 7, "Spoken text cannot use `5`."),
        ("{{ 1 / 2 }}", 4, "Spoken text cannot use `/`."),
        ("{{ 2 ** 9 }}", 4, "Spoken text cannot use `**`."),
        ("{{ 1 // 0 }}", 4, "A tag in this text is not understood: it divides by nought."),
        ("{{ 'a' * 9 }}", 4, "A tag in this text is not understood: `*` works on numbers; texts are joined with `~`."),
        ("{{ }}", 4, "A tag in this text is not understood: it is empty."),
        (
            "{{ none }}",
            4,
            "A tag in this text is not understood: there is nothing behind this name, so nothing can be said.",
        ),
        ("{{ exercises }}", 4, "A tag in this text is not understood: it has several parts, so say which: hang, row."),
        (
            "{{ 1 < 'a' }}",
            4,
            "A tag in this text is not understood: it asks for something that cannot be done with these things.",
        ),
        ("{{ exercise name }}", 16, "A tag in this text is not understood: it does not follow the rules of tags."),
        ("{% if 1 %}", 7, "A tag in this text is not understood: the `if` has no `endif`."),
        ("{% for i in [1] %}", 7, "A tag in this text is not understood: the `for` has no `endfor`."),
        ("{% endif %}", 7, "A tag in this text is not understood: `endif` stands behind no `if`."),
        ("{% else %}", 7, "A tag in this text is not understood: `else` stands in no `if`."),
        (
            "{{ exercise.name",
            4,
            "A tag in this text is not understood: `{{` is opened and not closed in its paragraph.",
        ),
        ("{% if exercise", 4, "A tag in this text is not understood: `{%` is opened and not closed in its paragraph."),
        ("{# note", 4, "A tag in this text is not understood: `{#` is opened and not closed in its paragraph."),
        ('{{ "a\\"b" }}', 9, "A tag in this text is not understood: a tag holds no backslash."),
        (
            "{% for i in [1] recursive %}{{ loop([1]) }}{% endfor %}",
            32,
            "Spoken text cannot use a call such as `name(...)`.",
        ),
    ],
)
def test_what_a_text_cannot_use_is_told_at_its_place_and_the_rest_is_read(
    episode: Write, tag: str, place: int, message: str
) -> None:
    facts = with_hang(episode, f"Hello. [aside]\n\nOh {tag} my. [aside]\n\nBye. [aside]\n")
    assert found(facts, TAG) == [(f"segments/hang.md:3:{place}", message)]
    assert words(facts)[0] == "Hello."
    assert words(facts)[-1] == "Bye."
    assert words(facts)[1].startswith("Oh")
    assert words(facts)[1].endswith("my.")


def test_two_faulty_blocks_are_both_told(episode: Write) -> None:
    facts = with_hang(episode, "{% for i in [1] %}{% if 1 %}A. [aside]\n\n{% endfor %}\n\n{{ nosuch }} B. [aside]\n")
    assert [place for place, _ in found(facts, TAG)] == ["segments/hang.md:1:22", "segments/hang.md:5:4"]
    assert words(facts) == ["A.", "B."]


DOUBLING = "{% set a = 'xxxxxxxxxx' %}" + "{% set a = a ~ a %}" * 60 + "{{ a }}"
ENDLESS = {
    "nested loops": "{% for a in 'aaaaaaaaaa' %}" * 9 + "x" + "{% endfor %}" * 9,
    "a loop of many tags": "{% for a in 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa' %}" * 3
    + "{% set b = 1 %}" * 900
    + "{% endfor %}" * 3,
    "a range": "{% for a in range(1000000000) %}x{% endfor %}",
    "joined texts": DOUBLING,
    "joined lists": "{% set a = ['xxxxxxxxxx'] %}"
    + "{% set a = [a|join, a|join, a|join, a|join] %}" * 30
    + "{{ a|length }}",
    "replaced texts": "{% set a = 'xxxxxxxxxx' %}" + "{% set a = a|replace('x', 'xxxxxxxxxx') %}" * 12,
    "lists of lists": "{% set a = [1] %}" + "{% set a = [a, a, a, a, a, a, a, a] %}" * 30 + "{{ a }}",
    "mappings of mappings": "{% set a = {'b': 1} %}" + "{% set a = {'b': a, 'c': a, 'd': a} %}" * 30 + "{{ a }}",
    "a huge number": "{{ 999999999999 * 999999999999 * 999999999999 }}",
    "a huge text of a number": "{{ '9' | int * '9' | int }}{{ 1 | round(999999999) }}",
    "brackets in brackets": "{{ " + "(" * 900 + "1" + ")" * 900 + " }}",
    "lists in lists": "{{ " + "[" * 900 + "]" * 900 + " }}",
    "many filters": "{{ 'a'" + "|lower" * 600 + " }}",
    "a long tag": "{{ '" + "a" * 5000 + "' }}",
    "blocks in blocks": "{% if 1 %}" * 300 + "x" + "{% endif %}" * 300,
    "many tags": "{{ 1 }}" * 30_000,
    "many open tags": "{{ " * 60_000,
    "many comments": "{# " * 60_000,
    "a huge format": "{{ '%999999999d' % 1 }}{{ 'x' | center(99999999) }}",
}


@pytest.mark.parametrize("name", ENDLESS)
def test_what_would_run_or_grow_without_end_is_told_in_time(episode: Write, name: str) -> None:
    folder = episode({"outline.yaml": GRIP, "segments/hang.md": f"Hello. [aside]\n\n{ENDLESS[name]}\n\nBye. [aside]\n"})
    started = time.process_time()
    facts = build.work_out(build.read(folder))
    assert time.process_time() - started < 5  # on a slow machine; it takes less than a second
    assert [place.split(":")[1] for place, _ in found(facts, TAG)][:1] == ["3"]
    assert words(facts)[0] == "Hello."
    assert words(facts)[-1] == "Bye."


def test_a_fault_in_a_channels_text_is_told_in_that_file(episode: Write) -> None:
    folder = episode(
        {
            "outline.yaml": GRIP,
            "../channel.yaml": "name: Grip talk",
            "../segments/verdict.md": "Now\n{{ exercise.nam }}. [aside]",
        }
    )
    facts = build.work_out(build.read(folder))
    assert {place for place, _ in found(facts, TAG)} == {"../segments/verdict.md:2:13"}


def test_words_filled_in_are_reported_where_their_tag_stands(episode: Write) -> None:
    outline = GRIP.replace("Bar hang", "Bar hang × 2")
    facts = with_hang(episode, "Hi. [aside]\n\n{{ exercise.name }} it is,\n{{ exercise.name }}. [aside]\n", outline)
    places = [place for place, _ in found(facts, "sign-not-speakable") if place.startswith("segments")]
    assert places == ["segments/hang.md:3:1", "segments/hang.md:4:1"]


def test_pick_varies_down_a_list_and_is_the_same_each_time(episode: Write) -> None:
    exercises = "\n".join(f"  e{number}: {{name: Thing {number}}}" for number in range(8))
    folder = episode(
        {
            "outline.yaml": f"title: One\nexercises:\n{exercises}\n",
            "../channel.yaml": "name: Grip talk",
            "../segments/verdict.md": "{{ pick('a', 'b', 'c') }} {{ pick('d', 'e', 'f') }}",
        }
    )
    said = [words(build.work_out(build.read(folder)), f"e{number}")[0] for number in range(8)]
    assert said == [words(build.work_out(build.read(folder)), f"e{number}")[0] for number in range(8)]
    assert all(one != other for one, other in pairwise(said))
    assert len(set(said)) >= 6


def test_a_value_cannot_pass_for_a_code(episode: Write, tmp_path: Path) -> None:
    outline = 'title: One\nexercises: {hang: {name: "Bar \\x01 5 \\x02 \\x0e hang"}}\n'
    assert words(with_hang(episode, "{{ exercise.name }} it is. [aside]", outline)) == ["Bar 5 hang it is."]
