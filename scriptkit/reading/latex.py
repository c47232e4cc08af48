"""The words of a text that was written for TeX: accents, signs, dashes, and without braces and commands."""

from __future__ import annotations

import re
import unicodedata

_ACCENTS = {
    "`": "\u0300", "'": "\u0301", "^": "\u0302", "~": "\u0303", '"': "\u0308", "=": "\u0304", ".": "\u0307",
    "u": "\u0306", "v": "\u030c", "H": "\u030b", "c": "\u0327", "k": "\u0328", "r": "\u030a", "b": "\u0331",
    "d": "\u0323", "t": "\u0361",
}  # fmt: skip
_SIGNS = {
    "ss": "ß", "o": "ø", "O": "Ø", "l": "ł", "L": "Ł", "ae": "æ", "AE": "Æ", "oe": "œ", "OE": "Œ", "aa": "å",
    "AA": "Å", "i": "ı", "j": "ȷ", "dh": "ð", "DH": "Ð", "th": "þ", "TH": "Þ", "dj": "đ", "DJ": "Đ",
    "textendash": "–", "textemdash": "—", "textquoteright": "’", "textquoteleft": "‘", "textquotesingle": "'",
    "textquotedblleft": "“", "textquotedblright": "”", "textdegree": "°", "degree": "°", "textregistered": "®",
    "texttrademark": "™", "copyright": "©", "ldots": "…", "dots": "…", "textellipsis": "…", "textbackslash": "\\",
    "textasciitilde": "~", "textunderscore": "_", "S": "§", "pm": "±", "times": "×", "cdot": "·", "leq": "≤",
    "geq": "≥", "le": "≤", "ge": "≥", "neq": "≠", "approx": "≈", "sim": "~", "circ": "°", "infty": "∞", "mu": "µ",
    "textmu": "µ", "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "Delta": "Δ", "epsilon": "ε", "kappa": "κ",
    "lambda": "λ", "omega": "ω", "phi": "φ", "psi": "ψ", "rho": "ρ", "sigma": "σ", "tau": "τ", "theta": "θ",
}  # fmt: skip
_TEX = re.compile(
    r"""\\([`'^"~=.])\ {0,3}\{?\ {0,3}(\\[ij](?![A-Za-z])|[A-Za-z])\}?"""  # accents with a sign
    r"""|\\([uvHckrbdt])(?![A-Za-z])\ {0,3}\{?\ {0,3}(\\[ij](?![A-Za-z])|[A-Za-z])\}?"""  # accents with a letter
    r"""|\\([A-Za-z]+)[\ \t\n]{0,3}(?:\{\})?"""  # signs and commands
    r"""|\\(.)"""  # escaped
    r"""|(---?|``|''|[~{}$])""",
    re.VERBOSE | re.DOTALL,
)
_PIECES = {"--": "–", "---": "—", "``": "“", "''": "”", "~": " ", "{": "", "}": "", "$": ""}


def words(text: str) -> str:
    """The words of a TeX text, on one line."""
    if any(sign in text for sign in "\\{}~$`'-"):
        text = unicodedata.normalize("NFC", _TEX.sub(_plain, text))
    return " ".join(text.split())


def _plain(found: re.Match[str]) -> str:
    sign, over, letter_sign, over_letter, command, escaped, piece = found.groups()
    if piece is not None:
        return _PIECES[piece]
    if command is not None:
        return _SIGNS.get(command, "")
    if escaped is not None:
        return " " if escaped.isspace() or escaped in ",;:!/" else escaped.replace("-", "")
    base = (over or over_letter).replace("\\", "")
    return base + _ACCENTS[sign or letter_sign]


def verbatim(text: str) -> str:
    """An identifier or address: only what TeX made the author escape is taken away."""
    if "\\" not in text and "{" not in text:
        return text.strip()
    return re.sub(r"\\([_%&#$~{}\\])|[{}]", lambda found: found[1] or "", text).strip()
