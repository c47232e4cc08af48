"""Words with their times are found in JSON of any shape, in any unit, once."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.reading.recordings.files import read, said, times, told

WORDS = [("Hang", 0.5, 0.9), ("on", 1.0, 1.2), ("bars.", 1.5, 2.0)]
EXACT = [(*word, True) for word in WORDS]


def each(text: str, start: str, end: str, scale: Any = 1, **more: Any) -> list[dict[str, Any]]:
    """The three words as mappings with these keys; `scale` is a factor or a function."""
    made = scale if callable(scale) else (lambda value: value * scale)
    return [{text: word, start: made(since), end: made(until), **more} for word, since, until in WORDS]


def clock(value: float) -> str:
    return f"00:00:{value:06.3f}".replace(".", ",")


SHAPES: dict[str, Any] = {
    "flat": each("word", "start", "end"),
    "in a list by name": {"words": each("text", "start_time", "end_time", str)},
    "with a summary": {"text": "Hang on bars.", "duration": 2.0, "words": each("w", "begin", "end")},
    "milliseconds by name": each("value", "start_ms", "endMs", 1000),
    "milliseconds by size": each("text", "start", "end", lambda value: int(value * 1000)),
    "ticks by size": {"NBest": [{"Words": each("Word", "Offset", "End", lambda value: int(value * 1e7))}]},
    "seconds as text": each("word", "startTime", "endTime", "{:.3f}s".format),
    "milliseconds as text": each("word", "from", "to", lambda value: f"{value * 1000:.0f}ms"),
    "a clock": each("content", "ts", "end_ts", clock),
    "ISO durations": each("word", "offset", "end", "PT{}S".format),
    "seconds and nanos": each(
        "word", "startTime", "endTime", lambda value: {"seconds": str(int(value)), "nanos": round(value % 1 * 1e9)}
    ),
    "rows": {
        "results": [{"alternatives": [{"transcript": "Hang on bars.", "timestamps": [list(one) for one in WORDS]}]}]
    },
    "a pair": {"chunks": [{"text": f" {word}", "timestamp": [since, until]} for word, since, until in WORDS]},
    "two mappings of times": [
        {"text": word, "timestamps": {"from": clock(since), "to": clock(until)}, "offsets": {"from": 1, "to": 2}}
        for word, since, until in WORDS
    ],
    "durations": [{"word": word, "offset": since, "duration": until - since} for word, since, until in WORDS],
    "alternatives hold the text": {
        "results": {
            "transcripts": [{"transcript": "Hang on bars."}],
            "items": [
                {
                    "start_time": str(since),
                    "end_time": str(until),
                    "alternatives": [{"content": word}, {"content": "x"}],
                }
                for word, since, until in WORDS
            ],
        }
    },
    "first of the alternatives": {
        "alternatives": [
            {"words": each("word", "start", "end")},
            {"words": [{"word": "other", "start": 0.1, "end": 3}] * 3},
        ]
    },
    "told twice": {
        "segments": [{"start": 0.5, "end": 2, "text": " Hang on bars.", "words": each("word", "start", "end")}],
        "word_segments": each("word", "start", "end"),
        "paragraphs": [{"sentences": [{"text": "Hang on bars.", "start": 0.5, "end": 2.0}]}],
    },
    "points on their own": {
        "elements": [
            {"type": "text", "value": "Hang", "ts": 0.5, "end_ts": 0.9},
            {"type": "punct", "value": " "},
            {"type": "text", "value": "on", "ts": 1.0, "end_ts": 1.2},
            {"type": "text", "value": "bars", "ts": 1.5, "end_ts": 2.0},
            {"type": "punct", "value": "."},
        ]
    },
    "parts of words": {
        "segments": [
            {
                "text": " Hang on bars.",
                "start": 0.5,
                "end": 2.0,
                "tokens": [
                    {"text": "[_BEG_]", "start": 0.5, "end": 0.5},
                    {"text": " Hang", "start": 0.5, "end": 0.9},
                    {"text": " on", "start": 1.0, "end": 1.2},
                    {"text": " b", "start": 1.5, "end": 1.7},
                    {"text": "ars", "start": 1.7, "end": 2.0},
                    {"text": ".", "start": 2.0, "end": 2.0},
                ],
            }
        ]
    },
    "syllables of words": [
        {
            "word": word,
            "start": since,
            "end": until,
            "parts": [{"text": word[:2], "start": since}, {"text": word[2:], "start": until}],
        }
        for word, since, until in WORDS
    ],
    "the letters of words": [
        {"word": word, "start": since, "end": until, "chars": [{"char": one, "start": since} for one in word]}
        for word, since, until in WORDS
    ],
}


@pytest.mark.parametrize("name", SHAPES)
def test_words_are_found_whatever_the_shape(tmp_path: Path, name: str) -> None:
    found = read(tmp_path, SHAPES[name])
    assert times(found) == EXACT
    assert found.troubles == ()


def test_a_value_on_each_line(tmp_path: Path) -> None:
    lines = '{"result": [{"word": "Hang", "start": 0.5}]}\n{"result": [{"word": "on", "start": 0.9, "end": 1}]}\n'
    assert times(read(tmp_path, lines)) == [("Hang", 0.5, 0.9, True), ("on", 0.9, 1.0, True)]


def test_times_that_count_from_their_part_are_moved(tmp_path: Path) -> None:
    events = {
        "events": [
            {"tStartMs": 0, "dDurationMs": 90_000, "id": 1},
            {
                "tStartMs": 5000,
                "dDurationMs": 2000,
                "segs": [{"utf8": "Hang"}, {"utf8": " on", "tOffsetMs": 400}, {"utf8": " bars.", "tOffsetMs": 900}],
            },
            {"tStartMs": 6500, "dDurationMs": 500, "aAppend": 1, "segs": [{"utf8": "\n"}]},
            {"tStartMs": 6510, "dDurationMs": 2000, "segs": [{"utf8": "Now rest"}]},
        ]
    }
    assert times(read(tmp_path, events)) == [
        ("Hang", 5.0, 5.4, True),
        ("on", 5.4, 5.704, True),
        ("bars.", 5.9, 6.508, True),
        ("Now", 6.51, 7.367, False),
        ("rest", 7.367, 8.51, False),
    ]


def test_a_word_that_starts_long_before_its_part_does_not_move_the_others(tmp_path: Path) -> None:
    words = [{"word": "Hang", "start": 1.9, "end": 2.0}, {"word": "on", "start": 5.0, "end": 5.5}]
    part = {"start": 4.0, "end": 6.0, "text": "Hang on", "words": words}
    assert [word.start for word in read(tmp_path, [part]).words] == [1.9, 5.0]


def test_parts_with_times_and_no_words_are_shared_by_letters(tmp_path: Path) -> None:
    parts = {
        "segments": [{"id": 0, "start": 1, "end": 4, "text": "Hang on"}, {"start": 3, "end": 5, "lines": ["Up", "now"]}]
    }
    assert times(read(tmp_path, parts)) == [
        ("Hang", 1.0, 2.333, False),
        ("on", 2.333, 3.0, False),
        ("Up", 3.0, 3.8, False),
        ("now", 3.8, 5.0, False),
    ]


def test_a_word_without_a_time_stands_between_its_neighbours(tmp_path: Path) -> None:
    words = [
        {"word": "In"},
        {"word": "season", "start": 1, "end": 2},
        {"word": "2014"},
        {"word": "we", "start": None},
        {"word": "hang", "start": 5, "end": 6},
        {"word": "bars"},
    ]
    found = read(tmp_path, words)
    assert said(found) == "In season 2014 we hang bars"
    assert found.words[2][1:] == (2.0, 4.0, False)
    assert found.words[3][1:] == (4.0, 5.0, False)
    assert found.words[5].start == 6.0
    assert [word.exact for word in found.words] == [False, True, False, False, True, False]


def test_words_out_of_order_are_put_in_order_and_doubles_dropped(tmp_path: Path) -> None:
    channels = {"channels": [{"words": each("word", "start", "end")}, {"words": each("word", "start", "end")[::-1]}]}
    assert times(read(tmp_path, channels)) == EXACT


def test_notes_on_sounds_are_no_words(tmp_path: Path) -> None:
    texts = ["[Music]", "Hang", "[deep", "breath]", ">>", "(laughs)", "♪", "on", "<unk>", "<|end|>"]
    words = [{"word": text, "start": n, "end": n + 0.5} for n, text in enumerate(texts)]
    found = read(tmp_path, words)
    assert times(found) == [("Hang", 1.0, 1.5, True), ("on", 7.0, 7.5, True)]


def test_one_slow_word_is_not_taken_for_milliseconds(tmp_path: Path) -> None:
    assert read(tmp_path, [{"text": "Hi", "start": 0, "end": 30}]).length == 30.0


def test_times_that_cannot_be_right_are_told_with_their_place(tmp_path: Path) -> None:
    text = """{"words": [
  {"word": "Hang", "start": -1, "end": 0.5},
  {"word": "{on}", "start": 2, "end": 1, "is": {}},
  {"word": "never", "start": 1e300, "end": 1e301},
  {"word": "bars", "start": 3, "end": 4}
]}"""
    found = read(tmp_path, text)
    assert [word[:2] for word in times(found)] == [("Hang", 0.0), ("{on}", 2.0), ("bars", 3.0)]
    assert told(found) == [
        (2, 3, '"Hang" starts before 0; it is read from 0 on.'),
        (3, 3, '"{on}" ends before it starts; only its start is used.'),
        (4, 3, 'The time of "never" is longer than any recording\'s; it is left out.'),
    ]


@pytest.mark.parametrize(
    "content",
    [
        "[NaN, Infinity, -Infinity]",
        '{"word": "a", "start": NaN}',
        '{"word": "a", "start": Infinity, "end": 1}',
        '{"word": "a", "start": 1' + "0" * 100_000 + "}",
        '{"word": "a", "start": "1' + "0" * 100_000 + '"}',
        '{"word": "a", "start": true}',
        '{"word": "a", "start": [[[]]]}',
        '{"word": "a", "time": {"time": {"time": [1, 2]}}}',
        '{"from": "Quill", "to": "Moss", "text": "Hang on"}',
        '{"created": 1, "text": "Hang"}',
        "[" * 60 + '{"word": "a", "start": 1}' + "]" * 60,
        '[1, 2, null, true, "a"]',
        "{}",
        "[[]]",
    ],
)  # fmt: skip
def test_what_holds_no_timed_word_is_refused(tmp_path: Path, content: str) -> None:
    assert "there are no words with times in it" in read(tmp_path, content).refused
