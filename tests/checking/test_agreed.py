"""What was agreed with a sponsor is told where it stands, with what to write instead."""

from __future__ import annotations

from tests.scripts import Write, found, helps, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    sponsor:
      name: Quennick Socks
      disclosure: Ad. Quennick Socks paid for this part.
      code: HILL10
      link: https://example.org/hill
      must_say: [free returns for sixty days]
      never_say: [the softest]
    """
GOOD = """
    [screen: Ad. Quennick Socks paid for this part.] Ad. Quennick Socks paid for this part. [aside]
    They promise free returns for 60 days. [sponsor says]
    [screen: HILL10, example.org/hill] The code is H-I-L-L ten, and it works at example.org/hill. [sponsor says]
    """
NAMES = (
    *("must-say-missing", "never-say-spoken", "code-differs", "code-not-spoken", "code-not-on-screen"),
    "sponsor-link-differs",
)


def places(episode: Write, text: str, name: str) -> list[str]:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": text}))
    return [place for place, _ in found(facts, name, "publish")]


def test_a_passage_that_keeps_to_it_is_silent(episode: Write) -> None:
    assert [name for name in NAMES if places(episode, GOOD, name)] == []


def test_a_point_that_is_missing_is_told_at_the_outline(episode: Write) -> None:
    text = GOOD.replace("free returns for 60 days", "returns for free, for sixty days")
    assert places(episode, text, "must-say-missing") == ["outline.yaml:8:14"]
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": text}))
    assert "comes near" in found(facts, "must-say-missing")[0][1]
    assert "They promise free returns for sixty days." in helps(facts, "must-say-missing")[0]


def test_words_to_leave_out_are_told_at_their_first_word(episode: Write) -> None:
    text = GOOD + "\n    They are the softest. [sponsor says]"
    assert places(episode, text, "never-say-spoken") == ["segments/sponsor.md:5:10"]


def test_another_code_and_another_link_are_told_where_they_stand(episode: Write) -> None:
    text = GOOD.replace("H-I-L-L ten", "HILL15").replace("at example.org", "at example.com")
    assert places(episode, text, "code-differs") == ["segments/sponsor.md:3:48"]
    assert places(episode, text, "sponsor-link-differs") == ["segments/sponsor.md:3:72"]
    assert places(episode, text, "code-not-spoken") == ["outline.yaml:6:9"]


def test_a_code_is_heard_and_seen(episode: Write) -> None:
    assert places(episode, GOOD.replace("[screen: HILL10, example.org/hill] ", ""), "code-not-on-screen") == [
        "outline.yaml:6:9"
    ]
