"""Finds numbers that are the source's and are spoken of the wrong thing, or in the wrong direction."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby, islice, pairwise

from scriptkit.computing.numbers.fitting import SMALL, SOURCES_OWN, Claimed, fits
from scriptkit.computing.numbers.holdings import Held, Holding, label_stems
from scriptkit.computing.numbers.quantities import Quantity, Reading, stem

BEFORE = frozenset("before pre baseline start first".split())
AFTER = frozenset("after post end end last".split())
OTHERS = frozenset("other others rest else neither without control".split())
MOST = 200  # labels of a sentence that are looked at
MOST_FINDINGS, MOST_VALUES = 50, 60  # behind one sentence, and of one finding; no study tells more in a breath
BETWEEN = 4  # words behind a number in which its own label may follow


class Directions:
    """Phrases that say which way, as words: up, down, and the words before "than"."""

    __slots__ = ("down", "less", "more", "up")

    def __init__(self, entries: Sequence[tuple[str, str, str]]) -> None:
        self.up, self.down = (
            tuple(tuple(text.split()) for key, _, text in entries if key == way) for way in ("up", "down")
        )
        self.more, self.less = (
            frozenset(text.strip() for key, _, text in entries if key == way) for way in ("more", "less")
        )


_Pair = tuple[Quantity, Held]  # a number and the one labelled value that it is


def directions(words: Mapping[str, Sequence[str]]) -> Directions:
    """The list of directions made ready."""
    return Directions([entry.partition(":") for entry in words.get("directions", ())])


def swapped(
    reading: Reading, claimed: Sequence[Claimed], held: Sequence[Holding], ways: Directions
) -> Iterator[tuple[Quantity, str]]:
    """Each number that stands with another's label or direction, and what the register says."""
    wrong = _upside_down(reading, claimed) or _backwards(reading, claimed, held)
    if wrong is not None:
        yield wrong, "them the other way round"
        return
    for values in islice(_by_finding(held), MOST_FINDINGS):
        pairs = _pairs(claimed, values, held)
        if not pairs and "than" not in reading.words and _ends(values) is None and not _each_ends(values):
            continue
        mentions = _mentions(reading, values, [one.number for one in claimed])
        wrong = _crossed(pairs, mentions) or _alone(reading, pairs, mentions) or _turned(reading, claimed, values, ways)
        if wrong is None and len(values) == 2:
            wrong = _less_for_more(reading, claimed, mentions, values, ways)
        if wrong is not None:
            yield wrong, ", ".join(f"{value.written} for {' '.join(value.label)}" for value in values)
            return


def _by_finding(held: Sequence[Holding]) -> Iterator[list[Held]]:
    """The labelled values of each finding that has two or more, with different labels and numbers."""
    for holding in held:
        values = [one for one in holding.core if one.origin == "value" and one.label]
        for _, group in groupby(values, key=lambda one: one.finding):
            of_one = list(group)
            if len({one.label for one in of_one}) == len(of_one) and 2 <= len(of_one) <= MOST_VALUES:
                yield of_one


def _pairs(claimed: Sequence[Claimed], values: Sequence[Held], held: Sequence[Holding]) -> list[_Pair]:
    """The numbers that are one labelled value, and nothing else that the register holds."""
    found = []
    own = set(values)
    others = [
        one
        for holding in held
        for one in holding.core
        if one not in own and (one.origin == "value" or one.origin in SOURCES_OWN)
    ]
    for one in claimed:
        bare = not one.family and (one.number.value <= SMALL and not one.number.value % 1)
        if one.fit != "exact" or bare:
            continue
        mine = [value for value in values if fits(one, value) == "exact"]
        plain = not one.number.about or len(values) == 2
        if len(mine) == 1 and plain and not any(fits(one, other) for other in others):
            found.append((one.number, mine[0]))
    return found


def _mentions(reading: Reading, values: Sequence[Held], numbers: Sequence[Quantity]) -> list[tuple[int, Held]]:
    """Where a word of one label, and of no other one, stands; a label said twice in a row counts once."""
    owners: dict[str, list[Held]] = {}
    for value in values:
        for root in label_stems(value.label):
            owners.setdefault(root, []).append(value)
    roots = owners.keys()
    inside = {
        i for number in numbers for i in range(number.word, number.after) if stem(reading.words[i]) not in roots
    }  # a label may be a number: "two sessions" and "three"
    found = ((i, owners.get(stem(word), ())) for i, word in enumerate(reading.words) if i not in inside)
    mentions = [(i, owned[0]) for i, owned in found if len(owned) == 1][:MOST]
    named = {value for _, value in mentions}
    if len(values) == 2 and len(named) == 1:  # "the ledge side 1.6, the others 1.0"
        unnamed = next(value for value in values if value not in named)
        others = [
            (i, unnamed) for i, word in enumerate(reading.words) if word in ("others", "rest") and i not in inside
        ]
        mentions = sorted([*mentions, *others[:1]], key=lambda one: one[0])
    return mentions


def _crossed(pairs: Sequence[_Pair], mentions: Sequence[tuple[int, Held]]) -> Quantity | None:
    """Two or more numbers and as many labels: they are meant in the order in which they are said."""
    order = [value for value, _ in groupby(value for _, value in mentions)]
    said = [value for _, value in pairs]
    if len(said) < 2 or len(order) != len(said) or set(order) != set(said) or order == said:
        return None
    return next(number for (number, mine), value in zip(pairs, order, strict=True) if mine != value)


def _alone(reading: Reading, pairs: Sequence[_Pair], mentions: Sequence[tuple[int, Held]]) -> Quantity | None:
    """A number whose nearest label is another's: before it, or else right behind it."""
    order = [value for value, _ in groupby(value for _, value in mentions)]
    if len(pairs) > 1 and order == [value for _, value in pairs]:
        return None
    last = used = -1
    for number, value in pairs:
        before = [(i, one) for i, one in mentions if max(last, used) < i < number.word]
        near = [(i, one) for i, one in mentions if number.after <= i < number.after + BETWEEN]
        last = number.after
        if value in (one for _, one in near):
            used = max(i for i, _ in near)
        elif before:
            if before[-1][1] != value and _plain_way(reading, before[-1][0] + 1, number.word):
                return number
        elif near and _plain_way(reading, number.after, near[0][0]):
            return number
    return None


def _plain_way(reading: Reading, start: int, end: int) -> bool:
    """Whether nothing between two words turns to another thing: "than", "against", "the others"."""
    turns = OTHERS | {"than", "against", "versus", "from", "by", "and", "while"}
    return turns.isdisjoint(reading.words[start:end]) and not any(start <= i <= end for i in reading.stops)


def _ends(values: Sequence[Held]) -> tuple[Held, Held] | None:
    """The value before and the value after, where two labels say so."""
    first = [one for one in values if not BEFORE.isdisjoint(one.label)]
    last = [one for one in values if not AFTER.isdisjoint(one.label)]
    return (first[0], last[0]) if len(first) == len(last) == 1 and first != last else None


def _upside_down(reading: Reading, claimed: Sequence[Claimed]) -> Quantity | None:
    """A part that is larger than its whole: "120 of 68 runners"."""
    for one, other in pairwise(claimed):
        joint = reading.words[one.number.after : other.number.word]
        of = joint in (("of",), ("out", "of")) and one.family in ("", other.family)
        if of and one.fit == other.fit == "exact" and one.number.value > other.number.value:
            return one.number
    return None


def _backwards(reading: Reading, claimed: Sequence[Claimed], held: Sequence[Holding]) -> Quantity | None:
    """A change that a result tells in words, told from its end to its start."""
    words = reading.words
    for one, other in pairwise(claimed) if "from" in words else ():
        if words[one.number.word - 1] != "from" or words[other.number.word - 1] != "to":
            continue
        told = [turn for holding in held for turn in holding.turns]
        forward = any(fits(one, a) and fits(other, b) for a, b in told)
        if not forward and any(fits(one, b) == fits(other, a) == "exact" for a, b in told):
            return one.number
    return None


def _each_ends(values: Sequence[Held]) -> list[tuple[Held, Held]]:
    """The value before and the value after of each group: "ledge before" and "ledge after"."""
    whose = [(one, frozenset(one.label) - BEFORE - AFTER) for one in values]
    pairs = ((one, other) for one, mine in whose for other, theirs in whose if mine == theirs)
    return [(a, b) for a, b in pairs if not BEFORE.isdisjoint(a.label) and not AFTER.isdisjoint(b.label)]


def _inverted(reading: Reading, claimed: Sequence[Claimed], ends: tuple[Held, Held]) -> Quantity | None:
    """A change of one of several groups told from its end to its start."""
    words = reading.words
    for one, other in pairwise(claimed):
        into = words[other.number.word - 1] == "to" and words[max(0, one.number.word - 1)] == "from"
        if into and fits(one, ends[1]) == "exact" and fits(other, ends[0]) == "exact":
            return one.number
    return None


def _turned(reading: Reading, claimed: Sequence[Claimed], values: Sequence[Held], ways: Directions) -> Quantity | None:
    """A change told the wrong way: "from 52 to 30", or "fell by 22" for a rise."""
    ends = _ends(values)
    if ends is None:
        return next(filter(None, (_inverted(reading, claimed, pair) for pair in _each_ends(values))), None)
    words = reading.words
    for one, other in pairwise(claimed):
        into = words[other.number.word - 1] == "to" and words[max(0, one.number.word - 1)] == "from"
        if into and fits(one, ends[1]) == "exact" and fits(other, ends[0]) == "exact":
            return one.number
        if into and fits(one, ends[0]) == other.fit == "exact" and not fits(other, ends[1]):
            return other.number
    up, down = (any(_holds(words, phrase) for phrase in way) for way in (ways.up, ways.down))
    rises = ends[1].amount > ends[0].amount
    changed = next((one.number for one in claimed if one.fit == "exact" and _is_change(one, ends)), None)
    return changed if up is not down and up is not rises else None


def _is_change(one: Claimed, ends: tuple[Held, Held]) -> bool:
    """Whether a number is the difference of the two, in their unit or in percent."""
    a, b = ends[0].amount, ends[1].amount
    changes = [(abs(a - b), ends[0].family)]
    if a:
        changes += [(abs(a - b) / a * 100, "percent")]
    made = [ends[0]._replace(value=value, family=family, scale=1.0) for value, family in changes]
    return any(fits(one, other) == "exact" for other in made)


def _holds(words: Sequence[str], phrase: tuple[str, ...]) -> bool:
    """Whether the words of a phrase stand in a row."""
    n = len(phrase)
    return any(tuple(words[i : i + n]) == phrase for i, word in enumerate(words) if word == phrase[0])


def _less_for_more(
    reading: Reading,
    claimed: Sequence[Claimed],
    mentions: Sequence[tuple[int, Held]],
    values: Sequence[Held],
    ways: Directions,
) -> Quantity | None:
    """Find "the ledge gained 0.6 less than the floor" where it gained more."""
    words = reading.words
    than = next((i for i, word in enumerate(words) if word == "than" and words[i - 1] in ways.more | ways.less), 0)
    before = {one for i, one in mentions if i < than}
    after = {one for i, one in mentions if i > than}
    if not than or len(before) != 1 or len(after) != 1 or before == after:
        return None
    gap = abs(values[0].amount - values[1].amount)
    differences = [values[0]._replace(value=gap, scale=1.0)]
    differences += [
        one._replace(value=gap / one.amount * 100, family="percent", scale=1.0) for one in values if one.amount
    ]
    number = next((one.number for one in claimed if any(fits(one, other) == "exact" for other in differences)), None)
    if number is None and len(claimed) == 1 and claimed[0].number.after <= than <= claimed[0].number.after + 2:
        return claimed[0].number if any(fits(claimed[0], value) == "exact" for value in values) else None
    larger = next(iter(before)).amount > next(iter(after)).amount
    return number if number is not None and larger != (words[than - 1] in ways.more) else None
