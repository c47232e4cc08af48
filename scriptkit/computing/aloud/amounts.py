"""Numbers with all that hangs on them, as they are spoken: ranges, sets, units, percents and money."""

import re
from functools import lru_cache

from scriptkit.computing.aloud import numerals
from scriptkit.computing.aloud.measures import AMOUNTS, MONEY, money, per, unit
from scriptkit.computing.aloud.moments import Spoken, is_year, spoken_day, spoken_moment, year_range

_RACES = frozenset("run race runs races runner runners time pace row swim ride".split())
_SHAPED = frozenset("raise sit up press pull hold squat jump fly".split())
_GAPS = (" ", "\n", "\u00a0", "\u202f", "\u2009")
_HANGING = tuple("-–—−×✕✖*%‰€£$¥/°º")
_GAP = "[ \\u00a0\\u202f\\u2009]"
_PATTERNS = {
    "number": r"(?:\d{1,3}(?:[,\u00a0\u202f\u2009]\d{3}){1,12}(?!\d|[,\u00a0\u202f\u2009]\d)|\d++)(?:\.\d++)*(?!\.\d)"
    r"|\.\d++",
    "fraction": r"(?:(\d{1,3})[ \u00a0-])?(\d{1,3})[/⁄](\d{1,3})(?![\d/]|\.\d)",
    "marks": r"(\d{1,2}\.\d{1,2})/(5|10|20|50|100)(?![\d/]|\.\d)",
    "dash": r"\s?[-–−]\s?(?=[$£€¥]?\.?\d)|—(?=[$£€¥]?\.?\d)",
    "by": rf"{_GAP}?[×✕✖xX*]{_GAP}?(?=\.?\d)",
    "times": rf"(?:{_GAP}?[×✕✖]|x|{_GAP}x(?=[\s/]))(?!\w)",
    "tail": rf"({_GAP}?|-)([%‰€£$]|°[CF]?|[A-Za-zµμº·]{{1,8}}(?:[²³]|\^?[23])?)(?![\w'’])",
    "per": rf"{_GAP}?/{_GAP}?([A-Za-zµμ°º]{{1,12}}[²³23]?)(?!\w)",
    "scale": rf"{_GAP}?(million|billion|trillion|thousand|bn|[kKmMbB])(?!\w)",
    "word": r"\s([a-z]{1,16})",
}


@lru_cache(maxsize=len(_PATTERNS))
def _pattern(name: str) -> re.Pattern[str]:
    return re.compile(_PATTERNS[name], re.ASCII if name in ("number", "fraction", "marks") else 0)


def _at(name: str, text: str, pos: int) -> re.Match[str] | None:
    return _pattern(name).match(text, pos)


def spoken_amount(text: str, pos: int) -> Spoken | None:
    """The number that begins at `pos` in words, with its currency, range, sets and unit, and where it ends.

    None if no number begins there.
    """
    if text[pos] in MONEY:
        return _sum(text, pos)
    number = _at("number", text, pos)
    if number and (moment := spoken_moment(text, pos, number.end())):
        return moment
    first = _one(text, pos)
    if first is None:
        return None
    said, end = first
    written = text[pos:end]
    if number and number.end() == end and (day := spoken_day(text, pos, end)):
        return day
    if not _hangs_on(text, end):
        return _plain(text, pos, said, end)
    after_sets = _sets(text, *_run(text, pos, said, end))
    if after_sets != first:
        return _measured(text, *after_sets, "")
    measured = _measured(text, *first, written)
    return measured if measured != first else _plain(text, pos, said, end)


def _hangs_on(text: str, end: int) -> bool:
    """Whether the next character, but for one space, can belong to a number: a letter, dash or sign; no stop."""
    near = text[end : end + 2]
    if near[:1] in _GAPS:
        near = near[1:]
    return near[:1].isalpha() or near[:1] in _HANGING


def _plain(text: str, pos: int, said: str, end: int) -> Spoken:
    if end - pos == 4 and text[pos:end].isdigit() and is_year(text, pos, end):
        return numerals.year(text[pos:end]), end
    return said, end


def _one(text: str, pos: int) -> Spoken | None:
    """One number, fraction, or number with a fraction."""
    if text[pos : pos + 1] in numerals.GLYPHS:
        return numerals.mixed("", *numerals.GLYPHS[text[pos]]), pos + 1
    if found := _at("fraction", text, pos):
        head, top, under = found.groups()
        if not head:
            return numerals.fraction(top, under), found.end()
        if 0 < int(top) < int(under) <= 16:
            return numerals.mixed(head, int(top), int(under)), found.end()
    if found := _at("marks", text, pos):
        return f"{numerals.number(found[1])} out of {numerals.whole(found[2])}", found.end()
    number = _at("number", text, pos)
    if number is None:
        return None
    glyph = number.end() + (text[number.end() : number.end() + 1] in (" ", "\u00a0"))
    if text[glyph : glyph + 1] in numerals.GLYPHS:
        return numerals.mixed(number[0], *numerals.GLYPHS[text[glyph]]), glyph + 1
    return numerals.number(number[0]), number.end()


def _run(text: str, pos: int, said: str, end: int) -> Spoken:
    """What follows the first number after a dash: a range, "8-12", or a count such as a tempo, "3-1-2"."""
    dash = _at("dash", text, end)
    second = _one(text, dash.end()) if dash else None
    if dash is None or second is None:
        return said, end
    if years := year_range(text, pos, end, dash.end(), second[1]):
        return years, second[1]
    parts, end = [said, second[0]], second[1]
    tight = not dash[0].strip("-–")
    while tight and (dash := _at("dash", text, end)) and not dash[0].strip("-–") and (more := _one(text, dash.end())):
        parts.append(more[0])
        end = more[1]
    return (" to " if len(parts) == 2 else " ").join(parts), end


def _sets(text: str, said: str, end: int) -> Spoken:
    """What is multiplied: "3×10" "three by ten", "3x" "three times"."""
    parts = [said]
    while (by := _at("by", text, end)) and (more := _one(text, by.end())):
        more = _run(text, by.end(), *more)
        parts.append(more[0])
        end = more[1]
    said = " by ".join(parts)
    if times := _at("times", text, end):
        return _per(text, f"{said} times", times.end())
    return said, end


def _measured(text: str, said: str, end: int, single: str) -> Spoken:
    """The unit, percent or currency after a number; `single` is the number as written, "" for a range or product."""
    tail = _at("tail", text, end)
    if tail is None:
        return _joined_range(text, *_per(text, said, end)) if text[end : end + 2] != "/w" else (said, end)
    gap, symbol = tail.groups()
    if symbol in "%‰":
        said, end = f"{said} {'percent' if symbol == '%' else 'per mille'}", tail.end()
    elif symbol in MONEY:
        said, end = money(symbol, single, "", said), tail.end()
    elif symbol in ("k", "K") and not gap:
        race = _at("word", text, tail.end())
        said, end = f"{said} {'K' if symbol == 'K' or (race and race[1] in _RACES) else 'thousand'}", tail.end()
    elif name := _unit(text, symbol, gap, single, tail.end()):
        said, end = f"{_part_of(said, name, single)}{'-' if gap == '-' else ' '}{name}", tail.end()
    return _joined_range(text, *_per(text, said, end))


def _unit(text: str, symbol: str, gap: str, single: str, end: int) -> str | None:
    """The unit's name, unless the letters are more likely a word: "3 in the morning", "1 in 4"."""
    if symbol == "in" and gap not in ("", "-") and text[end : end + 1] not in (",", ".", ";", ")", "/"):
        return None
    if len(symbol) == 1 and symbol.isupper() and gap and _is_shape(text, end):
        return None
    return unit(symbol, one=gap == "-" or single == "1" or _is_part(single))


def _is_shape(text: str, end: int) -> bool:
    """Whether the letter before this place names an exercise by its shape: "3 V-ups", "10 W raises"."""
    word = _at("word", text, end)
    return text[end : end + 1] == "-" or (word is not None and word[1].rstrip("s") in _SHAPED)


def _is_part(single: str) -> bool:
    return (single in numerals.GLYPHS and single != "") or ("/" in single and " " not in single and "-" not in single)


def _part_of(said: str, name: str, single: str) -> str:
    """Half a kilogram, three quarters of a kilogram; other numbers as they are."""
    if not _is_part(single):
        return said
    article = "an" if name[0] in "aeiou" or name.startswith("hour") else "a"
    return f"half {article}" if said == "one half" else f"{said} of {article}"


def _per(text: str, said: str, end: int) -> Spoken:
    """What the amount is taken by: "10 kg/week" "... per week", and "12/side" likewise."""
    for _ in range(3):
        found = _at("per", text, end)
        if found is None:
            break
        said, end = f"{said} per {per(found[1])}", found.end()
    return said, end


def _joined_range(text: str, said: str, end: int) -> Spoken:
    """The dash between two amounts that each have their unit, "5%-10%"."""
    if text[end : end + 1] in ("-", "–") and text[end + 1 : end + 2].isdigit():
        return f"{said} to", end + 1
    return said, end


def _sum(text: str, pos: int) -> Spoken | None:
    """A sum of money that begins with its sign: its range, its "million", and what it is per."""
    start = pos + 2 if text[pos + 1 : pos + 2] in (" ", "\u00a0") else pos + 1
    first = _one(text, start)
    if first is None:
        return None
    said, end = first
    written = text[start:end]
    dash = _at("dash", text, end)
    if dash and (second := _one(text, dash.end() + (text[dash.end()] in MONEY))):
        written, said, end = "", f"{said} to {second[0]}", second[1]
    scale = _at("scale", text, end)
    said = money(text[pos], written, AMOUNTS[scale[1]] if scale else "", said)
    return _per(text, said, scale.end() if scale else end)
