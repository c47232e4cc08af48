"""Order, ids and texts hang together."""

from __future__ import annotations

from tests.scripts import Write, found, helps, worked_out

TWO = "title: One\nexercises: {hang: {name: Bar hang, group: Grip}, row: {name: Row}}\n"


def places(facts: object, name: str) -> list[str]:
    return [place for place, _ in found(facts, name)]  # type: ignore[arg-type]


def test_a_segment_or_group_named_twice_is_told_at_the_second(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO + "order: [group: Grip, hang, row, hang, group: grip]\n"}))
    assert places(facts, "segment-twice") == ["outline.yaml:3:33", "outline.yaml:3:46"]


def test_a_segment_without_a_text_is_told_with_a_near_name(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO + "order: [opening, hagn, hang, row]\n"}))
    assert (places(facts, "segment-without-text"), helps(facts, "segment-without-text")) == (
        ["outline.yaml:3:18"],
        ['Did you mean "hang"?'],
    )


def test_an_empty_text_says_nothing(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO, "segments/hang.md": "# Only a heading\n"}))
    assert len(found(facts, "segment-without-text")) == 1
    assert "segments/hang.md" in helps(facts, "segment-without-text")[0]


def test_a_pause_alone_is_a_segment(episode: Write) -> None:
    assert (
        found(
            worked_out(episode({"outline.yaml": TWO, "segments/close.md": "[hold 5s: logo]\n"})), "segment-without-text"
        )
        == []
    )


def test_a_text_that_belongs_nowhere_is_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO, "segments/hagn.md": "Hello. [aside]"}))
    assert (places(facts, "text-not-used"), helps(facts, "text-not-used")) == (
        ["segments/hagn.md:1:1"],
        ['Did you mean "hang"?'],
    )


def test_a_channels_text_may_belong_to_other_episodes(episode: Write) -> None:
    facts = worked_out(
        episode({"outline.yaml": TWO, "../channel.yaml": "name: Grip talk", "../segments/curl.md": "Hello. [aside]"})
    )
    assert found(facts, "text-not-used") == []


def test_the_text_of_an_exercise_left_out_is_to_be_ordered_and_not_renamed(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO + "order: [row]\n", "segments/hang.md": "I like it. [opinion]"}))
    assert helps(facts, "text-not-used") == ["Add `hang` to `order:`."]


def test_groups_that_differ_in_punctuation_are_one(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO + "order: [group: Grip, hang, row, group: Grip!]\n"}))
    assert places(facts, "segment-twice") == ["outline.yaml:3:40"]


def test_the_sponsors_segment_may_not_be_a_group(episode: Write) -> None:
    sponsor = (
        "sponsor: {name: Q, segment: group-grip, disclosure: Ad. Q paid for this.}\norder: [group: Grip, hang, row]\n"
    )
    assert places(worked_out(episode({"outline.yaml": TWO + sponsor})), "id-taken") == ["outline.yaml:3:29"]
