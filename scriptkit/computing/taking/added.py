"""What was said that is not in the script: another try at a line, a filler, an invention of a recogniser, an ad-lib."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.hearing.claims import Cues, judge
from scriptkit.computing.taking import aligning, hearing_out
from scriptkit.computing.taking.aligning import Match
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.computing.taking.tokens import FILLERS, pieces, tokens
from scriptkit.model import TakeChange

TRIES = 3  # lines before and behind a stretch of which it may be another try
AGAIN = 0.6  # share of its words that stand in one of them
LONG = 25  # words from which on an addition is a part of its own
SHORT = 3  # fewer words are told with no sentence
SENTENCE_ENDS = (".", "!", "?", "…")


class Extra(NamedTuple):
    """A stretch that no line of the script is: from which token to which (one behind), and what it is."""

    first: int
    end: int
    kind: str  # filler, again, invented or added
    after: int  # number of the line that was said before it, -1 for none


def extras(
    script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded, words: Mapping[str, Sequence[str]]
) -> list[Extra]:
    """Every stretch of the recording in which no line of the script was said."""
    inventions = [tuple(_keys(line)) for line in words.get("recogniser-inventions", ())]
    found = []
    for first, end in hearing_out.gaps(matches, len(recorded.keys)):
        after = hearing_out.before(matches, first)
        kind = _kind(recorded.keys[first:end], after, script, inventions)
        found.append(Extra(first, end, kind, after))
    return found


def _keys(text: str) -> list[str]:
    return [token.key for token in tokens([piece.text for piece in pieces(text)])]


def _kind(keys: Sequence[str], after: int, script: Sequence[Spoken], inventions: Sequence[tuple[str, ...]]) -> str:
    bare = [key for key in keys if key not in FILLERS]
    if not bare:
        return "filler"
    if tuple(bare) in inventions:
        return "invented"
    near = script[max(0, after - TRIES + 1) : after + TRIES + 1]
    said = [token.key for one in near for token in one.tokens]
    match = aligning.compare(bare, said, 0, len(said)) if said else None
    return "again" if match and match.score >= AGAIN * len(bare) else "added"


def changes(found: Sequence[Extra], script: Sequence[Spoken], recorded: Recorded, cues: Cues) -> list[TakeChange]:
    """What was added, sentence by sentence: a claim weighs more than a word."""
    made = []
    for extra in found:
        if extra.kind not in ("added", "invented"):
            continue
        line = script[max(0, extra.after)]
        place = line.sentence.place_of(line.offset(len(line.tokens) - 1))
        for first, end in _sentences(extra, recorded):
            text = recorded.text(first, end - 1)
            bare = [key for key in recorded.keys[first:end] if key not in FILLERS]
            if not bare:
                continue
            weight, kind, what = "wording", "added", "it is not in the script"
            if extra.kind == "invented":
                kind, what = "invented", "recognisers write this over silence: listen whether it was said"
            elif len(bare) >= SHORT and judge(text, "", line.segment.kind, cues).kind == "claim":
                weight, kind, what = "claim", "ad-lib", "a claim was added, and no source stands behind it"
            elif len(bare) < SHORT:
                continue
            at = recorded.start(first)
            made.append(TakeChange(weight, kind, what, at, line.segment.id, place, "", text))
    return made


def _sentences(extra: Extra, recorded: Recorded) -> list[tuple[int, int]]:
    """An addition cut at its full stops, where the recording has any."""
    found, first = [], extra.first
    for token in range(extra.first, extra.end):
        if token + 1 == extra.end or recorded.text(token, token).rstrip("\"'”’) ").endswith(SENTENCE_ENDS):
            found.append((first, token + 1))
            first = token + 1
    return found
