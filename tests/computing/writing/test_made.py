"""The code made of a stock text speaks the same words as the text itself."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from scriptkit import build
from scriptkit.computing.writing import expanding, made
from scriptkit.computing.writing.filling import Expander
from scriptkit.model import Facts, SegmentText
from scriptkit.reading.stock import Stock
from scriptkit.shipped import shipped
from tests.running import SMALLEST
from tests.scripts import GRIP, Write, worked_out


@pytest.fixture
def nothing_made(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A scriptkit in which each text is compiled."""
    with monkeypatch.context() as changed:
        changed.setattr(made, "template", lambda _text, _environment: None)
        yield


def spoken(facts: Facts) -> list[tuple[object, ...]]:
    return [(one.text, one.place) for part in facts.segments for one in part.sentences]


EPISODES = (GRIP, SMALLEST, "title: One\nexercises: {}\n", "title: One\nexercises: {hang: {name: '{{ x }}'}}\n")


@pytest.mark.parametrize("outline", EPISODES)
def test_an_episode_without_texts_is_the_same_by_made_code(
    episode: Write, outline: str, request: pytest.FixtureRequest
) -> None:
    folder = episode({"outline.yaml": outline})
    by_made_code = spoken(worked_out(folder))
    request.getfixturevalue("nothing_made")
    assert spoken(worked_out(folder)) == by_made_code


def test_so_is_the_sample(request: pytest.FixtureRequest) -> None:
    material = build.read(shipped("sample_episode"))
    by_made_code = spoken(build.work_out(material))
    request.getfixturevalue("nothing_made")
    assert spoken(build.work_out(material)) == by_made_code


def test_no_code_is_taken_for_another_text_or_another_jinja(monkeypatch: pytest.MonkeyPatch) -> None:
    environment = expanding.Environment(str, lambda: "")
    text = Stock()["close"]
    assert made.template(text, environment) is not None
    assert made.template(text._replace(template=f"{text.template} "), environment) is None
    assert made.template(text._replace(id="prologue"), environment) is None
    monkeypatch.setattr(made, "RELEASE", "4.0.0")
    assert made.template(text, environment) is None


def test_two_scripts_at_once_do_not_share_what_their_texts_put_in() -> None:
    text: SegmentText = Stock()["group"]
    one, other = Expander(), Expander()
    names = {"group": {"name": "Pulls", "count": 2, "exercises": []}}
    first = one.expand(text, names)
    assert other.expand(text, names) == first
    assert one.expand(text, names) == first


def test_made_code_that_fails_is_told_as_the_text_itself_would_be() -> None:
    expanded = Expander().expand(Stock()["group"], {})
    assert [trouble.kind for trouble, _ in expanded.troubles][:1] == ["name"]
