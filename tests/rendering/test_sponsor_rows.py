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


def test_the_page_leads_to_no_other_one_and_speaks_of_no_source(episode: Write) -> None:
    html = made(shipped("sample_episode"))
    assert re.findall(r'href="(?!#|data:)', html) == []
    assert "<nav" not in html
    assert "invented" not in told(html)


def test_each_line_has_what_is_seen_while_it_is_said(episode: Write) -> None:
    text = told(page(episode, text="[shot CU top: a sock] Ad. Q paid. [shot FS: a hill] They come. [sponsor says]"))
    assert text.index("Seen: CU top a sock") < text.index("They come.") < text.index("Seen: FS a hill")
    assert text.count("Seen:") == 2
    assert "your wording" in text


def test_a_claim_that_was_agreed_is_there_and_whether_it_is_said(episode: Write) -> None:
    claims = ', claims: [{say: They come in grey., source: sponsor}, {say: "They are warm."}]'
    text = told(page(episode, claims))
    assert re.search(r"✓ Claim : They come in grey\. said at \d:\d\d", text)
    assert "– Claim : They are warm. not said in these words" in text


@pytest.mark.parametrize(("word", "sign"), [("warm", "✓"), ("grey", "✕")])
def test_what_is_not_to_be_said_is_looked_for(episode: Write, word: str, sign: str) -> None:
    assert f"{sign} Not to be said : {word}" in told(page(episode, f", never_say: [{word}]"))


@pytest.mark.parametrize(("day", "sign"), [("2026-03-02", "✓"), ("2027-03-02", "✕"), ("", "–")])
def test_the_offer_is_held_against_the_day_of_publication(episode: Write, day: str, sign: str) -> None:
    outline = OUTLINE + (f"publish: {day}\naudience: hill runners\n" if day else "")
    text = told(page(episode, ", valid: [2026-01-01, 2026-12-31]", outline=outline))
    assert f"{sign} Offer runs : 2026-01-01 to 2026-12-31" in text
    assert (f"Day of publication {day} Made for hill runners" in text) == bool(day)


def test_an_approval_counts_whatever_the_case_of_its_letters(episode: Write) -> None:
    page(episode)
    key = worked_out(episode({})).sponsor_hash.upper()
    assert "this very text" in told(page(episode, f", approved: {{hash: {key}, by: Q. N., on: 2026-02-20}}"))
