"""Each spoken number is held against its source, and told on its own column."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps, with_hang

OUTLINE = """
    title: Ways to train your grip
    exercises: {hang: {name: Bar hang}}
    sources:
      mora-2022:
        title: Timed hangs
        population: climbers
        n: 38
        duration_weeks: 6
        invented: true
        findings:
          hang: {outcome: hang time, values: {before: 41 s, after: 50 s}}
          size: {outcome: forearm, values: {towel: 1.6 mm, bar: 1.1 mm}}
    """


@pytest.mark.parametrize(
    ("text", "name", "column"),
    [
        ("In 38 climbers, hang time rose by 7 seconds. [from mora-2022 hang]", "number-not-in-source", 35),
        ("In 83 climbers, hang time rose by 9 seconds. [from mora-2022 hang]", "number-not-in-source", 4),
        ("In 38 climbers, hang time fell by 9 seconds. [from mora-2022 hang]", "numbers-swapped", 35),
        ("The 38 climbers gained 1.6 mm by bar, 1.1 by towel. [from mora-2022 size]", "numbers-swapped", 24),
        ("The 38 climbers gained 1.6 centimetres. [from mora-2022 size]", "number-in-wrong-unit", 24),
        ("The 38 climbers gained 2 millimetres. [from mora-2022 size]", "number-misleads", 24),
        ("The 38 climbers gained 14 kilos. [from mora-2022 size]", "number-not-recorded", 24),
    ],
)  # fmt: skip
def test_a_wrong_number_is_told_where_it_stands(episode: Write, text: str, name: str, column: int) -> None:
    facts = with_hang(episode, f"Hi. [aside]\n\n{text}", OUTLINE)
    assert [place for place, _ in found(facts, name)] == [f"segments/hang.md:3:{column}"]


def test_the_message_says_what_the_source_has(episode: Write) -> None:
    facts = with_hang(episode, "In 38 climbers, hang time rose by 7 seconds. [from mora-2022 hang]", OUTLINE)
    ((_, message),) = found(facts, "number-not-in-source")
    assert message == '"7 seconds" is not a number of mora-2022. It has 41 s for before, 50 s for after.'
    assert helps(facts, "number-not-in-source")[0].startswith("Say the source's number")


@pytest.mark.parametrize(
    "text",
    [
        "In 38 climbers, hang time rose by about a fifth. [from mora-2022 hang]",
        "In 38 climbers, hang time rose from 41 to 50 seconds over 6 weeks. [from mora-2022 hang]",
        "Hang for three sets of 12. [from mora-2022 hang]",
    ],
)
def test_right_numbers_are_passed_over(episode: Write, text: str) -> None:
    names = {name for name, _ in found(with_hang(episode, text, OUTLINE))}
    assert not {name for name in names if name.startswith("number")}
