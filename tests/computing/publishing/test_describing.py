"""The description: its order, what stands first, what is shortened and what never is."""

from __future__ import annotations

import pytest

from scriptkit.computing.publishing.describing import STEPS
from scriptkit.computing.publishing.preparing import prepare
from scriptkit.model import Facts, Interest, PublicLink
from scriptkit.wording import SAFETY
from tests.scripts import Write, worked_out

WHOLE = """
    title: Two ways to train your grip
    question: Which one is worth five minutes?
    audience: people who climb at the weekend
    publish: 2026-03-02
    checklist:
      id: grip-1
      criteria: {steady: {ask: "Can you hold still?", weight: 3}, quick: {ask: "Is it quick?", weight: 1}}
    exercises:
      hang:
        name: Bar hang
        cautions: [elbow]
        claims: [{say: In one trial of 38 climbers hang time rose., source: mora-2022}]
      towel: {name: Towel hang, cautions: [elbow, hanging]}
    cautions: {elbow: {line: "If your elbow hurts, ask a licensed clinician."}}
    sponsor: {name: Quennick Socks, disclosure: "Ad. Quennick Socks paid for this part.", code: HANG10,
              link: https://example.org/hang, valid: [2026-01-01, 2026-12-31]}
    interests: [{who: Quennick-Socks, what: paid sponsor}, {who: Grip Shop, what: half of it is mine}]
    errata: [{was: ten weeks, now: eight weeks, why: I misread it., where: hang, since: 2026-04-01}]
    links: [{to: https://example.net/plan, what: My plan},
            {to: https://example.net/bar, what: The bar, paid: affiliate},
            {to: https://example.net/socks, what: Quennick Socks in grey}]
    credits: [N. N. held the camera]
    sources: {mora-2022: {title: Timed hangs, authors: [Mora A, Lind P], year: 2022, journal: Made-up Grip,
                          doi: 10.5555/grip.22}}
    """


@pytest.fixture
def facts(episode: Write) -> Facts:
    return worked_out(episode({"outline.yaml": WHOLE}))


def description(facts: Facts, most: float = 5000) -> str:
    return prepare(facts._replace(limits=facts.limits._replace(description_bytes=most))).description


def without(facts: Facts, **changed: object) -> str:
    return prepare(facts._replace(episode=facts.episode._replace(**changed))).description  # type: ignore[arg-type]


def test_all_eight_parts_in_their_order(facts: Facts) -> None:
    parts = description(facts).split("\n\n")
    assert [part.split("\n") for part in (parts[0], parts[1], *parts[3:])] == [
        [
            "Ad. Quennick Socks paid for this part.",
            "Links marked “Ad” below are paid links.",
            "Interests: Grip Shop: half of it is mine.",
            "Which one is worth five minutes?",
        ],
        ["CORRECTION, 2026-04-01, Bar hang. Wrong: “ten weeks” Right: “eight weeks” Why: I misread it."],
        [
            "Sources, numbered as spoken",
            "1. Mora A, Lind P. Timed hangs. Made-up Grip. 2022. https://doi.org/10.5555/grip.22",
        ],
        [
            "Graded on a checklist, for people who climb at the weekend, as of 2026-03-02",
            "75 % Can you hold still?",
            "25 % Is it quick?",
        ],
        [
            SAFETY,
            "Bar hang, Towel hang: If your elbow hurts, ask a licensed clinician.",
            f"Towel hang: {facts.cautions['hanging'].line}",
        ],
        [
            "Ad, paid link: Quennick Socks: https://example.org/hang, code HANG10, valid 2026-01-01 to 2026-12-31",
            "My plan: https://example.net/plan",
            "Ad, affiliate: The bar: https://example.net/bar",
            "Ad, paid link: Quennick Socks in grey: https://example.net/socks",
        ],
        ["N. N. held the camera", ""],
    ]
    assert parts[2].split("\n") == ["Chapters", *(one.line for one in facts.publication.chapters)]


def test_a_page_of_the_sponsor_is_paid_and_the_sponsor_s_own_address_stands_there_once(facts: Facts) -> None:
    links = (PublicLink("example.org/hang/", "The mat"), PublicLink("https://example.org/bar", "The bar"))
    told = without(facts, links=links).split("\n")
    assert [line for line in told if "example.org" in line] == [
        "Ad, paid link: Quennick Socks, The mat: https://example.org/hang, code HANG10, valid 2026-01-01 to 2026-12-31",
        "Ad, paid link: The bar: https://example.org/bar",
    ]


def test_the_answer_of_the_outline_goes_before_its_question(facts: Facts) -> None:
    assert without(facts, answer="For me it's the bar.").split("\n")[3] == "For me it's the bar."


@pytest.mark.parametrize(
    ("interest", "told"),
    [
        (Interest("Quennick Socks"), False),
        (Interest("quennick socks", "Sponsor of this video"), False),
        (Interest("Quennick Socks", "paid sponsor, and three pairs of socks"), True),
        (Interest("Grip Shop", "sponsor"), True),
    ],
)
def test_an_interest_is_told_unless_the_disclosure_said_it(facts: Facts, interest: Interest, told: bool) -> None:
    assert ("\nInterests: " in without(facts, interests=(interest,))) is told
    assert "Interests: " in without(facts, interests=(interest,), sponsor=None)


def test_an_outline_without_a_disclosure_gets_one_that_a_reader_understands(facts: Facts) -> None:
    assert facts.episode.sponsor is not None
    told = without(facts, sponsor=facts.episode.sponsor._replace(disclosure=""))
    assert told.startswith("Ad. Quennick Socks paid for a part of this video.\n")


def test_nothing_is_made_up_where_nothing_is_given(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": "title: One\nexercises: {}\n"}))
    text = description(facts).split("\n\n")
    assert [part for part in text if not part.startswith("Chapters\n")] == [f"{SAFETY}\n"]


def test_no_time_stands_outside_of_the_chapters(facts: Facts) -> None:
    """A page that shows videos makes chapters of the times it finds."""
    lines = description(facts).split("\n")
    timed = [line for line in lines if line[:1].isdigit() and ":" in line.split(" ")[0]]
    assert timed == [one.line for one in facts.publication.chapters]


def test_each_step_is_taken_only_where_the_ones_before_were_not_enough(facts: Facts) -> None:
    sizes = [facts.publication.size]
    for number in range(1, len(STEPS) + 1):
        made = prepare(facts._replace(limits=facts.limits._replace(description_bytes=sizes[-1] - 1)))
        assert made.steps == STEPS[:number]
        assert made.size < sizes[-1]
        assert made.listed is (number < 5)
        sizes.append(made.size)
    least = prepare(facts._replace(limits=facts.limits._replace(description_bytes=sizes[-1] - 1)))
    assert (least.size, least.steps) == (sizes[-1], STEPS)


def test_the_shortest_description_still_discloses_corrects_and_cautions(facts: Facts) -> None:
    parts = description(facts, 1).split("\n\n")
    assert [part.split("\n")[0].partition(" ")[0] for part in parts] == [
        "Ad.",
        "CORRECTION,",
        "The",
        "Graded",
        "This",
        "Ad,",
    ]
    whole = description(facts).split("\n\n")
    assert {whole[0], whole[1], whole[5], whole[6]} <= {part.strip("\n") for part in parts}


def test_references_that_do_not_fit_are_sent_to_their_page(facts: Facts) -> None:
    assert "The list of 1 source, numbered as spoken is too long to stand here." in description(facts, 1)
    page = facts.episode.references._replace(page="https://example.org/hangs")
    told = facts._replace(episode=facts.episode._replace(references=page))
    assert "The list of 1 source, numbered as spoken: https://example.org/hangs" in description(told, 1)


def test_bytes_are_counted_and_not_characters(facts: Facts) -> None:
    wide = facts._replace(episode=facts.episode._replace(credits=("–" * 1000,)))
    made = prepare(wide)
    assert made.size == len(made.description.encode()) > 3000
    assert STEPS[3] in prepare(wide._replace(limits=wide.limits._replace(description_bytes=3000))).steps


def test_the_style_of_the_outline_is_that_of_the_list(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": WHOLE + "\n    references: apa\n"}))
    told = "1. Mora, A., & Lind, P. (2022). Timed hangs. Made-up Grip. https://doi.org/10.5555/grip.22\n"
    assert told in description(facts)
