"""A tag that only puts a fact in gives what Jinja would give, and every other one is left to Jinja."""

from __future__ import annotations

from typing import Any

import pytest

from scriptkit.computing.writing import direct
from scriptkit.computing.writing.expanding import Environment
from scriptkit.computing.writing.printing import FILTERS

NAMES: dict[str, Any] = {
    "grade": "A-",
    "exercise": {"name": "Bar hang", "place": 3, "it's": "yes", "cues": ["grip", "hang"], "own": {"a": {"b": "deep"}}},
    "exercises": {"bar-hang": {"name": "Bar hang"}},
}
ENVIRONMENT = Environment(str, lambda: "")
ENVIRONMENT.filters.update(FILTERS)

SIMPLE = (
    "{{ grade }}",
    "{{grade}}",
    "{{ exercise.name }}",
    "{{ exercise['name'] }}",
    '{{ exercises["bar-hang"].name | mid }}',
    '{{ exercise["it\'s"] }}',
    "{{ exercise.place | spoken | capitalize }}",
    "{{ exercise.cues | length }}",
    "{{ exercise.own.a['b'] | upper }}",
    "{{ exercise.nothing | default }}",
)
LEFT_TO_JINJA = (
    "{{ none }}",
    "{{ pick }}",
    "{{ nobody.name }}",
    "{{ exercise.cues[0] }}",
    "{{ exercise.place + 1 }}",
    "{{ exercise.cues | join(', ') }}",
    "{{ exercise.name | shout }}",
    "{{ exercises.bar-hang }}",
    "{{ exercise.name if grade }}",
    "{{- grade }}",
    "{{ 'grade' }}",
    "{% if grade %}",
    "{{ exercise['na\\x6de'] }}",
)


@pytest.mark.parametrize("tag", SIMPLE)
def test_a_name_its_steps_and_its_filters_are_looked_up(tag: str) -> None:
    found = direct.value(tag, NAMES, ENVIRONMENT)
    assert found is not None
    assert str(found) == ENVIRONMENT.from_string(tag).render(NAMES)


@pytest.mark.parametrize("tag", LEFT_TO_JINJA)
def test_whatever_has_more_to_it_is_left(tag: str) -> None:
    assert direct.value(tag, NAMES, ENVIRONMENT) is None
