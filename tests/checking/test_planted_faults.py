"""Each kind of finding has a fault planted in a clean episode, and is found at its place, alone and among all."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from scriptkit.checking import rules
from scriptkit.findings import Finding
from scriptkit.reading import faults
from tests.planting import CLEAN, HERE, Plant, clean_files, findings, plants, put

NOT_BY_EDIT = {
    "file-too-large": "it takes megabytes of text",
    "no-outline": "an outline that is no mapping is another file, and nothing else of the episode is read",
}
MAY_COME = "runtime-off-target"  # a sentence more or less may take a script over the runtime it has to keep
PLANTS = plants()
CLEAN_FINDINGS: dict[str, Counter[str]] = {}


def names(found: list[Finding]) -> Counter[str]:
    return Counter(one.name for one in found)


def when_clean(episode: str, folder: Path) -> Counter[str]:
    """How many findings of each kind the clean episode has."""
    if episode not in CLEAN_FINDINGS:
        CLEAN_FINDINGS[episode] = names(findings(folder / "clean" / episode, clean_files(episode)))
    return CLEAN_FINDINGS[episode]


def lost(chosen: list[Plant], folder: Path) -> list[str]:
    """The faults of one episode that are not found at their places when all are planted together."""
    made = put(chosen[0].episode, chosen)
    found = {(one.name, one.place) for one in findings(folder, made.files)}
    pairs = zip(chosen, made.places, strict=True)
    return [f"{plant.name} at {place}" for plant, place in pairs if (plant.name, place) not in found]


def test_every_kind_of_finding_is_planted_or_has_a_reason_why_not() -> None:
    kinds = {**rules.kinds(), **faults.KINDS}
    planted = [plant.name for plant in PLANTS]
    assert sorted(kinds.keys() - set(planted) - NOT_BY_EDIT.keys()) == [], "plant a fault of each new kind"
    assert sorted({*planted, *NOT_BY_EDIT} - kinds.keys()) == [], "there is no such kind any more"
    assert sorted(NOT_BY_EDIT.keys() & set(planted)) == []


@pytest.mark.parametrize("plant", PLANTS, ids=lambda plant: f"{plant.name}-{plant.episode}")
def test_a_fault_alone_is_found_at_its_place_and_nothing_else_is(plant: Plant, tmp_path: Path) -> None:
    made = put(plant.episode, [plant])
    found = findings(tmp_path / "planted" / "episode", made.files)
    assert (plant.name, made.places[0]) in {(one.name, one.place) for one in found}
    new = names(found) - when_clean(plant.episode, tmp_path)
    if plant.name != MAY_COME:
        del new[MAY_COME]
    assert new - Counter(plant.brings) == Counter([plant.name])


@pytest.mark.parametrize("episode", CLEAN)
def test_all_faults_together_are_each_found_at_their_places(episode: str, tmp_path: Path) -> None:
    together = [plant for plant in PLANTS if plant.episode == episode and not plant.alone]
    assert lost(together, tmp_path / "planted" / "episode") == []


def test_a_fault_that_is_found_somewhere_else_would_be_seen(tmp_path: Path) -> None:
    plant = next(plant for plant in PLANTS if plant.name == "claim-without-source")
    change = plant.changes[0]
    elsewhere = change._replace(new=change.new.replace(HERE, "") + HERE)
    missed = lost([plant._replace(changes=(elsewhere,))], tmp_path / "planted" / "episode")
    assert [one.split(" ")[0] for one in missed] == ["claim-without-source"]


def test_most_kinds_are_planted_in_one_episode_and_each_in_some() -> None:
    together = {plant.name for plant in PLANTS if plant.episode == "sample" and not plant.alone}
    assert len(together) > 100
    assert len([plant for plant in PLANTS if plant.alone]) <= 9
