"""One row a shot in script order, each with its time, the words on screen and the sources of what is said."""

from __future__ import annotations

import pytest

from scriptkit.computing.shots import seconds_a_rep
from scriptkit.model import Facts, PlannedShot
from tests.scripts import Write, timed, with_hang, worked_out

LISTED = """
    title: One
    exercises:
      hang:
        name: Bar hang
        shots:
          - {size: FS, plane: side, of: whole hang, reps: 3}
          - {size: CU, of: hand, tempo: 3-1-2}
          - {size: ECU, of: thumb}
    order: [opening, hang]
    sources: {one: {title: One, invented: true}, two: {title: Two, invented: true}}
    """
FOUR = "First words here. [aside] Second words here. [aside] Third words here. [aside] Fourth words here. [aside]"


def rows(facts: Facts, name: str = "hang") -> list[PlannedShot]:
    return [one for one in facts.shots if one.segment == name]


def test_shots_of_the_outline_are_spread_over_a_text_without_marks_and_change_with_a_sentence(episode: Write) -> None:
    facts = with_hang(episode, FOUR, LISTED)
    starts = [one.start for one in timed(facts).sentences]
    assert [one.shot.of for one in rows(facts)] == ["whole hang", "hand", "thumb"]
    assert all(one.start in starts for one in rows(facts))
    assert [one.start for one in rows(facts)] == sorted({one.start or 0.0 for one in rows(facts)})
    assert sum(one.duration or 0 for one in rows(facts)) == pytest.approx(timed(facts).total)


@pytest.mark.parametrize(
    "text", ["One sentence only. [aside]", "One. [aside] Two goes on for quite a bit longer than that. [aside]"]
)
def test_more_shots_than_sentences_are_all_seen(episode: Write, text: str) -> None:
    facts = with_hang(episode, text, LISTED)
    assert [one.shot.of for one in rows(facts)] == ["whole hang", "hand", "thumb"]
    assert all((one.duration or 0) > 0.1 for one in rows(facts))


def test_where_the_text_has_marks_they_decide_and_the_listed_ones_are_filmed_too(episode: Write) -> None:
    facts = with_hang(episode, "First words here. [aside] [shot MCU front: face] Second words here. [aside]", LISTED)
    talking, face, *filmed = rows(facts)
    assert talking.talking
    assert face.shot.of == "face"
    assert face.start == pytest.approx((talking.start or 0) + (talking.duration or 0))
    assert [(one.shot.of, one.start) for one in filmed] == [("whole hang", None), ("hand", None), ("thumb", None)]
    assert filmed[0].duration == 12  # three repetitions


def test_a_mark_that_the_next_one_replaces_at_once_is_filmed_all_the_same(episode: Write) -> None:
    facts = with_hang(
        episode,
        "[shot CU: hand] [shot FS: bar] First words here. [aside]",
        "title: One\nexercises: {hang: {name: H}}\n",
    )
    assert [(one.shot.of, one.start is None) for one in rows(facts)] == [("hand", True), ("bar", False)]


def test_where_nothing_is_asked_for_the_presenter_is_seen(episode: Write) -> None:
    facts = with_hang(episode, FOUR, LISTED)
    (opening,) = rows(facts, "opening")
    assert (opening.talking, opening.reps_fit, opening.start) == (True, None, 0)


def test_repetitions_that_fit_follow_from_time_and_tempo(episode: Write) -> None:
    facts = with_hang(
        episode,
        "[shot FS: bar; tempo 3-1-2] Go. [hold 20s: slow reps] [aside]",
        "title: One\nexercises: {hang: {name: H}}\n",
    )
    assert rows(facts)[0].reps_fit == 3
    assert seconds_a_rep("3-1-2") == 6
    assert seconds_a_rep("slow") == 4


def test_a_shot_has_the_cards_and_sources_of_its_time(episode: Write) -> None:
    text = (
        "[shot CU: a] [screen: One] It grew. [from one] [shot FS: b] It shrank. "
        "[from two] [screen 1s: Two] [pause 5s] [shot LS: c] Bye. [aside]"
    )
    facts = with_hang(episode, text, LISTED)
    assert [(one.shot.of, one.cards, one.sources) for one in rows(facts)[:3]] == [
        ("a", ("One",), ("one",)),
        ("b", ("One", "Two"), ("two",)),
        ("c", (), ()),
    ]


def test_a_card_stays_until_the_next_one_the_end_of_its_segment_or_for_so_long(episode: Write) -> None:
    text = (
        "[screen: One] First words here. [aside] [screen 99s: Two] Second. [aside] "
        "[screen 0.5s: Three] Third. [aside] [screen: Four] Bye. [aside]"
    )
    facts = with_hang(episode, text, LISTED)
    one, two, three, four = (card for card in facts.cards if card.segment == "hang")
    assert one.end == two.start
    assert two.end == three.start
    assert three.end == three.start + 0.5 < four.start
    assert four.end == pytest.approx(timed(facts).start + timed(facts).total)


def test_the_same_camera_at_the_same_place_is_one_set_up(episode: Write) -> None:
    facts = with_hang(
        episode,
        "[shot CU side: a; at rack] One. [aside] [shot FS: b] Two. [aside] [shot CU side: c; at rack] Three. [aside]",
        LISTED,
    )
    first, second, third = rows(facts)[:3]
    assert first.setup == third.setup != second.setup


@pytest.mark.parametrize(
    ("mark", "back"),
    [
        ("MS front: presenter to camera", True),
        ("front MS: Presenter  to camera", True),
        ("MS front: presenter to camera; at rack", False),
        ("MCU front: presenter to camera", False),
        ("MS front: presenter", False),
    ],
)
def test_the_words_of_the_default_camera_go_back_to_it(episode: Write, mark: str, back: bool) -> None:
    text = f"Hello. [aside] [shot CU side: a] One. [aside] [shot {mark}] Two. [aside]"
    first, _, last = rows(with_hang(episode, text, LISTED))[:3]
    assert first.talking
    assert (last.talking, last.setup == first.setup, last.reps_fit is None) == (back, back, back)


def test_thousands_of_shots_take_no_more_than_their_number(episode: Write) -> None:
    facts = worked_out(
        episode({"outline.yaml": LISTED, "segments/hang.md": "[shot CU: a] [screen: b] Go on. [from one]\n" * 4000})
    )
    assert len(rows(facts)) == 4003


def test_what_marks_and_the_outline_ask_for_alike_is_filmed_once(episode: Write) -> None:
    text = "[shot FS side: whole hang; reps 3] First words. [aside] [shot CU: hand; tempo 3-1-2] Second words. [aside]"
    assert [one.shot.of for one in rows(with_hang(episode, text, LISTED))] == ["whole hang", "hand", "thumb"]


def test_another_frame_rate_is_another_set_up(episode: Write) -> None:
    text = "[shot FS side: a] One. [aside] [shot FS side: a; fps 120] Two. [aside] [shot FS side: end] Hm. [aside]"
    assert [one.setup for one in rows(with_hang(episode, text))] == ["B", "C", "B"]


def test_a_shot_has_the_sources_of_what_is_said_while_it_is_seen(episode: Write) -> None:
    text = (
        "[shot FS: hang] One. [from one] And one more. [from two] [shot CU: hand] Two. [from two]\n\n"
        "[shot CU: thumb] Three. [aside]"
    )
    outline = LISTED.replace("          - {size: ECU, of: thumb}\n", "")
    seen = [one.sources for one in rows(with_hang(episode, text, outline)) if one.start is not None]
    assert seen == [("one", "two"), ("two",), ()]


def seen(episode: Write, shot: str, rate: str = "25") -> PlannedShot:
    outline = LISTED.replace("- {size: FS, plane: side, of: whole hang, reps: 3}", shot).replace(
        "title: One\n    exercises", f"title: One\n    rate: {rate}\n    exercises"
    )
    return rows(with_hang(episode, FOUR, outline))[0]


def test_slow_motion_takes_so_many_times_longer_on_screen(episode: Write) -> None:
    one = seen(episode, "- {of: hang, reps: 2, tempo: 1-0-1, fps: 100}")
    assert one.slow == 4
    assert one.needs == 16
    assert one.duration is not None
    assert one.reps_fit == int(one.duration / 8)


@pytest.mark.parametrize(
    ("fps", "rate", "slow"),
    [
        ("120", "24", 5),
        ("60 fps", "24", 2.5),
        ("119.88", "29.97df", 4),
        ("24", "25", 1),
        ("fast", "25", 0),
        ("0", "25", 0),
    ],
)
def test_how_slow_it_is_follows_from_both_rates(episode: Write, fps: str, rate: str, slow: float) -> None:
    assert seen(episode, f"- {{of: hang, fps: '{fps}'}}", rate).slow == pytest.approx(slow, rel=1e-5)


def test_a_label_is_on_screen_as_long_as_its_shot(episode: Write) -> None:
    outline = LISTED.replace("{size: CU, of: hand,", "{size: CU, of: hand, label: 'Fault: thumb off',")
    facts = with_hang(episode, f"[screen: Bar hang] {FOUR}", outline)
    whole, hand, thumb = rows(facts)
    (label,) = [card for card in facts.cards if card.what == "label"]
    assert (label.start, label.end) == (hand.start, thumb.start)
    assert whole.cards == ("Bar hang",)
    assert hand.cards == ("Bar hang", "Fault: thumb off")


def test_scenes_are_numbered_by_segment(episode: Write) -> None:
    facts = with_hang(episode, FOUR, LISTED)
    assert [one.scene for one in facts.shots] == [1, 2, 2, 2]


def test_a_fault_that_the_outline_spreads_is_seen_for_its_repetitions_and_little_more(episode: Write) -> None:
    outline = """
        title: One
        exercises:
          hang: {name: Bar hang, shots: [
            {size: FS, of: hang}, {size: FS, form: fault, of: first, reps: 1, tempo: 1-0-1},
            {size: FS, form: fault, of: last, reps: 1, tempo: 1-0-1, label: "Fault: grip"}]}
        order: [hang]
        """
    facts = with_hang(episode, f"{FOUR} {FOUR} {FOUR} {FOUR} [screen: Grade A] So it is. [aside]", outline)
    hang, first, last, after = rows(facts)
    assert all(one.duration is not None and 2 <= one.duration <= 4 for one in (first, last))
    assert after.talking
    assert [one.start for one in (first, last, after)] == pytest.approx(
        [(one.start or 0) + (one.duration or 0) for one in (hang, first, last)]
    )
    assert (after.start or 0) + (after.duration or 0) == pytest.approx(timed(facts).total)
    assert after.cards == ("Grade A",)
    assert last.cards == ("Fault: grip",)


@pytest.mark.parametrize(
    ("tempo", "seconds"),
    [("3-1-2", 6), ("3/1/2", 6), ("3 1 2", 6), ("3 – 1 – 2", 6), ("3-1-2-1", 7), ("2.5-0-1", 3.5), ("0-0-0", 4),
     ("slow", 4), ("²-1-1", 4), ("9" * 400, 4), ("", 4), ("3", 4)],
)  # fmt: skip
def test_a_tempo_is_two_to_four_numbers(tempo: str, seconds: float) -> None:
    assert seconds_a_rep(tempo) == seconds


def test_many_shots_in_one_segment_take_no_longer_each(episode: Write) -> None:
    text = " ".join(f"[shot FS side: view {number}; label Fault {number}] Up we go. [aside]" for number in range(1500))
    shown = with_hang(episode, text, LISTED).shots
    assert [one.cards for one in shown if one.shot.of == "view 700"] == [("Fault 700",)]
