"""A claim that was ad-libbed is an error by the time the episode comes out, until it is written down or allowed."""

from __future__ import annotations

from tests.computing.taking.test_ad_libs import HANG, SAID, files, said
from tests.running import run
from tests.scripts import Write


def test_it_has_to_be_settled_before_the_episode_comes_out(episode: Write) -> None:
    folder = episode(files(said(SAID)))
    found = {stage: run("check", folder, "--stage", stage, "--format", "json").json for stage in ("record", "publish")}
    severity = {
        stage: [one["severity"] for one in told["findings"] if one["name"] == "ad-lib-without-source"]
        for stage, told in found.items()
    }
    assert severity == {"record": ["note"], "publish": ["error"]}


def test_one_that_was_cut_out_of_the_film_is_allowed(episode: Write) -> None:
    hang = HANG + " <!-- allow: ad-lib-without-source because it was cut -->"
    (row,) = (
        row
        for row in run("claims", episode(files(said(SAID), hang)), "--format", "json").json["sentences"]
        if row["ad_lib"]
    )
    assert (row["state"], row["status"]) == ("allowed", "ad-lib, allowed because it was cut")
