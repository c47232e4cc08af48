"""What must not be cut is not cut, whatever is marked and however much is missing; and what a cut breaks is told."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tests.test_shortening import OUTLINE, cut, fitted, kept

Writer = Callable[[Mapping[str, str | bytes]], Path]
PLAIN = "I like the bar. [opinion]\n\nI like chalk. [opinion] [optional 1]\n"
SPONSOR = 'sponsor: {name: Quennick Socks, disclosure: "Ad. Quennick Socks paid for this part."}\n'


def told(episode: Writer, text: str, *, order: str = "[opening, hang, row, close]", more: str = "") -> dict[str, str]:
    """Why what is marked in this text of the bar hang may not go, where no cut is enough; nothing where all may."""
    outline = OUTLINE.replace("order:\n", f"{more}order: {order}\n")
    files = {"outline.yaml": outline, "segments/hang.md": text, "segments/row.md": "I like the row. [opinion]\n"}
    fit, _ = fitted(episode(files), 1.0)
    assert not fit.reached
    assert {one.words for one in fit.cuts}.isdisjoint(kept(fit))
    return kept(fit)


def test_what_protects_nothing_may_go(episode: Writer) -> None:
    assert told(episode, PLAIN) == {}


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("I'd drop the curl. [payoff swap] [opinion]", "keeps the promise"),
        ("If the elbow hurts, ask a licensed clinician first.", "caution"),
        ("Go and ask someone about that elbow. [caution elbow]", "caution"),
        ("One trial of 60 climbers found no difference. [from lind-2019 against]", "lind-2019 disagrees"),
        ("Another one found no difference. [from lind-2019 null]", "lind-2019 disagrees"),
        ("In one trial of 38 climbers, hang time rose. [from mora-2022]", "nothing else mentions mora-2022"),
        ("If it goes numb, stop and see a licensed clinician. [aside]", "whom to ask"),
        ("For chest pain, call your local emergency number. [aside]", "whom to ask"),
        ("And all of this is education, not medical advice. [aside]", "no medical advice"),
    ],
)
@pytest.mark.parametrize("mark", [" [optional 1]", "\n\n[optional 1]"])
def test_a_paragraph_that_must_stay_stays(episode: Writer, words: str, why: str, mark: str) -> None:
    found = told(episode, f"I like the bar. [opinion]\n\n{words}{mark}\n")
    assert len(found) == 1
    assert why in next(iter(found.values()))


@pytest.mark.parametrize(
    "words",
    ["I'd drop the curl. [payoff swap] [opinion]", "If the elbow hurts, ask a licensed clinician first.",
     "Another one found no difference. [from lind-2019 against]"],
)  # fmt: skip
def test_a_segment_that_holds_what_must_stay_stays(episode: Writer, words: str) -> None:
    found = told(
        episode, f"I like the bar. [opinion]\n\n{words}\n", order="[opening, {segment: hang, optional: 1}, row]"
    )
    assert list(found) == ["Bar hang"]


def test_a_disclosure_stays_in_the_sponsors_passage_and_outside_of_it(episode: Writer) -> None:
    found = told(
        episode,
        "I like the bar. [opinion]\n\nQuennick Socks paid me for this one. [aside] [optional 1]\n",
        more=SPONSOR,
    )
    assert list(found.values()) == ["it discloses who pays or what is earned"]
    outline = OUTLINE.replace("order:\n", f"{SPONSOR}order: [opening, hang, {{segment: sponsor, optional: 1}}, row]\n")
    text = "Ad. Quennick Socks paid for this part. [aside]\n\nI like socks. [opinion] [optional 2]\n"
    fit, _ = fitted(episode({"outline.yaml": outline, "segments/hang.md": PLAIN, "segments/sponsor.md": text}), 1.0)
    assert kept(fit)["Sponsor"] == "it discloses who pays or what is earned"
    assert ("sponsor", 3) in cut(fit)


def test_a_source_may_go_with_its_whole_segment_and_not_from_under_what_stays(episode: Writer) -> None:
    text = "In one trial of 38 climbers, hang time rose. [from mora-2022] [optional 1]\n\nI like it. [opinion]\n"
    outline = OUTLINE.replace("order:\n", "order: [opening, {segment: hang, optional: 1}, row]\n")
    files = {"outline.yaml": outline, "segments/hang.md": text, "segments/row.md": "I like the row. [opinion]\n"}
    fit, facts = fitted(episode(files), 1.0)
    assert cut(fit) == [("hang", 0)]
    assert "nothing else mentions mora-2022" in fit.cuts[0].breaks
    fit, _ = fitted(episode(files), facts.timeline.total - 1.0)  # the paragraph alone would be enough
    assert cut(fit) == [("hang", 0)]
    resting = outline.replace(
        "row: {name: Ring row, grade: B}",
        "row: {name: Ring row, grade: B, claims: [{say: It grows., source: mora-2022}]}",
    )
    fit, _ = fitted(episode({**files, "outline.yaml": resting}), 1.0)
    assert cut(fit) == []
    rated = outline.replace(
        "row: {name: Ring row, grade: B}",
        "row: {name: Ring row, grade: B, ratings: {long: {score: 4, source: mora-2022}}}",
    )
    fit, _ = fitted(episode({**files, "outline.yaml": rated}), 1.0)
    assert cut(fit) == []


def test_a_mark_that_would_stand_alone_keeps_its_paragraph(episode: Writer) -> None:
    found = told(episode, "I like the bar. [opinion]\n\nAnd I will tell you more. [optional 1]\n\n[promise swap]\n")
    assert list(found.values()) == ["[promise swap] stands alone behind it; move the mark into a paragraph"]


def test_a_segment_of_cautions_stays_whatever_it_says(episode: Writer) -> None:
    order = "[opening, hang, {segment: hint, kind: caution, optional: 1}, row]"
    outline = OUTLINE.replace("order:\n", f"order: {order}\n")
    fit, _ = fitted(episode({"outline.yaml": outline, "segments/hint.md": "Easy does it. [aside]\n"}), 1.0)
    assert list(kept(fit).values()) == ["it gives a caution"]


def test_of_two_mentions_one_stays(episode: Writer) -> None:
    said = "In one trial of 38 climbers, hang time rose. [from mora-2022] [optional {}]"
    text = f"I like the bar. [opinion]\n\n{said.format(1)}\n\nSo {said.format(2)}\n"
    outline = OUTLINE.replace("order:\n", "order: [opening, hang, row]\n")
    fit, _ = fitted(episode({"outline.yaml": outline, "segments/hang.md": text}), 1.0)
    assert len(cut(fit)) == 1


def test_a_grade_that_is_given_nowhere_else_is_told(episode: Writer) -> None:
    outline = OUTLINE.replace("order:\n", "order: [opening, hang, row]\n")
    once = "I like the bar. [opinion]\n\nThe bar hang gets an A minus. [opinion] [optional 1]\n"
    twice = f"The bar hang gets an A minus. [opinion]\n\n{once}"
    told = []
    for text in (once, twice):
        fit, _ = fitted(episode({"outline.yaml": outline, "segments/hang.md": text}), 1.0)
        told.append(fit.cuts[0].breaks)
    assert told == [("the grade of Bar hang is given only here",), ()]


def test_what_a_cut_breaks_is_told(episode: Writer) -> None:
    outline = OUTLINE.replace("order:\n", "order: [opening, {segment: hang, optional: 2}, row, recap, close]\n")
    files = {
        "outline.yaml": outline,
        "segments/hang.md": "Grip tape, a strip of cloth for the bar, helps me. [opinion] And I'll tell you which one "
        "to drop. [promise swap] [aside]\n",
        "segments/row.md": "I like grip tape more than in the bar hang. [opinion]\n\n"
        "I like it wet. [opinion] [optional 1]\n\nThat is all. [aside]\n",
        "segments/opening.md": "Hello. [aside]\n",
        "segments/close.md": "I'd drop the curl. [payoff swap] [opinion]\n",
    }
    fit, _ = fitted(episode(files), 1.0)
    hang, row = fit.cuts
    assert hang.breaks == (
        'the promise "which one to drop" is made only here',
        '"grip tape" is heard here first, and again later',
        "Bar hang gets no grade",
        "it is named in segments/row.md, line 1",
    )
    assert row.breaks == ('what follows points back: "That is all."',)


def test_a_cut_that_check_would_call_an_error_is_not_made(episode: Writer) -> None:
    """The reason for a grade that the ratings do not earn has to be spoken."""
    checklist = (
        "checklist: {id: one, criteria: {long: {ask: How long?, weight: 1, anchors: {1: short, 3: half, 5: long}}}}\n"
    )
    outline = OUTLINE.replace(
        "order:\n", f"{checklist}grades: {{A: 4, B: 3, C: 2, D: 1}}\norder: [opening, hang, row]\n"
    )
    rated = outline.replace(
        "hang: {name: Bar hang, grade: A-}",
        "hang: {name: Bar hang, grade: D, ratings: {long: {score: 5, source: opinion}}, override: It bores us stiff.}",
    )
    text = "I like the bar. [opinion]\n\nIt bores us stiff. [override] [opinion] [optional 1]\n"
    fit, _ = fitted(episode({"outline.yaml": rated, "segments/hang.md": text}), 1.0)
    assert cut(fit) == []
    assert "`check` would find" in next(iter(kept(fit).values()))


def test_a_channels_text_is_not_cut(episode: Writer) -> None:
    files = {
        "../channel.yaml": "pace: 150\n",
        "../segments/hang.md": PLAIN,
        "outline.yaml": OUTLINE + "  - hang\n  - row\n",
    }
    fit, _ = fitted(episode(files), 1.0)
    assert "text of its own" in next(iter(kept(fit).values()))


def test_an_approval_that_a_cut_would_void_keeps_the_passage(episode: Writer) -> None:
    """Even though a missing approval is an error only when it comes to publishing."""
    text = "Ad. Quennick Socks paid for this part. [aside]\n\nI like socks. [opinion] [optional 1]\n"
    order = "order: [opening, hang, sponsor, row]\n"
    files = {"outline.yaml": OUTLINE.replace("order:\n", SPONSOR + order), "segments/sponsor.md": text}
    fit, facts = fitted(episode(files), 1.0)
    assert cut(fit) == [("sponsor", 3)]
    approved = f"approved: {{hash: {facts.sponsor_hash}, by: Q. N., on: 2026-02-20}}}}\n"
    files["outline.yaml"] = OUTLINE.replace("order:\n", SPONSOR.replace("}\n", ", ") + approved + order)
    fit, _ = fitted(episode(files), 1.0)
    assert cut(fit) == []
    assert "`check` would find" in next(iter(kept(fit).values()))
