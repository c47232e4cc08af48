"""Each verdict of a ledger that came back is kept, or it is told why not; none is lost and none is taken twice."""

from __future__ import annotations

import pytest

from scriptkit import keys
from scriptkit.computing.settling import settle
from scriptkit.model import Verdict
from scriptkit.model.returned import ReturnedRow, Settled
from tests.computing.test_ruling import script, verdict

SAID = script(hang=["Hang time rose by a fifth in one trial.", "I like it.", "So it’s an A."], close=["Bye."])
FIRST = "Hang time rose by a fifth in one trial."


def row(number: int, sentence: str, word: str = "verified", **more: object) -> ReturnedRow:
    fields = {"key": keys.of(sentence), "sentence": sentence, "initials": "QN", "date": "2026-03-02", **more}
    return ReturnedRow(number, verdict=word, **fields)  # type: ignore[arg-type]


def settled(*rows: ReturnedRow, kept: list[Verdict] | None = None) -> Settled:
    return settle(rows, SAID, kept or [])


def kept(word: str, date: str, initials: str = "AB") -> Verdict:
    return verdict(FIRST, word, date, initials=initials)


def test_a_verdict_is_taken_with_all_that_was_written() -> None:
    done = settled(row(2, FIRST, "Verified", note="as it says", page="7"))
    assert [one[:8] for one in done.taken] == [
        (keys.of(FIRST), FIRST, "hang", "verified", "as it says", "7", "QN", "2026-03-02")
    ]
    assert (done.already, done.newer, done.conflicts, done.refused) == (0, (), (), ())


@pytest.mark.parametrize("written", ["no claim", "No-claim", "NO_CLAIM", " no  claim."])
def test_the_words_may_be_spelled_as_they_come(written: str) -> None:
    assert [one.verdict for one in settled(row(2, "I like it.", written, note="taste")).taken] == ["no claim"]


def test_an_empty_verdict_is_none() -> None:
    assert settled(row(2, FIRST, "")) == Settled((), 0, (), (), ())


@pytest.mark.parametrize(
    ("one", "why"),
    [
        (row(2, FIRST, "verifed"), '"verifed" is no verdict. Did you mean "verified"? It can be: verified, changed,'),
        (row(2, FIRST, "", note="look at page 3"), 'it has a note and no verdict ("look at page 3"). Choose one:'),
        (row(2, FIRST, "no claim"), "it rules that the sentence is no claim and gives no reason. Say why in the note."),
        (row(2, FIRST, troubles=("The date is two.",)), "The date is two."),
        (row(2, FIRST, key=""), 'it has no key, so it is not known which sentence the verdict "verified" is about.'),
        (row(2, FIRST, key="s-0"), 'its key "s-0" is that of no sentence of this episode.'),
        (
            row(2, "Hang time fell.", key=keys.of(FIRST)),
            'its sentence was changed in the sheet, "Hang time fell."; the',
        ),
        (row(2, "", key=keys.of(FIRST)), 'its sentence was changed in the sheet, ""; the script says "Hang time rose'),
        (
            row(2, "Nobody says so."),
            '"Nobody says so." is not in the script: it was changed or cut since the sheet was',
        ),
    ],
)
def test_a_row_that_cannot_be_taken_is_told_and_the_others_are_taken(one: ReturnedRow, why: str) -> None:
    done = settled(one, row(3, "I like it.", "verified"))
    assert [(told.row, told.message.startswith(why)) for told in done.refused] == [(2, True)], done.refused
    assert [one.sentence for one in done.taken] == ["I like it."]


def test_of_a_sentence_that_changed_meanwhile_it_is_told_what_it_says_now() -> None:
    done = settled(row(2, "Hang time rose by a third in one trial.", "unsupported"))
    assert done.taken == ()
    assert f'It says now, in outline.yaml, line 1: "{FIRST}"' in done.refused[0].message
    assert 'the verdict "unsupported" is about the old words' in done.refused[0].message


def test_quotes_and_case_that_a_spreadsheet_changed_do_not_matter() -> None:
    assert len(settled(row(2, "so it's an a.", key=keys.of("So it’s an A."))).taken) == 1


def test_the_same_again_changes_nothing() -> None:
    first = settled(row(2, FIRST)).taken
    again = settled(row(2, FIRST), row(9, FIRST), kept=list(first))
    assert (again.taken, again.already) == ((), 2)


def test_a_later_verdict_counts_and_the_earlier_is_named() -> None:
    done = settled(row(2, FIRST, "unsupported"), kept=[kept("verified", "2026-03-01")])
    assert [one.verdict for one in done.taken] == ["unsupported"]
    assert done.newer[0].message == (
        f'"{FIRST}" was verified by AB on 2026-03-01; unsupported by QN on 2026-03-02 is later and counts from now on.'
    )


@pytest.mark.parametrize("date", ["2026-03-02", "2026-03-09", ""])
def test_another_verdict_that_is_not_later_is_a_conflict_and_the_kept_one_stays(date: str) -> None:
    done = settled(row(2, FIRST, "unsupported"), row(3, "Bye."), kept=[kept("verified", date)])
    assert [one.sentence for one in done.taken] == ["Bye."]
    assert [told.row for told in done.conflicts] == [2]
    assert "The kept verdict stays." in done.conflicts[0].message


def test_a_second_person_may_agree() -> None:
    done = settled(row(2, FIRST, "verified"), kept=[kept("verified", "2026-03-09")])
    assert [one.initials for one in done.taken] == ["QN"]
    assert done.conflicts == ()


def test_two_verdicts_on_one_sentence_in_one_sheet_are_shown_and_none_is_taken() -> None:
    done = settled(row(2, FIRST), row(3, FIRST, "changed"), row(4, FIRST, "", note=""))
    assert done.taken == ()
    assert [told.row for told in done.conflicts] == [2, 3]
    assert "row 2: verified by QN on 2026-03-02; row 3: changed by QN on 2026-03-02" in done.conflicts[0].message


def test_a_sheet_with_the_kept_verdict_in_its_other_row_is_no_conflict() -> None:
    before = kept("verified", "2026-03-01")
    done = settled(row(2, FIRST, date="2026-03-01", initials="AB"), row(3, FIRST, "changed"), kept=[before])
    assert (done.already, [one.verdict for one in done.taken], done.conflicts) == (1, ["changed"], ())


def test_an_old_sheet_after_a_newer_one_changes_nothing() -> None:
    history = [kept("verified", "2026-03-01"), kept("unsupported", "2026-03-05")]
    done = settled(row(2, FIRST, date="2026-03-01", initials="AB"), kept=history)
    assert done == Settled((), 1, (), (), ())


def test_a_verdict_on_a_sentence_that_had_one_before_and_is_gone_is_known() -> None:
    gone = verdict("It was said once.", "verified", "2026-03-01")
    done = settled(row(2, gone.sentence, "unsupported"), kept=[gone])
    assert [(one.sentence, one.segment, one.verdict) for one in done.taken] == [(gone.sentence, "hang", "unsupported")]


def test_verdicts_are_kept_in_the_order_of_the_sheet() -> None:
    done = settled(row(5, "Bye."), row(2, FIRST), row(9, "I like it."))
    assert [one.sentence for one in done.taken] == [FIRST, "Bye.", "I like it."]
