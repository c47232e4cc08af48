"""Whether words on screen can be told from what is behind them (WCAG 2.2)."""

from __future__ import annotations

from scriptkit.model import CardLook, Look

TEXT, GROUND = "#FFFFFF", "#1C1F1E"  # where nobody says otherwise


def look(asked: CardLook) -> Look:
    """The colours of the words on screen and of their ground, and the contrast of the two."""
    text, ground = str(asked.text).strip() or TEXT, str(asked.ground).strip() or GROUND
    return Look(text, ground, contrast(text, ground))


def contrast(text: str, ground: str) -> float:
    """The contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    lighter, darker = sorted((_luminance(text), _luminance(ground)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    digits = colour.strip().lstrip("#")
    digits = "".join(sign * 2 for sign in digits) if len(digits) == 3 else digits
    parts = (int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
