"""A build makes the files that are listed, each for its purpose."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from scriptkit.rendering import outputs
from scriptkit.session import Session
from scriptkit.shipped import shipped
from tests.conftest import Golden
from tests.running import SMALLEST, run

Writer = Callable[[dict[str, str | bytes]], Path]
LISTED = set(
    """
    captions.srt
    captions.vtt
    chapters.txt
    claims.csv
    claims.html
    claims.xlsx
    description.txt
    grades.html
    grades.svg
    graphics.csv
    graphics.html
    graphics.xlsx
    index.html
    prompter.html
    prompter.txt
    references.json
    references.txt
    report.json
    runtime.svg
    script.html
    script.md
    shoot.csv
    shoot.html
    shoot.xlsx
    shots.csv
    shots.html
    shots.xlsx
    sponsor.html
    timeline.edl
    timeline.fcpxml
    timeline.otio
    """.split()
)


def rendered(folder: Path, stage: str = "record") -> dict[str, bytes]:
    work = Session(folder, stage, drawn=True)
    assert work.facts is not None
    return outputs.render(outputs.Asked(work.build.as_built(work.facts), work.found, stage, work.name))


def test_every_listed_file_is_made_and_holds_something(episode: Writer) -> None:
    files = rendered(episode({"outline.yaml": SMALLEST}))
    assert files.keys() == LISTED == {one.name for one in outputs.OUTPUTS}
    assert all(files.values())
    assert all(one.about for one in outputs.OUTPUTS)


def test_nothing_but_a_title_gives_every_file_too(episode: Writer) -> None:
    assert rendered(episode({"outline.yaml": "title: One\n"})).keys() == LISTED


def test_the_prompter_holds_what_is_said_and_nothing_else(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST})
    lines = [line for line in rendered(folder)["prompter.txt"].decode().split("\n") if line]
    assert lines == [one["text"] for one in run("claims", folder, "--format", "json").json["sentences"]]


def test_the_report_holds_what_the_commands_answer(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST.replace("source: mora-2022", "source: nobody")})
    report = json.loads(rendered(folder, "publish")["report.json"])
    check = run("check", folder, "--stage", "publish", "--format", "json").json
    assert {name: report[name] for name in check} == check
    assert report["stage"] == "publish"
    assert report["sentences"] == run("claims", folder, "--format", "json").json["sentences"]
    assert report["shots"] == run("shots", folder, "--format", "json").json
    runtime = run("runtime", folder, "--format", "json").json
    assert {name: runtime[name] for name in report["runtime"]} == report["runtime"]  # the command tells more


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", "a\u202eb", '"><img src=x>', "{{ 7 * 7 }}", "]]>"])
def test_an_authors_words_stay_words_in_a_page(episode: Writer, text: str) -> None:
    outline = f"title: {json.dumps(text)}\nexercises: {{hang: {{name: {json.dumps(text)}}}}}\n"
    files = rendered(episode({"outline.yaml": outline}))
    pages = "".join(
        files[name].decode() for name in ("index.html", "script.html", "shots.html", "claims.html", "runtime.svg")
    )
    assert "<script>alert" not in pages
    assert "<img src=x" not in pages


def test_what_a_message_has_between_backticks_is_code_and_no_markup(episode: Writer) -> None:
    outline = "title: One\nexercises: {hang: {name: 'A `<b>x</b>` hang'}}\n"
    page = rendered(episode({"outline.yaml": outline, "segments/hang.md": "I like it. [opinion]"}))[
        "index.html"
    ].decode()
    assert "<code>[shot FS side: ...]</code>" in page
    assert "<code>&lt;b&gt;x&lt;/b&gt;</code> hang" in page
    assert "<b>x" not in page


def test_the_sample_is_built_as_the_golden_files_have_it(golden: Golden) -> None:
    golden.folder("sample_episode", rendered_as_written(shipped("sample_episode")))


def rendered_as_written(folder: Path) -> dict[str, bytes]:
    """The sample's files as a build in its folder writes them."""
    assert run("check", folder, "--stage", "publish", "--strict").status == 0
    return rendered(folder)
