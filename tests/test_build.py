"""The same input gives the same bytes, and the schemas accept what the reader accepts."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from scriptkit import build
from scriptkit.shipped import shipped
from tests.running import SMALLEST, held, run

Writer = Callable[[dict[str, str | bytes]], Path]
ROOT = Path(__file__).resolve().parents[1]


def built(folder: Path, **environment: str) -> dict[str, bytes | str | None]:
    """What a build of a copy of the sample at `folder` holds, made by a process of its own in that folder."""
    shutil.copytree(shipped("sample_episode"), folder, ignore=shutil.ignore_patterns("build", ".*"))
    call = [sys.executable, "-m", "scriptkit", "build"]
    paths = {**os.environ, "PYTHONPATH": str(ROOT), **environment}
    done = subprocess.run(call, cwd=folder, env=paths, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return held(folder / "build")


def test_the_same_input_gives_the_same_bytes(tmp_path: Path) -> None:
    """Whatever the folder is in, the order of sets, the language, the zone; a path of this machine is in none of it."""
    first = built(tmp_path / "one" / "episode", PYTHONHASHSEED="1", LC_ALL="C", TZ="UTC")
    second = built(tmp_path / "another" / "episode", PYTHONHASHSEED="2", LC_ALL="C.UTF-8", TZ="Asia/Tokyo")
    assert first == second
    assert [name for name, data in first.items() if isinstance(data, bytes) and str(tmp_path).encode() in data] == []


def test_a_second_build_in_place_and_one_from_elsewhere_are_equal(episode: Writer, tmp_path: Path) -> None:
    folder = episode({"outline.yaml": SMALLEST})
    run("build", folder)
    first = held(folder / "build")
    run("build", folder)
    run("build", folder, "--out", tmp_path / "out")
    assert held(folder / "build") == held(tmp_path / "out") == first


class Dates(yaml.SafeLoader):
    """Reads YAML as an editor does, by YAML 1.2: numbers and true and false as such; dates, on and off as texts."""


Dates.yaml_implicit_resolvers = {
    sign: [
        (tag, pattern)
        for tag, pattern in resolvers
        if tag != "tag:yaml.org,2002:timestamp" and not (tag == "tag:yaml.org,2002:bool" and sign in "yYnNoO")
    ]
    for sign, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
LOADERS = pytest.mark.parametrize("loader", [yaml.BaseLoader, Dates])


def faults(which: str, text: str, loader: Any) -> list[str]:
    """What the schema has against a text."""
    validator = jsonschema.Draft202012Validator(build.schema(which))
    return [error.message for error in validator.iter_errors(yaml.load(text, loader))]  # noqa: S506


@pytest.mark.parametrize("which", ["outline", "register", "channel"])
def test_a_schema_is_one(which: str) -> None:
    jsonschema.Draft202012Validator.check_schema(build.schema(which))
    assert run("schema", which).json == build.schema(which)


@LOADERS
@pytest.mark.parametrize(("which", "name"), [("outline", "outline.yaml"), ("register", "evidence.yaml")])
def test_the_sample_is_valid(which: str, name: str, loader: Any) -> None:
    assert faults(which, (shipped("sample_episode") / name).read_text(), loader) == []


@LOADERS
def test_what_new_makes_is_valid(loader: Any) -> None:
    assert faults("outline", (shipped("templates") / "new-outline.yaml").read_text(), loader) == []


VALID = """
title: One
runtime: {target: 9:30, tolerance: 20}
rate: 25
grades: {NO: 4, B: 1}
exercises:
  hang:
    name: Bar hang
    grade: NO
    claims:
      - {say: It rose., source: {id: a, stance: null}}
      - {say: It rose., source: [a, {id: b, finding: growth}]}
      - {say: I like it., opinion: yes}
sources: {a: {title: A, year: 2021, pmid: 0123, n: 12}}
"""


@LOADERS
def test_what_the_reader_takes_the_schema_takes(episode: Writer, loader: Any) -> None:
    assert faults("outline", VALID, loader) == []
    shape = {"wrong-type", "unknown-key", "unknown-word", "out-of-range", "missing-value"}
    found = run("check", episode({"outline.yaml": VALID}), "--format", "json").json["findings"]
    assert [one["message"] for one in found if one["name"] in shape] == []


@pytest.mark.parametrize(
    "wrong",
    [
        "[]", "title", "{titel: One}", "{title: [One]}", "{exercises: [hang]}", "{exercises: {hang: {nmae: Bar}}}",
        "{title: One, exercises: {hang: {name: Bar, claims: [{say: It rose., sorce: a}]}}}", "{rate: 26}",
        "{exercises: {hang: {name: Bar, shots: [{size: HUGE}]}}}",
    ],
)  # fmt: skip
@LOADERS
def test_a_wrong_outline_is_not_valid(wrong: str, loader: Any) -> None:
    assert faults("outline", wrong, loader) != []


@LOADERS
def test_a_wrong_register_or_channel_is_not_valid(loader: Any) -> None:
    assert faults("register", "sources: {a: {titel: A}}", loader) != []
    assert faults("register", "{source: {}}", loader) != []
    assert faults("channel", "exercises: {}", loader) != []
    assert faults("channel", "{name: Our channel, pace: 150}", loader) == []


def test_whatever_a_file_is_named_in_the_outline_it_is_kept(episode: Writer) -> None:
    text = SMALLEST.replace("title:", "evidence: [more.yaml, ../shared.yaml, 'bad\\0name']\n    title:", 1)
    folder = episode({"outline.yaml": text, "segments/bar-hang.md": "Text.\n", "../channel.yaml": "name: Ours\n"})
    kept = {path.resolve() for path in build.files_read(build.read(folder))}
    names = ("outline.yaml", "more.yaml", "../shared.yaml", "../channel.yaml", "segments/bar-hang.md", "take.json")
    assert {(folder / name).resolve() for name in names} <= kept
