"""Finds where the sentences of one paragraph of spoken English begin and end."""

import re
from functools import lru_cache
from typing import NamedTuple

# Titles and the like: the word they belong to comes next, so they never end a sentence.
_LEADING = frozenset(
    "dr mr mrs ms mx prof st mt messrs rev hon capt sgt lt gen col gov sen rep e.g i.e eg ie vs v cf viz approx ca "
    "resp incl excl esp "
    "orig poss prob".split()
)
# Shortened words that wait for a number: "No. 4", "p. 12", "Jan. 5".
_COUNTING = frozenset(
    "no nos fig figs vol pp p ch eq sec ver art para tab max min est app pt op c n jan feb mar apr jun jul aug sep "
    "chap sept oct nov dec".split()
)
# Shortened words that may stand last; before a lower-case word they never end a sentence.
_SHORTENED = frozenset(
    "etc al inc ltd co corp jr sr dept univ assn bros min mins max sec secs hr hrs wk wks yr yrs avg est temp ext "
    "int lb lbs oz ft in kg "
    "mg cm mm km ml reps approx no nos fig figs vol ed eds rev mo tbsp tsp gal mi yd sq cu ref refs deg std dev "
    "dist freq "
    "jan feb mar apr jun jul aug sep sept oct nov dec mon tue tues wed thu thur thurs fri sat sun".split()
)
# After these in-between cases a capital ends the sentence only where such a word follows.
_NEEDS_STARTER = frozenset(
    "inc ltd co corp jr sr bros ph.d m.d b.sc m.sc b.a m.a dept univ jan feb mar apr jun jul aug sep sept oct nov "
    "dec mon tue tues wed "
    "thu thur thurs fri sat sun fig figs vol art".split()
)
_STARTERS = frozenset(
    "a an the this that these those it its he she they we you i my your our their his her there here then now next "
    "so and but or nor "
    "yet if when while because since as at by for from in into of on onto to with without under over after before "
    "until unless although "
    "though however still also even just not no yes nobody somebody everybody everyone someone nothing something "
    "everything one two "
    "three four five six seven eight nine ten who what why how where which whose is are was were do does did can "
    "could will would "
    "should may might must let let's keep hold start stop pick try take put go drop add skip use make give do don't "
    "most many some any "
    "all both each every either neither more less few half again instead maybe perhaps well okay ok right alright "
    "anyway finally first "
    "second third last overall meanwhile today tomorrow only that's it's there's here's what's i'm i've i'd i'll "
    "we're we've you're "
    "they're he's she's".split()
)
_CALENDAR = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday est edt et pst pdt pt cst cet cest gmt utc bst".split()
)
# After one of these a single letter is a type or a grade, not an initial.
_LETTERED = frozenset(
    "a an grade grades graded vitamin plan type group tier option class phase point step case part section zone "
    "level series team model "
    "exercise version hepatitis".split()
)
_GRADES = frozenset("ABCDEFS")
_INTRODUCERS = frozenset(
    "by and with coach author authors from dr prof mr mrs ms professor doctor ask asked thank thanks met called "
    "said says".split()
)
_DAYTIMES = frozenset("at by around about after before from until till since".split())

# Shortened in capitals only; in small letters these are words of their own.
_ALSO_WORDS = frozenset("art sat sun mar wed co fig figs".split())
_AFTER_NUMBERS = frozenset("min sec pt c n p".split())
_WINDOW = 48  # characters looked at before a stop; a longer word is no abbreviation
_I_WORDS = frozenset("i i'm i've i'd i'll".split())
_OPENERS = "\"'“‘«([{*_¿¡"


@lru_cache(maxsize=1)
def _stops() -> re.Pattern[str]:
    return re.compile(r"(?<![.!?…])(?P<stop>[.!?…]++)(?P<close>[\"'”’»)\]}*_]*+)(?=(?P<gap>\s+)|\Z)")


@lru_cache(maxsize=1)
def _next_word() -> re.Pattern[str]:
    return re.compile(r"[\"'“‘«(\[{*_¿¡]{0,8}([^\W_]{1,32}(?:['’][^\W_]{1,8})?)?")


def split(text: str) -> list[tuple[int, int]]:
    """Start and end of each sentence of one paragraph, without the white space around it; empty for a blank text.

    Every character that is no white space lies in exactly one sentence. Linear in the length of the text.
    """
    spans: list[tuple[int, int]] = []
    start = len(text) - len(text.lstrip())
    for match in _stops().finditer(text):
        gap = match["gap"]
        if gap is None:
            break
        if _ends(text, start, match, spans):
            spans.append((start, match.end()))
            start = match.end() + len(gap)
    end = len(text.rstrip())
    if start < end:
        spans.append((start, end))
    return _joined(text, spans)


def _joined(text: str, spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Bits without a letter or digit, a lone "..." or a left-over quote, go with the sentence before them."""
    joined: list[tuple[int, int]] = []
    for start, end in spans:
        if joined and not any(map(str.isalnum, text[start:end])):
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined


class _Stop(NamedTuple):
    """What stands around a single point."""

    words: list[str]  # the last words of the sentence before it, four at most, the very last one without its point
    opens: bool  # whether these are the whole sentence so far
    close: str  # quotes and brackets behind it
    word: str  # the first word after it, "" where something else comes
    answers: bool  # whether the sentence before this one asked something


def _ends(text: str, start: int, match: re.Match[str], spans: list[tuple[int, int]]) -> bool:
    """Whether the sentence that began at `start` ends with this stop."""
    stop, close = match["stop"], match["close"]
    after = match.end() + len(match["gap"])
    following = _next_word().match(text, after)
    word = (following and following[1]) or ""
    before = text[max(start, match.start() - _WINDOW) : match.start()]
    if after == len(text) or (close and _small(word)):
        return False
    if "?" in stop or "!" in stop:
        return not before.endswith("(")
    if len(stop) > 1 or stop == "…":
        return bool(word) and not word[0].islower() and not word[0].isdigit() and _plain(word) not in _I_WORDS
    if before.endswith(" al") and (text[after] == "(" or (len(word) == 4 and word.isdigit())):
        return False
    asked = bool(spans) and "?" in text[max(spans[-1][0], spans[-1][1] - 3) : spans[-1][1]]
    opens = match.start() - start <= _WINDOW and before.count(" ") < 4
    return _ends_with_point(_Stop(before.split()[-4:], opens, close, word, asked))


def _ends_with_point(stop: _Stop) -> bool:
    token = stop.words[-1].lstrip(_OPENERS) if stop.words else ""
    word = stop.word
    if stop.opens and len(stop.words) == 1 and not stop.answers and _numbers_a_list(token):
        return False
    shortened = _plain(token.rsplit("-", 1)[-1])
    if shortened in _LEADING:
        return False
    if word[:1].isdigit():
        return not _waits_for_number(shortened, stop.words)
    if len(token) == 1 and token.isalpha():
        return _letter_ends(token, stop)
    if word[:1].islower():
        return not _small(word) or _whole_word(token, shortened)
    if ")" in stop.close and shortened in _SHORTENED and not stop.words[-1].startswith("("):
        return False
    if "." in token and all(0 < len(part) <= 3 and part.isalpha() for part in token.split(".")):
        return _dotted_ends(shortened, stop)
    if shortened in _NEEDS_STARTER and (token[0].isupper() or shortened not in _ALSO_WORDS):
        return not word or _plain(word) in _STARTERS
    return True


def _plain(word: str) -> str:
    return word.lower().replace("’", "'")


def _small(word: str) -> bool:
    """A word in small letters; mTOR and pH begin small by nature and may begin a sentence."""
    return word[:1].islower() and word == word.lower()


def _numbers_a_list(token: str) -> bool:
    return (token.isdigit() and len(token) <= 2) or (len(token) == 1 and token.islower())


def _waits_for_number(shortened: str, words: list[str]) -> bool:
    """Whether a shortened word waits for its number, as in "No. 4"; in "90 sec. 3 sets" it is a unit."""
    if len(shortened) == 1 and not words[-1].islower():
        return False
    if shortened in _AFTER_NUMBERS and words[-1].islower() and len(words) > 1 and words[-2][-1:].isdigit():
        return False
    return shortened in _COUNTING or shortened == "ft"


def _letter_ends(letter: str, stop: _Stop) -> bool:
    """A single letter before the point: "an A. Next" ends, "J. Orre" does not."""
    earlier = stop.words[-2] if len(stop.words) > 1 else ""
    known = _plain(earlier.strip(_OPENERS + ",;:"))
    starter = _plain(stop.word) in _STARTERS
    if letter.islower() or known in _LETTERED or (letter == "I" and earlier[:1].islower()):
        return True
    if not earlier:
        return False
    if earlier[:1].isupper() or known in _INTRODUCERS or _small(stop.word):
        return starter
    return starter or letter in _GRADES or not stop.word


def _dotted_ends(shortened: str, stop: _Stop) -> bool:
    """A word with points inside: "6 a.m." ends before most words, "the U.S." only before one that begins sentences."""
    if shortened in ("a.m", "p.m"):
        early = stop.opens and len(stop.words) <= 3 and _plain(stop.words[0]) in _DAYTIMES
        return not early and _plain(stop.word) not in _CALENDAR
    return not stop.word or _plain(stop.word) in _STARTERS


def _whole_word(token: str, shortened: str) -> bool:
    """Whether a sentence in small letters may begin after this word: hasty typing, and no abbreviation."""
    if shortened in _SHORTENED or shortened in _COUNTING or "." in token:
        return False
    return token[-1:].isdigit() or len(token) >= 4 or not token[-1:].isalnum()
