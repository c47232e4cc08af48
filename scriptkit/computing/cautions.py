"""Cautions: which lines an episode calls for, and whether each is really spoken where it counts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.script import plain
from scriptkit.model import Caution, CautionSpoken, Episode, Segment

_SMALL = frozenset(
    "a an the of to in on at by for and or if it its you your i we is are be this that with before after from as up do does than then so".split()
)
_NO = ("don't", "do not", "never", "not", "needn't", "shouldn't", "won't", "without")
NEAR = 0.5  # share of a line's content words in a sentence that makes it a wording of the line


def resolve(episode: Episode, stock: Mapping[str, str]) -> dict[str, Caution]:
    """Every caution that exercises call for, and those the outline defines; the outline's own line wins over the stock one."""
    found = {str(name): caution for name, caution in episode.cautions.items()}
    for exercise in episode.exercises.values():
        for tag in exercise.cautions:
            if tag not in found and tag in stock:
                found[str(tag)] = Caution(str(tag), stock[tag], True)
    return found


class _Line(NamedTuple):
    """A caution's line as plain words."""

    words: str
    content: frozenset[str]


def spoken(
    episode: Episode, segments: Sequence[Segment], cautions: Mapping[str, Caution], softeners: Sequence[str]
) -> tuple[CautionSpoken, ...]:
    """For each exercise in the script and each caution it calls for: is it spoken in its segment or before?"""
    lines = {
        tag: _Line(plain(caution.line), frozenset(plain(caution.line).split()) - _SMALL)
        for tag, caution in cautions.items()
    }
    soft = [plain(one) for one in softeners]
    best: dict[str, CautionSpoken] = {}
    made: list[CautionSpoken] = []
    for segment in segments:
        heard = [plain(sentence.text) for sentence in segment.sentences] if lines else []
        for number, sentence in enumerate(segment.sentences if lines else ()):
            words = frozenset(heard[number].split())
            for tag, line in lines.items():
                # most sentences share too little with a line to be looked at again
                if (
                    tag in sentence.cautions
                    or 2 * len(words & line.content) >= len(line.content)
                    or line.words.startswith(heard[number])
                ):
                    state = _state(heard, number, tag in sentence.cautions, line, soft)
                    if state and _better(state, best[tag].state if tag in best else ""):
                        best[tag] = CautionSpoken("", tag, state, sentence.place, sentence.text)
        exercise = episode.exercises.get(segment.exercise) if segment.exercise else None
        for tag in dict.fromkeys(exercise.cautions) if exercise else ():
            if exercise and tag in cautions:
                missing = CautionSpoken("", str(tag), "missing", exercise.at.of("cautions"), "")
                made.append(best.get(tag, missing)._replace(exercise=str(exercise.id)))
    return tuple(made)


def _better(state: str, known: str) -> bool:
    order = ("", "reworded", "softened", "said")
    return order.index(state) > order.index(known)


def _state(heard: Sequence[str], number: int, marked: bool, line: _Line, softeners: Sequence[str]) -> str:
    words = heard[number]
    # a line may be several sentences long
    following = " ".join(heard[number : number + 4])
    whole = bool(line.words) and following.startswith(line.words)
    inside = bool(line.words) and line.words in words
    share = len(line.content & set(words.split())) / len(line.content) if line.content else 0.0
    if not marked and not whole and not inside and share < NEAR:
        return ""
    if _taken_back(words, line, softeners):
        return "softened"
    return "said" if marked or whole or inside else "reworded"


def _taken_back(words: str, line: _Line, softeners: Sequence[str]) -> bool:
    """Whether a wording negates or softens what the line says."""
    if any(f" {one} " in f" {words} " and one not in line.words for one in softeners):
        return True
    return any(
        f" {no} {word} " in f" {words} " and f" {no} {word} " not in f" {line.words} "
        for no in _NO
        for word in sorted(line.content)
    )
