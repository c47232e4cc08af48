"""Repetition that a listener notices: the same beginnings, the same phrase again and again, one word too often."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from scriptkit.computing.delivery.lines import ALIKE, Line, offset, words_of
from scriptkit.model import Episode, Stumble

OPENING = 2  # words at the beginning of an exercise's text
IN_A_ROW = 3  # exercises that begin alike
PHRASE = 5  # words
WITHIN = 4  # texts in a row
SENTENCES, TIMES = 3, 4  # a word so often in so many sentences
LONGEST_LITTLE = 3  # letters of a word that is not counted


def find(lines: Sequence[Line], episode: Episode, words: Mapping[str, tuple[str, ...]]) -> list[Stumble]:
    """What is repeated in texts of the author's own; stock texts vary by themselves."""
    little = frozenset(words.get("little-words", ()))
    own = [list(group) for _, group in groupby(lines, key=lambda line: line.segment.id)]
    own = [group for group in own if group[0].segment.file and not group[0].segment.drafted]
    topic = _topic(episode)
    again = (stumble for group in own for stumble in _again(group, little, topic, words))
    return [*_openings(own, episode), *_phrases(own, little, topic), *again]


def _topic(episode: Episode) -> set[str]:
    """Beginnings of the words that an episode is about; they have to come again."""
    told = [episode.title, episode.question, episode.audience, *episode.terms]
    told += [words for one in episode.exercises.values() for words in (one.name, one.group)]
    told += [one.ask for one in episode.checklist.criteria.values()] if episode.checklist else []
    told += [episode.sponsor.name] if episode.sponsor else []
    return {word[:ALIKE] for words in told for word in words_of(words)}


def _openings(own: Sequence[list[Line]], episode: Episode) -> Iterator[Stumble]:
    """Exercises in a row whose texts begin with the same words."""
    before: tuple[str, ...] = ()
    count = 0
    for group in own:
        line = group[0]
        exercise = episode.exercises.get(line.segment.exercise)
        if exercise is None:
            continue
        begins = line.words[:OPENING]
        same = begins == before and len(begins) == OPENING and not set(begins) & set(words_of(exercise.name))
        count, before = (count + 1 if same else 1), begins
        if count == IN_A_ROW:
            text = line.sentence.text
            yield Stumble("opening", line.segment.id, line.sentence.place, _written(line, 0, OPENING), text, str(count))


def _phrases(own: Sequence[list[Line]], little: frozenset[str], topic: set[str]) -> Iterator[Stumble]:
    """A phrase in three of four texts in a row; what reports a study, warns or gives a grade may be the same."""
    last: dict[tuple[str, ...], tuple[int, ...]] = {}
    for number, group in enumerate(own):
        told = False
        for line in group:
            sentence = line.sentence
            if sentence.links or sentence.cautions or sentence.sponsor_says:
                continue
            for at in range(len(line.words) - PHRASE + 1):
                phrase = line.words[at : at + PHRASE]
                known = last.get(phrase, ())
                if known[-1:] == (number,):
                    continue
                last[phrase] = near = (*(one for one in known if number - one < WITHIN), number)
                if len(near) == IN_A_ROW and not told and _is_distinct(phrase, little, topic):
                    told = True
                    place = sentence.place_of(offset(sentence.text, at))
                    written = _written(line, at, PHRASE)
                    yield Stumble("phrase", line.segment.id, place, written, sentence.text, str(IN_A_ROW))


def _is_distinct(phrase: Sequence[str], little: frozenset[str], topic: set[str]) -> bool:
    """Whether a phrase has two words of content that are not those of the episode's topic."""
    return sum(_has_content(word, little, topic) for word in phrase) >= 2


def _has_content(word: str, little: frozenset[str], topic: set[str]) -> bool:
    return len(word) > LONGEST_LITTLE and word.isalpha() and word not in little and word[:ALIKE] not in topic


def _again(
    group: Sequence[Line], little: frozenset[str], topic: set[str], words: Mapping[str, tuple[str, ...]]
) -> Iterator[Stumble]:
    """A word of content four times in three sentences, told once a segment."""
    units = frozenset(words.get("units", ()))
    bags = [Counter(line.words) for line in group]
    told: set[str] = set()
    for number, line in enumerate(group):
        near = bags[max(0, number - SENTENCES + 1) : number + 1]
        for word in bags[number]:
            times = sum(bag[word] for bag in near)
            if times < TIMES or word in told or word in units or not _has_content(word, little, topic):
                continue
            told.add(word)
            text = line.sentence.text
            start = offset(text, line.words.index(word))
            yield Stumble("again", line.segment.id, line.sentence.place_of(start), word, text, str(times))


def _written(line: Line, number: int, length: int) -> str:
    text = line.sentence.text
    start, last = offset(text, number), offset(text, number + length - 1)
    return text[start : last + len(line.words[number + length - 1])]
