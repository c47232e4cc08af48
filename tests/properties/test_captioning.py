"""Whatever is said, however fast and at whatever frame rate, captions keep their limits and read back as written."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from scriptkit.computing.captioning import cues
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.reading.outline import RATES
from scriptkit.rendering import captions
from scriptkit.times import frame_rate
from tests.captioned import broken_limits
from tests.read_back import from_srt, from_vtt, in_milliseconds

WORDS = st.sampled_from(
    "the a calf, muscle is would have grown and of in 38 weeks. 1.6 — 👍 提踵訓練, <b>it</b> & --> {\\an8} I you can't "
    "plantarflexion https://example.org/hill كعب single-leg".split()
) | st.text("abc\u0301é提\u200dxyz<&-", min_size=1, max_size=60)
PIECE = st.tuples(
    st.lists(WORDS, min_size=1, max_size=30).map(" ".join),
    st.floats(0, 4),  # seconds before it
    st.floats(3, 60),  # characters a second
    st.integers(0, 1),  # a new segment
    st.integers(0, 1),  # a new paragraph
)


@settings(max_examples=150, deadline=None)
@given(st.lists(PIECE, max_size=8), st.sampled_from(RATES), st.floats(0, 5))
def test_captions_keep_their_limits(drawn: list, rate: str, rest: float) -> None:
    pieces, clock, segment, paragraph = [], 0.0, 0, 0
    for text, before, speed, new_segment, new_paragraph in drawn:
        segment, paragraph = segment + new_segment, paragraph + new_paragraph
        start = clock + before
        clock = start + len(text) / speed
        pieces.append(Piece(text, start, clock, (segment, paragraph)))
    made = cues.captions(pieces, frame_rate(rate), clock + rest)
    assert broken_limits(made, pieces, frame_rate(rate), clock + rest) == []
    assert from_vtt(captions.vtt(made)) == from_srt(captions.srt(made)) == in_milliseconds(made)
