"""The units that people speak and registers hold: what each measures, and how many of a base unit it is."""

from __future__ import annotations

UNITS: dict[str, tuple[str, float]] = {}  # a unit's name: what it measures, and how many of its base unit it is
for _family, _row in {
    "length": "mm millimetre millimeter 1 cm centimetre centimeter 10 m metre meter 1000 km kilometre kilometer 1e6 "
    "inch inche 25.4 foot feet 304.8 yard 914.4 mile 1609344",
    "mass": "mg milligram 0.001 g gram gramme 1 kg kilo kilogram kilogramme 1000 lb pound 453.592 oz ounce 28.3495 "
    "ton tonne 1e6",
    "volume": "ml millilitre milliliter cc 1 cl 10 dl 100 l litre liter 1000",
    "short": "ms millisecond 0.001 s sec second 1 min minute 60 h hr hour 3600",
    "long": "day 1 wk week 7 month 30.44 yr year 365.25",
    "percent": "% percent pct 1",
    "angle": "degree deg 1",
    "force": "n newton 1 kn kilonewton 1000",
    "torque": "nm 1",
    "power": "w watt 1 kw kilowatt 1000",
    "pace": "bpm beat 1",
    "ratio": "time fold x 1",
    "points": "point 1",
}.items():
    _names: list[str] = []
    for _word in _row.split():
        if _word[0].isdigit():
            UNITS |= dict.fromkeys(_names, (_family, float(_word)))
            _names = []
        else:
            _names.append(_word)
IMPERIAL = frozenset("inch inche foot feet yard mile lb pound oz ounce".split())
UNITS_FAMILIES = frozenset(family for family, _ in UNITS.values())
SHARED = UNITS_FAMILIES | {"people", "cubic", "square"}  # passed on from the second number to the first
