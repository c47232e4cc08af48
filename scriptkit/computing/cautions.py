"""Cautions: which lines an episode calls for, and whether each is really spoken where it counts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.script import plain
from scriptkit.model import Caution, CautionSpoken, Episode, Segment, Sentence

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


def spoken(episode: Episode, segments: Sequence[Segment], cautions: Mapping[str, Caution], softeners: Sequence[str]) -> tuple[CautionSpoken, ...]:
    """For each exercise in the script and each caution it calls for: is it spoken in its segment or before?"""
    best: dict[str, CautionSpoken] = {}
    made: list[CautionSpoken] = []
    for segment in segments:
        for tag, caution in cautions.items():
            for sentence, following in _pairs(segment.sentences):
                state = _state(sentence, following, tag, caution, softeners)
                if state and _better(state, best[tag].state if tag in best else ""):
                    best[tag] = CautionSpoken("", tag, state, sentence.place, sentence.text)
        exercise = episode.exercises.get(segment.exercise) if segment.exercise else None
        if exercise is None:
            continue
        for tag in dict.fromkeys(exercise.cautions):
            if tag not in cautions:
                continue
            known = best.get(tag)
            where = exercise.at.of("cautions")
            made.append(known._replace(exercise=str(exercise.id)) if known else CautionSpoken(str(exercise.id), str(tag), "missing", where, ""))
    return tuple(made)


def _pairs(sentences: Sequence[Sentence]) -> list[tuple[Sentence, str]]:
    """Each sentence with the words from it on, since a line may be several sentences long."""
    return [(one, " ".join(plain(later.text) for later in sentences[number : number + 4])) for number, one in enumerate(sentences)]


def _better(state: str, known: str) -> bool:
    order = ("", "reworded", "softened", "said")
    return order.index(state) > order.index(known)


def _state(sentence: Sentence, following: str, tag: str, caution: Caution, softeners: Sequence[str]) -> str:
    words, line = plain(sentence.text), plain(caution.line)
    marked = tag in sentence.cautions
    whole = bool(line) and following.startswith(line[: len(words)]) and line in following
    content = [word for word in line.split() if word not in _SMALL]
    share = sum(word in words.split() for word in content) / len(content) if content else 0.0
    if not marked and not whole and not (line and line in words) and share < NEAR:
        return ""
    if _taken_back(words, line, softeners):
        return "softened"
    return "said" if marked or whole or line in words else "reworded"


def _taken_back(words: str, line: str, softeners: Sequence[str]) -> bool:
    """Whether a wording negates or softens what the line says."""
    if any(f" {plain(one)} " in f" {words} " and plain(one) not in line for one in softeners):
        return True
    asked = [word for word in line.split() if word not in _SMALL]
    return any(
        f" {no} {word} " in f" {words} " and f" {no} {word} " not in f" {line} " for no in _NO for word in asked
    )
