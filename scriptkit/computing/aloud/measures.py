"""Units, currencies and what comes after "per", as they are spoken."""

from scriptkit.computing.aloud.numerals import number

_NAMES = {
    "kg": "kilogram", "kgs": "kilogram", "g": "gram", "mg": "milligram", "µg": "microgram", "μg": "microgram",
    "mcg": "microgram",
    "lb": "pound", "lbs": "pound", "oz": "ounce", "mm": "millimeter", "cm": "centimeter", "m": "meter",
    "km": "kilometer",
    "in": "inch", "ft": "foot", "yd": "yard", "yds": "yard", "mi": "mile", "ml": "milliliter", "mL": "milliliter",
    "ML": "milliliter",
    "l": "liter", "L": "liter", "dl": "deciliter", "dL": "deciliter", "cl": "centiliter", "tbsp": "tablespoon",
    "tsp": "teaspoon",
    "ms": "millisecond", "msec": "millisecond", "s": "second", "sec": "second", "secs": "second", "min": "minute",
    "mins": "minute",
    "h": "hour", "hr": "hour", "hrs": "hour", "wk": "week", "wks": "week", "mo": "month", "mos": "month",
    "yr": "year", "yrs": "year",
    "Hz": "hertz", "kHz": "kilohertz", "MHz": "megahertz", "W": "watt", "kW": "kilowatt", "V": "volt",
    "mV": "millivolt",
    "µV": "microvolt", "μV": "microvolt", "J": "joule", "kJ": "kilojoule", "cal": "calorie", "cals": "calorie",
    "kcal": "kilocalorie",
    "kcals": "kilocalorie", "N": "newton", "kN": "kilonewton", "Nm": "newton meter", "N·m": "newton meter",
    "Pa": "pascal",
    "kPa": "kilopascal", "MPa": "megapascal", "mmol": "millimole", "nmol": "nanomole", "°": "degree", "º": "degree",
    "deg": "degree",
    "µm": "micrometer", "μm": "micrometer", "fps": "frame per second", "bpm": "beat per minute",
    "rpm": "revolution per minute",
    "spm": "step per minute", "mph": "mile per hour", "kph": "kilometer per hour", "kmh": "kilometer per hour",
    "mmHg": "millimeter of mercury", "°C": "degree Celsius", "°F": "degree Fahrenheit", "ºC": "degree Celsius",
    "ºF": "degree Fahrenheit",
    "rep": "rep", "reps": "rep", "kgf": "kilogram force", "GB": "gigabyte", "MB": "megabyte", "cc": "cubic centimeter",
}  # fmt: skip
_MANY = {"inch": "inches", "foot": "feet", "hertz": "hertz", "kilohertz": "kilohertz", "megahertz": "megahertz"}
_POWERS = {"2": "square", "²": "square", "^2": "square", "3": "cubic", "³": "cubic", "^3": "cubic"}
_LENGTHS = ("mm", "cm", "m", "km", "in", "ft")
# Units that can be nothing else, so that they are written out even without a number before them.
ALONE = frozenset("kg mg mcg lbs mm cm km ml mL dL kcal kJ Hz kHz Nm mmHg bpm rpm mph".split())

MONEY = {
    "$": ("dollar", "dollars", "cent", "cents"),
    "£": ("pound", "pounds", "penny", "pence"),
    "€": ("euro", "euros", "cent", "cents"),
    "¥": ("yen", "yen", "sen", "sen"),
}
AMOUNTS = {
    "k": "thousand", "K": "thousand", "m": "million", "M": "million", "bn": "billion", "B": "billion", "b": "billion",
    "million": "million", "billion": "billion", "trillion": "trillion", "thousand": "thousand",
}  # fmt: skip


def unit(symbol: str, *, one: bool) -> str | None:
    """A unit in words, "kg" "kilograms", "cm²" "square centimeters"; None where the symbol is no unit."""
    name = _NAMES.get(symbol)
    if name is not None:
        return name if one else plural(name)
    for mark, power in _POWERS.items():
        if symbol.endswith(mark) and symbol[: -len(mark)] in _LENGTHS:
            name = _NAMES[symbol[: -len(mark)]]
            return f"{power} {name if one else plural(name)}"
    return None


def plural(name: str) -> str:
    """The plural of a unit's name: "beat per minute" as "beats per minute", "foot" as "feet"."""
    for joint in (" per ", " of ", " Celsius", " Fahrenheit", " force"):
        head, found, rest = name.partition(joint)
        if found:
            return plural(head) + found + rest
    return _MANY.get(name) or f"{name}s"


def per(symbol: str) -> str:
    """What stands after a slash: "week" as it is, "kg" as "kilogram"."""
    if symbol[-1:] == "²" and (name := unit(symbol[:-1], one=True)) and symbol[:-1] not in _LENGTHS:
        return f"{name} squared"
    return unit(symbol, one=True) or symbol


def money(sign: str, written: str, amount: str, said: str) -> str:
    """A sum of money, "$" and "5.50" as "five dollars and fifty cents".

    `said` is the number in words, `amount` a word such as "million", or empty.
    """
    one, many, small_one, small_many = MONEY[sign]
    if amount:
        return f"{said} {amount} {many}"
    head, point, cents = written.partition(".")
    if point and len(cents) == 2 and cents.isdigit():
        small = "" if cents == "00" else f"{number(cents.lstrip('0'))} {small_one if cents == '01' else small_many}"
        big = "" if head in ("", "0") and small else f"{number(head or '0')} {one if head == '1' else many}"
        return f"{big} and {small}" if big and small else big or small
    return f"{said} {one if written == '1' else many}"
