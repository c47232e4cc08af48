"""What is hard on the ear: many figures in a sentence, words and numbers misheard as others, cues read aloud."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.aloud.numerals import whole
from scriptkit.computing.delivery.lines import Line, Phrases, entries, holds, offset, words_of
from scriptkit.computing.hearing.clauses import Cues, Speech, take_apart
from scriptkit.computing.hearing.figures import Figure
from scriptkit.model import Card, Episode, Judgement, Stumble

MOST_RESULTS, MOST_FIGURES = 2, 4  # in one sentence: figures beside people and weeks, and figures altogether
SMALL = 10  # a whole number below it, without a unit, is light
NEAR = 25  # words around a word in which plainer ones make up for it
PAIRS = {float(teen): float(10 * (teen - 10)) for teen in range(13, 20)}  # thirteen and thirty
OTHERS = {**PAIRS, **{ty: teen for teen, ty in PAIRS.items()}}
_LENGTHS = frozenset("day days week weeks month months year years".split())
_DOERS = ("ers", "ors", "ists", "ants")  # runners, rowers, cyclists
_JOINS = frozenset({(), ("to",), ("or",), ("out", "of"), ("of",), ("by",), ("x",), ("sets", "of"), ("times",)})
_CONDITIONS = frozenset(("if", "who", "anyone", "when"))  # "if you can't get your breath" is a sign
_CUE = re.compile(r"\(([^()]*)\)")
_LONGEST_CUE = 6  # words


def figures(
    lines: Sequence[Line],
    judgements: Mapping[str, Sequence[Judgement]],
    words: Mapping[str, tuple[str, ...]],
    cues: Cues,
) -> Iterator[Stumble]:
    """Sentences with more figures than an ear keeps."""
    people = frozenset(words.get("people", ()))
    units = frozenset(words.get("units", ()))
    for line in lines:
        if len(judgements[line.segment.id][line.number].numbers) <= MOST_RESULTS:
            continue
        speech = take_apart(line.sentence.text, cues)
        heavy = [group for group in _groups(speech) if not _is_light(speech, group, units)]
        results = [group for group in heavy if not _counts_people_or_time(speech, group, people, units)]
        if len(results) > MOST_RESULTS or len(heavy) > MOST_FIGURES:
            told = "; ".join(_written(speech, group) for group in heavy)
            start = speech.places[heavy[0][0].start][0]
            place = line.sentence.place_of(start)
            yield Stumble("figures", line.segment.id, place, told, line.sentence.text, str(len(heavy)))


def _groups(speech: Speech) -> list[list[Figure]]:
    """The figures of a sentence; those of a range, of "three out of five" and of sets are one."""
    groups: list[list[Figure]] = []
    for figure in speech.figures:
        between = speech.words[groups[-1][-1].end : figure.start] if groups else ("",)
        paired = between == ("and",) and "between" in speech.words[max(0, groups[-1][-1].start - 2) : figure.start]
        ranged = len(between) == 2 and between[1] == "to"
        if groups and (between in _JOINS or paired or ranged):
            groups[-1].append(figure)
        else:
            groups.append([figure])
    return groups


def _is_light(speech: Speech, group: list[Figure], units: frozenset[str]) -> bool:
    last = group[-1]
    after = speech.words[last.end : last.end + 1]
    small = all(figure.value < SMALL and not figure.value % 1 for figure in group)
    parts = all(0 < figure.value < 1 and figure.end - figure.start == 1 for figure in group)  # "half"
    return (small and (not after or after[0] not in units)) or (parts and len(group) == 1)


def _counts_people_or_time(speech: Speech, group: list[Figure], people: frozenset[str], units: frozenset[str]) -> bool:
    """Whether a figure tells of whom or how long: "24 trained runners", "8 weeks"."""
    end = group[-1].end
    after = speech.words[end : end + 4]
    if not after or after[0] in units:
        return bool(after) and after[0] in _LENGTHS
    return any(word in people or (word.endswith(_DOERS) and word not in units) for word in after)


def _written(speech: Speech, group: list[Figure]) -> str:
    return speech.text[speech.places[group[0].start][0] : speech.places[group[-1].end - 1][1]]


def misheard_words(lines: Sequence[Line], episode: Episode, words: Mapping[str, tuple[str, ...]]) -> Iterator[Stumble]:
    """The first use of each word that is easily heard as its opposite, unless plainer words stand near."""
    traps = entries(words.get("ear-traps", ()))
    known = {trap.removeprefix("*").partition("/")[0].strip(): trap for trap in traps}
    phrases = Phrases(known)
    told = {" ".join(words_of(str(term))) for term, one in episode.terms.items() if one.say}
    little = frozenset(words.get("little-words", ()))
    row: list[str] = []
    seen: set[str] = set()
    for line in lines:
        for number, word, length in phrases.found(line):
            if word in seen or not _counts(known[word], line):
                continue
            seen.add(word)
            row = row or [one for each in lines for one in each.words]
            at = line.before + number
            around = row[max(0, at - NEAR) : at] + row[at + length : at + length + NEAR]
            if not any(word in term for term in told) and not holds(around, traps[known[word]], little):
                start = offset(line.sentence.text, number)
                other = known[word].partition("/")[2].strip()
                yield Stumble(
                    "word", line.segment.id, line.sentence.place_of(start), f"{word} / {other}", line.sentence.text,
                    traps[known[word]],
                )  # fmt: skip


def _counts(trap: str, line: Line) -> bool:
    """Whether a trap matters in a sentence; one with a star only where a caution commands, and names no sign."""
    return not trap.startswith("*") or (bool(line.sentence.cautions) and _CONDITIONS.isdisjoint(line.words))


def misheard_numbers(
    lines: Sequence[Line], judgements: Mapping[str, Sequence[Judgement]], cards: Sequence[Card]
) -> Iterator[Stumble]:
    """Once a segment: a number of which another one sounds alike, where a percentage or its pair makes that matter."""
    shown: dict[str, str] = {}
    for card in cards:
        shown[card.segment] = f"{shown.get(card.segment, '')} {card.text}"
    done: set[str] = set()
    spoken: dict[str, dict[float, int]] = {}
    for line in lines:
        name = line.segment.id
        numbers = judgements[name][line.number].numbers
        if not numbers or name in done or OTHERS.keys().isdisjoint(numbers):
            continue
        before = spoken.setdefault(name, {})
        said = dict.fromkeys(numbers)
        for value in said:
            other = OTHERS.get(value)
            if other is None:
                continue
            paired = other in said or line.number - before.get(other, -9) <= 2
            before[value] = line.number
            written = _said(line, value)
            percent = bool(line.sentence.links) and written[1]
            if (paired or percent) and f"{value:g}" not in shown.get(name, ""):
                done.add(name)
                start = offset(line.sentence.text, written[0])
                digits = f"{value:g}"
                hint = f"{whole(digits)} / {whole(f'{other:g}')}"
                place = line.sentence.place_of(start)
                yield Stumble("number", name, place, digits, line.sentence.text, hint)
                break


def _said(line: Line, value: float) -> tuple[int, bool]:
    """Number of the word that says a value, and whether percent stands behind it."""
    ways = (f"{value:g}", whole(f"{value:g}"))
    for number, word in enumerate(line.words):
        if word in ways:
            behind = line.words[number + 1 : number + 2]
            percent = behind in (("percent",), ("per",)) or f"{value:g}%" in line.sentence.text
            return number, percent
    return 0, False


def cues(lines: Sequence[Line], words: Mapping[str, tuple[str, ...]]) -> Iterator[Stumble]:
    """Round brackets that hold a cue for camera or presenter, which whoever reads aloud would speak."""
    begins = Phrases(words.get("stage-cues", ()))
    for line in lines:
        text = line.sentence.text
        for found in _CUE.finditer(text) if "(" in text else ():
            inner = words_of(found[1][:200])
            if inner and len(inner) <= _LONGEST_CUE and begins.at(inner, 0)[0]:
                yield Stumble("cue", line.segment.id, line.sentence.place_of(found.start()), found[0], text)
