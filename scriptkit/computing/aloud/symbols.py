"""Finds signs and symbols that a presenter cannot read aloud from a prompter."""

import re
from functools import lru_cache

from scriptkit.computing.aloud.forms import GREEK, is_usual

_WORDS = {
    "+/-": "plus or minus", "+/−": "plus or minus", "±": "plus or minus", "×": "times, or by", "✕": "times, or by",
    "✖": "times, or by",
    "~": "about", "≈": "about", "≃": "about", "<": "less than, or under", ">": "more than, or over", "<=": "at most",
    "≤": "at most",
    "⩽": "at most", ">=": "at least", "≥": "at least", "⩾": "at least", "=": "is, or equals", "==": "is, or equals",
    "≠": "is not",
    "!=": "is not", "→": "to, or leads to", "->": "to, or leads to", "-->": "to, or leads to", "=>": "to, or leads to",
    "⇒": "to, or leads to", "←": "from", "<-": "from", "↑": "rises", "↓": "falls", "^": "to the power of", "@": "at",
    "&": "and", "+": "plus, or and", "#": "number", "№": "number", "%": "percent", "‰": "per mille", "°": "degrees",
    "w/": "with",
    "w/o": "without", "²": "squared", "³": "cubed", "÷": "divided by", "√": "the square root of", "∞": "without end",
    "−": "minus",
    "$": "dollars", "£": "pounds", "€": "euros", "¥": "yen", "§": "section",
}  # fmt: skip
_LEAVE_OUT = {
    "|": "an upright bar", "\\": "a backslash", "{": "a curly bracket", "}": "a curly bracket", "_": "an underscore",
    "*": "an asterisk",
    "`": "a backtick", "™": "a trade mark sign", "®": "a trade mark sign", "©": "a copyright sign", "†": "a dagger",
    "‡": "a dagger",
    "•": "a bullet", "‣": "a bullet", "·": "a dot in the middle", "▪": "a bullet", "◦": "a bullet", "●": "a bullet",
    "¶": "a paragraph sign",
}  # fmt: skip
_LOST = "\ufffd"

_SIGN = (
    r"\+/[-−]|w/o(?!\w)|w/|-{1,2}>|=>|<-(?!\d)|<=|>=|==|!="
    r"|[&×✕✖±~≈≃<>=≤≥⩽⩾≠^|\\{}_*`#@²³¹⁰⁴-⁹₀-₉™®©†‡•‣▪◦●·¶§÷√∞№‰]"
    r"|(?<![0-9½¼¾][ \u00a0])(?<![0-9½¼¾])[%°]"
    r"|(?<![0-9])(?<![0-9] )[$£€¥](?![ \u00a0]?\.?[0-9])"
    r"|(?<=[^\W\d_])[ ]?/[ ]?(?=[^\W\d_])"
    r"|(?<=\s)\+(?=\s)|(?<=[^\W\d_])\+(?=[^\W\d_])"
    r"|(?<!\w)−(?!\d)"
)
_ADDRESS = (
    r"(?<![\w@])(?:https?://|www\.)\S++|(?<![\w./])(?:doi:)?10\.\d{4,9}/\S++|(?<![\w.+-])[\w.+-]++@[\w-]++\.[\w.-]++"
    r"|(?<![\w.@/-])[\w-]++(?:\.[\w-]++)+(?:/[^\s<>\"“”]*+)?|(?<![\w@])@\w[\w.]*+"
)
_PICTURES = (
    "[\u2190-\u21ff\u2200-\u22ff\u2300-\u23ff\u2460-\u24ff\u2500-\u27bf\u27f0-\u27ff\u2900-\u2bff\u3000-\u3004\ue000-\uf8ff\ufffd"
    "\U0001f000-\U0001faff]"
)


_TELLING = "&+=~<>^|\\{}_*`#@%$/"  # nothing is found in plain English without one of them


@lru_cache(maxsize=1)
def _finder() -> re.Pattern[str]:
    greek = "".join(GREEK)
    letters = r"\u0370-\u03ff\u1f00-\u1fff"
    return re.compile(
        rf"(?P<link>{_ADDRESS})|(?P<greek>(?<![{letters}])[{greek}](?![{letters}]))"
        rf"|(?P<picture>{_PICTURES}(?:{_PICTURES[:-1]}\ufe0f\u200d\u20e3])*)|(?P<sign>{_SIGN})"
    )


def unsayable(text: str) -> list[tuple[int, int, str]]:
    """Start, end and hint of each sign that has no reading of its own, in order.

    Links, addresses, handles and codes are left alone, and so are percent, degree and currency signs with a number.
    """
    if is_usual(text) and not any(sign in text for sign in _TELLING):
        return []
    found: list[tuple[int, int, str]] = []
    for match in _finder().finditer(text):
        if match.lastgroup == "link":
            continue
        start, end, written = match.start(), match.end(), match[0]
        lead = len(written) - len(written.lstrip(" "))
        if (
            found
            and match.lastgroup == "sign"
            and found[-1][1] == start
            and text[start - 1] == written == text[end - 1]
        ):
            found[-1] = (found[-1][0], end, found[-1][2])  # "***" is one thing to mend
            continue
        found.append((start + lead, start + len(written.rstrip(" ")), _hint(written.strip(" "), match.lastgroup or "")))
    return found


def _hint(written: str, kind: str) -> str:
    if kind == "greek":
        return f"write it out: {GREEK[written]}"
    if written in _WORDS:
        return f"write it out: {_WORDS[written]}"
    if written in _LEAVE_OUT:
        return f"leave it out: {_LEAVE_OUT[written]} has no sound"
    if written == "/":
        return "write it out: and, or, or per"
    if _LOST in written:
        return "a letter was lost here: type it again"
    if kind == "picture":
        return "leave it out: a picture or arrow has no sound"
    return "write it out in words: a raised or lowered figure has no sound"
