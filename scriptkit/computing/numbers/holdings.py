"""Lists the numbers that the register holds for a link: those written there, and what people say of them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property, lru_cache
from itertools import combinations, pairwise
from typing import NamedTuple

from scriptkit.computing.hearing.clauses import split_words
from scriptkit.computing.numbers.quantities import Quantity, Vocabulary, read, stem
from scriptkit.computing.numbers.units import UNITS
from scriptkit.model import Source, StudyFinding

PLURALS = frozenset("people personnel crew police".split())
POWERS = ("m2", "m3", "m^", "²", "³")
MOST_IN_WORDS = 6  # numbers of a result told in words
MOST = 24  # numbers of one finding that are set against each other


class Held(NamedTuple):
    """A number of the register.

    `origin`: value, result, baseline, absolute, effect, text, people, weeks, year, or
    derived; `label` as words.
    """

    value: float
    family: str
    scale: float
    rate: str
    origin: str
    finding: str
    label: tuple[str, ...]
    written: str

    @property
    def amount(self) -> float:
        """The value in the base unit of what it measures."""
        return self.value * self.scale


class Holdings:
    """What one link may speak, gathered as far as it is asked for: most numbers are found in the first place.

    `core` are people, weeks, year, values, results and intervals; `texts` what other texts of the register say;
    `derived` what follows from the values; `elsewhere` the numbers of the source's other findings.
    """

    def __init__(self, source: Source, finding: str, known: Vocabulary) -> None:
        named = source.findings.get(finding)
        self.source = source.id
        self._source, self._known, self._people = source, known, described(source)
        self._findings = [named] if named else list(source.findings.values())
        self._rest = [one for one in source.findings.values() if named and one is not named]

    @cached_property
    def core(self) -> tuple[Held, ...]:
        """What stands in the fields for numbers."""
        return (*_of_source(self._source), *(held for one in self._findings for held in self._core_of(one)))

    @cached_property
    def texts(self) -> tuple[Held, ...]:
        """What titles, descriptions and quotes say beside."""
        source = self._source
        texts = [(text, "", "text") for text in (source.title, source.population, source.note)]
        for one in self._findings:
            texts += [(text, one.id, "text") for text in (one.outcome, one.measure, one.site, one.quote)]
            texts += [(one.result, one.id, "result")] if one.values else []
        known, people = self._known, self._people
        return tuple(held for text, name, kind in texts for held in _of_text(text, name, known, people, origin=kind))

    @cached_property
    def turns(self) -> tuple[tuple[Held, Held], ...]:
        """What results told in words say of a change: "from 30 kg to 52 kg"."""
        return tuple(pair for one in self._findings for pair in _turns(one.result, one.id, self._known, self._people))

    @cached_property
    def derived(self) -> tuple[Held, ...]:
        """What follows by the arithmetic that people say aloud."""
        known, people = self._known, self._people
        made = [held for one in self._findings for held in _derived(one, self._core_of(one), self._source)]
        for one in self._findings:
            if one.values:
                made += _pairs(list(_of_text(one.result, one.id, known, people))[:MOST_IN_WORDS], one.id)
        return (*_groups(self._source), *made)

    @cached_property
    def elsewhere(self) -> tuple[Held, ...]:
        """The values of the source's other findings."""
        return tuple(held for one in self._rest for held in self._core_of(one))

    @property
    def direct(self) -> tuple[Held, ...]:
        """All that is written in the register."""
        return (*self.core, *self.texts)

    def _core_of(self, finding: StudyFinding) -> list[Held]:
        return _of_finding(finding, self._known, self._people)


class Together:
    """What several sources hold together: the sum of their people."""

    source = ""
    core: tuple[Held, ...] = ()
    texts: tuple[Held, ...] = ()
    direct: tuple[Held, ...] = ()
    elsewhere: tuple[Held, ...] = ()
    turns: tuple[tuple[Held, Held], ...] = ()

    def __init__(self, held: Sequence[Holdings]) -> None:
        counts = [next((one.value for one in each.core if one.origin == "people"), 0.0) for each in held]
        self.derived = (_made(sum(counts), "people", 1.0, ""),) if all(counts) else ()


Holding = Holdings | Together


@lru_cache(maxsize=256)
def _words(text: str) -> tuple[str, ...]:
    return tuple(split_words(text)[0])


def described(source: Source) -> frozenset[str]:
    """The words for people in the source's own description of them: its plural nouns."""
    return frozenset(word for word in _words(source.population) if _is_plural(word))


def _is_plural(word: str) -> bool:
    return (
        (word.endswith("s") and not word.endswith("ss")) or word in PLURALS or word.endswith(("men", "folk", "staff"))
    )


def _of_source(source: Source) -> Iterator[Held]:
    """How many people, how long, and which year."""
    counts = ((source.n, "people"), (source.n_per_group, "people in each group"), (source.n_units, "limbs"))
    for count, label in counts:
        if count:
            yield Held(float(count), "people", 1.0, "", "people", "", (), f"{count} {label}")
    if source.n_units:
        yield Held(float(source.n_units), "limb", 1.0, "", "people", "", (), f"{source.n_units} limbs")
    if source.duration_weeks:
        weeks = source.duration_weeks
        yield Held(weeks, "long", 7.0, "", "weeks", "", (), f"{weeks:g} weeks")
    if source.year.isascii() and source.year[:4].isdigit():
        yield Held(float(source.year[:4]), "year", 1.0, "", "year", "", (), source.year[:4])


def _of_text(
    text: str, finding: str, known: Vocabulary, people: frozenset[str], *, origin: str = "text", label: str = ""
) -> Iterator[Held]:
    """The numbers of one text of the register; most fields hold one number and its unit."""
    text = _spelled(text) if any(power in text for power in POWERS) else text
    if plain := _plain(text):
        yield Held(*plain, "", origin, finding, _words(label), text)
        return
    for one in read(text, known, people).quantities if text else ():
        yield held_of(one, text, origin, finding, _words(label))


def _turns(text: str, finding: str, known: Vocabulary, people: frozenset[str]) -> Iterator[tuple[Held, Held]]:
    """Each "from A to B" of a text."""
    if "from" not in text:
        return
    said = read(text, known, people)
    for one, other in pairwise(said.quantities):
        if said.words[one.word - 1] == "from" and said.words[other.word - 1] == "to" and one.value != other.value:
            yield held_of(one, text, "result", finding, ()), held_of(other, text, "result", finding, ())


@lru_cache(maxsize=1)
def _powers() -> re.Pattern[str]:
    return re.compile(r"(?<![A-Za-z])(mm|cm|m)(?:\^?([23])|([²³]))(?!\w)")


def _spelled(text: str) -> str:
    """Read "66 cm3" as "66 cubic cm"."""
    return _powers().sub(lambda one: f"{'square' if (one[2] or one[3]) in '2²' else 'cubic'} {one[1]}", text)


def _plain(text: str) -> tuple[float, str, float] | None:
    """A text such as "1.6 mm" as value, family and scale; None for any other."""
    number, _, name = text.partition(" ")
    unit = UNITS.get(name) or UNITS.get(name.lower())
    digits = number.replace(".", "", 1)
    return (float(number), *unit) if unit and digits.isascii() and digits.isdigit() else None


def held_of(one: Quantity, text: str, origin: str, finding: str, label: tuple[str, ...]) -> Held:
    """A number of the register as it is compared."""
    return Held(one.value, one.family, one.scale, one.rate, origin, finding, label, text[one.start : one.end])


def _of_finding(finding: StudyFinding, known: Vocabulary, people: frozenset[str]) -> list[Held]:
    """The numbers in a finding's fields for numbers."""
    found: list[Held] = []
    for label, text in finding.values.items():
        found += _of_text(text, finding.id, known, people, origin="value", label=label)
    for origin in ("baseline", "absolute") if finding.values else ("result", "baseline", "absolute"):
        found += _of_text(getattr(finding, origin), finding.id, known, people, origin=origin)
    for number in (finding.effect, *finding.ci):
        if number is not None:
            found.append(Held(abs(number), "", 1.0, "", "effect", finding.id, (), f"{number:g}"))
    return found


def _groups(source: Source) -> Iterator[Held]:
    """What people say of the number of people: half of them in each of two groups, or the rest of them."""
    halved = source.comparison == "between-group" or (not source.comparison and "trial" in source.design)
    if source.n and not source.n_per_group and not source.n % 2 and halved:
        yield _made(source.n / 2, "people", 1.0, "")
    if source.n and source.n_per_group and source.n > source.n_per_group:
        yield _made(float(source.n - source.n_per_group), "people", 1.0, "")


def _made(value: float, family: str, scale: float, finding: str, written: str = "") -> Held:
    return Held(value, family, scale, "", "derived", finding, (), written)


def _derived(finding: StudyFinding, held: Sequence[Held], source: Source) -> Iterator[Held]:
    """What follows from the values of a finding by the arithmetic that people say aloud."""
    values = [one for one in held if one.origin == "value"] or [one for one in held if one.origin == "result"]
    values = _each_once(values)
    for one in values:
        if one.family == "percent" and one.value < 100:
            yield _made(100 - one.value, "rest", 1.0, finding.id)
        if one.family in ("people", "") and source.n and 0 < one.value < source.n:
            yield from _share(one, _made(float(source.n), "people", 1.0, ""), finding.id)
    yield from _pairs(values, finding.id)
    changes = [one for one in held if one.origin == "absolute"][:MOST] + values
    for start in [one for one in held if one.origin == "baseline"][:MOST]:
        for change in changes:
            if start.family == change.family and start.value and start.amount != change.amount:
                written = f"{change.written} on top of {start.written}"
                yield _made(change.amount / start.amount * 100, "percent", 1.0, finding.id, written)
                yield _made(start.amount + change.amount, start.family, 1.0, finding.id, written)


def _each_once(held: Iterable[Held]) -> list[Held]:
    """One of each value and unit."""
    return list({(one.value, one.family, one.scale): one for one in held}.values())[:MOST]


def _pairs(values: Sequence[Held], finding: str) -> Iterator[Held]:
    """What any two values in the same unit give."""
    for one, other in combinations(values, 2):
        if one.family == other.family and one.value and other.value:
            yield from _pair(one, other, finding)


def _pair(one: Held, other: Held, finding: str) -> Iterator[Held]:
    """Difference, ratio and change in percent of two values in the same unit; of people also the sum."""
    a, b = one.amount, other.amount
    family = "points" if one.family == "percent" else one.family
    written = f"{one.written} and {other.written}"
    yield _made(abs(a - b), family, 1.0, finding, written)
    if one.family == "people":
        yield _made(a + b, one.family, 1.0, finding, written)
    for top, under in ((a, b), (b, a)):
        yield _made(top / under, "ratio", 1.0, finding, written)
        way = "more" if top > under else "less"
        yield _made(abs(top - under) / under * 100, "change", 1.0, finding, written)._replace(label=(way,))


def _share(part: Held, whole: Held, finding: str) -> Iterator[Held]:
    """A part of a whole as a ratio, and what is left of it."""
    yield _made(part.value / whole.value, "ratio", 1.0, finding, part.written)
    yield _made(whole.value - part.value, "people", 1.0, finding, part.written)


def label_stems(label: Sequence[str]) -> frozenset[str]:
    """The words by which a label is recognised in a sentence."""
    return frozenset(stem(word) for word in label if len(word) > 2)
