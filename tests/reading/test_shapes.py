"""Keys of the outline: unknown, twice, missing, values of the wrong kind at every level; the JSON Schema of it all."""

from __future__ import annotations

import json
import re

import pytest
import yaml
from jsonschema import Draft202012Validator

from scriptkit import build
from scriptkit.shipped import shipped
from tests.reading.episodes import GOOD, of_kind, one, seen

LEVELS = [
    ("titel: One", 1, "title"),
    ("checklist: {crietria: {}}", 13, "criteria"),
    ("checklist: {criteria: {long: {aks: Long, ask: Long}}}", 31, "ask"),
    ("sponsor: {name: Quennick, windw: {after: 15%}}", 27, "window"),
    ("sponsor: {name: Quennick, window: {afther: 15%}}", 36, "after"),
    ("sources: {a: {tilte: A}}", 15, "title"),
    ("sources: {a: {findings: {growth: {outcom: size}}}}", 35, "outcome"),
    ("sources: {a: {authors: [{famly: Orre, family: Orre}]}}", 26, "family"),
    ("order: [{segmnt: hang}]", 10, "segment"),
    ("cautions: {knee: {lin: Mind it., line: Mind it.}}", 19, "line"),
    ("errata: [{was: a, now: b, wy: c}]", 27, "why"),
    ("runtime: {target: 9m, tolerence: 20s}", 23, "tolerance"),
]


@pytest.mark.parametrize(("line", "column", "near"), LEVELS)
def test_an_unknown_key_is_found_at_every_level_with_the_near_name(episode, line: str, column: int, near: str) -> None:
    (found,) = of_kind(episode({"outline.yaml": f"{GOOD}{line}\n"}), "unknown-key")
    assert (found.place, found.help) == (("outline.yaml", 3, column), f'Did you mean "{near}"?')


def test_an_unknown_key_that_is_near_to_none_comes_with_those_that_are_known(episode) -> None:
    (found,) = of_kind(episode({"outline.yaml": f"{GOOD}order: [{{zzz: hang}}]\n"}), "unknown-key")
    assert found.help == "Known here: segment, group, optional, target, kind, title, shots."


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (f"{GOOD}title: Two\n", (3, 1)),
        (f"{GOOD}paces: {{opening: 170, close: 150, opening: 160}}\n", (3, 35)),
        (f"{GOOD}'title': Two\n", (3, 2)),
        (f"{GOOD}sources:\n  a:\n    title: A\n    year: 2020\n    title: B\n", (7, 5)),
        (f"{GOOD}sources:\n  a: {{title: A}}\n  a: {{title: B}}\n", (5, 3)),
        (f"{GOOD}order:\n  - {{segment: hang, segment: close}}\n", (4, 21)),
    ],
)
def test_a_key_given_twice_is_found_at_the_second_and_the_first_counts(episode, text: str, place) -> None:
    folder = episode({"outline.yaml": text})
    assert one(folder, "key-twice")[1:] == place
    read = build.read(folder)
    assert read.episode.title == "One"
    assert [source.title for source in read.register.values()] in ([], ["A"])


@pytest.mark.parametrize(
    ("line", "column"),
    [
        ("title: [One]", 8),
        ("question: {why: not}", 11),
        ("exercises: hang", 12),
        ("exercises: [hang]", 12),
        ("exercises: {hang: [a]}", 19),
        ("exercises: {hang: }", 13),
        ("exercises: {hang: {name: [a]}}", 26),
        ("runtime: [9m]", 10),
        ("paces: 150", 8),
        ("paces: [150]", 8),
        ("checklist: long", 12),
        ("checklist: {criteria: [long]}", 23),
        ("sponsor: Quennick", 10),
        ("sponsor: {name: Quennick, must_say: {a: b}}", 37),
        ("sources: {a: b}", 14),
        ("sources: [a]", 10),
        ("sources: {a: {n: [1]}}", 18),
        ("sources: {a: {findings: none}}", 25),
        ("order: {a: b}", 0),
        ("terms: word", 8),
        ("promises: [a]", 11),
        ("grades: A", 9),
        ("errata: wrong", 9),
        ("evidence: {a: b}", 11),
    ],
)
def test_a_value_of_the_wrong_kind_is_found_at_every_level(episode, line: str, column: int) -> None:
    key = line.split(":", maxsplit=1)[0]
    rest = "".join(part + "\n" for part in GOOD.splitlines() if not part.startswith(key + ":"))
    found = [one for one in seen(episode({"outline.yaml": f"{line}\n{rest}"})) if one[2] == 1]
    assert found in ([("wrong-type", "outline.yaml", 1, column)], [("unknown-key", "outline.yaml", 1, 9)])


@pytest.mark.parametrize(
    ("text", "what", "place"),
    [
        ("# one\n\nexercises: {hang: {name: Hang}}\n", "title", (3, 1)),
        ("title: One\n", "exercises", (1, 1)),
        ("title:\nexercises: {hang: {name: Hang}}\n", "title", (1, 1)),
        ("title: One\nexercises: {hang: {name: ~}}\n", "name", (2, 20)),
        (f"{GOOD}  \nsponsor: {{code: X}}\n", "name", (4, 10)),
        (f"{GOOD}checklist:\n  criteria:\n    long:\n      weight: 3\n", "ask", (5, 5)),
        (f"{GOOD}sources: {{a: {{authors: [{{given: B}}]}}}}\n", "family", (3, 25)),
    ],
)
def test_what_is_missing_is_found_at_what_should_hold_it(episode, text: str, what: str, place) -> None:
    (found,) = of_kind(episode({"outline.yaml": text}), "missing-value")
    assert (found.place[1:], found.message) == (place, f'"{what}" is missing here.')


def test_a_comma_in_curly_brackets_does_not_cut_a_text_off(episode) -> None:
    line = "If your heel hurts, ask a licensed clinician, and wait."
    folder = episode({"outline.yaml": f"{GOOD}cautions: {{achilles: {{line: {line}}}, knee: {{line: Mind it.}}}}\n"})
    assert seen(folder) == [("comma-in-brackets", "outline.yaml", 3, 49), ("comma-in-brackets", "outline.yaml", 3, 75)]
    read = build.read(folder).episode.cautions
    assert (read["achilles"].line, read["knee"].line) == (line, "Mind it.")
    assert read["achilles"].line.place(line.index("wait")).column == 29 + line.index("wait")  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "line", ["{line: Mind it, oppinion}", "{line: Mind it, some key: }", "{line: 'Mind it', some key}"]
)
def test_a_key_without_a_value_stays_a_key(episode, line: str) -> None:
    assert [name for name, *_ in seen(episode({"outline.yaml": f"{GOOD}cautions: {{knee: {line}}}\n"}))] == [
        "unknown-key"
    ]


def test_a_thousand_unknown_keys_are_all_found(episode) -> None:
    folder = episode({"outline.yaml": GOOD + "".join(f"titl{number}: x\n" for number in range(1000))})
    assert len(of_kind(folder, "unknown-key")) == 1000


class Editor(yaml.SafeLoader):
    """YAML as editors read it, by YAML 1.2: without dates, numbers of base sixty, and truth values such as on."""

    yaml_implicit_resolvers = {  # noqa: RUF012 - the library's name
        first: [
            one
            for one in resolvers
            if not one[0].endswith((":timestamp", ":int")) and not (one[0].endswith(":bool") and first in "yYnNoO")
        ]
        + [("tag:yaml.org,2002:int", re.compile(r"[-+]?\d+$"))] * (first in "-+0123456789")
        for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }


@pytest.mark.parametrize("which", ["outline", "register", "channel"])
def test_the_schema_is_a_json_schema(which: str) -> None:
    schema = build.schema(which)
    Draft202012Validator.check_schema(schema)
    assert json.loads(json.dumps(schema)) == schema


@pytest.mark.parametrize(("file", "which"), [("outline.yaml", "outline"), ("evidence.yaml", "register")])
def test_the_sample_fits_the_schema_as_an_editor_reads_it(file: str, which: str) -> None:
    text = (shipped("sample_episode") / file).read_text(encoding="utf-8")
    data = yaml.load(text, Loader=Editor)  # noqa: S506 - a safe loader that knows fewer types
    assert [error.message for error in Draft202012Validator(build.schema(which)).iter_errors(data)] == []


@pytest.mark.parametrize(("line", "column", "near"), LEVELS)
def test_the_schema_refuses_what_the_reader_refuses(line: str, column: int, near: str) -> None:
    data = yaml.safe_load(f"{GOOD}{line}\n")
    assert not Draft202012Validator(build.schema("outline")).is_valid(data)
