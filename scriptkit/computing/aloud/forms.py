"""Written forms that are not spoken as they look: signs, grades, codes, links, addresses and shortened words."""

import re
from functools import lru_cache

from scriptkit.computing.aloud import numerals
from scriptkit.computing.aloud.amounts import spoken_amount
from scriptkit.computing.aloud.measures import ALONE, per, unit
from scriptkit.computing.aloud.moments import Spoken, earlier_word

_SHORT = {
    "e.g.": "for example", "i.e.": "that is", "vs.": "versus", "vs": "versus", "etc.": "et cetera",
    "approx.": "approximately",
    "dr.": "Doctor", "mr.": "Mister", "mrs.": "Missus", "ms.": "Miz", "prof.": "Professor", "et al.": "and colleagues",
    "w/": "with", "w/o": "without", "no.": "number", "nos.": "numbers", "fig.": "figure", "figs.": "figures",
    "incl.": "including",
    "and/or": "and or",
}  # fmt: skip
_COUNTING = ("no.", "nos.", "fig.", "figs.", "w/")  # each has its own condition in the pattern
_SIGNS = {
    "+/-": "plus or minus", "+/−": "plus or minus", "±": "plus or minus", "&": "and", "+": "plus", "=": "equals",
    "==": "equals",
    "~": "about", "≈": "about", "≃": "about", "<": "less than", ">": "more than", "<=": "at most", "≤": "at most",
    "⩽": "at most",
    ">=": "at least", "≥": "at least", "⩾": "at least", "≠": "is not", "!=": "is not", "->": "to", "→": "to",
    "=>": "to", "⇒": "to",
    "@": "at", "×": "times", "✕": "times", "÷": "divided by", "√": "the square root of", "∞": "infinity",
    "%": "percent",
    "°": "degrees", "№": "number", "§": "section", "²": "squared", "³": "cubed", "-": "minus", "−": "minus",
    "⁄": "over", "^": "to the power of",
}  # fmt: skip
GREEK = dict(
    zip(
        "αβγδεζηθικλνξπρστφχψωΓΔΘΛΞΠΣΦΨΩµμ",
        "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda nu xi pi rho sigma tau phi chi psi omega "
        "gamma delta theta lambda xi pi sigma phi psi ohm micro mu".split(),
        strict=True,
    )
)
_IN_LINKS = {
    ".": "dot", "/": "slash", "-": "dash", "_": "underscore", "@": "at", ":": "colon", "?": "question mark",
    "=": "equals", "&": "and",
    "#": "hash", "~": "tilde", "+": "plus", "%": "percent",
}  # fmt: skip
_ENDINGS = (
    "com|org|net|edu|gov|info|biz|io|co|me|tv|uk|us|ca|au|nz|ie|de|fr|nl|eu|app|dev|fit|shop|store|blog|example|test|"
    "yaml|yml|json|csv|md|txt|html|pdf|docx|xlsx|bib|ris|svg|png|jpg|jpeg|mp3|mp4|mov|wav|srt|vtt|py|zip"
)
LINK = (  # a host without a scheme is one only by its ending; each alternative is tried at word starts alone
    r"(?<![\w@])(?:https?://|www\.)(?=\w)[^\s<>\"“”]++"
    r"|(?<![\w./])(?:doi:[ ]?)?10\.\d{4,9}/[^\s<>\"“”]++"
    r"|(?<![\w.+-])[\w.+-]++@(?:[\w-]++\.)+\w++"
    rf"|(?<![\w.@/-])(?:[\w-]++\.)+(?:{_ENDINGS})(?![\w-]|\.\w)(?:/[^\s<>\"“”]*+)?"
)
_AFTER_SLASH = frozenset(
    "week day hour minute second month year set session side leg arm hand foot rep exercise muscle workout person "
    "kilo pound serving "
    "night lap round mile".split()
)
_USUAL = dict.fromkeys(map(ord, "‘’“”–—…\u00a0éèêëàâäáöóôüúïíñçß"))
_VOWELS = "AEIOUYaeiouy"


@lru_cache(maxsize=1)
def _telling() -> re.Pattern[str]:
    short = "|".join(re.escape(word) for word in (*_SHORT, *sorted(ALONE)) if word[0].isalpha() and "/" not in word)
    return re.compile(rf"[0-9@#&%/+=<>*^~|]|\w\.\w|(?<![\w-])[A-FS][-–](?!\w)|(?<!\w)(?i:{short})(?!\w)")


def is_usual(text: str) -> bool:
    """Whether a text has no characters but those of plain English: ASCII, curly quotes, dashes, accents."""
    return text.isascii() or text.translate(_USUAL).isascii()


@lru_cache(maxsize=1)
def _form() -> re.Pattern[str]:
    short = "|".join(re.escape(word) for word in sorted(_SHORT, key=len, reverse=True) if word not in _COUNTING)
    signs = "|".join(re.escape(sign) for sign in sorted(_SIGNS, key=len, reverse=True) if sign not in "-−")
    return re.compile(
        rf"""(?P<link>{LINK})
        |(?P<amount>(?<![\w.])(?:[$£€¥][ \u00a0]?)?\.?[0-9]|(?<=[A-Za-z])[$£€](?=[0-9])|[{"".join(numerals.GLYPHS)}])
        |(?P<grade>(?<![\w-])[A-FS][+\-−–](?![\w+\-−]))
        |(?P<code>(?<![\w.])[A-Za-z]++[0-9]\w*+)
        |(?P<short>(?<![\w.])(?i:w/(?!o\b)|(?:{short}|(?:nos?|figs?)\.(?=\s?[0-9]))(?!\w)))
        |(?P<alone>(?<![\w/.'’-])(?:{"|".join(sorted(ALONE, key=len, reverse=True))})(?![\w'’-]))
        |(?P<slash>(?<=\w)\s?/\s?(?=(?P<after>[^\W\d_]{{1,12}}))|(?<=[^\s/])/(?=[^\s/]))
        |(?P<hash>\#(?=\w))
        |(?P<minus>(?<![\w)\]%°.,])[-−](?=[$£€]?\.?[0-9]))
        |(?P<sign>{signs})
        |(?P<greek>(?<![\u0370-\u03ff])[{"".join(GREEK)}](?![\u0370-\u03ff]))""",
        re.VERBOSE,
    )


def spelled_out(text: str) -> str:
    """The text with every number, sign, unit, grade, code and link as it is spoken; all else stays as it is."""
    if is_usual(text) and not _telling().search(text):
        return text  # most sentences are spoken as they are written
    pieces: list[str] = []
    find, done, pos = _form().search, 0, 0
    while found := find(text, pos):
        spoken = _SPEAKERS[found.lastgroup or ""](found)
        if spoken is None:
            pos = found.end()  # no form after all; look on behind it
            continue
        _add(pieces, text[done : found.start()])
        _add(pieces, spoken[0])
        done = pos = spoken[1]
    _add(pieces, text[done:])
    return "".join(pieces)


def _add(pieces: list[str], piece: str) -> None:
    """Puts a piece behind the others, with a space where two words would run together."""
    if not piece:
        return
    if pieces and piece[0].isalnum() and pieces[-1][-1].isalnum():
        pieces.append(" ")
    pieces.append(piece)


def _link(found: re.Match[str]) -> Spoken:
    written = found[0].rstrip(".,;:!?'’…)]}*_")
    end = found.start() + len(written)
    for start in ("https://", "http://", "doi:", "www."):
        if written.lower().startswith(start):
            written = written[len(start) :].lstrip()
    parts = re.findall(r"[0-9]+|[^\W\d_]+|[^\s\w]|_|\d", written.rstrip("/"))
    return " ".join(_IN_LINKS.get(part) or (_digits(part, 2) if part.isdigit() else part) for part in parts), end


def _amount(found: re.Match[str]) -> Spoken | None:
    return spoken_amount(found.string, found.start())


def _grade(found: re.Match[str]) -> Spoken:
    return f"{found[0][0]} {'plus' if found[0][1] == '+' else 'minus'}", found.end()


def _code(found: re.Match[str]) -> Spoken:
    return spelled_code(found[0]), found.end()


def spelled_code(word: str) -> str:
    """A code as it is read: "HILL10" "HILL ten", "QX7" "Q X seven"; capitals that make no word are spelled."""
    parts = re.findall(r"[0-9]+|[^\W\d_]+", word)
    return " ".join(_digits(part, 4) if part.isdigit() else _capitals(part) for part in parts)


def _digits(part: str, longest: int) -> str:
    """The digits of a code or link: a year as a year, up to so many digits as a number, more of them one by one."""
    if not part.isascii():
        return part
    if len(part) == 4 and "1900" <= part <= "2099":
        return numerals.year(part)
    return numerals.spelled(part) if len(part) > longest else numerals.whole(part)


def _capitals(part: str) -> str:
    return " ".join(part) if part.isupper() and part.isascii() and not is_word(part) else part


def is_word(capitals: str) -> bool:
    """Whether capitals can be read as a word: four letters at least, a vowel, and no four consonants in a row."""
    if len(capitals) < 4:
        return False
    shape = "".join("v" if letter in _VOWELS else "c" for letter in capitals[:40])
    return "v" in shape and "cccc" not in shape and not shape.startswith("ccc") and not shape.endswith("cccc")


def _short(found: re.Match[str]) -> Spoken:
    """A shortened word in full; one that ends the text keeps its point."""
    written = " ".join(found[0].lower().split())
    last = written in ("etc.", "et al.") and not found.string[found.end() : found.end() + 3].strip()
    return _SHORT[written] + ("." if last else ""), found.end()


def _alone(found: re.Match[str]) -> Spoken:
    one = earlier_word(found.string, found.start()) in ("one", "a", "an", "per", "each", "every")
    return unit(found[0], one=one) or found[0], found.end()


def _slash(found: re.Match[str]) -> Spoken:
    """A slash between words: "sets/week" "sets per week", "N/A" "N A", others "slash"."""
    word = found["after"] or ""
    if word.lower() in _AFTER_SLASH or (unit(word, one=True) and (len(word) > 1 or word in "smhL")):
        return f" per {per(word)}", found.end() + len(word)
    before = found.string[max(0, found.start() - 2) : found.start()]
    single = len(word) == 1 and not before[:-1].isalnum()
    return (" " if single else " slash "), found.end()


def _hash(found: re.Match[str]) -> Spoken:
    return ("number" if found.string[found.end()].isdigit() else "hashtag"), found.end()


def _minus(found: re.Match[str]) -> Spoken:
    return "minus", found.end()


def _sign(found: re.Match[str]) -> Spoken:
    return _SIGNS[found[0]], found.end()


def _greek(found: re.Match[str]) -> Spoken:
    return GREEK[found[0]], found.end()


_SPEAKERS = {
    "link": _link, "amount": _amount, "grade": _grade, "code": _code, "short": _short, "alone": _alone,
    "after": _slash, "slash": _slash, "hash": _hash, "minus": _minus, "sign": _sign, "greek": _greek,
}  # fmt: skip
