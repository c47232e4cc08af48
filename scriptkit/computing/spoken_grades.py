"""Grades that are said or shown: which words of a sentence name a grade, and of which exercise."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from scriptkit.computing.aloud import saying
from scriptkit.model import Card, Episode, Segment, SpokenGrade
from scriptkit.wording import SIGNS, grade_parts

_SIGN = rf"(?:\s?(?:plus|minus)\b|[{re.escape(''.join(SIGNS))}](?!\w))"
_GIVES = (
    r"(?:grad(?:e|es|ed|ing)|gets?|got|getting|earns?|earned|takes?|took|scores?|scored|receives?|received|lands?|landed|"
    r"deserves?|stays?|remains?|is|was|it['’]s|that['’]s|giv(?:e|es|en|ing)|gave|awards?|rat(?:e|es|ed|ing)|calls?|called|"
    r"puts?|verdict|comes?|came|ends?|drops?|makes?(?=\s+(?:it|this|that|them)\b))"
)
_WORD = re.compile(r"\w+|(?<!\w)[^\w\s]")
LETTERS = "SABCDEF"
FAR = 2**40  # behind the end of any text
LENT_WITHIN = 60  # characters from a grade to the name of whose it is
_TO = r"(?:giv(?:e|es|ing)|gave|rat(?:e|es|ed|ing))"
_KIND = r"(?:solid|clear|strong|firm|flat|straight|full|high|low|plain|easy)"
_BETWEEN = r"(?:\s+(?!out\b)[\w'’-]+){0,4}?"
_STOP = r"(?:[.,;:!?…)\"'”’]|$|—|–)"
_AFTER = (
    rf"(?=\s*{_STOP}|\s+(?:for|from|in|on|with|and|because|but|here|today|as|at|overall|to|then|if|since|by|though|too|"
    r"again|is)\b)"
)
_NO_GRADE = r"(?!\s+(?:is|was|of|to|that|point|sign|side|here)\b)"  # "A plus is that it's quick"
# words with which a grade is said as what it could be
_MAYBE = re.compile(
    r"\b(?:if|could|might|may|would|between|borderline|close|closer|nearly|almost|short of|away from|weighs?|counts?|"
    r"depends?|hangs? on|or)\b|\w['’]d\b",
    re.IGNORECASE,
)
# and with which it is said as what the ratings come to
_SUMMED = re.compile(
    r"\b(?:earns?|earned|on paper|adds? up to|comes? to|the sums?|(?:by|on) (?:my|the|our) (?:list|checklist|sums?|"
    r"scores?|ratings|questions|weights)|"
    r"my (?:\w+ )?(?:questions|checklist|sums?|scores?) (?:says?|makes?|would|puts?))\b",
    re.IGNORECASE,
)
_NOT_BEHIND = r"(?<!vitamin )(?<!plan )(?<!type )(?<!group )(?<!point )(?<!option )(?<!hepatitis )"


class Said(NamedTuple):
    """A grade in a text, in the scale's own spelling, and where it stands."""

    start: int
    grade: str


class Finder:
    """Finds grades of one scale. `scale` are its grades, best first."""

    def __init__(self, episode: Episode, scale: Sequence[str]) -> None:
        self.names: dict[str, str] = {}
        for name, one in episode.exercises.items():
            if one.name:
                self.names.setdefault(" ".join(one.name.lower().split()), str(name))
        self.grades: dict[str, str] = {}
        if all(len(grade) == 1 and str(grade).isupper() for grade in scale):
            scale = list(dict.fromkeys([*scale, *LETTERS]))  # a letter off the scale is heard as a grade all the same
        for grade in scale:
            self.grades.setdefault(str(grade).lower(), str(grade))
            self.grades.setdefault(saying.grade_spoken(str(grade)).lower(), str(grade))
        self.lengths = _by_first_word(self.names)
        letters = [re.escape(str(grade)) for grade in scale if len(grade) == 1 and str(grade).isupper()]
        letter = f"(?-i:{'|'.join(letters)})" if letters else r"(?!)"  # capitals only: "a" is a word
        self.letter = re.compile(rf"(?<![\w-]){letter}(?!\w)", re.IGNORECASE)
        self.patterns = self._patterns(letter) if self.grades else ()
        token = rf"(?P<beside>{letter}{_SIGN}?)"
        joined = r"(?:with|gets?|is|at|has)"
        self.behind = re.compile(
            rf"\s*(?:[:,–—]|-(?=\s))?\s*(?:{joined}\s+)?(?:an?\s+)?{token}(?=\s*{_STOP}|\s+(?:and|for)\b)",
            re.IGNORECASE,
        )
        had = r"(?:got|gets|earned|earns|took|takes|received|has|had)"
        gave = r"(?:I|we)(?:['’]ve)?\s+(?:(?:just|already)\s+)?(?:gave|give|given|handed)\s+(?:to\s+)?"
        self.lent = re.compile(rf"(?<![\w-]){token}\s+(?:that\s+)?(?P<by>{gave})?(?:the\s+)?\Z", re.IGNORECASE)
        self.had = re.compile(rf"\s+{had}\b", re.IGNORECASE)
        self.before = re.compile(
            rf"(?<![\w-]){token}(?:\s*[:,]\s*|\s+(?:for|to|goes\s+to)\s+)(?:the\s+)?\Z", re.IGNORECASE
        )

    def _patterns(self, letter: str) -> tuple[re.Pattern[str], ...]:
        names = "|".join(re.escape(name) for name in sorted(self.grades, key=len, reverse=True))
        short = "|".join([letter, *(re.escape(name) for name, grade in self.grades.items() if grade.isdigit())])
        written = (
            # a sign settles it; without one, a bare word counts only where somebody gives or gets it
            rf"(?<![\w-])(?:an?|grade|gets?|graded|:)\s+(?P<a>(?:{names}){_SIGN})(?!\w)",
            rf"\A(?P<b>(?:{names}){_SIGN})(?!\w){_NO_GRADE}",
            rf"{_NOT_BEHIND}(?<![\w-])(?P<c>{letter}{_SIGN})(?!\w){_NO_GRADE}",
            rf"\b{_GIVES}\b{_BETWEEN}\s+an?\s+(?:{_KIND}\s+)?(?P<d>{names})(?![\w+\-']){_AFTER}",
            rf"\bgraded?\b(?:\s+(?:is|of|it|stays|as))?:?\s+(?P<e>(?:{names}){_SIGN}?)(?![\w+\-']){_AFTER}",
            rf"\b{_TO}\s+(?:it|this one|this|that|them)\s+(?P<f>{short})(?![\w+\-']){_AFTER}",
            rf"\A\W*(?:an?\s+)?(?:{_KIND}\s+)?(?P<g>{letter}{_SIGN}?)(?:\s+(?:for|from)\s+me|\s+tier\b.*)?\W*\Z",
        )
        return tuple(re.compile(one, re.IGNORECASE) for one in written)

    def grades_in(self, text: str) -> list[Said]:
        """Grades said in a text, with plus and minus as signs, in order."""
        found: dict[int, str] = {}
        for pattern in self.patterns:
            for match in pattern.finditer(text):
                group = match.lastgroup or ""
                found.setdefault(match.start(group), self._grade(match[group]))
        return [Said(start, found[start]) for start in sorted(found)]

    def _grade(self, words: str) -> str:
        lowered = words.lower().strip()
        sign = ""
        if lowered not in self.grades:
            signed = re.fullmatch(r"(.*?)\s*(plus|minus)", lowered)
            lowered, sign = (signed[1], "+" if signed[2] == "plus" else "-") if signed else grade_parts(lowered)
        return self.grades.get(lowered, words) + sign

    def names_in(self, text: str) -> list[tuple[int, int, str]]:
        """Start, end and id of exercises named in a text; of names inside longer names only the longer counts."""
        lowered = text.lower()
        found: list[tuple[int, int, str]] = []
        for word in _WORD.finditer(lowered) if len(lowered) == len(text) else ():
            start = word.start()
            if found and start < found[-1][1]:
                continue
            for length in self.lengths.get(word[0], ()):
                name = lowered[start : start + length]
                end = _named_until(lowered, start + length) if name in self.names else 0
                if end:
                    found.append((start, end, self.names[name]))
                    break
        return found

    def lent_to(self, text: str, names: Sequence[tuple[int, int, str]]) -> dict[int, tuple[Said, str]]:
        """Grades of "the C I gave the pull-up" and "the C the pull-up got" by where they stand, with whose they are."""
        found: dict[int, tuple[Said, str]] = {}
        for start, end, name in names:
            low = max(0, start - LENT_WITHIN)
            match = self.lent.search(text, low, start)
            if match and (match["by"] or self.had.match(text, end)):
                found[match.start("beside")] = (Said(match.start("beside"), self._grade(match["beside"])), name)
        return found

    def beside(self, text: str, names: Sequence[tuple[int, int, str]]) -> Iterator[Said]:
        """Bare letters right behind or before the name of an exercise, as in a list of them."""
        for start, end, _ in names:
            match = self.behind.match(text, end) or self.before.search(text[max(0, start - 20) : start])
            if match:
                at = match.start("beside") + (max(0, start - 20) if match.re is self.before else 0)
                yield Said(at, self._grade(match["beside"]))


def _by_first_word(names: Iterable[str]) -> dict[str, list[int]]:
    """The lengths of the names that begin with a word, longest first: a thousand names have few lengths."""
    lengths: dict[str, set[int]] = {}
    for name in names:
        first = _WORD.match(name)
        if first:
            for word in (first[0], f"{name}s", f"{name}es") if first[0] == name else (first[0],):
                lengths.setdefault(word, set()).add(len(name))
    return {word: sorted(found, reverse=True) for word, found in lengths.items()}


def _named_until(text: str, end: int) -> int:
    """Where a name ends with the ending it may have for several; 0 where a longer word goes on there."""
    for ending in ("es", "s", ""):
        after = end + len(ending)
        if text.startswith(ending, end) and not _is_letter(text[after : after + 1]):
            return after
    return 0


def _is_letter(sign: str) -> bool:
    return sign.isalnum() or sign == "_"


def find(
    segments: Iterable[Segment], cards: Iterable[Card], episode: Episode, scale: Sequence[str]
) -> tuple[SpokenGrade, ...]:
    """Every grade said in a sentence or shown on a card, with the exercises it may be meant for."""
    finder = Finder(episode, scale)
    found: list[SpokenGrade] = []
    segments = tuple(segments)
    homes = {segment.id: segment.exercise for segment in segments}
    for segment in segments:
        for sentence in segment.sentences:
            for said, exercises, every in _meant(finder, sentence.text, segment.exercise):
                place = sentence.place_of(said.start)
                as_what = bool(_MAYBE.search(sentence.text)), bool(_SUMMED.search(sentence.text))
                found.append(SpokenGrade(segment.id, place, sentence.text, said.grade, exercises, every, *as_what))
    for card in cards:
        for said, exercises, every in _meant(finder, card.text, homes.get(card.segment, "")):
            found.append(SpokenGrade(card.segment, card.place, card.text, said.grade, exercises, every))
    return tuple(found)


def _meant(finder: Finder, text: str, own: str) -> list[tuple[Said, tuple[str, ...], bool]]:
    """Each grade in a text with the exercises it is meant for, and whether it has to be right for every one of them."""
    if text.rstrip("\"'”’) ").endswith("?"):
        return []
    grades = finder.grades_in(text)
    if not grades and not finder.letter.search(text):
        return []
    names = finder.names_in(text)
    lent = finder.lent_to(text, names)
    tied = [(said, (name,), True) for said, name in lent.values()]
    known = {*lent, *(said.start for said in grades)}
    grades = [said for said in grades if said.start not in lent]
    grades = sorted([*grades, *(said for said in finder.beside(text, names) if said.start not in known)])
    others = tuple(dict.fromkeys(name for _, _, name in names if name != own))
    if own:
        # "unlike the ledge raise with its A, this one gets a C": right if it is right for one of them
        return [*tied, *((said, (own, *others), False) for said in grades)]
    return [*tied, *_paired(grades, names)]


def _paired(grades: Sequence[Said], names: Sequence[tuple[int, int, str]]) -> list[tuple[Said, tuple[str, ...], bool]]:
    """Names and grades in turn: the names before a grade have it, or those behind it where the grade comes first."""
    if not grades or not names:
        return []
    grade_first = grades[0].start < names[0][0]
    paired: list[tuple[Said, tuple[str, ...], bool]] = []
    for number, said in enumerate(grades):
        if grade_first:
            low, high = said.start, grades[number + 1].start if number + 1 < len(grades) else FAR
        else:
            low, high = grades[number - 1].start if number else -1, said.start
        meant = tuple(dict.fromkeys(name for start, _, name in names if low < start < high))
        if meant:
            paired.append((said, meant, True))
    return paired
