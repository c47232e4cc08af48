"""Which segments are spoken, in which order, of which kind, and from which text."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, order, segment, words, worked_out

TWO = "title: One\nexercises: {hang: {name: Bar hang, group: Grip work}, row: {name: Row}}\n"
CHECKLIST = "checklist: {criteria: {long: {ask: Is it long?}}}\n"
SPONSOR = "sponsor: {name: Q, disclosure: Ad. Q paid for this.%s}\n"


def test_without_order_it_is_opening_checklist_exercises_recap_close(episode: Write) -> None:
    assert order(worked_out(episode({"outline.yaml": TWO + CHECKLIST}))) == [
        "opening",
        "checklist",
        "hang",
        "row",
        "recap",
        "close",
    ]


def test_without_a_checklist_that_segment_is_left_out_unless_it_has_a_text(episode: Write) -> None:
    assert "checklist" not in order(worked_out(episode({"outline.yaml": TWO + "order: [checklist, hang, row]\n"})))
    assert "checklist" in order(worked_out(episode({"segments/checklist.md": "Hello. [aside]"})))


def test_kinds_follow_from_ids_and_a_step_may_say_otherwise(episode: Write) -> None:
    steps = (
        "order: [opening, group: Grip work, hang, caution, "
        "{segment: chat, kind: talk}, {segment: row, kind: talk}, other, paid]\n"
    )
    facts = worked_out(episode({"outline.yaml": TWO + SPONSOR % ", segment: paid" + steps}))
    assert [(one.id, one.kind) for one in facts.segments] == [
        ("opening", "opening"),
        ("group-grip-work", "group"),
        ("hang", "verdict"),
        ("caution", "caution"),
        ("chat", "talk"),
        ("row", "talk"),
        ("other", "talk"),
        ("paid", "sponsor"),
    ]


@pytest.mark.parametrize(
    ("group", "name"),
    [("Straight knee!", "group-straight-knee"), ("Жим лёжа", "group-жим-лёжа"), ("???", "group-unnamed")],
)
def test_a_group_has_an_id_in_kebab_case(episode: Write, group: str, name: str) -> None:
    assert order(worked_out(episode({"outline.yaml": TWO + f"order: [{{group: '{group}'}}, hang, row]\n"})))[0] == name


def test_a_segment_named_twice_is_spoken_where_it_stands_first(episode: Write) -> None:
    assert order(worked_out(episode({"outline.yaml": TWO + "order: [hang, row, hang]\n"}))) == ["hang", "row"]


def test_an_exercise_that_order_leaves_out_is_not_spoken_and_not_counted(episode: Write) -> None:
    facts = worked_out(
        episode(
            {
                "outline.yaml": TWO + "order: [opening, hang]\n",
                "segments/opening.md": "{{ episode.count }} here. [aside]",
            }
        )
    )
    assert order(facts) == ["opening", "hang"]
    assert words(facts, "opening") == ["1 here."]
    assert [place for place, _ in found(facts, "exercise-left-out")] == ["outline.yaml:2:55"]


@pytest.mark.parametrize(
    ("window", "behind"),
    [
        ("", "b"),
        (", window: {after: 0%, before: 10%}", "a"),
        (", window: {after: 80%, before: 100%}", "c"),
        (", window: {after: 0s, before: 5s}", "a"),
    ],
)
def test_without_order_the_sponsor_comes_behind_the_exercise_nearest_the_middle_of_its_window(
    episode: Write, window: str, behind: str
) -> None:
    text = "We do some more of it here, and we take our time with it. [aside]\n" * 3
    outline = "title: One\nexercises: {a: {name: A1}, b: {name: B1}, c: {name: C1}}\n" + SPONSOR % window
    files = {f"segments/{name}.md": text for name in "abc"} | {
        f"segments/{name}.md": "Hi. [aside]" for name in ("opening", "recap", "close")
    }
    placed = order(worked_out(episode({"outline.yaml": outline, **files})))
    assert placed[placed.index("sponsor") - 1] == behind


def test_with_an_order_that_leaves_the_sponsor_out_it_is_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": TWO + SPONSOR % "" + "order: [hang, row]\n"}))
    assert order(facts) == ["hang", "row"]
    assert len(found(facts, "sponsor-not-spoken")) == 1


def test_a_text_is_looked_for_in_the_episode_then_the_channel_then_the_stock(episode: Write) -> None:
    channel = {
        "../channel.yaml": "name: Grip talk",
        "../segments/close.md": "Channel. [aside]",
        "../segments/recap.md": "Channel. [aside]",
    }
    facts = worked_out(episode({"outline.yaml": TWO, **channel, "segments/recap.md": "Episode. [aside]"}))
    assert (segment(facts, "recap").file, words(facts, "recap")) == ("segments/recap.md", ["Episode."])
    assert (segment(facts, "close").file, words(facts, "close")) == ("../segments/close.md", ["Channel."])
    assert segment(facts, "opening").file == ""
    assert [one.drafted for one in facts.segments] == [True, True, True, False, False]


def test_a_channels_verdict_is_the_text_of_every_exercise_without_its_own(episode: Write) -> None:
    channel = {"../channel.yaml": "name: Grip talk", "../segments/verdict.md": "This is {{ exercise.name }}. [aside]"}
    facts = worked_out(episode({"outline.yaml": TWO, **channel, "segments/row.md": "My own. [aside]"}))
    assert (words(facts, "hang"), words(facts, "row")) == (["This is Bar hang."], ["My own."])


def test_two_long_names_that_begin_alike_are_two_groups(episode: Write) -> None:
    alike = "Everything that we do with straight knees on a step beside the rack"
    groups = f"order: [{{group: {alike} first}}, hang, {{group: {alike} second}}, row]\n"
    facts = worked_out(episode({"outline.yaml": TWO + groups}))
    first, _, second, _ = order(facts)
    assert first != second
    assert all(len(name) <= 64 for name in (first, second))
    assert found(facts, "segment-twice") == []
