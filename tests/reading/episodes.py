"""What the tests of the reading room share: an episode read from outside, its findings, and hostile texts."""

from __future__ import annotations

from pathlib import Path

from hypothesis import strategies as st

from scriptkit import build
from scriptkit.findings import Finding, at_stage, most_urgent_first
from scriptkit.places import SourceFile
from scriptkit.reading import faults
from scriptkit.reading.spoken import read as read_spoken

GOOD = "title: One\nexercises: {hang: {name: Bar hang}}\n"


def findings(folder: Path, stage: str = "draft") -> list[Finding]:
    """Every finding of an episode, as `check` gives them."""
    material = build.read(folder)
    if not material.readable:
        return most_urgent_first(at_stage(material.folders.findings, stage))
    return build.check(build.work_out(material), stage)


def seen(folder: Path) -> list[tuple[str, str, int, int]]:
    """Name, file, line and column of every finding of the reading room, in order of place."""
    own = [one for one in findings(folder) if one.name in {*faults.KINDS, "allow-unused"}]
    return sorted(((one.name, *one.place) for one in own), key=lambda one: (one[1:], one[0]))


def of_kind(folder: Path, name: str) -> list[Finding]:
    """The findings of one name."""
    return [one for one in findings(folder) if one.name == name]


def one(folder: Path, name: str) -> tuple[str, int, int]:
    """The place of the only finding of that name."""
    (found,) = of_kind(folder, name)
    return found.place


def spoken_findings(text: str) -> list[tuple[str, int, int]]:
    """Name, line and column of what reading a segment's text finds."""
    found: list[Finding] = []
    read_spoken("hang", "episode", SourceFile("segments/hang.md", text), found, [])
    return [(one.name, one.place.line, one.place.column) for one in found]


# pieces that mean something to YAML, Markdown, Jinja, or to nobody
PIECES = (
    "title", "exercises", "hang", "name", "claims", "say", "source", "order", "sources", "channel", ": ", ":", "- ",
    "-", "\n", "\n  ", "\n    ", "\t", "\r\n", "\r", "{", "}", "[", "]", "{{ ", " }}", "{% if x %}", "{% endif %}",
    "{{ exercise.name }}", "{# ", " #}", ", ", "|", "|\n", ">\n", "'", '"', "&a ", "*a", "<<",
    "!!python/object:os.system ", "? ", "---\n", "...\n", "# ", "# allow: x because y\n",
    "<!-- allow: x because y -->", "<!--", "-->", "[from a]", "[shot CU side: a; reps 3]", "[hold 3s]", "[opinion]",
    "[screen 4s: B+]", "~", "null", "NO", "9:30", "1e3", "0", "-1", "3.5 kg", "10%", "\\", "\\[", "&amp;", "`",
    "```\n", "> ", "| a | b |\n|---|---|\n", "<b>", "![x](y)", '[x](y "z")', "[x]: /y\n", "*", "**", "_", "\u2028",
    "\x85", "\ufeff", "\x00", "\x07", "é", "🙂", "\u202e", "I think it works.", " ", "grade", "A-", "ratings",
    "checklist", "criteria", "scale", "sponsor", "disclosure", "window", "runtime", "pace", "promises",
    "[promise p]", "cautions", "achilles", "terms", "evidence", "../x", "evidence.yaml", "/dev/zero", "group",
    "optional", "shots", "size", "CU",
)  # fmt: skip
HOSTILE = st.one_of(
    st.lists(st.sampled_from(PIECES), max_size=40).map("".join),
    st.text(max_size=200),
)
EXERCISE_KEYS = tuple(
    "name say group grade ratings override use cautions claims shots source opinion size reps kit title "
    "runtime pace paces checklist grades exercises sponsor order terms evidence promises sources window "
    "length valid approved errata interests coverage scale criteria hang target tolerance findings values "
    "authors year n line score range segment must_say weight anchors floor cap id stance".split()
)
VALUES = st.one_of(
    st.sampled_from(
        [
            "A",
            "B+",
            "5",
            "0",
            "-3",
            "9:30",
            "20s",
            "10%",
            "true",
            "2026-02-30",
            "hang",
            "recap",
            "x y",
            "",
            "1e9",
            "a" * 70,
            "[x]",
        ]
    ),
    st.text(max_size=12),
    st.integers(),
    st.booleans(),
    st.none(),
)
TREES = st.recursive(
    VALUES,
    lambda inner: st.one_of(
        st.lists(inner, max_size=4), st.dictionaries(st.sampled_from(EXERCISE_KEYS), inner, max_size=6)
    ),
    max_leaves=30,
)
