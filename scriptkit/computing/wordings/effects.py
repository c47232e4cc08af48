"""Finds the words by which a clause names an effect or a comparison."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech
from scriptkit.computing.hearing.wording import MORE, causes
from scriptkit.computing.wordings.rungs import Span

NOT = frozenset("not never no neither nor without hardly cannot nothing nobody".split())
REASONS = frozenset("because therefore consequently so".split())
LIKE_NOUNS = frozenset("results result leads lead beat beats".split())
SAMENESS = frozenset("same different difference differences".split())
COMPARING = MORE | LIKE_NOUNS | SAMENESS | {"than"}
NEAR = 3  # words within which a negation bears on a verb


class Effects:
    """The words at which an effect or a comparison is named; looked for once they are asked for."""

    def __init__(self, speech: Speech, cues: Cues, claims: Sequence[Span]) -> None:
        self._speech, self._cues, self._claims = speech, cues, claims
        self._words: list[int] | None = None

    def are_in(self, start: int, clause: Clause) -> bool:
        """Whether any stand in a clause from `start` on."""
        if self._words is None:
            speech, words = self._speech, self._speech.words
            named = [a for a, _ in causes(speech, self._cues) if words[a] not in REASONS]
            named += [a for a, _ in speech.found.get("comparatives", ())]
            named += [i for i in range(len(words)) if _compares(speech, i)]
            named += [a for a, _ in self._claims if not _is_denied(words, a)]  # "is the key to", not "isn't the key to"
            self._words = named
        return any_in(self._words, start, clause)


def _compares(speech: Speech, i: int) -> bool:
    """Whether word i compares: "more", "beats", "as good as"; "161 beats" does not."""
    word = speech.words[i]
    named = word in COMPARING and not (word in LIKE_NOUNS and is_counted(speech, i))
    return named or _equals(speech.words, i)


def is_counted(speech: Speech, i: int) -> bool:
    """Whether a number stands right before word i: "161 beats"."""
    return i in speech.counted


def _is_denied(words: Sequence[str], i: int) -> bool:
    return any(word in NOT or word.endswith("n't") for word in words[max(0, i - NEAR) : i])


def _equals(words: Sequence[str], i: int) -> bool:
    """Whether word i opens "as good as"."""
    return words[i] == "as" and "as" in words[i + 2 : i + 4]


def any_in(places: Iterable[int], start: int, clause: Clause) -> bool:
    """Whether any of the places lies in a clause, from `start` on."""
    return any(start <= i < clause.end for i in places)
