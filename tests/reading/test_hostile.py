"""Whatever an author's files hold, reading, working out and checking them ends in findings."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Mapping
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from scriptkit.findings import SEVERITIES
from tests.reading.episodes import EXERCISE_KEYS, GOOD, HOSTILE, TREES, findings, seen

FEW = settings(max_examples=60, deadline=None)


def checked(files: Mapping[str, str | bytes]) -> None:
    """Write an episode and check it: every finding has a place in a file, and words that can be printed."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "channel" / "episode"
        folder.mkdir(parents=True)
        for file, text in files.items():
            path = folder / file
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass"))
        for one in findings(folder, "publish"):
            assert one.severity in SEVERITIES
            assert min(one.place.line, one.place.column) >= 1
            assert one.message
            json.dumps(one, ensure_ascii=False).encode()


@FEW
@given(HOSTILE)
def test_any_text_as_an_outline(text: str) -> None:
    checked({"outline.yaml": text})


@FEW
@given(st.binary(max_size=200))
def test_any_bytes_as_any_file(data: bytes) -> None:
    names = ("outline.yaml", "evidence.yaml", "segments/hang.md", "../channel.yaml")
    checked({"outline.yaml": GOOD + "evidence: [evidence.yaml]\n", **dict.fromkeys(names[1:], data)})
    checked({"outline.yaml": data})


@FEW
@given(st.dictionaries(st.sampled_from(EXERCISE_KEYS), TREES, max_size=10), TREES)
def test_any_values_under_the_keys_of_an_outline(top, inner) -> None:
    body = inner if isinstance(inner, dict) else {"claims": inner}
    exercises = {"hang": {**body, "name": "Bar hang"}, "row": inner}
    checked({"outline.yaml": json.dumps({**top, "title": "One", "exercises": exercises})})


@settings(max_examples=20, deadline=None)
@given(HOSTILE, TREES)
def test_any_text_as_a_register_or_channel_file(text: str, tree) -> None:
    checked(
        {
            "outline.yaml": GOOD + "evidence: [evidence.yaml]\n",
            "evidence.yaml": text,
            "../channel.yaml": json.dumps(tree),
        }
    )
    checked(
        {
            "outline.yaml": GOOD + "evidence: [a.yaml]\n",
            "a.yaml": json.dumps({"sources": {"a": tree}}),
            "../channel.yaml": text,
        }
    )


@FEW
@given(HOSTILE)
def test_any_text_as_a_segment(text: str) -> None:
    checked(
        {"outline.yaml": GOOD + "order: [opening, hang, x]\n", "segments/hang.md": text, "segments/opening.md": text}
    )


FAULTY = {
    "../channel.yaml": "pase: 150\npace: fast\ntitle: Ours\n",
    "outline.yaml": """
        titel: One
        title: [One]
        question: {a: b}
        pace: 9000
        pace: 160
        evidence: [evidence.yaml, gone.yaml, ../../out.yaml]
        checklist: {criteria: {long: {ask: Long?, wieght: 3}}}
        exercises:
          hang:
            name: Bar hang
            grade: {A: B}
            grade: A
            claims: {say: I like it., oppinion: true}
            shots: [{size: XX, plane: side, reps: many}]
          bar row: {name: Row}
          row: {grade: A}
        order: [{optional: 20, segment: hang}]
        """,
    "evidence.yaml": "sources:\n  a: {n: many, findings: [x]}\n  a: {title: A}\n",
    "segments/hang.md": "# H [opinion]\n\nI `like` it.\n\n| a |\n|---|\n",
}


def test_all_faults_come_out_in_one_run_each_in_its_place(episode) -> None:
    assert seen(episode(FAULTY)) == [
        ("unknown-key", "../channel.yaml", 1, 1),
        ("wrong-type", "../channel.yaml", 2, 7),
        ("unknown-key", "../channel.yaml", 3, 1),
        ("wrong-type", "evidence.yaml", 2, 10),
        ("wrong-type", "evidence.yaml", 2, 26),
        ("key-twice", "evidence.yaml", 3, 3),
        ("unknown-key", "outline.yaml", 1, 1),
        ("wrong-type", "outline.yaml", 2, 8),
        ("wrong-type", "outline.yaml", 3, 11),
        ("out-of-range", "outline.yaml", 4, 7),
        ("key-twice", "outline.yaml", 5, 1),
        ("missing-file", "outline.yaml", 6, 27),
        ("path-outside", "outline.yaml", 6, 38),
        ("unknown-key", "outline.yaml", 7, 43),
        ("wrong-type", "outline.yaml", 11, 12),
        ("key-twice", "outline.yaml", 12, 5),
        ("unknown-key", "outline.yaml", 13, 31),
        ("unknown-word", "outline.yaml", 14, 20),
        ("wrong-type", "outline.yaml", 14, 43),
        ("bad-id", "outline.yaml", 15, 3),
        ("missing-value", "outline.yaml", 16, 3),
        ("out-of-range", "outline.yaml", 17, 20),
        ("mark-out-of-place", "segments/hang.md", 1, 5),
        ("not-spoken", "segments/hang.md", 3, 3),
        ("not-spoken", "segments/hang.md", 5, 1),
    ]


def test_a_source_used_and_not_defined_is_found_where_it_is_used(episode) -> None:
    line = "exercises: {hang: {name: Hang, claims: [{say: It works., source: mora-2022}]}}\n"
    folder = episode({"outline.yaml": "title: One\n" + line, "segments/opening.md": "It works. [from mora-2021]\n"})
    found = {one.place for one in findings(folder) if one.name == "unknown-source"}
    assert found == {("outline.yaml", 2, line.index("mora") + 1), ("segments/opening.md", 1, 17)}
