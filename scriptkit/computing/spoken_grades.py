"""Grades that are said or shown: which words of a sentence name a grade, and of which exercise."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from scriptkit.computing import saying
from scriptkit.model import Card, Episode, Segment, SpokenGrade

_SIGN = r"(?:\s?(?:plus|minus)\b|[+\-−](?![\w]))"
_GIVES = (
    r"(?:grad(?:e|es|ed|ing)|gets?|got|getting|earns?|earned|takes?|took|scores?|scored|receives?|received|lands?|landed|deserves?|stays?|remains?|is|was|"
    r"it['’]s|that['’]s|giv(?:e|es|en|ing)|gave|awards?|rated?|rates?|verdict|comes?|came|ends?|drops?|makes?)"
)
_BETWEEN = r"(?:\s+(?!out\b)[\w'’-]+){0,4}?"
_AFTER = r"(?=\s*(?:[.,;:!?…)\"'”’]|$|—|–)|\s+(?:for|from|in|on|with|and|because|but|here|today|as|at|overall|to|then|if|since|by|though|too|again|is)\b)"


class Finder:
    """Finds grades of one scale. `scale` are its grades, best first."""

    def __init__(self, episode: Episode, scale: Sequence[str]) -> None:
        self.names = sorted(
            ((one.name.lower(), str(name)) for name, one in episode.exercises.items() if one.name),
            key=lambda pair: -len(pair[0]),
        )
        self.grades: dict[str, str] = {}
        for grade in scale:
            self.grades[str(grade).lower()] = str(grade)
            self.grades[saying.grade_spoken(str(grade)).lower()] = str(grade)
        self.pattern = self._pattern()

    def _pattern(self) -> re.Pattern[str] | None:
        if not self.grades:
            return None
        names = "|".join(re.escape(name) for name in sorted(self.grades, key=len, reverse=True))
        # a sign settles it; without one, a bare word counts only where somebody gives or gets it
        signed = rf"(?<![\w-])(?:(?:an?|grade|gets?|graded|:)\s+|^)(?P<signed>(?:{names}){_SIGN})(?![\w])"
        bare = rf"\b{_GIVES}\b{_BETWEEN}\s+(?:an?\s+)(?:solid|clear|strong|firm|flat|straight|full|high|low|plain|easy)?\s*(?P<bare>{names})(?![\w+\-']){_AFTER}"
        named = rf"\bgraded?\b(?:\s+(?:is|of|it|stays|as))?:?\s+(?P<named>{names})(?![\w+\-']){_AFTER}"
        return re.compile(f"{signed}|{bare}|{named}", re.IGNORECASE)

    def grades_in(self, text: str) -> list[tuple[int, str]]:
        """Offsets and grades said in a text, in the scale's own spelling with plus and minus as signs."""
        if self.pattern is None:
            return []
        found = []
        for match in self.pattern.finditer(text):
            group = match.lastgroup or "bare"
            found.append((match.start(group), self._grade(match[group])))
        return found

    def _grade(self, words: str) -> str:
        lowered = words.lower().strip()
        sign = ""
        if lowered not in self.grades:
            signed = re.fullmatch(r"(.*?)\s*(plus|minus|[+\-−])", lowered)
            if signed:
                lowered, sign = signed[1], "+" if signed[2] in ("plus", "+") else "-"
        return self.grades.get(lowered, words) + sign

    def names_in(self, text: str) -> list[tuple[int, str]]:
        """Offsets and ids of exercises named in a text; of names inside longer names only the longer counts."""
        lowered = text.lower()
        taken: list[tuple[int, int, str]] = []
        for name, exercise in self.names:
            for match in re.finditer(rf"(?<!\w){re.escape(name)}", lowered):
                if not any(start < match.end() and match.start() < end for start, end, _ in taken):
                    taken.append((match.start(), match.end(), exercise))
        return [(start, exercise) for start, _, exercise in sorted(taken)]


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
            for offset, grade, exercises, every in _meant(finder, sentence.text, segment.exercise):
                found.append(SpokenGrade(segment.id, sentence.place_of(offset), sentence.text, grade, exercises, every))
    for card in cards:
        for _, grade, exercises, every in _meant(finder, card.text, homes.get(card.segment, "")):
            found.append(SpokenGrade(card.segment, card.place, card.text, grade, exercises, every))
    return tuple(found)


def _meant(finder: Finder, text: str, own: str) -> list[tuple[int, str, tuple[str, ...], bool]]:
    """Each grade in a text with the exercises it is meant for, and whether it has to be right for every one of them."""
    grades = finder.grades_in(text)
    if not grades:
        return []
    names = [exercise for _, exercise in finder.names_in(text)]
    others = tuple(dict.fromkeys(name for name in names if name != own))
    if own:
        # "unlike the ledge raise with its A, this one gets a C": right if it is right for one of them
        return [(offset, grade, (own, *others), False) for offset, grade in grades]
    if not names:
        return []
    if len(names) == len(grades):
        return [(offset, grade, (name,), True) for (offset, grade), name in zip(grades, names, strict=True)]
    return [(offset, grade, tuple(dict.fromkeys(names)), len(grades) == 1) for offset, grade in grades]
