"""Every name that a segment's text may use is there, with what it is said to hold."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, words, worked_out

OUTLINE = """
    title: Two hangs
    question: Which one?
    audience: climbers
    promises: {swap: which to drop}
    checklist:
      id: grip-1
      scale: [1, 5]
      criteria:
        long: {ask: Is it long?, weight: 30, anchors: {1: no, 5: very}}
        quick: {ask: Is it quick?, weight: 10}
        dear: {ask: Is it dear?, weight: 20}
    grades: {A: 4, B: 2, C: 1}
    exercises:
      hang:
        name: Bar hang
        group: Grip
        ratings: {long: 5, quick: {score: 5, source: {id: one, finding: time}}, dear: {score: 2, source: opinion}}
        cautions: [own, own]
        claims: [{say: In one trial it grew., source: [{id: one, finding: time}, {id: two, stance: against}]}]
      row: {name: Smith row, grade: B, group: Pull, override: Because I like it., ratings: {long: 1, quick: 1, dear: 1}}
      curl: {name: Curl}
    cautions: {own: {line: Mind your hands.}}
    terms: {crimp: {gloss: a bent grip, say: KRIMP}}
    sponsor: {name: Q, disclosure: Ad. Q paid., code: Q10, link: https://q.example, must_say: [free returns]}
    sources:
      one: {title: One, year: 2020, n: 12, design: cohort, invented: true, findings: {time: {outcome: time}}}
      two: {title: Two, invented: true}
    order: [opening, group: Grip, hang, row, curl, sponsor, close]
    """


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            (
                "{{ episode.title }}; {{ episode.question }} {{ episode.audience }} "
                "{{ episode.count }}{{ episode.channel }}"
            ),
            "Two hangs; Which one? climbers 3",
        ),
        ("{% for id in exercises %}{{ id }} {{ exercises[id].place }} {% endfor %}", "hang 1 row 2 curl 3"),
        ("{% for e in ranked %}{{ e.id }}{{ e.grade }} {% endfor %}", "hangA- rowB curl"),
        (
            "{% for g in by_grade %}{{ g.grade }}: {{ g.exercises | join(', ', attribute='name') }} {% endfor %}",
            "A-: Bar hang B: Smith row",
        ),
        (
            "{{ sponsor.name }} {{ sponsor.code }} {{ sponsor.link }} {{ sponsor.must_say | join }}",
            "Q Q10 https://q.example free returns",
        ),
        (
            "{{ promises.swap }} {{ cautions.own.line }} {{ terms.crimp.gloss }} {{ terms.crimp.say }}",
            "which to drop Mind your hands. a bent grip KRIMP",
        ),
        (
            (
                "{{ checklist.id }} {{ checklist.low }} {{ checklist.high }} "
                "{% for c in checklist.criteria %}{{ c.id }} {{ c.weight }} {% endfor %}"
            ),
            "grip-1 1 5 long 50 quick 17 dear 33",
        ),
        ("{{ checklist.criteria[0].anchors['5'] }}", "very"),
    ],
)
def test_every_segment_sees(episode: Write, text: str, said: str) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/opening.md": text}))
    assert " ".join(words(facts, "opening")) == said


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        (
            "hang",
            "{{ exercise.id }} {{ exercise.group }} {{ grade }} {{ exercise.place }} of {{ exercise.count }}",
            "hang Grip A- 1 of 3",
        ),
        ("hang", "{% if exercise.first and not exercise.last %}first{% endif %}", "first"),
        (
            "hang",
            (
                "{% for r in exercise.ratings %}{{ r.id }} {{ r.score }} "
                "{{ r.anchor or 'none' }} {{ r.sources or r.opinion and 'mine' or 'none' }}; "
                "{% endfor %}"
            ),
            "long 5 very none; quick 5 none one time; dear 2 none mine;",
        ),
        (
            "hang",
            "{{ exercise.strong | join(' ', attribute='id') }} / {{ exercise.weak | join(' ', attribute='id') }}",
            "long quick / dear",
        ),
        ("row", "{{ exercise.strong | length }} / {{ exercise.weak | join(' ', attribute='id') }}", "0 / long dear"),
        (
            "hang",
            (
                "{% for c in exercise.claims %}{{ c.sources }}; "
                "{% for s in c.studies %}{{ s.id }} {{ s.stance }} "
                "{% endfor %}{% if c.tells_study %}told{% endif %}{% endfor %}"
            ),
            "one time, two against; one supports two against told",
        ),
        ("hang", "{% for c in exercise.cautions_due %}{{ c.id }}: {{ c.line }}{% endfor %}", "own: Mind your hands."),
        ("row", "{{ exercise.override if exercise.override_due }}", "Because I like it."),
        ("curl", "{% if not exercise.grade and exercise.last %}none{% endif %}", "none"),
        ("group-grip", "{{ group.name }}: {{ group.exercises | join(', ', attribute='name') }}", "Grip: Bar hang"),
    ],
)
def test_an_exercise_or_a_group_sees_its_own(episode: Write, name: str, text: str, said: str) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, f"segments/{name}.md": text}))
    assert " ".join(words(facts, name)) == said


def test_a_grade_that_is_earned_needs_no_reason(episode: Write) -> None:
    outline = OUTLINE.replace("grade: B, group", "grade: C, group")
    facts = worked_out(
        episode({"outline.yaml": outline, "segments/row.md": "{{ exercise.override_due and 'due' or 'not due' }}"})
    )
    assert words(facts, "row") == ["not due"]


def test_the_filters_say_a_grade_and_put_a_name_into_a_sentence(episode: Write) -> None:
    text = (
        "{{ grade | spoken }}, {{ grade | spoken | a }}, {{ exercise.name | mid }}, "
        "{{ exercises.row.name | mid }}, {{ 3 | spoken }}"
    )
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": text}))
    assert words(facts) == ["A minus, an A minus, bar hang, Smith row, three"]
    assert found(facts, "tag-not-understood") == []
