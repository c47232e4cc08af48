"""Numbers in words: whole numbers, decimals, ordinals, years, decades and fractions, from their digits."""

_ONES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen"
).split()
_TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split()
_SCALES = (
    "- thousand million billion trillion quadrillion quintillion sextillion septillion octillion nonillion decillion"
).split()
_LONGEST = 3 * len(_SCALES)  # digits; a longer number is read digit by digit
_ORDINALS = {
    "one": "first", "two": "second", "three": "third", "five": "fifth", "eight": "eighth", "nine": "ninth",
    "twelve": "twelfth",
}  # fmt: skip
_NAMED_PARTS = {2: ("half", "halves"), 4: ("quarter", "quarters")}
_PAIRS = ((24, 7), (50, 50))  # said one after the other
_OUT_OF = (10, 20, 50, 100)  # "8/10" is a mark out of ten, not eight tenths
GLYPHS = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5), "⅘": (4, 5),
    "⅙": (1, 6), "⅚": (5, 6), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8), "⅐": (1, 7), "⅑": (1, 9), "⅒": (1,
    10),
}  # fmt: skip


def spelled(digits: str) -> str:
    """Digits one by one, "0123" as "zero one two three"."""
    return " ".join(_ONES[int(digit)] for digit in digits)


def _below_hundred(number: int) -> str:
    if number < 20:
        return _ONES[number]
    tens, ones = divmod(number, 10)
    return _TENS[tens] + (f"-{_ONES[ones]}" if ones else "")


def _below_thousand(number: int) -> str:
    hundreds, rest = divmod(number, 100)
    if not hundreds:
        return _below_hundred(rest)
    return f"{_ONES[hundreds]} hundred" + (f" and {_below_hundred(rest)}" if rest else "")


def whole(digits: str) -> str:
    """A whole number without a sign; with leading zeros or past the decillions it is read digit by digit."""
    if len(digits) > _LONGEST or (digits[0] == "0" and len(digits) > 1):
        return spelled(digits)
    number = int(digits)
    if number < 1000:
        return _below_thousand(number)
    parts: list[str] = []
    last = number % 1000
    rest, scale = number // 1000, 1
    while rest:
        rest, group = divmod(rest, 1000)
        if group:
            parts.append(f"{_below_thousand(group)} {_SCALES[scale]}")
        scale += 1
    parts.reverse()
    if last:
        parts.append(("and " if last < 100 else "") + _below_thousand(last))
    return " ".join(parts)


def bare(written: str) -> str:
    """A number without the commas or narrow spaces between its thousands."""
    return "".join(sign for sign in written if sign not in ",\u00a0\u202f\u2009")


def number(written: str) -> str:
    """A number as written, without a sign: "1,250", "3.5", ".05"; in "3.5.1" each part is a number of its own."""
    head, *tails = bare(written).split(".")
    said = [whole(head)] if head else []
    for tail in tails:
        said += ["point", spelled(tail) if len(tails) == 1 else whole(tail)]
    return " ".join(said)


def as_ordinal(said: str) -> str:
    """The ordinal of a whole number in words: "twenty-two" as "twenty-second"."""
    cut = max(said.rfind(" "), said.rfind("-")) + 1
    last = said[cut:]
    if last.endswith("y"):
        return f"{said[:-1]}ieth"
    return said[:cut] + _ORDINALS.get(last, f"{last}th")


def ordinal(digits: str) -> str:
    """A whole number as an ordinal, "22" as "twenty-second"."""
    return as_ordinal(whole(digits))


def year(digits: str) -> str:
    """Four digits as a year: 1905 "nineteen oh five", 2005 "two thousand five", 2021 "twenty twenty-one"."""
    century, rest = int(digits[:2]), int(digits[2:])
    if century % 10 == 0 and rest < 10:
        return whole(str(century * 100)) + (f" {_ONES[rest]}" if rest else "")
    if rest == 0:
        return f"{_below_hundred(century)} hundred"
    return f"{_below_hundred(century)} {'oh ' if rest < 10 else ''}{_below_hundred(rest)}"


def decade(digits: str) -> str:
    """The years of a decade: "1990" as "nineteen nineties", "30" as "thirties"."""
    said = year(digits) if len(digits) == 4 else whole(digits)
    return f"{said[:-1]}ies" if said.endswith("y") else f"{said}s"


def _parts(top: int, under: int) -> str:
    one, many = _NAMED_PARTS.get(under) or (ordinal(str(under)), f"{ordinal(str(under))}s")
    return f"{whole(str(top))} {one if top == 1 else many}"


def fraction(top: str, under: str) -> str:
    """Two numbers with a slash: 3/4 "three quarters", 8/10 "eight out of ten", 120/80 "... over eighty"."""
    over, below = int(top), int(under)
    if (over, below) in _PAIRS:
        return f"{whole(top)} {whole(under)}"
    if below in _OUT_OF and over <= below:
        return f"{whole(top)} out of {whole(under)}"
    if 2 <= below <= 32 and over < 2 * below:
        return _parts(over, below)
    return f"{whole(top)} over {whole(under)}"


def mixed(head: str, top: int, under: int) -> str:
    """A number and a fraction, "1" and 1/2 as "one and a half"; with an empty head the fraction alone."""
    part = _parts(top, under)
    if not head:
        return part
    article = ("an" if under in (8, 11, 18) else "a") + part[3:] if top == 1 else part
    return f"{number(head)} and {article}"
