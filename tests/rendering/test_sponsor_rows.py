"""The sponsor's page shows the passage alone, where it stands, what was agreed, and the text to approve."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.rendering import outputs
from scriptkit.shipped import shipped
from tests.scripts import Write, worked_out

OUTLINE = """\
title: One
exercises: {hang: {name: Bar hang}}
sponsor: {name: "Q & <Sons>", disclosure: Ad. Q paid., must_say: [grey ones], code: HILL10, length: {least: 30s}MORE}
"""
TEXT = "[screen: Ad. Q paid.] Ad. Q paid. They come in grey. [sponsor says]"


def page(episode: Write, more: str = "", text: str = TEXT, outline: str = OUTLINE) -> str:
    folder = episode({"outline.yaml": outline.replace("MORE", more), "segments/sponsor.md": text})
    return made(folder)


def made(folder: Path) -> str:
    facts = build.work_out(build.read(folder))
    asked = outputs.Asked(facts, build.check(facts, "publish"), "publish", "one")
    return next(one.make(asked) for one in outputs.OUTPUTS if one.name == "sponsor.html").decode()


def told(html: str) -> str:
    return unescape(" ".join(re.sub(r"<style.*?</style>|<[^>]+>", " ", html, flags=re.DOTALL).split()))


def test_the_sample_s_passage_is_approved_with_a_line_of_the_script_around_it() -> None:
    text = told(made(shipped("sample_episode")))
    assert "For me it's a D plus: a fine stretch" in text
    assert "Number six: skipping rope. …" in text
    assert "Approved by Q. N. on 2026-02-20: this very text." in text
    assert "Not approved" not in text


def test_what_is_missing_stands_open_and_the_approval_is_a_blank_with_the_hash(episode: Write) -> None:
    text = told(page(episode))
    assert "To be said : grey ones not said" in text
    assert "Code : HILL10 not said, not on screen" in text
    assert "Approved by name to fill in on date to fill in" in text
    key = worked_out(episode({})).sponsor_hash
    assert f"approved: {{hash: {key}, by: ..., on: ...}}" in text


def test_an_approval_of_another_text_is_void(episode: Write) -> None:
    text = told(page(episode, ", approved: {hash: abcdefabcdef, by: Q. N., on: 2026-02-20}"))
    assert "Not approved. What Q. N. approved was another text" in text


def test_names_are_text_and_no_markup(episode: Write) -> None:
    html = page(episode)
    assert "Q &amp; &lt;Sons&gt;" in html
    assert "<Sons>" not in html


@pytest.mark.parametrize("outline", ["title: One\nexercises: {hang: {name: Bar hang}}\n", "title: One\n"])
def test_an_episode_without_a_sponsor_says_so(episode: Write, outline: str) -> None:
    folder = episode({"outline.yaml": outline})
    assert "This episode has no sponsor." in told(made(folder))


def test_a_drafted_passage_is_there_to_approve_too(episode: Write) -> None:
    folder = episode({"outline.yaml": OUTLINE.replace("MORE", "")})
    text = told(made(folder))
    assert "For Q & <Sons> : the words" in text
    assert "Disclosure : Ad. Q paid. said at" in text
