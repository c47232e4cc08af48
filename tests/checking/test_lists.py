"""Saved lists of retractions: how old they are, and that silence of a list is no praise of a work."""

from __future__ import annotations

from tests.checking.registers import WHOLE, with_sources
from tests.scripts import Write, found

LIST = "RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID\nRetraction,3/1/2026,10.5555/other,0\n"
REAL = WHOLE.replace("10.5555", "10.1234").replace(", invented: true", "")


def test_a_list_that_ends_long_before_the_episode_is_told_when_it_comes_out(episode: Write) -> None:
    def told(publish: str) -> list[tuple[str, str]]:
        more = f"retractions: list.csv\npublish: {publish}"
        return found(
            with_sources(episode, f"a: {{{WHOLE}}}", more=more, list_csv=LIST), "retraction-list-old", "publish"
        )

    assert [place for place, _ in told("2026-04-01")] == ["outline.yaml:3:14"]
    assert "2026-03-01, 31 days before" in told("2026-04-01")[0][1]
    assert told("2026-03-31") == told("2026-05") == []


def test_that_no_list_is_given_is_noted_when_the_episode_comes_out_and_only_of_real_works(episode: Write) -> None:
    facts = with_sources(episode, f"a: {{{REAL}}}")
    assert found(facts, "retractions-not-looked-up", "record") == []
    assert len(found(facts, "retractions-not-looked-up", "publish")) == 1
    assert found(with_sources(episode, f"a: {{{WHOLE}}}"), "retractions-not-looked-up", "publish") == []


def test_silence_of_a_list_is_told_with_its_date_and_with_what_could_not_be_looked_up(episode: Write) -> None:
    facts = with_sources(episode, f"a: {{{WHOLE}}}", more="retractions: list.csv", list_csv=LIST)
    ((place, message),) = found(facts, "no-entry-found")
    assert place == "outline.yaml:3:14"
    assert message == 'No entry for a in "list.csv", as of 2026-03-01, its newest date.'


def test_a_list_that_holds_a_source_is_not_silent_on_it(episode: Write) -> None:
    rows = LIST + "Correction,3/2/2026,10.5555/grip.22,0\n"
    assert (
        found(with_sources(episode, f"a: {{{WHOLE}}}", more="retractions: list.csv", list_csv=rows), "no-entry-found")
        == []
    )
