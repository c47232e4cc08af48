"""The lists of claims, runtime and shots, as a person sees them."""

from __future__ import annotations

from typing import Any

import pytest

from scriptkit import listings, runtime_listing
from scriptkit.model import Verdict
from scriptkit.model.returned import Settled, Told
from scriptkit.terminal import Ink, width
from tests.conftest import Golden
from tests.running import run
from tests.scripts import Write

Row = dict[str, Any]


def sentence(text: str, kind: str = "claim", **more: object) -> Row:
    row: Row = {"segment": "hang", "file": "segments/hang.md", "line": 3, "text": text, "kind": kind, "strength": None}
    row |= {"flags": [], "triggers": [], "sources": [], "certainty": None, "marks": [], "evidence": [], "status": ""}
    row |= {"why": [], "findings": [], "to_verify": kind == "claim"}
    return {**row, "state": "none", "ruling": {"note": ""}, **more}


def source(name: str, level: int | None = None, **more: object) -> Row:
    row: Row = {"source": name, "known": True, "finding": "", "stance": "supports", "level": level, "result": ""}
    return {**row, "outcome": "", "quote": "", "page": "", "why": [], "unnamed": [], **more}


def shot(number: int, **more: object) -> Row:
    row: Row = {"shot": number, "setup": "A", "segment": "hang", "start_s": 1.0, "duration_s": 9.84, "size": "CU"}
    row |= {
        "plane": "side",
        "form": "",
        "of": "hands on the bar",
        "reps": None,
        "reps_fit": None,
        "fps": "",
        "slow_motion": "",
        "screen": [],
    }
    return {**row, **more}


def segment(name: str, **more: object) -> Row:
    row: Row = {"id": name, "kind": "verdict", "title": name, "start_s": 0.0, "spoken_s": 50.0, "silent_s": 0.0}
    return {**row, "total_s": 50.0, "low_s": 45.0, "high_s": 58.0, "words": 120, **more}


def whole(**more: object) -> Row:
    row: Row = {"pace": 160, "pace_from": "outline", "target_s": 60.0, "total_s": 72.4, "low_s": 60.0, "high_s": 80.0}
    return {**row, "segments": [segment("opening"), segment("hang", start_s=50.0, silent_s=4.0)], **more}


SENTENCES = [
    sentence("First up: bar hang.", "other", marks=["aside"]),
    sentence(
        "In one trial of 38 climbers, who hung three times a week for six weeks, hang time rose by about a fifth.",
        strength="plain", flags=["numeric"], triggers=["38", "rose"], sources=["mora-2022"], certainty="low", line=5,
        state="verified", status="verified by QN on 2026-03-02", ruling={"note": "page 7 says so"},
        evidence=[
            source("mora-2022", 2, finding="hang", quote="Hang time rose by a fifth.", page="7", why=["starts high"]),
            source("lind-2019", stance="against", result="no change"), source("nobody", known=False),
        ],
        why=["the sources do not agree: one step down"],
        findings=[{"severity": "warning", "message": "It is not said who the people were.", "help": "Say it."}],
    ),
    sentence("It works.", strength="plain", triggers=["works"], line=7, state="open", status="needs a source"),
    sentence(
        "I like it.", "opinion", marks=["opinion"], triggers=["I like"], file="outline.yaml", line=12, state="opinion",
        status="opinion",
    ),
    sentence("Will it last?", "question", segment="close", line=1),
]  # fmt: skip
VOID: list[Row] = [
    {"told": "verified by QN", "text": "It rose.", "now": "It fell.", "file": "segments/hang.md", "line": 9},
    {"told": "change asked for", "text": "It is gone.", "now": None, "file": None, "line": None},
]
SHOTS = [
    shot(
        1, form="correct", reps=3, reps_fit=2, screen=["Grade A", "a card that is much too long to stand on one line"]
    ),
    shot(2, of="a bar, and then everything else that the camera can see from over there by the rack", start_s=10.84),
    shot(3, segment="close", setup="B", start_s=None, duration_s=None, reps=2, reps_fit=2),
]


def test_claims_look_as_they_should(golden: Golden) -> None:
    golden("terminal/claims.txt", listings.claims(SENTENCES, Ink(columns=80)))


def test_shots_look_as_they_should(golden: Golden) -> None:
    golden("terminal/shots.txt", listings.shots(SHOTS, Ink(columns=80)))


def test_runtime_looks_as_it_should(golden: Golden) -> None:
    golden("terminal/runtime.txt", runtime_listing.runtime(whole(), Ink(columns=80)))


def test_a_claim_without_a_source_is_told_and_counted() -> None:
    text = listings.claims(SENTENCES, Ink(columns=110))
    assert "needs a source" in text
    counted = "5 sentences: 2 claims, 1 opinion, 1 question. 1 of the claims needs a source. Ruled: 1 verified. "
    assert " ".join(text.split()).endswith(counted + "1 waits for a verdict.")
    resting = [row for row in SENTENCES if row["text"] != "It works."]
    assert "No claim lacks a source." in listings.claims(resting, Ink())


def test_a_claim_is_told_with_what_its_source_says_why_it_is_so_sure_and_what_is_open() -> None:
    text = " ".join(listings.claims(SENTENCES, Ink()).split())
    assert "rests on mora-2022, hang (level 2, page 7): “Hang time rose by a fifth.”" in text
    assert "against: lind-2019: no change" in text
    assert "why low: mora-2022: starts high; the sources do not agree: one step down" in text
    assert "warning: It is not said who the people were." in text


def test_a_void_verdict_is_told_with_what_is_said_now() -> None:
    text = listings.claims(SENTENCES, Ink(), VOID)
    assert "verified by QN: It rose.\n" in text
    assert "now in segments/hang.md, line 9: It fell.\n" in text
    assert "nothing like it is said now\n" in text


def test_what_came_of_a_ledger_looks_as_it_should(golden: Golden) -> None:
    taken = tuple(
        Verdict(str(number), "So.", "", word, initials="QN") for number, word in enumerate(("changed", "verified"))
    )
    told = [
        Told(number, "of this row there is something to be said, and more of it than goes onto one line.")
        for number in (7, 1200)
    ]
    settled = Settled(taken, 3, tuple(told[:1]), tuple(told[1:]), tuple(told))
    golden("terminal/verdicts.txt", listings.taken("sheet.csv", settled, Ink(columns=80)))


def test_nothing_at_all_is_said_so() -> None:
    assert listings.claims([], Ink()).endswith("No sentences.\n")
    assert listings.shots([], Ink()).endswith("No shots.\n")


@pytest.mark.parametrize(
    ("total", "said"), [(72.4, "target 1:00, 0:12 over"), (48.0, "target 1:00, 0:12 under"), (60.4, "target 1:00, met")]
)
def test_the_runtime_is_held_against_the_target(total: float, said: str) -> None:
    assert said in runtime_listing.runtime(whole(total_s=total), Ink())


def test_without_a_target_none_is_spoken_of() -> None:
    assert "target" not in runtime_listing.runtime(whole(target_s=None), Ink())


@pytest.mark.parametrize("columns", [60, 80, 110])
def test_a_table_fits_the_terminal_and_its_columns_stand_in_line(columns: int) -> None:
    rows = [segment("x" * 64), segment("握力" * 9), segment("a")]
    lines = runtime_listing.runtime(whole(segments=rows), Ink(columns=columns)).split("\n")[:4]
    assert max(map(width, lines)) <= columns
    ends = {width(line) for line in lines}
    assert len(ends) == 1, "the last column is flush right"


@pytest.mark.parametrize("text", ["a\x1b[2Jb", "a\rb", "a\u202eb"])
def test_an_authors_words_cannot_act_on_the_terminal(text: str) -> None:
    parts = [
        listings.claims(
            [
                sentence(
                    text, segment=text, file=text, triggers=[text], status=text, evidence=[source(text, result=text)]
                )
            ],
            Ink(),
            [{"told": text, "text": text, "now": text, "file": text, "line": 1}],
        ),
        listings.taken(text, Settled((), 0, (), (), (Told(1, text),)), Ink()),
        listings.shots([shot(1, of=text, segment=text, size=text, plane=text, screen=[text])], Ink()),
        runtime_listing.runtime(whole(segments=[segment(text, kind=text)]), Ink()),
    ]
    assert [part for part in parts if text[1] in part] == []


def test_a_shot_in_slow_motion_says_how_it_is_filmed(episode: Write) -> None:
    text = "title: One\nrate: 25\nexercises: {hang: {name: Hang, shots: [{size: FS, of: hang, fps: 50, reps: 1}]}}\n"
    folder = episode({"outline.yaml": text, "segments/hang.md": "[shot MS: grip] I like it. [opinion]"})
    told = " ".join(run("shots", folder).out.split())
    assert "hang ×1, fps 50, 2× slow: film about 4 s for 8 s" in told
