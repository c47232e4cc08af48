"""The words in the text of captions: tags, speakers and notes on sounds are none."""

from __future__ import annotations

import html
import re
from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.reading.recordings.clock import seconds

_TAG = re.compile(r"<(?:(\d{1,6}:[\d:.,]{1,30})|[/!]?[A-Za-z][^<>\n]{0,300}|/?)>|\{\\[^{}\n]{0,300}\}")
_GLOSS = re.compile(r"<rt\b[^<>\n]{0,300}>[^<\n]{0,300}(?:</rt>)?")  # how a word below it is read
_ENTITY = re.compile(r"&(?:#\d{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z]\w{1,30});")
_UNSEEN = re.compile("[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")
_STAMP = re.compile("\x01([0-9]+)\x02")
_SPEAKER = re.compile(r"[ \t]*(?:>{2,}[ \t]*(?:[^\W\d][\w .'’-]{0,30}:(?=\s|$))?|[-–—](?=\s|[A-Z]))")
_LABEL = re.compile(r"[ \t]*([A-Z][A-Z0-9 .'’-]{1,30}):(?=[ \t].*[a-z]|[ \t]*$)")

_INNER = r"[^\[\]()（）【】{}\n]{0,120}"
_SOUND = re.compile(
    rf"\[[^\[\]]{{0,160}}\]|【[^【】]{{0,160}}】|[♪♫♬♩][^♪♫♬♩]{{0,300}}[♪♫♬♩]"
    rf"|(?m:^)[ \t]*(?:[(（]{_INNER}[)）]|\*[^*\n]{{1,80}}\*)[ \t]*(?m:$)"
    rf"|[(（][^\[\]()（）【】{{}}]{{0,120}}[)）]"
)
_SOUNDS = (
    "laugh", "chuckl", "giggl", "sigh", "music", "applau", "clap", "cough", "sniff", "breath", "exhal", "inhal", "gasp",
    "groan", "grunt", "inaudible", "unintelligible", "indistinct", "crosstalk", "silence", "pause", "nois", "beep",
    "bleep", "cheer", "clear", "clatter", "bang", "thud",
)  # fmt: skip
_SIGNS = frozenset("%+&=×÷°$€£")  # spoken though they are neither letter nor digit
_MARKS = frozenset("[({♪♫♬♩（【*")


class Piece(NamedTuple):
    """A word of a caption, the number of its line, and the time that stands before it."""

    text: str
    line: int
    at: float | None = None


def is_word(text: str) -> bool:
    """Whether a run of signs is spoken."""
    return any(map(str.isalnum, text)) or (len(text) <= 3 and not _SIGNS.isdisjoint(text))


def letters(text: str) -> int:
    """How many letters a word takes its share of time by; one at least."""
    return max(1, sum(map(str.isalnum, text)))


def pieces(lines: Sequence[str], speakers: frozenset[str] = frozenset()) -> list[Piece]:
    """The words of a caption's lines."""
    text = "\n".join(lines)
    times: list[float] = []
    if "<" in text or "{" in text:
        text = _TAG.sub(lambda found: _stamp(found, times), _GLOSS.sub("", text))
    if "&" in text:
        text = _ENTITY.sub(lambda found: html.unescape(found[0]), text)
    if not text.isascii():
        text = _UNSEEN.sub("", text)
    if not _MARKS.isdisjoint(text):
        text = without_sounds(text)
    found: list[Piece] = []
    at: float | None = None
    for number, line in enumerate(text.split("\n")):
        for word in _without_speaker(line, speakers).split():
            before, plain, behind = _parted(word, times) if times and "\x01" in word else (None, word, None)
            at = before if before is not None else at
            if is_word(plain):
                found.append(Piece(plain, number, at))
                at = None
            at = behind if behind is not None else at
    return found


def label(line: str) -> str:
    """The name before a colon in capitals at the start of a line, where the rest is not in capitals."""
    found = _LABEL.match(line) if ":" in line else None
    return found[1] if found else ""


def without_sounds(text: str) -> str:
    """A text in which each note on a sound, and each sign of music, is as many spaces."""
    text = _SOUND.sub(_silenced, text)
    return re.sub("[♪♫♬♩]", " ", text)


def _silenced(found: re.Match[str]) -> str:
    """Spaces for a note on a sound; words in round brackets within a line are one only if they name a sound."""
    note = found[0]
    alone = note[0] not in "(（" or ("\n" not in note and _stands_alone(found))
    names = len(note.split()) <= 4 and any(word.startswith(_SOUNDS) for word in note.lower().strip("()（）").split())
    if not alone and not names:
        return note
    return re.sub(r"[^\n]", " ", note)


def _stands_alone(found: re.Match[str]) -> bool:
    text = found.string
    before = text[text.rfind("\n", 0, found.start()) + 1 : found.start()]
    end = text.find("\n", found.end())
    return not is_word(before) and not is_word(text[found.end() : end if end >= 0 else len(text)])


def _stamp(found: re.Match[str], times: list[float]) -> str:
    """What stands for a tag: nothing, or where it is a time the number of that time between two signs."""
    at = seconds(found[1]) if found[1] else None
    if at is None:
        return "\n" if found[0].lower().startswith("<br") else ""
    times.append(at)
    return f"\x01{len(times) - 1}\x02"


def _parted(word: str, times: list[float]) -> tuple[float | None, str, float | None]:
    """The time before a word, the word, and the time behind it; a time inside of it is that of a syllable."""
    parts = _STAMP.split(word)
    texts, stamps = parts[::2], [times[int(one)] for one in parts[1::2]]
    first = next((number for number, one in enumerate(texts) if one), len(stamps))
    last = next((number for number in range(len(stamps), first, -1) if texts[number]), first)
    return (stamps[first - 1] if first else None), "".join(texts), (stamps[-1] if last < len(stamps) else None)


def _without_speaker(line: str, speakers: frozenset[str]) -> str:
    """A line without a mark of who speaks, and without a name behind that mark or known as a speaker's."""
    mark = _SPEAKER.match(line)
    if mark:
        line = line[mark.end() :]
    name = label(line) if speakers or mark else ""
    return line.partition(":")[2] if name and (mark or name in speakers) else line
