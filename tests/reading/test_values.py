"""Each value is read as what its field is, and refused with words that say what would be right."""

from __future__ import annotations

import pytest

from scriptkit import build
from scriptkit.model import Extent
from tests.reading.episodes import GOOD, of_kind, one, seen


def exercise(episode, field: str):
    """An episode with one more field in its exercise."""
    return episode({"outline.yaml": f"title: One\nexercises:\n  hang:\n    name: Bar hang\n    {field}\n"})


def of_hang(folder):
    return build.read(folder).episode.exercises["hang"]


@pytest.mark.parametrize(
    "written", ["NO", "no", "9:30", "010", "1e3", "true", "null", "2026-01-01", "0x1F", ".5", "5."]
)
def test_a_grade_is_a_text_whatever_yaml_takes_it_for(episode, written: str) -> None:
    folder = exercise(episode, f"grade: {written}")
    assert (of_hang(folder).grade, seen(folder)) == (written, [])


@pytest.mark.parametrize(
    ("written", "seconds"),
    [("9:30", 570), ('"9:30"', 570), ("570s", 570), ("9m30s", 570), ("570", 570), ("1:00:00", 3600)],
)
def test_a_runtime_may_be_written_in_many_ways(episode, written: str, seconds: float) -> None:
    folder = episode({"outline.yaml": f"{GOOD}runtime: {{target: {written}, tolerance: 20s}}\n"})
    runtime = build.read(folder).episode.runtime
    assert (runtime.target, runtime.tolerance) == (seconds, Extent(seconds=20))


@pytest.mark.parametrize("written", ["soon", "-5", "9:75", "1e3", "{a: b}", "[1, 2]", "5 parsecs", "²", "9:30:61"])
def test_what_is_no_time_is_refused_at_its_place(episode, written: str) -> None:
    assert one(episode({"outline.yaml": f"{GOOD}runtime: {{target: {written}}}\n"}), "wrong-type") == (
        "outline.yaml",
        3,
        19,
    )


def test_a_time_of_more_than_a_day_is_out_of_range(episode) -> None:
    assert one(episode({"outline.yaml": f"{GOOD}runtime: 90000\n"}), "out-of-range") == ("outline.yaml", 3, 10)


@pytest.mark.parametrize(
    ("written", "extent"), [("15%", Extent(share=0.15)), ("45s", Extent(seconds=45)), ("0 %", Extent(share=0))]
)
def test_a_length_is_a_time_or_a_share(episode, written: str, extent: Extent) -> None:
    folder = episode({"outline.yaml": f"{GOOD}sponsor: {{name: Quennick, window: {{after: {written}}}}}\n"})
    sponsor = build.read(folder).episode.sponsor
    assert sponsor is not None
    assert sponsor.window is not None
    assert sponsor.window.after == extent


@pytest.mark.parametrize("written", ["101%", "1000%", "%", "1.5.5%", "-1%"])
def test_a_share_of_more_than_all_is_refused(episode, written: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}sponsor: {{name: Quennick, window: {{after: '{written}'}}}}\n"})
    assert [found.name for found in of_kind(folder, "wrong-type")] == ["wrong-type"]


@pytest.mark.parametrize(
    ("field", "name", "column"),
    [
        ("ratings: {long: high}", "wrong-type", 21),
        ("ratings: {long: 1e3}", "wrong-type", 21),
        ("ratings: {long: [1, 2]}", "wrong-type", 21),
        ("ratings: {long: 99999999}", "out-of-range", 21),
        ("ratings: {long: {score: 3, range: [2]}}", "wrong-type", 39),
        ("ratings: {long: {score: 3, range: [2, x]}}", "wrong-type", 43),
        ("use: {share: 2}", "out-of-range", 18),
        ("use: {share: often}", "wrong-type", 18),
        ("use: {seen: 2026-13}", "wrong-type", 17),
        ("use: {seen: 2026-02-30}", "wrong-type", 17),
        ("use: {seen: 2025-02-29}", "wrong-type", 17),
        ("use: {seen: 1900-02-29}", "wrong-type", 17),
        ("use: {seen: ２０２６}", "wrong-type", 17),
        ("cautions: [a b]", "bad-id", 16),
        ("cautions: [ä]", "bad-id", 16),
        ("cautions: ['']", "bad-id", 17),
        (f"cautions: [{'a' * 65}]", "bad-id", 16),
        ("claims: [{say: It works., opinion: perhaps}]", "wrong-type", 40),
        ("claims: [{say: [It works.]}]", "wrong-type", 20),
        ("claims: [[It works.]]", "wrong-type", 14),
        ("claims: [{opinion: true}]", "missing-value", 14),
        ("claims: [{say: It works., source: {id: a, stance: contra}}]", "unknown-word", 55),
        ("shots: [{reps: 2.5}]", "wrong-type", 20),
        ("shots: [{reps: 5000}]", "out-of-range", 20),
        ("shots: [{plane: 30}]", "unknown-word", 21),
        ("shots: [CU]", "wrong-type", 13),
        ("shots: {side: CU}", "unknown-key", 13),
        ("name: {first: Bar}", "key-twice", 5),
    ],
)
def test_a_wrong_value_is_found_at_its_first_word(episode, field: str, name: str, column: int) -> None:
    assert seen(exercise(episode, field)) == [(name, "outline.yaml", 5, column)]


def test_a_wrong_value_is_left_out_and_its_neighbours_are_read(episode) -> None:
    folder = exercise(episode, "shots: [{size: XX, plane: Side, reps: 3}, CU, {size: cu}]")
    assert [(shot.size, shot.plane, shot.reps) for shot in of_hang(folder).shots] == [("", "side", 3), ("CU", "", None)]


@pytest.mark.parametrize(
    ("written", "value"), [("true", True), ("Yes", True), ("on", True), ("FALSE", False), ("no", False)]
)
def test_a_flag_is_any_of_the_usual_words(episode, written: str, value: bool) -> None:
    folder = exercise(episode, f"claims: [{{say: It works., opinion: {written}}}]")
    assert of_hang(folder).claims[0].opinion is value


def test_the_message_says_what_is_wanted_and_quotes_what_is_there(episode) -> None:
    (found,) = of_kind(episode({"outline.yaml": f"{GOOD}pace: fast\n"}), "wrong-type")
    assert found.message == '"pace" wants a number such as 12 or 0.5, and this is "fast".'
    (found,) = of_kind(episode({"outline.yaml": f"{GOOD}pace: 15000\n"}), "out-of-range")
    assert found.message == '"pace" is 15000 here, and it can be 60 to 400.'


def test_a_wrong_word_comes_with_the_near_one(episode) -> None:
    (found,) = of_kind(exercise(episode, "shots: [{plane: sids}]"), "unknown-word")
    assert found.message == '"sids" is no plane.'
    assert found.help.startswith('Did you mean "side"?')
