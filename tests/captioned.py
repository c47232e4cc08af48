"""What must hold of captions whatever they were made from, and small things said to make them from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from scriptkit.computing.captioning import cues
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.computing.captioning.words import size
from scriptkit.model import Caption
from scriptkit.times import frame_rate

LETTERS = 14.0  # a second


def said(*texts: str, pause: float = 0.6, speed: float = LETTERS, start: float = 0.0) -> list[Piece]:
    """One sentence after the other, each a piece of the same paragraph, said at so many characters a second."""
    pieces = []
    for text in texts:
        pieces.append(Piece(text, start, start + len(text) / speed))
        start = pieces[-1].end + pause
    return pieces


def captions(*texts: str, rate: str = "25", speed: float = LETTERS, whole: Sequence[str] = ()) -> tuple[Caption, ...]:
    pieces = said(*texts, speed=speed)
    return cues.captions(pieces, frame_rate(rate), pieces[-1].end + 0.6, whole)


def shown(*texts: str, speed: float = LETTERS) -> list[str]:
    """The captions of some sentences, each as one text with a stroke where its line ends."""
    return [" / ".join(one.lines) for one in captions(*texts, speed=speed)]


def unspaced(texts: Sequence[str]) -> str:
    return "".join("".join(texts).split())


def broken_limits(made: Sequence[Caption], pieces: Sequence[Piece], rate: Fraction, until: float) -> list[str]:
    """Every limit that captions break, in words. A short or fast caption must end where the next one begins."""
    told = list(_lines(made))
    if not _same_words([line for one in made for line in one.lines], [piece.text for piece in pieces]):
        told.append("the words are not those of the script, once and in order")
    for number, one in enumerate(made):
        end = made[number + 1].start if number + 1 < len(made) else Fraction(int(Fraction(until) * rate)) / rate
        frames = one.start * rate, one.end * rate
        if any(frame.denominator != 1 for frame in frames) or one.start < 0:
            told.append(f"{one} does not lie on frames")
        if one.end <= one.start or one.end - one.start > 7:
            told.append(f"{one} lasts {float(one.end - one.start)}")
        if (one.end - one.start < 1 or one.speed > 20) and one.end < min(end, one.start + 7 - 1 / rate):
            told.append(f"{one} could stay longer, to {float(end)}")
    for one, after in pairwise(made):
        gap = (after.start - one.end) * rate
        if gap and gap < 2:
            told.append(f"{float(gap)} frames between {one} and {after}")
    return told


def _same_words(shown: Sequence[str], script: Sequence[str]) -> bool:
    """Whether all that has letters is there, and nothing that is not; signs that nobody hears may be left out."""
    rest = iter(unspaced(script))
    letters = [[one for one in unspaced(texts) if one.isalnum()] for texts in (shown, script)]
    return letters[0] == letters[1] and all(one in rest for one in unspaced(shown))


def _lines(made: Sequence[Caption]) -> Iterator[str]:
    for one in made:
        if not 1 <= len(one.lines) <= 2:
            yield f"{one} has {len(one.lines)} lines"
        for line in one.lines:
            if not line.strip() or line != line.strip() or max(len(line), size(line)) > 42:
                yield f"{line!r} is no line"
