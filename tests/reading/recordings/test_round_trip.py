"""Words that other libraries write as WebVTT or SRT come back the same, each within the time of its caption."""

from __future__ import annotations

from datetime import timedelta
from io import StringIO
from pathlib import Path
from tempfile import TemporaryDirectory

import srt
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.model.recording import Recording
from tests.reading.recordings.files import read

Captions = list[tuple[int, int, list[str]]]  # start and end in milliseconds, and the words of each line
WORD = st.builds(str.__add__, st.sampled_from("abñT5"), st.text(st.sampled_from("abcdefgéß'’-057%,.?"), max_size=8))


@st.composite
def captions(draw: st.DrawFn) -> Captions:
    """Captions one behind the other, no two of them with a line in common, so that none can seem to roll on."""
    now, found = 0, []
    for number in range(draw(st.integers(1, 8))):
        start = now + draw(st.integers(0, 4000))
        now = start + draw(st.integers(1, 4_000_000 if number == 3 else 8000))
        lines = [
            " ".join(line) for line in draw(st.lists(st.lists(WORD, min_size=1, max_size=5), min_size=1, max_size=2))
        ]
        found.append((start, now, [f"n{number}", *lines]))
    return found


def as_srt(parts: Captions) -> str:
    return str(
        srt.compose(
            srt.Subtitle(None, timedelta(milliseconds=start), timedelta(milliseconds=end), "\n".join(lines))
            for start, end, lines in parts
        )
    )


def as_webvtt(parts: Captions) -> str:
    made = webvtt.WebVTT()
    for start, end, lines in parts:
        times = [
            f"{one // 3_600_000:02}:{one // 60_000 % 60:02}:{one // 1000 % 60:02}.{one % 1000:03}"
            for one in (start, end)
        ]
        made.captions.append(webvtt.Caption(times[0], times[1], "\n".join(lines)))
    written = StringIO()
    made.write(written)
    return written.getvalue()


def holds(found: Recording, parts: Captions) -> None:
    """Whether these are all the words, each in its caption's time."""
    wanted = [(word, start, end) for start, end, lines in parts for word in " ".join(lines).split()]
    assert [word.text for word in found.words] == [word for word, _, _ in wanted]
    for word, (_, start, end) in zip(found.words, wanted, strict=True):
        assert start / 1000 <= word.start <= word.end <= end / 1000
    assert found.length == parts[-1][1] / 1000
    assert found.troubles == ()


@given(captions())
def test_srt_by_another_library_comes_back(parts: Captions) -> None:
    with TemporaryDirectory() as folder:
        holds(read(Path(folder), as_srt(parts)), parts)


@given(captions())
def test_webvtt_by_another_library_comes_back(parts: Captions) -> None:
    with TemporaryDirectory() as folder:
        holds(read(Path(folder), as_webvtt(parts)), parts)


@given(captions(), captions())
def test_two_files_come_back_one_behind_the_other(first: Captions, second: Captions) -> None:
    with TemporaryDirectory() as folder:
        found = read(Path(folder), as_srt(first), as_webvtt(second))
    by = round(found.files[1].start * 1000)
    assert by in (0, first[-1][1])
    if by or second[0][0] >= first[-1][1]:
        holds(found, first + [(start + by, end + by, lines) for start, end, lines in second])
