"""Hard efforts ask for the signs to stop, once in the episode."""

from __future__ import annotations

import pytest

from tests.scripts import Write, worked_out

OUTLINE = "title: One\nexercises: {hang: {name: Bar hang, cautions: [CAUTIONS]}}\n"
ASK_FIRST = "If your blood pressure is high, ask your doctor before you hold your breath."
SIGNS = "If your chest hurts or you faint, stop, and get emergency help by your local number. [aside]"


def asked(episode: Write, text: str, cautions: str = "") -> list[str]:
    facts = worked_out(episode({"outline.yaml": OUTLINE.replace("CAUTIONS", cautions), "segments/hang.md": text}))
    return [risk.words for risk in facts.risks if risk.kind in ("hard-effort", "hard-tag")]


@pytest.mark.parametrize("tag", ["maximal-load", "breath-hold", "plyometric", "ballistic"])
def test_a_tag_asks_for_them(episode: Write, tag: str) -> None:
    assert asked(episode, "Hello. [aside]", tag) == [tag]
    assert asked(episode, f"Hello. [aside] {SIGNS}", tag) == []


@pytest.mark.parametrize("text", ["Take every set to failure.", "Go all out on the last one.", "Hang until you can't."])
def test_a_command_asks_for_them(episode: Write, text: str) -> None:
    assert len(asked(episode, text)) == 1
    assert asked(episode, f"{text} {SIGNS}") == []


def test_a_command_counts_more_than_a_tag(episode: Write) -> None:
    assert asked(episode, "Take every set to failure.", "plyometric") == ["Take every set to failure"]


@pytest.mark.parametrize(
    "text",
    [
        "Never take a set to failure.",
        "In the trial they went to failure. [from x]",
        "Hang for ten seconds.",
        ASK_FIRST,
    ],
)
def test_other_efforts_do_not(episode: Write, text: str) -> None:
    assert asked(episode, text) == []


def test_a_sign_without_stop_is_not_enough(episode: Write) -> None:
    assert len(asked(episode, "Take every set to failure. Chest pain is a sign. [aside]")) == 1
