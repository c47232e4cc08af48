"""The names of exercises inside a sentence: whether they begin small, and whether they take "a" or "an"."""

import re
from functools import lru_cache

from scriptkit.computing.aloud.forms import is_word, spelled_out

# People, peoples and places that exercises are named after keep their capital.
_NAMES = frozenset(
    "achilles adam african alexander american anderson arnold asian atlas australian bavarian bayesian bradford "
    "brazilian british "
    "bulgarian canadian chinese copenhagen cossack cuban danish dutch egyptian english euler european finnish "
    "french frenchman german "
    "gironda greek hatfield hercules hindu hungarian icelandic indian irish italian japanese jefferson kegel kelso "
    "klokov korean kroc "
    "larsen latvian meadows mexican nordic norwegian olympian olympic pallof paloff pendlay persian peterson "
    "pilates polish portuguese "
    "roman romanian russian samson scandinavian scott scottish smith spanish spartan steinborn svend swedish swiss "
    "tate thai tibetan "
    "trendelenburg turkish ukrainian viennese viking yates york zercher zottman "
    "january february april june july august september october november december "
    "monday tuesday wednesday thursday friday saturday sunday christmas".split()
)
_LETTERS_WITH_VOWEL_SOUND = "AEFHILMNORSX"
_SMALL = frozenset("a an and at by for from in into of off on onto or over per the to under up vs with without".split())


@lru_cache(maxsize=1)
def _a_before_vowel() -> re.Pattern[str]:
    """Words that begin with a vowel and are spoken with a "y" or "w" first."""
    return re.compile(
        r"(?:eu|ew(?:e|er)s?\b|u(?:ni(?![nm]|d(?!ir)|g(?!eni)|ntu|ll)|s(?:[aeu](?!p)|i(?!n[^g]))|t(?:i|en|o|ah|er[iu])|k|bi|ri|ra|ret|rol|vul)"
        r"|once\b|one(?:\b|s\b|self\b|ness\b)|ouija|ubiq)",
        re.IGNORECASE,
    )


def mid(name: str) -> str:
    """A name inside a sentence: the first letter small, unless a name ("Romanian"), "RDL" or "T-bar" begins it.

    Where every longer word has a capital, as in a title, all of them become small by the same rule.
    """
    pieces = re.split(r"(\s+)", name)
    at = next((index for index, piece in enumerate(pieces) if piece and not piece.isspace()), None)
    if at is None:
        return name
    if pieces[at] == "A" and len(pieces) - at > 4 and pieces[at + 2][:1].islower():
        pieces[at] = "a"  # "A walk round the block"; "A raise" may be named for the letter
        return "".join(pieces)
    if _is_title(pieces):
        return "".join(_lowered(piece) for piece in pieces)
    pieces[at] = _lowered_first(pieces[at])
    return "".join(pieces)


def _is_title(pieces: list[str]) -> bool:
    told = [piece for piece in pieces if piece[:1].isalpha() and piece.lower() not in _SMALL]
    return len(told) > 1 and all(piece[0].isupper() for piece in told) and any(not piece.isupper() for piece in told)


def _lowered(word: str) -> str:
    return "-".join(_lowered_first(part) for part in word.split("-"))


def _lowered_first(word: str) -> str:
    start = next((index for index, letter in enumerate(word) if letter.isalnum()), len(word))
    found = re.match(r"\w+", word[start:])
    core = found[0] if found else ""
    if len(core) < 2 or not core[0].isupper() or core[1:] != core[1:].lower() or any(map(str.isdigit, core)):
        return word
    if core.lower() in _NAMES or (core.endswith("s") and core[:-1].lower() in _NAMES):
        return word
    return word[:start] + core[0].lower() + word[start + 1 :]


def a(name: str) -> str:
    """The name with "a" or "an" before it, by its sound: "an hour", "a one-arm row", "an RDL", "a U-bend", "an 8"."""
    start = next((index for index, letter in enumerate(name) if letter.isalnum()), None)
    if start is None:
        return name
    said = spelled_out(name[start : start + 80])
    first = re.match(r"[^\W_]+", said)
    return f"{'an' if first and _vowel_sound(first[0]) else 'a'} {name}"


def _vowel_sound(word: str) -> bool:
    if word.isupper() and (len(word) == 1 or not is_word(word)):
        return word[0] in _LETTERS_WITH_VOWEL_SOUND
    low = word.lower()
    if len(word) == 1:
        return low.upper() in _LETTERS_WITH_VOWEL_SOUND
    if low.startswith(("hour", "honest", "honor", "honour", "heir")):
        return True
    return low[0] in "aeiouàáâäåæèéêëìíîïòóôöøùúûü" and not _a_before_vowel().match(low)
