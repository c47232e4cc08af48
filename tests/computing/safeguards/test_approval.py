"""The fingerprint of a text changes with any word and sign, and not with spaces, case or the shape of quotes."""

from __future__ import annotations

import re

from scriptkit.computing.safeguards.approval import fingerprint
from tests.scripts import Write, worked_out

OUTLINE = (
    "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: {name: Quennick Socks, disclosure: Ad. They paid.}\n"
)


def test_it_is_twelve_hex_digits_and_the_same_every_time() -> None:
    assert re.fullmatch("[0-9a-f]{12}", fingerprint(["Ad. They paid."]))
    assert fingerprint(["Ad.", "They paid."]) == fingerprint(["Ad. They  paid. "])


def test_quotation_marks_of_another_shape_make_no_other_text() -> None:
    assert fingerprint(["It’s “grey”."]) == fingerprint(['It\'s "grey".'])


def test_a_word_or_a_full_stop_makes_another_text() -> None:
    kept = fingerprint(["They paid."])
    assert kept not in (fingerprint(["They pay."]), fingerprint(["They paid!"]))


def test_case_is_not_heard_and_a_price_is() -> None:
    kept = fingerprint(["A box costs 9 pounds."])
    assert fingerprint(["A BOX costs 9 pounds."]) == kept != fingerprint(["A box costs 11 pounds."])


def test_nothing_said_has_no_fingerprint() -> None:
    assert fingerprint([]) == fingerprint(["  "]) == ""


def test_marks_and_comments_change_nothing(episode: Write) -> None:
    kept = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": "Ad. They paid. [aside]"}))
    text = "[shot CU: socks] Ad. They paid.\n\n<!-- ask them -->\n"
    again = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": text}))
    assert kept.sponsor_hash == again.sponsor_hash != ""
