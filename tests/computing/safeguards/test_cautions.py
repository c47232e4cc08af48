"""A caution is said where its line is heard in time, and not where it is worded otherwise or taken back."""

from __future__ import annotations

import time

import pytest

from scriptkit import build
from tests.scripts import Write, found, worked_out

LINE = "If the tendon above your heel hurts, ask a licensed clinician before you load it."
OUTLINE = f"""
    title: One
    exercises:
      hang: {{name: Bar hang}}
      raise: {{name: Ledge raise, cautions: [heel]}}
      row: {{name: Row}}
    cautions: {{heel: {{line: '{LINE}'}}}}
    """


def states(episode: Write, text: str, where: str = "raise", outline: str = OUTLINE) -> list[str]:
    facts = worked_out(
        episode({"outline.yaml": outline, "segments/raise.md": "Here we go. [aside]", f"segments/{where}.md": text})
    )
    return [one.state for one in facts.spoken_cautions]


@pytest.mark.parametrize(
    "text",
    [
        LINE,
        "{{ cautions.heel.line }}",
        "IF the tendon above your heel hurts: ask a licensed clinician — before you load it",
        "If the tendon above your heel hurts,\nask a licensed clinician [shot CU: heel] before you load it.",
        f"Remember: {LINE}",
        "Mind your heel. [caution heel]",
        "Mind your heel.\n\n[caution heel]",
    ],
)
def test_the_line_or_its_mark_says_it(episode: Write, text: str) -> None:
    assert states(episode, text) == ["said"]


@pytest.mark.parametrize(
    ("where", "state"), [("opening", "said"), ("hang", "said"), ("row", "missing"), ("close", "missing")]
)
def test_it_counts_in_the_exercises_segment_or_before_it(episode: Write, where: str, state: str) -> None:
    assert states(episode, LINE, where) == [state]


def test_near_words_are_a_wording_of_it(episode: Write) -> None:
    assert states(episode, "When the tendon over your heel hurts, see a licensed clinician before you load it.") == [
        "reworded"
    ]


@pytest.mark.parametrize("mark", ["", " [caution heel]"])
@pytest.mark.parametrize(
    "text",
    [
        "If the tendon above your heel hurts, you don't need to ask a licensed clinician.",
        "If the tendon above your heel hurts, don't ask a licensed clinician before you load it.",
        "A tendon that hurts above the heel is no reason to ask a licensed clinician: never mind it.",
        LINE.replace(".", ", but that's overblown."),
    ],
)
def test_words_that_negate_or_soften_it_take_it_back_mark_or_not(episode: Write, text: str, mark: str) -> None:
    assert states(episode, text + mark) == ["softened"]


def test_the_next_sentence_may_take_it_back(episode: Write) -> None:
    for back in (
        "That's for the lawyers.",
        "But honestly, most people never bother.",
        "Or just tape it and get on with it.",
        "Or don't, I'm not your mother.",
    ):
        assert states(episode, f"{LINE} {back}") == ["softened"]
    assert states(episode, f"{LINE} Now take your time with the set-up, there's no need to hurry it.") == ["said"]


@pytest.mark.parametrize("text", [f"{LINE} That's for the lawyers.", f"The lawyers made me. {LINE}"])
def test_the_sentence_that_takes_it_back_is_the_one_that_is_told(episode: Write, text: str) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": text}))
    (one,) = (one for one in facts.spoken_cautions if one.state == "softened")
    assert "lawyers" in one.sentence
    assert one.place.column == text.index(one.sentence) + 1


def test_a_line_that_says_not_itself_is_not_taken_back(episode: Write) -> None:
    line = "Do not bounce at the bottom, and never hold your breath."
    assert states(episode, line, outline=OUTLINE.replace(LINE, line)) == ["said"]


def test_said_in_one_place_and_taken_back_in_another_is_both(episode: Write) -> None:
    assert states(episode, f"{LINE}\n\nIf your heel hurts, no need to ask a licensed clinician. [caution heel]") == [
        "said",
        "softened",
    ]


def test_a_line_of_two_sentences_is_said_by_two(episode: Write) -> None:
    outline = OUTLINE.replace(LINE, f"Heels can hurt. {LINE}")
    assert states(episode, f"Right. Heels can hurt. {LINE}", outline=outline) == ["said"]


def test_a_usual_tag_has_a_stock_line_and_the_outlines_own_goes_first(episode: Write) -> None:
    outline = "title: One\nexercises: {hang: {name: Bar hang, cautions: [maximal-load]}}\n"
    stock = worked_out(episode({"outline.yaml": outline})).cautions["maximal-load"]
    own = worked_out(episode({"outline.yaml": outline + "cautions: {maximal-load: {line: Use a spotter.}}\n"})).cautions
    assert stock.stock
    assert (own["maximal-load"].line, own["maximal-load"].stock) == ("Use a spotter.", False)


def test_the_stock_text_gives_a_caution_once(episode: Write) -> None:
    outline = OUTLINE.replace("{name: Row}", "{name: Row, cautions: [heel]}")
    facts = worked_out(episode({"outline.yaml": outline}))
    said = [one.text for part in facts.segments for one in part.sentences if one.text.startswith("If the tendon")]
    assert len(said) == 1
    assert [one.state for one in facts.spoken_cautions] == ["said", "said"]
    assert found(facts, "caution-not-spoken") == []


def test_hundreds_of_like_cautions_take_little_time(episode: Write) -> None:
    exercises = "\n".join(f"  e{i}: {{name: Thing {i}, cautions: [c{i}]}}" for i in range(200))
    lines = "\n".join(
        f"  c{i}: {{line: 'If joint {i} hurts under load, ask a licensed clinician before you go on.'}}"
        for i in range(200)
    )
    folder = episode({"outline.yaml": f"title: One\nexercises:\n{exercises}\ncautions:\n{lines}\n"})
    started = time.process_time()
    facts = build.work_out(build.read(folder))
    assert time.process_time() - started < 10  # on a slow machine; it takes one second
    assert {one.state for one in facts.spoken_cautions} == {"said"}


@pytest.mark.parametrize(
    "text",
    [
        f"{LINE} You can skip this.",
        f"{LINE} That's just for lawyers.",
        f"{LINE} Unless you're tough.",
        f"{LINE} You'll be fine.",
        f"The lawyers make me say this. {LINE}",
        f"Boring bit first. {LINE}",
        "If your heel hurts, ask a clinician, or just tape it up. [caution heel]",
    ],
)
def test_playing_it_down_around_it_takes_it_back(episode: Write, text: str) -> None:
    assert states(episode, text) == ["softened"]


@pytest.mark.parametrize(
    "text",
    [
        f"{LINE} Whatever you do, don't bounce.",
        f"{LINE} Don't train through it.",
        f"{LINE} Anyway, on we go.",
        f"{LINE} The pause is optional.",
        f"{LINE} I ignored it once, and I limped for a month.",
        f"Skip this one today if it aches. {LINE}",
        f"Not sure? Ask. {LINE}",
    ],
)
def test_other_words_beside_it_leave_it_standing(episode: Write, text: str) -> None:
    assert states(episode, text) == ["said"]
