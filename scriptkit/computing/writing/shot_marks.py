"""The grammar of the shot mark: `CU side fault: heel below the ledge; reps 3; at rack; kit step`."""

from __future__ import annotations

import re
from collections.abc import Sequence

from scriptkit.model import FORMS, MOVES, PHASES, PLANES, PRIORITIES, SIZES, SOUNDS, Mark, Shot, Spot
from scriptkit.model.base import OTHER_NAMES
from scriptkit.wording import near

HEADS = {"size": SIZES, "plane": PLANES, "form": FORMS, "phase": PHASES}
CHOICES = {"move": MOVES, "sound": SOUNDS, "priority": PRIORITIES}
LISTS = ("kit", "people")
NUMBERS = {"reps": (0, 1000), "takes": (1, 100), "minutes": (0, 600)}  # the least and the most
WORDS = ("label", "angle", "lens", "fps", "shutter", "tempo", "wear", "load", "safety", "note")
PARTS = (
    "reps, at, kit, label, angle, move, lens, fps, shutter, sound, tempo, people, wear, load, priority, takes, "
    "minutes, safety or note, and what it is, as in `reps 3; at rack; kit step`"
)


def read(mark: Mark, rest: str) -> Mark | str:
    """The mark with its shot, or what is wrong with it; all parts may be left out, though not all at once."""
    head, _, tail = rest.partition(":")
    fields: dict[str, object] = {}
    for word in head.replace(",", " ").split():
        meant = {key: one for key, known in HEADS.items() if (one := _one_of(word, known))}
        if not meant:
            return _no_such(word)
        fields |= meant
    parts = [part.strip() for part in tail.split(";")]
    fields["of"] = parts[0]
    for part in parts[1:]:
        key, _, value = part.partition(" ")
        trouble = _part(fields, key.lower(), value.strip(), part) if part else ""
        if trouble:
            return trouble
    if not any(fields.values()):
        return "it says nothing: `[shot CU side: heel below the ledge]`"
    return mark._replace(shot=Shot(at=Spot(mark.place), **fields), text=parts[0])  # type: ignore[arg-type]


def _one_of(word: str, known: Sequence[str]) -> str:
    """The word as we spell it; nothing where it is none of them."""
    return next((one for one in known if one.lower() == word.lower()), "")


def _no_such(word: str) -> str:
    meant = OTHER_NAMES.get(word.lower()) or near(word, (one for known in HEADS.values() for one in known))
    *most, last = (f"{key} ({', '.join(known)})" for key, known in HEADS.items())
    return f"`{word}` is no {', '.join(most)} or {last}" + (f"; did you mean {meant}?" if meant else "")


def _part(fields: dict[str, object], key: str, value: str, part: str) -> str:
    """Put one part behind a semicolon into the fields; what is wrong with it, or nothing."""
    if key == "at":
        fields["place"] = value
    elif key in NUMBERS:
        least, most = NUMBERS[key]
        wanted = r"[0-9]{1,4}(?:\.[0-9]{1,2})?" if key == "minutes" else r"[0-9]{1,4}"
        if not re.fullmatch(wanted, value) or not least <= float(value) <= most:
            what = "a number of minutes" if key == "minutes" else "a whole number"
            return f"`{part}` needs {what} from {least} to {most}: `{key} 3`"
        fields[key] = float(value) if key == "minutes" else int(value)
    elif key in LISTS and value:
        fields[key] = tuple(one.strip() for one in value.split(",") if one.strip())
    elif key in CHOICES:
        fields[key] = _one_of(value, CHOICES[key])
        return "" if fields[key] else f"`{value}` is none of {', '.join(CHOICES[key])}"
    elif key in WORDS and value:
        fields[key] = value
    else:
        return f"`{part}` is not understood: behind a semicolon stands {PARTS}"
    return ""
