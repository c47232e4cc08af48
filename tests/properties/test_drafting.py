"""An episode says the same before and after `draft`, whatever names and claims hold."""

from __future__ import annotations

import json
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from scriptkit import build

QUICK = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
NASTY = [
    *(
        "*bold*",
        "_thin_",
        "`code`",
        "# head",
        "- item",
        "1. item",
        "1) item",
        "> quote",
        "+ plus",
        "= row",
        "~~gone~~",
        "| a | b |",
    ),
    *(
        "{{ grade }}",
        "{% if x %}",
        "{# no #}",
        "{{",
        "}}",
        "%}",
        "{",
        "[aside]",
        "[from x]",
        "[",
        "]",
        "][",
        "\\[",
        "\\",
        "\\*",
        "](",
        ": x",
    ),
    *(
        "<b>",
        "<!-- gone -->",
        "<!--",
        "-->",
        "&amp;",
        "&#65;",
        "&",
        "http://a.example/b_c_d",
        "![pic](x)",
        "[a](b)",
        "[a]: b",
        "---",
        "***",
        "===",
    ),
    *(
        "“quoted”",
        "it's",
        '"said"',
        "café",
        "три",
        "日本語",
        "é",
        "A-",
        "3 x 10",
        "½",
        "no. 4",
        "e.g. this",
        "Dr. No",
        "a.b",
        "?",
        "!",
        "…",
        "\u00a0",
        "\u2028",
    ),
]
WORDS = st.lists(st.sampled_from(["ledge", "Raise", "heel", "12 percent", *NASTY]), min_size=1, max_size=5).map(
    " ".join
)
GLUED = st.lists(st.sampled_from(["ledge", " ", *NASTY]), min_size=1, max_size=5).map("".join)
TEXT = (WORDS | GLUED | st.text(max_size=12)).map(lambda text: "".join(c for c in text if c >= " ")).filter(str.strip)
CLAIM = st.fixed_dictionaries(
    {"say": TEXT}, optional={"source": st.sampled_from(["one", ["one", {"id": "two", "stance": "against"}]])}
)
EXERCISE = st.fixed_dictionaries(
    {"name": TEXT},
    optional={
        "group": TEXT,
        "grade": st.sampled_from(["A", "B+", "C-", "S"]),
        "claims": st.lists(CLAIM, max_size=2),
        "override": TEXT,
        "cautions": st.just(["own"]),
        "ratings": st.just({"long": 5, "quick": 1}),
    },
)
OUTLINE = st.fixed_dictionaries(
    {"title": TEXT, "exercises": st.lists(EXERCISE, min_size=1, max_size=3)},
    optional={
        "question": TEXT,
        "audience": TEXT,
        "promises": st.fixed_dictionaries({"swap": TEXT}),
        "line": TEXT,
        "sponsor": TEXT,
    },
)
CHANNELS = [
    "",
    (
        "{{ exercise.name }}: {{ exercise.grade | spoken | a }}. [opinion]\n\n[shot "
        "CU: {{ exercise.name }}]{{ exercise.name | mid }}!"
    ),
]


def outline_of(drawn: dict) -> str:
    """The outline as YAML (JSON is YAML) with everything that a reference needs."""
    outline = {
        "title": drawn["title"],
        "checklist": {"criteria": {"long": {"ask": drawn["title"]}, "quick": {"ask": "Is it quick?"}}},
        "exercises": {f"e{number}": one for number, one in enumerate(drawn["exercises"])},
        "sources": {
            "one": {"title": drawn["title"], "year": 2020, "n": 12, "invented": True},
            "two": {"title": "Two", "invented": True},
        },
        "cautions": {"own": {"line": drawn.get("line", "Mind your heel.")}},
        **{key: drawn[key] for key in ("question", "audience", "promises") if key in drawn},
    }
    if "sponsor" in drawn:
        outline["sponsor"] = {"name": drawn["sponsor"], "must_say": [drawn["sponsor"]], "code": "HILL10"}
    return json.dumps(outline)


def script_of(folder: Path) -> list[tuple]:
    """What is spoken when: the words and seconds of every segment."""
    facts = build.work_out(build.read(folder))
    rows = zip(facts.segments, facts.timeline.segments, strict=True)
    return [(one.id, [sentence.text for sentence in one.sentences], timed.start, timed.total) for one, timed in rows]


@QUICK
@given(OUTLINE, st.sampled_from(CHANNELS))
@example(
    {"title": "One", "exercises": [{"name": "[a]: b", "grade": "A"}, {"name": "<!-- x -->"}, {"name": "][ {{ x }}"}]},
    CHANNELS[1],
)
@example(
    {"title": "One", "question": "<!-- gone --> [x] {{ y", "exercises": [{"name": "a\\\\*b]\\", "grade": "A"}]}, ""
)
@example(
    {"title": "1. {# x", "exercises": [{"name": "\\", "claims": [{"say": "# *x* _y_ `z`"}], "override": "- x"}]}, ""
)
def test_an_episode_says_the_same_before_and_after_draft(drawn: dict, channel: str) -> None:
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "channel" / "episode"
        (folder / "segments").mkdir(parents=True)
        (folder / "outline.yaml").write_text(outline_of(drawn), encoding="utf-8")
        if channel:
            (folder.parent / "segments").mkdir()
            (folder.parent / "channel.yaml").write_text("name: Calf talk\n", encoding="utf-8")
            (folder.parent / "segments" / "verdict.md").write_text(channel, encoding="utf-8")
        before = script_of(folder)
        for name, text in build.drafts(build.read(folder)).items():
            (folder / "segments" / f"{name}.md").write_text(text, encoding="utf-8")
        assert script_of(folder) == before
        assert build.drafts(build.read(folder)) == {}
