"""What people ruled of the sentences: which verdict counts, which is void, and what becomes of a ledger sent back."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from scriptkit import keys
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Segment, Sentence, Verdict, VoidVerdict
from scriptkit.wording import signed

ALIKE = 0.5  # share of words in common from which a sentence is taken for the new wording of another
COMMON = 40  # a word in more sentences than these tells nothing about which one is meant
MOST_VOID = 200  # verdicts whose new wording is looked for


def latest(kept: Iterable[Verdict]) -> dict[str, Verdict]:
    """By key, the verdict that counts: the one of the later date, and of two without that the one further down."""
    found: dict[str, Verdict] = {}
    for one in kept:
        before = found.get(one.key)
        if before is None or not before.date or not one.date or one.date >= before.date:
            found[one.key] = one
    return found


def ruled(segments: Sequence[Segment], verdicts: Mapping[str, Verdict]) -> dict[str, tuple[Verdict | None, ...]]:
    """By segment, one a sentence: the verdict on it."""
    return {one.id: tuple(verdicts.get(keys.of(sentence.text)) for sentence in one.sentences) for one in segments}


def void(segments: Sequence[Segment], verdicts: Mapping[str, Verdict]) -> tuple[VoidVerdict, ...]:
    """The verdicts on sentences that are not in the script, each with the sentence that took the place of its own.

    Where that one has a verdict of its own, the old verdict is history and is left out.
    """
    said = [(segment, sentence) for segment in segments for sentence in segment.sentences]
    there = [keys.of(sentence.text) for _, sentence in said]
    gone = [one for key, one in verdicts.items() if key not in set(there)]
    places = Places([sentence.text for _, sentence in said] if gone else [])
    found = []
    for number, one in enumerate(gone):
        at = places.nearest(one.sentence) if number < MOST_VOID else None
        if at is None:
            found.append(VoidVerdict(one, "", None))
        elif there[at] not in verdicts:
            found.append(VoidVerdict(one, said[at][0].id, said[at][1]))
    return tuple(found)


class Places:
    """Finds the sentence whose words are most like those of another."""

    def __init__(self, sentences: Sequence[str]) -> None:
        self.words = [frozenset(plain(one).split()) for one in sentences]
        self.by_word: dict[str, list[int]] = {}
        for number, words in enumerate(self.words):
            for word in words:
                self.by_word.setdefault(word, []).append(number)

    def nearest(self, sentence: str) -> int | None:
        """The number of the most alike sentence, the first of several; None where none is alike enough."""
        wanted = frozenset(plain(sentence).split())
        near = Counter[int]()
        for word in wanted:
            there = self.by_word.get(word, ())
            if len(there) <= COMMON:
                near.update(there)
        shares = {n: len(wanted & self.words[n]) / len(wanted | self.words[n]) for n, _ in near.most_common(COMMON)}
        best = max(sorted(shares), key=lambda n: shares[n], default=None)
        return best if best is not None and shares[best] >= ALIKE else None


def told(one: Verdict) -> str:
    """A verdict in words: `verified by XY on 2026-03-02`."""
    return signed(one.verdict, one.initials, one.date)


def first_of(segments: Sequence[Segment]) -> dict[str, tuple[Segment, Sentence]]:
    """By key, the first sentence that has it, and its segment."""
    found: dict[str, tuple[Segment, Sentence]] = {}
    for segment in segments:
        for sentence in segment.sentences:
            found.setdefault(keys.of(sentence.text), (segment, sentence))
    return found
