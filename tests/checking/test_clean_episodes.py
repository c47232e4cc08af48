"""A careful author is left in peace: three clean episodes get no error, no warning and few notes at any stage."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from scriptkit.findings import STAGES
from tests.planting import CLEAN, clean_files, findings
from tests.running import run

# as measured when the episode comes out, which is when most is told
NOTES = {
    "sample": {},
    "bouldering-grip": {"coverage-worth-filming": 1, "may-be-a-claim": 3},
    "swim-pulls": {"market-not-covered": 1, "may-be-a-claim": 2, "no-entry-found": 2},
}


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("episode", CLEAN)
def test_a_clean_episode_has_no_error_and_no_warning(episode: str, stage: str, tmp_path: Path) -> None:
    found = findings(tmp_path / "clean" / episode, clean_files(episode), stage)
    assert [f"{one.name} {one.place}" for one in found if one.severity != "note"] == []


@pytest.mark.parametrize("episode", CLEAN)
def test_a_clean_episode_has_no_more_notes_than_were_measured(episode: str, tmp_path: Path) -> None:
    notes = Counter(one.name for one in findings(tmp_path / "clean" / episode, clean_files(episode)))
    print(f"{episode}: {notes.total()} notes")  # noqa: T201 - shown by pytest -s
    assert notes - Counter(NOTES[episode]) == Counter()


@pytest.mark.parametrize("episode", CLEAN)
def test_the_command_says_so_too(episode: str) -> None:
    assert run("check", CLEAN[episode], "--stage", "publish", "--strict").status == 0
