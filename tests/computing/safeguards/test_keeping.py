"""What was agreed with a sponsor is found where the passage keeps it, and shown as open where it does not."""

from __future__ import annotations

import pytest

from scriptkit.model import Agreed
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    sponsor:
      name: Quennick Socks
      disclosure: Ad. Quennick Socks paid for this part.
      must_say: [free returns for 60 days]
      code: HILL10
      link: https://example.org/hill
    """
TEXT = """
    [screen: Ad. Quennick Socks paid for this part.] Ad. Quennick Socks paid for this part.
    You get free returns for sixty days. [sponsor says]
    [screen: HILL10, example.org/hill] The code is H-I-L-L ten, at example.org/hill. [sponsor says]
    """


def agreed(episode: Write, text: str, outline: str = OUTLINE) -> dict[str, Agreed]:
    facts = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": text}))
    return {one.what: one for one in facts.agreed}


def test_each_thing_is_found_in_its_sentence_and_on_screen(episode: Write) -> None:
    found = agreed(episode, TEXT)
    assert {what: one.said for what, one in found.items()} == {
        "disclosure": ("sponsor", 0), "point": ("sponsor", 2), "code": ("sponsor", 3), "link": ("sponsor", 3),
    }  # fmt: skip
    assert found["code"].shown == found["link"].shown == "HILL10, example.org/hill"
    assert found["point"].shown == ""  # nobody asked for it on screen


@pytest.mark.parametrize(
    ("gone", "what"),
    [
        ("Ad. Quennick Socks paid for this part.\n", "disclosure"),
        ("free returns for sixty days", "point"),
        ("H-I-L-L ten", "code"),
        (", at example.org/hill", "link"),
    ],
)
def test_what_is_not_said_is_in_no_sentence(episode: Write, gone: str, what: str) -> None:
    at = TEXT.rindex(gone)
    found = agreed(episode, TEXT[:at] + "so it is.\n" + TEXT[at + len(gone) :])
    assert found[what].said is None


def test_what_is_not_shown_has_no_words_on_screen(episode: Write) -> None:
    found = agreed(episode, TEXT.replace("[screen: HILL10, example.org/hill]", "[screen: Socks]"))
    assert found["code"].shown is found["link"].shown is None


def test_without_a_sponsor_nothing_was_agreed(episode: Write) -> None:
    assert agreed(episode, "Ad. [aside]", "title: One\nexercises: {hang: {name: Bar hang}}\n") == {}
