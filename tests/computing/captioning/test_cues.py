"""Captions keep every limit, end where phrases end, and lie on frames."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from scriptkit import build
from scriptkit.computing.captioning import cues, phrases, pieces
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.reading.outline import RATES
from scriptkit.shipped import shipped
from scriptkit.times import frame_rate
from tests.captioned import broken_limits, captions, said, shown
from tests.scripts import Write, with_hang, worked_out

DISCLOSURE = "Ad. Quennick Socks paid for this part."


def test_a_short_sentence_is_one_line() -> None:
    assert shown("It is hardest where the calf is longest.") == ["It is hardest where the calf is longest."]


def test_a_longer_one_is_two_lines_that_end_with_a_phrase() -> None:
    text = "Those weights are my choice, and I'd enjoy an argument about them."
    assert shown(text) == ["Those weights are my choice, / and I'd enjoy an argument about them."]


def test_a_long_one_is_split_where_a_clause_ends() -> None:
    text = "I wobble long before my calf gives up, so I'd call it three out of five for steadiness on a good day."
    first, *rest = shown(text)
    assert first == "I wobble long before my calf gives up,"
    assert " / ".join(rest).replace(" / ", " ") == text.removeprefix(first + " ")


def test_short_neighbours_are_joined_and_others_are_not() -> None:
    assert shown("No.", "Never.", "Not on a ledge.") == ["No. Never. Not on a ledge."]
    long = "Put your heel off a step, sink slowly, and come up tall once more."
    assert len(shown(long, long)) == 2


def test_a_sentence_that_goes_on_in_the_next_caption_begins_its_own() -> None:
    first = "They also sent me three pairs, so count those as pay."
    second = "In their words: merino and nylon, ribbed at the arch, in four sizes and one sensible grey."
    assert shown(first, second)[:2] == ["They also sent me three pairs, / so count those as pay.", "In their words:"]


def test_nothing_is_joined_over_a_pause_or_a_change_of_segment() -> None:
    rate = frame_rate("25")
    far = cues.captions([Piece("No.", 0, 0.3), Piece("Never.", 2.3, 2.8)], rate, 5)
    other = cues.captions([Piece("No.", 0, 0.3, (0, 0)), Piece("Never.", 0.9, 1.4, (1, 0))], rate, 5)
    assert [one.lines for one in far] == [one.lines for one in other] == [("No.",), ("Never.",)]


def test_a_caption_stays_a_little_and_is_gone_in_a_long_pause() -> None:
    text = "The ledge side gained some more."
    first, _ = cues.captions([Piece(text, 0, 3), Piece(text, 9, 12)], Fraction(25), 14)
    assert first.end == Fraction(88, 25)  # half a second behind the last word, on the next frame


def test_a_gap_is_two_frames_or_closed() -> None:
    text = "The ledge side gained some more of it all, and so on."
    first, second = captions(text, text)
    assert second.start - first.end == Fraction(2, 25)
    rushed = [Piece("Go on and on and on, then.", 0, 0.6, (0, 0)), Piece(text, 0.9, 4, (1, 0))]
    first, second = cues.captions(rushed, Fraction(25), 5)
    assert second.start == first.end


def test_speech_too_fast_keeps_its_words_and_its_time() -> None:
    text = "Those weights are my choice, and I'd enjoy an argument about them. " * 4
    made = captions(text, speed=40)
    assert all(one.speed > 20 for one in made)
    assert made[-1].end <= Fraction(len(text) / 40 + 0.6)
    assert broken_limits(made, said(text, speed=40), Fraction(25), len(text) / 40 + 0.6) == []


@pytest.mark.parametrize("speed", [9, 14, 25])
@pytest.mark.parametrize("before", ["", "Now,", "Before we go on with the third one of them,"])
def test_a_disclosure_is_kept_whole(before: str, speed: float) -> None:
    texts = (f"{before} ad.".strip().capitalize(), "Quennick Socks paid for this part.", "They make socks, and a lot.")
    made = captions(*texts, speed=speed, whole=[DISCLOSURE])
    assert any(DISCLOSURE.lower() in " ".join(one.lines).lower() for one in made), made


def test_a_disclosure_too_long_for_two_lines_is_split_like_any_text() -> None:
    text = "Quennick Socks paid for this part of the programme, and they sent me three pairs of socks as well as that."
    made = captions(text, whole=[text])
    assert len(made) == 2
    assert broken_limits(made, said(text), Fraction(25), 60) == []


@pytest.mark.parametrize(
    "text",
    [
        "Say " + "pneumono" * 12 + " if you can, and then say it once more.",
        "👍 👍👍 that was it 👩‍👩‍👧, and 🇬🇧 too.",
        "提踵訓練可以讓小腿更強壯,而且不需要任何器材,只需要一個台階和一點耐心就可以了。" * 2,
        "ふくらはぎの筋肉は、かかとを上げる運動でよく動きますが、無理をしないでください。" * 2,
        "تمرين رفع الكعب على الدرج يقوي عضلة الساق، ولا يحتاج إلا إلى درج وبعض الصبر.",
        "종아리 근육은 발뒤꿈치를 드는 운동으로 강해지지만 무리하지 마십시오.",
        "a " * 120,
        "the " * 60,
        "— — —",
    ],
)
@pytest.mark.parametrize("speed", [3, 14, 90])
def test_no_text_breaks_a_limit(text: str, speed: float) -> None:
    pieces_ = said(text, "And on.", speed=speed)
    made = cues.captions(pieces_, frame_rate("29.97"), pieces_[-1].end + 0.6)
    assert broken_limits(made, pieces_, frame_rate("29.97"), pieces_[-1].end + 0.6) == []


def test_pictures_that_nobody_hears_shorten_no_caption(episode: Write) -> None:
    text = f"I like it. [opinion]\n\n{'🎉' * 40}\n\nIt is what I would do. {'🎉' * 99} I like it more. [opinion]\n"
    made = build.as_built(with_hang(episode, text)).captions
    assert all(one.end - one.start >= 1 for one in made)
    assert "🎉" not in "".join("".join(one.lines) for one in made)
    assert "I like it." in [one.lines[0] for one in made]


def test_a_word_said_for_longer_than_a_caption_lasts_is_shown_for_so_long() -> None:
    (one,) = cues.captions([Piece("Slowly.", 0, 12)], Fraction(25), 14)
    assert (one.start, one.end) == (Fraction(0), Fraction(7))


def test_nothing_said_gives_no_captions() -> None:
    assert cues.captions([], Fraction(25), 0.0) == cues.captions([Piece(" ", 0, 1)], Fraction(25)) == ()


@pytest.mark.parametrize("rate", ["", *RATES])
def test_the_sample_keeps_every_limit_at_every_rate(rate: str) -> None:
    facts = worked_out(shipped("sample_episode"))
    facts = build.as_built(facts._replace(episode=facts.episode._replace(rate=rate)))
    plan = pieces.planned(facts.segments, facts.timeline)
    assert broken_limits(facts.captions, plan, frame_rate(rate), facts.timeline.total) == []
    assert all(one.end - one.start >= 1 for one in facts.captions)
    assert all(one.speed <= 20 for one in facts.captions)
    assert any(DISCLOSURE in " ".join(one.lines) for one in facts.captions)
    starts = {frame / frame_rate(rate) for frame in (round(Fraction(one.start) * frame_rate(rate)) for one in plan)}
    assert sum(one.start in starts for one in facts.captions) > 80  # they come with the first word


def test_the_sample_parts_nothing_that_belongs_together() -> None:
    facts = build.as_built(worked_out(shipped("sample_episode")))
    lines = [line.split() for one in facts.captions for line in one.lines]
    costs = [phrases.cost([*line, *after], len(line)) for line, after in pairwise(lines) if line[-1][-1] not in ".?!"]
    assert len(costs) > 100
    assert max(costs) < phrases.NEVER
    assert sum(cost < phrases.PLAIN for cost in costs) > 0.8 * len(costs)
