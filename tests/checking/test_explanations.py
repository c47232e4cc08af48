"""What `explain` shows is true: the bad example of every check raises it, and the good one does not."""

from __future__ import annotations

from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.checking import rules
from scriptkit.findings import explanation

CHECKS = rules.kinds()


def raised(folder: Path, files: dict[str, bytes]) -> set[str]:
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    material = build.read(folder)
    return {one.name for one in build.check(build.work_out(material), "publish")}


@pytest.mark.parametrize("name", CHECKS)
def test_the_bad_example_raises_it_and_the_good_one_does_not(name: str, tmp_path: Path) -> None:
    told = explanation(CHECKS[name])
    assert told is not None
    assert name in raised(tmp_path / "bad" / "episode", told.bad.on_disk())
    assert name not in raised(tmp_path / "good" / "episode", told.good.on_disk())


@pytest.mark.parametrize("name", CHECKS)
def test_the_good_example_has_no_fault_that_makes_it_unreadable(name: str, tmp_path: Path) -> None:
    told = explanation(CHECKS[name])
    assert told is not None
    readers = {"yaml-syntax", "unknown-key", "wrong-type", "missing-value", "not-a-mark", "tag-not-understood"}
    assert not readers & raised(tmp_path / "episode", told.good.on_disk())


@pytest.mark.parametrize("name", CHECKS)
def test_a_summary_is_one_sentence(name: str) -> None:
    told = explanation(CHECKS[name])
    assert told is not None
    assert told.summary.endswith(".")
    assert len(told.summary) < 110


@pytest.mark.parametrize("name", CHECKS)
def test_an_explanation_says_what_its_rule_stands_on(name: str) -> None:
    told = explanation(CHECKS[name])
    assert told is not None
    stands = [part for part in told.text.split("\n\n") if part.startswith("Rule: ")]
    assert len(stands) == 1, f"{name} needs one paragraph that begins with `Rule: `"
    assert stands[0].endswith(".")
