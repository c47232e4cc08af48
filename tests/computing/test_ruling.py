"""A verdict goes with its sentence, is void without it, and of two the later counts."""

from __future__ import annotations

from scriptkit import keys, model
from scriptkit.computing import ruling
from scriptkit.model import Verdict

HOME = model.NOWHERE


def verdict(sentence: str, word: str = "verified", date: str = "", initials: str = "") -> Verdict:
    return Verdict(keys.of(sentence), sentence, "hang", word, initials=initials, date=date)


def script(**segments: list[str]) -> tuple[model.Segment, ...]:
    made = []
    for name, texts in segments.items():
        said = tuple(model.Sentence(text, HOME.place) for text in texts)
        made.append(model.Segment(name, "talk", name, "", (model.Paragraph(said),), drafted=False, file="", at=HOME))
    return tuple(made)


def test_of_two_verdicts_on_a_sentence_the_later_date_counts_wherever_it_stands() -> None:
    old, new = verdict("So.", "unsupported", "2026-03-01"), verdict("so.", "verified", "2026-03-09")
    assert list(ruling.latest([old, new]).values()) == [new]
    assert list(ruling.latest([new, old]).values()) == [new]


def test_without_dates_the_one_further_down_counts() -> None:
    first, second = verdict("So.", "unsupported"), verdict("So.", "verified", "2026-03-09")
    assert list(ruling.latest([first, second]).values()) == [second]
    assert list(ruling.latest([second, first]).values()) == [first]


def test_a_sentence_that_moved_keeps_its_verdict() -> None:
    kept = ruling.latest([verdict("It’s so.")])
    found = ruling.ruled(script(a=["New."], b=["It's  SO.", "Not."]), kept)
    assert {name: [bool(one) for one in row] for name, row in found.items()} == {"a": [False], "b": [True, False]}
    assert ruling.void(script(a=["New."], b=["It's  SO.", "Not."]), kept) == ()


def test_a_changed_sentence_makes_its_verdict_void_and_is_named() -> None:
    old = verdict("Hang time rose by about a fifth in one trial.")
    segments = script(a=["It rose.", "Hang time rose by about a third in one trial."], b=["Hang on."])
    (one,) = ruling.void(segments, ruling.latest([old]))
    assert (one.verdict, one.segment) == (old, "a")
    assert one.sentence is segments[0].sentences[1]


def test_a_sentence_that_was_cut_has_nothing_in_its_place() -> None:
    (one,) = ruling.void(script(a=["Something else is said."]), ruling.latest([verdict("Hang time rose.")]))
    assert (one.segment, one.sentence) == ("", None)


def test_a_verdict_is_history_once_the_new_words_have_their_own() -> None:
    old, new = verdict("Hang time rose by a fifth in one trial."), verdict("Hang time rose by a third in one trial.")
    assert ruling.void(script(a=[new.sentence]), ruling.latest([old, new])) == ()


def test_a_thousand_void_verdicts_on_a_long_script_take_no_time() -> None:
    texts = [f"The trial of group {n} rose by {n} percent in week {n % 50}." for n in range(5000)]
    kept = ruling.latest(verdict(f"{text} Or so.") for text in texts[:1000])
    assert len(ruling.void(script(a=texts), kept)) == 1000


def test_a_verdict_in_words() -> None:
    assert ruling.told(verdict("So.", "changed", "2026-03-02", initials="QN")) == "changed by QN on 2026-03-02"
    assert ruling.told(verdict("So.")) == "verified"
