"""What of a sentence was said otherwise, and how much it matters: a number, a "not", a grade, or wording only."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.aloud import saying
from scriptkit.computing.taking import letter_grades
from scriptkit.computing.taking.aligning import Match
from scriptkit.computing.taking.compounds import Apart
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.computing.taking.ones import ONE, counts
from scriptkit.computing.taking.tokens import FILLERS, NONE, keys_of
from scriptkit.model import Episode, SpokenGrade, TakeChange

# other contractions are "not" by the time they are compared
NEGATIONS = frozenset("not no never none nor neither nobody nothing without hardly wont aint".split())
# words that a recogniser drops or mishears; in a caution or a disclosure one of them is no other wording
SMALL = frozenset("the a an and of to in on so it that is".split())
UNIT = "="
NUMBER = "#"
SIGNS = ("plus", "minus")
TOLD = {
    "number": "a number is another one",
    "unit": "a unit is another one",
    "negation": "a “not” is there in one and not in the other",
    "exercise": "the name of an exercise is another one",
    "grade": "the grade is another one",
    "certainty": "it is said more or less certainly",
    "disclosure": "the disclosure is not word for word",
    "caution": "a caution is said otherwise",
    "code": "the sponsor's code is another one",
    "wording": "it is worded otherwise",
}


class Difference(NamedTuple):
    """Words of the script from one token to another, and what was said there; either may be empty."""

    first: int
    end: int
    said_first: int
    said_end: int


class Watched:
    """The words of an episode whose change stops a release: names, grades, the code, words of certainty."""

    def __init__(
        self,
        episode: Episode,
        grades: Sequence[SpokenGrade],
        words: Mapping[str, Sequence[str]],
        apart: Apart = NONE,
    ) -> None:
        self.names = [keys for one in episode.exercises.values() if (keys := keys_of(one.name, apart))]
        self.grades: dict[str, list[tuple[str, ...]]] = {}
        for one in grades:
            self.grades.setdefault(one.text, []).append(keys_of(saying.grade_spoken(one.grade), apart))
        sponsor = episode.sponsor
        self.code = keys_of(sponsor.code, apart) if sponsor and sponsor.code else ()
        self.disclosure = keys_of(sponsor.disclosure, apart) if sponsor and sponsor.disclosure else ()
        lists = (*words.get("hedges", ()), *words.get("absolutes", ()))
        self.certainty = frozenset(word for word in lists if " " not in word and word.isalpha()) - {"one", "all"}
        self.cautions = {keys_of(one.line, apart) for one in episode.cautions.values()}

    def whole(self, one: Spoken) -> str:
        """What a sentence is whose every word counts: disclosure, caution, or nothing."""
        keys = tuple(token.key for token in one.tokens)
        told = self.disclosure
        if told and (
            _stands_in(told, keys) is not None or (one.segment.kind == "sponsor" and _stands_in(keys, told) is not None)
        ):
            return "disclosure"  # all of it, or one of its sentences
        return "caution" if one.sentence.cautions or keys in self.cautions else ""


def holds_code(one: Spoken, watched: Watched) -> bool:
    """Whether a sentence says the sponsor's code."""
    return _stands_in(watched.code, [token.key for token in one.tokens]) is not None


def _stands_in(part: Sequence[str], whole: Sequence[str]) -> int | None:
    """Where some words stand in others, one after the other."""
    length = len(part)
    for at in range(len(whole) - length + 1):
        if length and tuple(whole[at : at + length]) == tuple(part):
            return at
    return None


def differences(one: Spoken, match: Match, recorded: Recorded) -> Iterator[Difference]:
    """The stretches in which script and recording differ, without what is a filler or a start made again."""
    keys = [token.key for token in one.tokens]
    at, said = 0, match.first
    for token, place in enumerate([*match.words, match.last + 1]):
        if place < 0:
            continue
        if token > at or place > said:
            words = [recorded.keys[number] for number in range(said, place) if recorded.keys[number] not in FILLERS]
            silent = all(key in FILLERS for key in keys[at:token])
            if not (silent and not words) and not (token == at and _again(words, keys, token)):
                yield Difference(at, token, said, place)
        at, said = token + 1, place + 1


def _again(words: Sequence[str], keys: Sequence[str], token: int) -> bool:
    """Whether words are those right behind or right before them once more: a start that was made again."""
    length = len(words)
    return length > 0 and list(words) in (
        list(keys[token : token + length]),
        list(keys[max(0, token - length) : token]),
    )


def stretched(match: Match, before: int, behind: int, recorded: Recorded) -> Match:
    """A match with as many words before and behind it as the line has left; they were said in their place.

    A plus or minus behind the last of them was said with it: a grade is often the last word of its line. `before` is
    the last word of the recording that another line has before it, `behind` the first one behind it.
    """
    places = [at for at, place in enumerate(match.words) if place >= 0]
    first = max(before + 1, match.first - places[0])
    last = max(match.last, min(behind - 1, match.last + len(match.words) - 1 - places[-1]))
    if last + 1 < behind and recorded.keys[last + 1] in SIGNS:
        last += 1
    return match._replace(first=first, last=last)


def changes(one: Spoken, match: Match, recorded: Recorded, watched: Watched) -> Iterator[TakeChange]:
    """What of a sentence was said otherwise: each thing that stops a release, else the first word that matters."""
    keys = [token.key for token in one.tokens]
    whole, wording, told = watched.whole(one), None, False
    grades = _other_grade(one, match, recorded)
    for found in differences(one, match, recorded):
        script, heard = keys[found.first : found.end], recorded.keys[found.said_first : found.said_end]
        if _touches((found.first, found.end), watched.code, keys) and _signs(script) == _signs(heard):
            continue  # a code said sign by sign
        kind = _kind(found, keys, recorded, one, watched)
        if whole and (kind or len(heard) > 1 or not SMALL.issuperset(script)):
            kind = whole
        if kind:
            told = True
            yield _change("stop", kind, one, found, match, recorded)
            if whole:
                return
        elif wording is None and not (SMALL | FILLERS).issuperset([*script, *heard]) and (script or len(heard) > 1):
            wording = found
    if grades:
        yield _change("stop", "grade", one, grades, match, recorded)
    elif wording is not None and not told and not SMALL.issuperset(keys[wording.first : wording.end]):
        yield _change("wording", "wording", one, wording, match, recorded)


def _other_grade(one: Spoken, match: Match, recorded: Recorded) -> Difference | None:
    """From the first letter grade to the end, where another letter or sign was given than the script gives, or none."""
    wanted = letter_grades.written(str(one.sentence.text))
    if not wanted:
        return None
    said = letter_grades.heard(recorded.text(match.first, match.last))
    if [found.grade for found in said] == [found.grade for found in wanted]:
        return None
    tokens = [next(at for at in range(len(one.tokens))[::-1] if one.offset(at) <= found.start) for found in wanted]
    if not said:
        if all(_was_said(one, token, match, recorded) for token in tokens):
            return None  # "B from me" for "a B from me"
        before = [place for place in match.words[: tokens[0]] if place >= 0]
        return Difference(tokens[0], len(one.tokens), before[-1] + 1 if before else match.first, match.last + 1)
    first, end = _place_of(said[0], match, recorded), match.last + 1
    if all(token.key in SIGNS for token in one.tokens[tokens[-1] + 1 :]):  # what was said behind it is another line's
        end = _place_of(said[-1], match, recorded) + 1
        end += end <= match.last and recorded.keys[end] in SIGNS
    return Difference(tokens[0], len(one.tokens), first, end)


def _place_of(grade: letter_grades.LetterGrade, match: Match, recorded: Recorded) -> int:
    """The token of the recording that has the letter of a grade."""
    said = range(match.first, match.last + 1)
    return next(token for token in said if len(recorded.text(match.first, token)) > grade.start)


def _was_said(one: Spoken, token: int, match: Match, recorded: Recorded) -> bool:
    """Whether a letter was said in its place, with its sign and no other. An "a" may have been the article."""
    key, place = one.tokens[token].key, match.words[token]
    if key == "a" or place < 0:
        return False
    mine = [behind.key for behind in one.tokens[token + 1 : token + 2] if behind.key in SIGNS]
    return mine == [behind for behind in recorded.keys[place + 1 : place + 2] if behind in SIGNS]


def _kind(found: Difference, keys: Sequence[str], recorded: Recorded, one: Spoken, watched: Watched) -> str:
    """What it is that differs, "" for wording."""
    script, heard = keys[found.first : found.end], recorded.keys[found.said_first : found.said_end]
    span = (found.first, found.end)
    for kind, phrases in (
        ("grade", [words for words in watched.grades.get(one.sentence.text, ()) if len(words[0]) > 1]),
        ("code", [watched.code] if watched.code else []),
        ("exercise", watched.names),
    ):
        if any(_touches(span, phrase, keys) for phrase in phrases):
            return kind
    if any(_stands_in(name, heard) is not None for name in watched.names):
        return "exercise"
    for kind, is_kind in (
        ("number", lambda key: key.startswith(NUMBER)),
        ("unit", lambda key: key.startswith(UNIT)),
        ("negation", lambda key: key in NEGATIONS),
        ("certainty", lambda key: key in watched.certainty),
    ):
        mine, theirs = [key for key in script if is_kind(key)], [key for key in heard if is_kind(key)]
        if kind == "negation" and len(mine) == len(theirs):
            continue  # "didn't" and "did not" deny the same
        if sorted(mine) != sorted(theirs) and ({*mine, *theirs} != {ONE} or _counts(found, keys, recorded, one)):
            return kind
    return ""


def _counts(found: Difference, keys: Sequence[str], recorded: Recorded, one: Spoken) -> bool:
    """Whether a "one" that script or recording has alone is a number. Recognisers write pronouns in figures too."""
    mine, theirs = (found.first, found.end), (found.said_first, found.said_end)
    if keys[slice(*mine)].count(ONE) > recorded.keys[slice(*theirs)].count(ONE):
        figures = [one.text(at, at) for at in range(len(keys))]
        return counts(keys, mine, figures, recorded.keys[slice(*theirs)])
    return counts(recorded.keys, theirs, (), keys[slice(*mine)])


def _signs(keys: Sequence[str]) -> str:
    """The letters and figures of some words one after the other, as a code is made of them."""
    return "".join("0" if key in ("o", "oh") else key.removeprefix(NUMBER) for key in keys)


def _touches(span: tuple[int, int], phrase: Sequence[str], keys: Sequence[str]) -> bool:
    """Whether a difference takes away or replaces a word of a phrase of the sentence."""
    at = _stands_in(phrase, keys)
    return at is not None and span[0] < at + len(phrase) and span[1] > at


def _change(weight: str, kind: str, one: Spoken, found: Difference, match: Match, recorded: Recorded) -> TakeChange:
    around = 0 if found.end == len(one.tokens) else 2
    keep = range(max(0, found.first - 2), min(len(one.tokens), found.end + 2))
    said = range(max(match.first, found.said_first - 2), min(match.last + 1, found.said_end + around))
    script = one.text(keep[0], keep[-1]) if keep else ""
    token = min(max(found.first, 0), len(one.tokens) - 1)
    at = recorded.start(min(found.said_first, match.last))
    place = one.sentence.place_of(one.offset(token))
    heard = recorded.text(said[0], said[-1]) if said else ""
    return TakeChange(weight, kind, TOLD[kind], at, one.segment.id, place, script, heard, one.at)
