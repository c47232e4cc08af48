"""The part of Jinja that spoken text can use does what the library's own does, as far as it goes."""

from __future__ import annotations

import jinja2
import pytest

from scriptkit.computing.writing.expanding import Environment, MissingError, TooMuchError
from scriptkit.computing.writing.printing import PlainError

OURS = Environment(lambda value: value, lambda *options: options[0])
NAMES = {
    "n": 3,
    "half": 2.5,
    "word": "Bar hang",
    "words": ["b", "a", "b"],
    "rows": [{"k": "y", "v": 1}, {"k": "x", "v": 2}],
}


@pytest.mark.parametrize(
    "text",
    [
        "{{ n + 1 }} {{ n * 2 - 1 }} {{ 7 // n }} {{ 7 % n }} {{ -n }} {{ half | round(1) }} {{ '4' | int }}",
        "{{ word | lower }} {{ word | upper }} {{ word | capitalize }}",
        "{{ ' x ' | trim }} {{ word | replace('a', 'o') }}",
        "{{ word | first }}{{ word | last }}{{ words | first }}{{ words | last }}",
        "{{ word | length }} {{ words | count }}",
        "{{ words | join }} {{ words | join(', ') }}",
        "{{ rows | join(', ', attribute='k') }} {{ words | unique | join }}",
        (
            "{{ words | sort | join }} {{ words | sort(reverse=true) | join }} "
            "{% for r in rows | sort(attribute='k') %}{{ r.v }}{% endfor %}"
        ),
        (
            "{{ words | reverse | join }} {{ word | reverse }} "
            "{{ word | list | join('-') }} {{ nothing | default('x') }} {{ 5 | string }}"
        ),
        "{% for w in words %}{{ loop.index }}{{ loop.first }}{{ loop.last }}{{ w }};{% endfor %}",
        "{% for k in {'a': 1, 'b': 2} %}{{ k }}{% endfor %}{% for w in [] %}x{% else %}none{% endfor %}",
        (
            "{% if n > 2 and not half < 2 or false %}yes{% elif n in [3] %}three{% else %}no{% endif %} "
            "{{ 'a' if 'a' in words else 'c' }}"
        ),
        (
            "{% set x = n ~ '-' ~ word %}{{ x }} "
            "{{ rows[1]['v'] }}{{ rows[-1].k }}{{ word[0] }}{{ word[:3] }} "
            "{{ (1, 2) | length }}"
        ),
        "{{ nothing is defined }} {{ word is defined }}",
        "{{ n is equalto 3 }} {{ none is none }} {{ n is odd }} {{ 1 < n < 5 }}",
        "{% for a, b in [rows[0]] %}{{ a }}{{ b }}{% endfor %}{% set x, y = rows[0] %}{{ x }}{{ y }}",
        "{{ pick('a', 'b') }} {#- gone -#} x {%- if true -%} y {%- endif -%} z",
    ],
)
def test_it_gives_what_the_librarys_own_environment_gives(text: str) -> None:
    library = jinja2.Environment()  # noqa: S701 - spoken text, not a page
    assert OURS.from_string(text).render(NAMES) == library.from_string(text).render(
        NAMES, pick=lambda *options: options[0]
    )


@pytest.mark.parametrize(
    "text",
    [
        "{{ nothing }}",
        "{{ rows[9] }}",
        "{{ word.upper }}",
        "{{ rows.append }}",
        "{% if nothing %}{% endif %}",
        "{{ [] | first }}",
    ],
)
def test_a_name_that_is_not_there_is_no_empty_text(text: str) -> None:
    with pytest.raises(MissingError):
        OURS.from_string(text).render(NAMES)


def test_what_is_missing_knows_the_names_that_are_there() -> None:
    with pytest.raises(MissingError) as raised:
        OURS.from_string("{{ rows[0].key }}").render(NAMES)
    assert (raised.value.name, raised.value.known) == ("key", ("k", "v"))


@pytest.mark.parametrize(
    "text",
    [
        "{{ 'x' | replace('x', word * 2) }}",
        "{{ [[1]] }}",
        "{{ {'a': [1]} }}",
        "{% for a in 5 %}{% endfor %}",
        "{{ 5 | join }}",
    ],
)
def test_what_cannot_be_done_is_told_in_plain_words(text: str) -> None:
    with pytest.raises(PlainError):
        OURS.from_string(text).render(NAMES)


@pytest.mark.parametrize(
    "text", ["{{ w | replace('a', w) }}", "{{ w ~ w }}", "{{ [w, w] | join }}", "{{ 9999999999999 * 1 }}"]
)
def test_what_grows_too_long_is_stopped(text: str) -> None:
    with pytest.raises(TooMuchError):
        OURS.from_string(text).render(w="a" * 15_000)


def test_a_half_is_rounded_up_to_a_whole_number() -> None:
    assert OURS.from_string("{{ 2.5 | round }} {{ 3.5 | round }} {{ -2.5 | round }}").render() == "3 4 -3"
