"""Seconds follow from letters, commas and sentence ends; pauses and holds are silence on top."""

from __future__ import annotations

import pytest

from scriptkit.computing import timing
from scriptkit.model import Episode, Facts
from scriptkit.model.kept_takes import KeptTake
from tests.scripts import Write, timed, with_hang, worked_out

ONE = """
    title: One
    pace: 160
    exercises: {hang: {name: Bar hang}}
    order: [hang, talk-one]
    """
RATE = 4.65 / (60 / 160 - 0.051)


def spoken_alone(episode: Write, text: str, outline: str = ONE, pace: float | None = None) -> Facts:
    files = {"outline.yaml": outline, "segments/hang.md": text, "segments/talk-one.md": "Bye. [aside]"}
    return worked_out(episode(files), pace)


def test_letters_commas_and_ends_make_the_seconds(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on, please. [aside] Now: let go. [aside]")
    first, second = timed(facts).sentences
    assert first.spoken == pytest.approx(12 / RATE + 0.3 + 0.6)
    assert second.spoken == pytest.approx(8 / RATE + 0.3 + 0.6 + 0.6)  # and a change of segment behind it
    assert timed(facts).total == pytest.approx(first.spoken + second.spoken)
    assert timed(facts, "talk-one").sentences[0].spoken == pytest.approx(3 / RATE + 0.6)  # the last one has none


def test_numbers_count_as_they_are_spoken(episode: Write) -> None:
    written, figures = (
        timed(spoken_alone(episode, text)).spoken
        for text in ("It took twenty-two percent. [aside]", "It took 22%. [aside]")
    )
    assert figures == pytest.approx(written)


def test_a_word_is_said_as_its_term_says(episode: Write) -> None:
    outline = ONE.replace("order:", "terms: {calf: {gloss: lower leg, say: kaaaaaaaaf}}\n    order:")
    plain, said = (timed(spoken_alone(episode, "My calf. [aside]", one)).spoken for one in (ONE, outline))
    assert said - plain == pytest.approx(6 / RATE)


def test_pace_in_words_a_minute_includes_its_pauses() -> None:
    assert timing.letters_a_second(160) == pytest.approx(RATE)
    assert timing.letters_a_second(148) == pytest.approx(13.1, abs=0.05)


TAKES = (
    KeptTake("one", 150, 20.0), KeptTake("two", 150, 12.0), KeptTake("three", 150, 16.0), KeptTake("four", 150, 10.0),
)  # fmt: skip


def rate_of(takes: tuple[KeptTake, ...], kind: str = "talk", **outline: object) -> float:
    return timing.Pace(Episode(**outline), takes=takes).rate(kind)  # type: ignore[arg-type]


def test_letters_a_second_of_the_last_three_takes_are_gone_by() -> None:
    assert rate_of(TAKES) == 12.0


def test_a_take_without_letters_leaves_the_pace_to_go_by() -> None:
    assert rate_of((*TAKES, KeptTake("five", 150))) == timing.letters_a_second(150)


def test_a_pace_that_is_written_goes_before_letters_of_takes() -> None:
    assert rate_of(TAKES, pace=170) == timing.letters_a_second(170)
    assert rate_of(TAKES, "sponsor", paces={"sponsor": 140}) == timing.letters_a_second(140)


def test_somebody_s_own_rate_leaves_the_pauses_out() -> None:
    assert timing.rate_of_sample(120, 13, timing.pauses_of(4, 2, 1)) == pytest.approx(12)
    assert timing.rate_of_sample(120, 1, 2) is None


def test_without_a_pace_the_stock_one_is_used_and_reported(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on. [aside]", ONE.replace("pace: 160", ""))
    line = facts.timeline
    assert (line.pace, line.pace_from) == (148, "stock")
    assert timed(facts).spoken == pytest.approx(6 / 13.1 + 1.2)
    assert (timed(facts).low, timed(facts).high) == pytest.approx(
        (0.75 * timed(facts).spoken, 1.25 * timed(facts).spoken)
    )
    assert (line.low, line.high) == pytest.approx((0.75 * line.total, 1.25 * line.total))


def test_with_a_pace_of_ones_own_the_range_is_narrower_and_silence_is_not_widened(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on. [hold 10s: one] [aside]")
    one, line = timed(facts), facts.timeline
    assert one.silent == 10
    assert (one.low, one.high) == pytest.approx((one.total - 0.1 * one.spoken, one.total + 0.13 * one.spoken))
    spoken = sum(part.spoken for part in line.segments)
    assert (line.low, line.high) == pytest.approx((line.total - 0.06 * spoken, line.total + 0.12 * spoken))


def test_paces_are_by_kind_and_the_command_replaces_them(episode: Write) -> None:
    outline = ONE.replace("pace: 160", "pace: 160\n    paces: {verdict: 120, talk: 180}")
    facts = spoken_alone(episode, "Hang on. [aside]", outline)
    assert timed(facts).spoken == pytest.approx(6 / timing.letters_a_second(120) + 1.2)
    assert timed(facts, "talk-one").spoken == pytest.approx(3 / timing.letters_a_second(180) + 0.6)
    facts = spoken_alone(episode, "Hang on. [aside]", outline, pace=160)
    assert (facts.timeline.pace, facts.timeline.pace_from) == (160, "command")
    assert timed(facts).spoken == pytest.approx(6 / RATE + 1.2)


def test_a_pace_for_some_kinds_alone_narrows_their_range_and_not_the_whole(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on. [aside]", ONE.replace("pace: 160", "paces: {verdict: 160}"))
    assert timed(facts).high == pytest.approx(1.13 * timed(facts).spoken)
    assert timed(facts, "talk-one").high == pytest.approx(1.25 * timed(facts, "talk-one").spoken)
    assert facts.timeline.high == pytest.approx(1.25 * facts.timeline.total)


def test_a_pause_in_a_sentence_is_inside_it_and_moves_what_follows(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on [pause 2s] a bit [shot CU: hand] more. [shot FS: bar] [aside] Bye. [aside]")
    first, second = timed(facts).sentences
    assert (first.silent, second.silent) == (2, 0)
    assert first.end - first.start == pytest.approx(first.spoken + 2)
    pause, hand, bar, *_ = timed(facts).marks
    assert first.start < pause.start < hand.start - 2
    assert hand.start < first.end
    assert bar.start == pytest.approx(first.end) == pytest.approx(second.start)


def test_a_mark_behind_the_last_sentence_comes_after_its_pause(episode: Write) -> None:
    facts = spoken_alone(episode, "Hang on. [aside]\n\n[hold 4s: a rep]")
    hold = timed(facts).marks[-1]
    assert hold.start == pytest.approx(timed(facts).sentences[-1].end)
    assert timed(facts).total == pytest.approx(hold.start + 4)


def test_words_are_counted_as_written_a_number_one_word(episode: Write) -> None:
    assert timed(spoken_alone(episode, "It took 8-12 weeks, and 22 percent.")).words == 7


def test_an_empty_script_takes_no_time(episode: Write) -> None:
    facts = with_hang(episode, "[shot CU: hand]", "title: One\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n")
    assert facts.timeline.total == 0
