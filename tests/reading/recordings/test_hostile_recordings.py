"""No file whatever stops the reading of a recording, makes it endless, or gives times that are none."""

from __future__ import annotations

import json
import math
import time
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.model.recording import Recording
from tests.reading.recordings.files import read
from tests.reading.recordings.test_json_words import SHAPES
from tests.reading.recordings.test_rolling import LIVE

SIGNS = st.sampled_from(
    [*"\n\n\n<>[](){}&:,.-♪*\"'\\/ 0159aZ\r\t\x00\ufeff", "-->", " --> ", "00:00:01.000", "00:00:02,500", "-00:01.0",
     "WEBVTT\n", "NOTE\n", "1\n", "<c>", "</c>", "<00:00:01.200>", "{\\an8}", ">> ", "QUILL: ", "&amp;", "[music]",
     "hang ", "99:99:99.999999999"]
)  # fmt: skip
TIMES = st.one_of(
    st.floats(),
    st.integers(),
    st.text(max_size=8),
    st.none(),
    st.booleans(),
    st.sampled_from(["1.2s", "PT1S", "0:01", "9" * 400]),
)
KEYS = st.sampled_from(
    [
        "word",
        "text",
        "words",
        "segments",
        "start",
        "end",
        "from",
        "to",
        "offset",
        "duration",
        "start_ms",
        "timestamp",
        "alternatives",
    ]
)
JSON = st.recursive(
    st.one_of(TIMES, st.just("hang"), st.just(" on")),
    lambda inner: st.one_of(st.lists(inner, max_size=4), st.dictionaries(KEYS, inner, max_size=6)),
    max_leaves=40,
)


def is_sound(found: Recording) -> None:
    """A reason and no words, or words in order with times inside of the recording."""
    assert bool(found.refused) != bool(found.words)
    assert "\n" not in found.refused
    before = 0.0
    for word in found.words:
        assert math.isfinite(word.end)
        assert before <= word.start <= word.end <= found.length
        assert word.text == word.text.strip() != ""
        before = word.start
    for trouble in found.troubles:
        assert trouble.place.line >= 1 <= trouble.place.column
        assert "\n" not in trouble.message


def read_anywhere(*contents: str | bytes) -> Recording:
    with TemporaryDirectory() as folder:
        return read(Path(folder), *contents)


@given(st.binary(max_size=300))
def test_any_bytes(data: bytes) -> None:
    is_sound(read_anywhere(data))
    is_sound(read_anywhere(b"WEBVTT\n\n00:01.000 --> 00:02.000\n" + data))


@given(st.lists(SIGNS, max_size=80).map("".join))
def test_any_pieces_of_captions(text: str) -> None:
    is_sound(read_anywhere("WEBVTT\n\n" + text))
    is_sound(read_anywhere("00:00:05,000 --> 00:00:06,000\n" + text, "00:00 --> 00:01\nhang on\n" + text))


@given(JSON)
def test_any_json(value: object) -> None:
    is_sound(read_anywhere(json.dumps(value), json.dumps([value])))
    is_sound(read_anywhere(json.dumps([{"word": "hang", "start": 1, "end": 2, "words": value}, value])))


@pytest.mark.parametrize("text", [LIVE, *map(json.dumps, SHAPES.values())])
def test_a_file_that_was_cut_anywhere(tmp_path: Path, text: str) -> None:
    for end in range(0, len(text), 7):
        is_sound(read(tmp_path, text[:end]))


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("".join(f"{n // 60}:{n % 60:02}.000 --> 99:00:00.000\nup\n\n" for n in range(60_000)) * 6, "captions"),
        ("00:01.000 --> 00:02.000\n" + "up " * 600_000, "words"),
        ("00:01.000 --> 00:02.000\n" + "<00:01.001>up " * 100_000, ""),
        ("00:01.000 --> 00:02.000\nup\n" * 100_000, ""),
        ("00:00:01,000" * 200_000, "no line with two times"),
        ("00:01.000 --> 00:02.000 " * 200_000, "words"),
        ("-->\n" * 500_000, "no line with two times"),
        ("00:01.000 --> 00:02.000\n" + "(<[&♪*" * 200_000, "words"),
        ('{"words": [' + '{"word": "up"},' * 60_000 + '{"word": "up", "start": 1}]}', ""),
        ('["' + "\\u0041" * 1_000_000 + '"]', "words"),
        ("[" + "[" * 30_000, "nested"),
        ("{" * 3_000_000, "line 1"),
    ],
    ids=range(12),
)  # fmt: skip
def test_large_files_are_read_or_refused_in_bounded_time(tmp_path: Path, text: str, why: str) -> None:
    before = time.process_time()
    found = read(tmp_path, text)
    assert time.process_time() - before < 20
    is_sound(found)
    assert why in found.refused if why else found.words
