"""What a listener hears: the disclosure in the first three seconds, opinion as opinion, signs that cannot be read."""

from __future__ import annotations

import pytest

from tests.scripts import Write, with_hang, worked_out

SPONSORED = (
    "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: "
    "{name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}\n"
)


@pytest.mark.parametrize(
    ("text", "disclosed"),
    [
        ("Ad. Quennick Socks paid for this part.", True),
        ("{{ sponsor.disclosure }} I wear them. [sponsor says]", True),
        ("Hello. [aside] Ad. Quennick Socks paid for this part.", True),
        ("They paid me for this, and I wear them all day long, at home and on the hill. [aside]", True),
        ("This is sponsored by Quennick Socks. [aside]", True),
        ("I wear these socks on every single day of the week, and they paid me for this. [aside]", False),
        (
            "Socks are lovely and grey, and I wear mine all day long. [aside] Ad. Quennick Socks paid for this part.",
            False,
        ),
        ("[hold 6s: socks]\n\nAd. Quennick Socks paid for this part.", False),
        ("[pause 4s] Ad. Quennick Socks paid for this part.", False),
        ("Thanks to Quennick Socks. [aside]", False),
        ("Address the socks first. [aside]", False),
    ],
)
def test_a_sponsors_passage_tells_it_is_paid_for_in_its_first_three_seconds(
    episode: Write, text: str, disclosed: bool
) -> None:
    assert worked_out(episode({"outline.yaml": SPONSORED, "segments/sponsor.md": text})).disclosed is disclosed


def test_without_such_a_passage_there_is_nothing_to_disclose(episode: Write) -> None:
    assert with_hang(episode, "Hello. [aside]").disclosed is None


def test_each_sentence_has_its_judgement_and_whether_opinion_is_heard(episode: Write) -> None:
    facts = with_hang(episode, "I like it best, I think. It builds strength.")
    assert facts.heard["hang"] == (True, False)
    assert [one.kind for one in facts.judgements["hang"]] == ["opinion", "claim"]


def test_a_sign_is_found_where_it_stands(episode: Write) -> None:
    facts = with_hang(episode, "I like it.\n\n- Do three sets ≥ ten\n  reps × two. [aside]")
    assert [(one.sign, one.place.line, one.place.column) for one in facts.signs] == [("≥", 3, 17), ("×", 4, 8)]
