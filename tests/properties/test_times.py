"""Whatever is said and marked, times add up: sentences and marks lie inside their segment, segments end to end."""

from __future__ import annotations

import json
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.scripts import worked_out

QUICK = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
MARKS = [
    "[pause 2s]",
    "[hold 3s: a rep]",
    "[shot CU: hand]",
    "[screen: One]",
    "[screen 2s: Two]",
    "[opinion]",
    "[aside]",
    "[from one]",
    "[optional 1]",
]
BITS = st.sampled_from(
    [
        *MARKS,
        "Hang",
        "on,",
        "please.",
        "22 percent",
        "{{ exercise.name }}",
        "\n",
        "\n\n",
        "- ",
        "> ",
        "Wait…",
        "why?",
        "(yes)",
    ]
)
TEXT = st.lists(BITS, max_size=14).map(" ".join)
EPISODE = st.fixed_dictionaries(
    {"texts": st.lists(TEXT, min_size=1, max_size=4)},
    optional={
        "pace": st.integers(60, 300),
        "paces": st.fixed_dictionaries({}, optional={"verdict": st.integers(60, 300), "close": st.integers(60, 300)}),
    },
)


@QUICK
@given(EPISODE, st.integers(0, 3))
def test_times_add_up(drawn: dict, shots: int) -> None:
    names = [f"e{number}" for number in range(len(drawn["texts"]))]
    listed = [{"size": "CU", "of": f"part {number}"} for number in range(shots)]
    outline = {
        "title": "One",
        "exercises": {name: {"name": "Bar hang", "shots": listed} for name in names},
        "order": [*names, "close"],
    }
    outline |= {key: drawn[key] for key in ("pace", "paces") if key in drawn}
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        (folder / "segments").mkdir()
        (folder / "outline.yaml").write_text(json.dumps(outline))
        for name, text in zip(names, drawn["texts"], strict=True):
            (folder / "segments" / f"{name}.md").write_text(text)
        facts = worked_out(folder)
    line, clock = facts.timeline, 0.0
    for part, timed in zip(facts.segments, line.segments, strict=True):
        end = timed.start + timed.total
        assert timed.start == pytest.approx(clock)
        assert timed.total == pytest.approx(timed.spoken + timed.silent)
        assert timed.low <= timed.total <= timed.high
        assert len(part.sentences) == len(timed.sentences)
        spans = [(one.start, one.end) for one in timed.sentences]
        assert spans == sorted(spans)
        assert all(timed.start - 1e-6 <= start <= stop <= end + 1e-6 for start, stop in spans)
        assert all(one.end - one.start == pytest.approx(one.spoken + one.silent) for one in timed.sentences)
        assert all(timed.start - 1e-6 <= one.start <= end + 1e-6 for one in timed.marks)
        assert [one.start for one in timed.marks] == sorted(one.start for one in timed.marks)
        seen = [one for one in facts.shots if one.segment == part.id and one.start is not None]
        assert sum(one.duration or 0 for one in seen) == pytest.approx(timed.total, abs=0.01)
        clock = end
    assert line.total == pytest.approx(clock)
    assert line.low <= line.total <= line.high
    assert all(card.start <= card.end for card in facts.cards)
