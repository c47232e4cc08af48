"""The outline of the design, whole, and the channel's file joined to it."""

from __future__ import annotations

import pytest

from scriptkit import build, model
from scriptkit.model import Extent
from scriptkit.reading import filming, outline, registers
from tests.reading.episodes import GOOD, of_kind, one, seen

WHOLE = """
    title: Calf exercises
    question: Which one earns a place?
    audience: hill runners
    markets: [US, UK]
    publish: 2026-03-02
    runtime: {target: 9:30, tolerance: 20s}
    pace: 160
    paces: {opening: 170, sponsor: 150}
    evidence: evidence.yaml
    promises: {swap: which one to drop}
    checklist:
      id: hill-calf-2
      scale: [1, 5]
      cap: C
      signs: no
      criteria:
        long: {ask: Is it hard when long?, weight: 35, anchors: {1: slack, 3: some, 5: hardest}, floor: 2}
    grades: {A: 4.2, B: 3.4, C: 2.6, D: 1}
    exercises:
      ledge-raise:
        name: Ledge raise
        say: LEDGE raise
        group: Straight knee
        grade: A-
        ratings: {long: {score: 3, range: [2, 4], source: [opinion, orre-2021]}}
        override: because
        use: {share: 42%, source: orre-2021, seen: 2026-01}
        cautions: [achilles]
        claims: [{say: It works., source: {id: orre-2021, finding: growth, stance: AGAINST}, certainty: low, reason: r}]
        shots:
          - {size: cu, plane: 45, of: heel, reps: 3, place: step, kit: [step], form: fault, angle: low, move: pan,
             lens: 35, fps: 50, tempo: 3-1-1, people: B, load: none, priority: must, takes: 2, safety: mind}
    sponsor:
      name: Quennick Socks
      segment: ad
      disclosure: Ad.
      code: HILL10
      link: https://example.org/hill
      valid: [2026-01-01, 2026-12-31]
      must_say: free returns
      never_say: [prevents injury]
      length: {least: 30s, most: 60s}
      window: {after: 15%, before: 5m}
      approved: {hash: abc, by: Q. N., on: 2026-02-20}
      claims: [{say: Soft., sponsor_wording: true, backing: [orre-2021]}]
    interests: [{who: Quennick Socks, what: paid sponsor}]
    terms: {plantarflexion: {gloss: pointing the foot, say: PLAN-tar}}
    cautions: {achilles: {line: Ask first.}}
    rate: 29.97df
    coverage: [side, fault]
    retractions: retractions.csv
    crossref: [saved.json]
    errata: [{was: a, now: b, why: c, where: ledge-raise, since: 2026-04-01}]
    answer: The ledge, for me.
    references: {style: APA, page: https://example.org/sources}
    links: [https://example.org, {to: https://example.org/step, what: The step, paid: affiliate}]
    credits: N. N.
    order: [opening, {group: Straight knee}, ledge-raise,
            {segment: talk, optional: 2, target: 40s, kind: talk, shots: [{size: FS}]}]
    """


def test_every_field_of_the_outline_is_read(episode) -> None:
    lists = {"retractions.csv": "", "saved.json": "[]"}
    folder = episode({"outline.yaml": WHOLE, "evidence.yaml": "sources: {}\n", **lists})
    read = build.read(folder).episode
    assert [found for found in seen(folder) if found[1] == "outline.yaml"] == []
    ledge = read.exercises["ledge-raise"]
    assert read.runtime[:2] == (570, Extent(seconds=20))
    assert ledge.use is not None
    assert (ledge.use.share, ledge.use.source[0].id, ledge.use.seen) == (0.42, "orre-2021", "2026-01")
    assert [link.id for link in ledge.ratings["long"].source] == ["opinion", "orre-2021"]
    assert ledge.claims[0].source[0][:3] == ("orre-2021", "growth", "against")
    assert (ledge.shots[0].size, ledge.shots[0].plane, ledge.shots[0].kit, ledge.shots[0].tempo) == (
        "CU",
        "45",
        ("step",),
        "3-1-1",
    )
    assert read.checklist is not None
    assert (read.checklist.signs, read.checklist.scale, read.checklist.criteria["long"].anchors["5"]) == (
        False,
        (1, 5),
        "hardest",
    )
    assert read.sponsor is not None
    assert read.sponsor.window is not None
    assert (read.sponsor.must_say, read.sponsor.window.before) == (("free returns",), Extent(seconds=300))
    assert (read.answer, read.references[:2], read.credits) == (
        "The ledge, for me.",
        ("apa", "https://example.org/sources"),
        ("N. N.",),
    )
    assert [link[:3] for link in read.links] == [
        ("https://example.org", "", ""),
        ("https://example.org/step", "The step", "affiliate"),
    ]
    assert [step.segment or step.group for step in read.order] == ["opening", "Straight knee", "ledge-raise", "talk"]


@pytest.mark.parametrize(
    ("noun", "shape"),
    [
        (model.Episode, outline.OUTLINE),
        (model.Exercise, outline.EXERCISE),
        (model.Claim, outline.CLAIM),
        (model.Rating, outline.RATING),
        (model.Shot, filming.SHOT),
        (model.Checklist, outline.CHECKLIST),
        (model.Criterion, outline.CRITERION),
        (model.Sponsor, outline.SPONSOR),
        (model.Step, outline.STEP),
        (model.Erratum, outline.ERRATUM),
        (model.PublicLink, outline.PUBLIC_LINK),
        (model.ReferenceList, outline.REFERENCE_LIST),
        (model.Source, registers.SOURCE),
        (model.StudyFinding, registers.FINDING),
    ],
)
def test_the_fields_of_a_noun_are_those_an_author_may_write(noun, shape) -> None:
    worked_out = {"at", "key", "notices"}  # by the reader
    assert set(noun._fields) - worked_out - {"id", "name"} == set(shape.fields) - {"id", "name"}


def test_a_bare_value_stands_for_the_field_that_matters_most(episode) -> None:
    text = "title: One\nexercises: {hang: Bar hang}\nruntime: 9m\n"
    text += "terms: {grip: how you hold}\ncautions: {knee: Mind it.}\nreferences: ama\n"
    read = build.read(episode({"outline.yaml": text})).episode
    assert (read.exercises["hang"].name, read.runtime.target, read.terms["grip"].gloss) == (
        "Bar hang",
        540,
        "how you hold",
    )
    assert (read.cautions["knee"].line, read.references.style) == ("Mind it.", "ama")


CHANNEL = """
    name: Made-up Channel
    pace: 150
    paces: {opening: 170, close: 140}
    markets: [UK]
    sponsor: {name: Quennick, code: OURS}
    terms: {grip: {gloss: ours, say: GRIP}}
    """


def test_the_channel_is_joined_key_by_key_and_the_outline_wins(episode) -> None:
    ours = "paces: {opening: 160}\nmarkets: [US]\nterms: {grip: {gloss: mine}}\n"
    read = build.read(episode({"../channel.yaml": CHANNEL, "outline.yaml": GOOD + ours})).episode
    assert (read.name, read.pace, dict(read.paces), read.markets) == (
        "Made-up Channel",
        150,
        {"opening": 160, "close": 140},
        ("US",),
    )
    assert read.terms["grip"][:2] == ("mine", "GRIP")
    assert read.sponsor is not None
    assert read.sponsor.code == "OURS"


@pytest.mark.parametrize("key", ["title", "exercises", "order", "promises"])
def test_the_channel_may_not_hold_what_makes_an_episode(episode, key: str) -> None:
    folder = episode({"../channel.yaml": f"pace: 150\n{key}: {{a: b}}\n", "outline.yaml": GOOD})
    assert one(folder, "unknown-key") == ("../channel.yaml", 2, 1)


@pytest.mark.parametrize(
    ("text", "name"),
    [("- a\n", "wrong-type"), ("a: [\n", "yaml-syntax"), (b"\xff\n", "not-utf8"), ("pace: fast\n", "wrong-type")],
)
def test_a_fault_of_the_channel_is_told_of_its_file_and_the_outline_is_read(episode, text, name: str) -> None:
    folder = episode({"../channel.yaml": text, "outline.yaml": GOOD})
    assert one(folder, name)[0] == "../channel.yaml"
    assert build.read(folder).episode.title == "One"


@pytest.mark.parametrize("text", ["", "# nothing yet\n"])
def test_an_empty_channel_file_is_fine(episode, text: str) -> None:
    assert seen(episode({"../channel.yaml": text, "outline.yaml": GOOD})) == []


def test_a_fault_in_what_the_channel_gave_points_at_the_channel(episode) -> None:
    folder = episode({"../channel.yaml": "paces: {openning: 170}\n", "outline.yaml": GOOD})
    assert of_kind(folder, "pace-for-no-kind")[0].place == ("../channel.yaml", 1, 9)


def test_what_is_missing_from_the_outline_is_missing_there(episode) -> None:
    folder = episode({"../channel.yaml": CHANNEL, "outline.yaml": "exercises: {hang: {name: Bar hang}}\n"})
    assert one(folder, "missing-value") == ("outline.yaml", 1, 1)
