"""What was said that is not in the script: another try at a line, a filler, an invention of a recogniser, an ad-lib."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit import keys
from scriptkit.computing.hearing.claims import Cues, judge
from scriptkit.computing.taking import aligning, hearing_out
from scriptkit.computing.taking.aligning import Match
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.computing.taking.tokens import FILLERS, keys_of
from scriptkit.model import TakeChange
from scriptkit.model.taking import KeptAdLib

TRIES = 3  # lines before and behind a stretch of which it may be another try
AGAIN = 0.6  # share of its words that stand in one of them
MOST_LINES = 60  # of the script that one stretch is held against
MOST_WORDS = 24  # of a stretch without a full stop that are judged together
LONG = 25  # words from which on an addition is a part of its own
SHORT = 3  # fewer words are told with no sentence
_GO_AGAIN = r"(?:again|over|once more|from the top)"
# how a speaker gives up a start, in the words that are compared
_GIVEN_UP = re.compile(
    r"(?:^|(?<= ))(?:(?:sorry|oops|whoops|wait|no) )*"
    r"(?:(?:let me|lets|i will|i am going to) (?:go|start|try|do|say|take|begin|read)(?: (?:that|it|this|the line))?"
    rf"(?: {_GO_AGAIN})+|(?:sorry|oops|whoops|wait)(?: (?:go |start )?{_GO_AGAIN})?|start over)$"
)
SENTENCE_ENDS = (".", "!", "?", "…")


class Extra(NamedTuple):
    """A stretch that no line of the script is: from which token to which (one behind), and what it is."""

    first: int
    end: int
    kind: str  # filler, again, broken (a start given up), invented or added
    after: int  # number of the line that was said before it, -1 for none


def extras(
    script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded, words: Mapping[str, Sequence[str]]
) -> list[Extra]:
    """Every stretch of the recording in which no line of the script was said, cut where its kind changes."""
    inventions = [keys_of(line, recorded.apart) for line in words.get("recogniser-inventions", ())]
    lines = _by_runs(script)
    said = hearing_out.order(matches)
    found: list[Extra] = []
    for first, end in hearing_out.gaps(matches, len(recorded.keys)):
        after = hearing_out.before(said, first)
        for low, high in _cut(first, end, recorded):
            kind = _kind(recorded.keys[low:high], after, script, lines, inventions)
            if found and found[-1].end == low and found[-1].kind == kind and kind != "added":
                found[-1] = found[-1]._replace(end=high)
            else:
                found.append(Extra(low, high, kind, after))
    return found


def _by_runs(script: Sequence[Spoken]) -> dict[tuple[str, ...], set[int]]:
    """The numbers of the lines in which each run of words stands."""
    found: dict[tuple[str, ...], set[int]] = {}
    for number, one in enumerate(script):
        keys = [token.key for token in one.tokens]
        for at in range(len(keys) - aligning.RUN + 1):
            found.setdefault(tuple(keys[at : at + aligning.RUN]), set()).add(number)
    return found


def _kind(
    keys: Sequence[str],
    after: int,
    script: Sequence[Spoken],
    lines: Mapping[tuple[str, ...], set[int]],
    inventions: Sequence[tuple[str, ...]],
) -> str:
    bare = [key for key in keys if key not in FILLERS]
    if not bare:
        return "filler"
    if tuple(bare) in inventions:
        return "invented"
    given_up = _GIVEN_UP.search(" ".join(bare))
    if given_up:
        bare = given_up.string[: given_up.start()].split()
    if not bare or _is_try(bare, after, script, lines):
        return "broken" if given_up else "again"
    return "added"


def _is_try(
    bare: Sequence[str], after: int, script: Sequence[Spoken], lines: Mapping[tuple[str, ...], set[int]]
) -> bool:
    """Whether most of the words stand in their order in a line that is near, or that shares a run of them."""
    near = set(range(max(0, after - TRIES + 1), min(len(script), after + TRIES + 1)))
    for at in range(len(bare) - aligning.RUN + 1):
        near |= lines.get(tuple(bare[at : at + aligning.RUN]), set())
    for number in sorted(near)[:MOST_LINES]:
        said = [token.key for one in script[number : number + 2] for token in one.tokens]
        match = aligning.compare(bare, said, 0, len(said))
        if match and match.score >= AGAIN * len(bare):
            return True
    return False


def tries(found: Sequence[Extra]) -> int:
    """How many other tries there are; what only gives up the one right before it is none of its own."""
    again = {one.end for one in found if one.kind == "again"}
    return sum(one.kind == "again" or (one.kind == "broken" and one.first not in again) for one in found)


def ad_libs(found: Sequence[Extra], script: Sequence[Spoken], recorded: Recorded, cues: Cues) -> tuple[KeptAdLib, ...]:
    """What was added and claims something, with the line behind which it was said."""
    made = []
    for extra in found if script else ():
        line = script[max(0, extra.after)]
        if extra.kind == "added" and _claims(extra, line, recorded, cues):
            start, end = recorded.start(extra.first), recorded.end(extra.end - 1)
            text = recorded.text(extra.first, extra.end - 1)
            made.append(KeptAdLib(line.segment.id, keys.of(line.sentence.text), text, start, end))
    return tuple(made)


def _claims(extra: Extra, line: Spoken, recorded: Recorded, cues: Cues) -> bool:
    bare = [key for key in recorded.keys[extra.first : extra.end] if key not in FILLERS]
    text = recorded.text(extra.first, extra.end - 1)
    return len(bare) >= SHORT and judge(text, "", line.segment.kind, cues).kind == "claim"


def changes(found: Sequence[Extra], script: Sequence[Spoken], recorded: Recorded, cues: Cues) -> list[TakeChange]:
    """What was added, sentence by sentence: a claim weighs more than a word."""
    made = []
    for extra in found:
        if extra.kind not in ("added", "broken", "invented"):
            continue
        if not script:
            continue
        line = script[max(0, extra.after)]
        place = line.sentence.place_of(line.offset(len(line.tokens) - 1))
        text = recorded.text(extra.first, extra.end - 1)
        bare = [key for key in recorded.keys[extra.first : extra.end] if key not in FILLERS]
        if extra.kind != "invented" and len(bare) < SHORT:
            continue
        weight, kind, what = "wording", "added", "it is not in the script"
        if extra.kind == "invented":
            kind, what = "invented", "recognisers write this over silence: listen whether it was said"
        elif extra.kind == "broken":
            kind, what = "restart", "a start that was broken off: cut it out"
        elif _claims(extra, line, recorded, cues):
            weight, kind, what = "claim", "ad-lib", "a claim was added, and no source stands behind it"
        made.append(TakeChange(weight, kind, what, recorded.start(extra.first), line.segment.id, place, "", text))
    return made


def _cut(first: int, end: int, recorded: Recorded) -> list[tuple[int, int]]:
    """A stretch cut at its full stops, and every so many words where a recording has none."""
    found, low = [], first
    for token in range(first, end):
        stops = recorded.text(token, token).rstrip("\"'”’) ").endswith(SENTENCE_ENDS)
        if token + 1 == end or stops or token + 1 - low >= MOST_WORDS:
            found.append((low, token + 1))
            low = token + 1
    return found
