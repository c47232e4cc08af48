"""Times as caption files write them, in seconds."""

from __future__ import annotations

import re

MOST_SECONDS = 3_600_000.0  # a thousand hours; camera clocks start at up to 24
TIME = r"-?(?:\d{1,6}:)?\d{1,3}:\d{1,3}(?:[.,:;][ ]?\d{1,9})?"
_PARTS = re.compile(r"(-?)(?:(\d{1,6}):)?(\d{1,3}):(\d{1,3})(?:[.,][ ]?(\d{1,9}))?")


def seconds(written: str) -> float | None:
    """Seconds of `00:01:02.500`, `01:02,5` or `100:01:02.500`; None where it is no time, or one nobody records."""
    found = _PARTS.fullmatch(written.strip())
    if not found:
        return None
    sign, hours, minutes, whole, part = found.groups()
    value = int(hours or 0) * 3600 + int(minutes) * 60 + int(whole) + (int(part) / 10 ** len(part) if part else 0.0)
    return None if value > MOST_SECONDS else round(-value if sign else value, 3)
