"""The keys of what is filmed and of what is shown on it."""

from __future__ import annotations

from scriptkit import model
from scriptkit.reading.shapes import Field, Listed, Record
from scriptkit.reading.values import Choice, Colour, Flag, Number, Words

SHOT = Record(
    model.Shot,
    {
        "size": Field(Choice("size of shot", model.SIZES), "how close"),
        "plane": Field(Choice("plane", model.PLANES), "from where"),
        "of": Field(Words(), "what is seen"),
        "reps": Field(Number(0, 1000, whole=True), "repetitions"),
        "place": Field(Words(), "where it is filmed"),
        "kit": Field(Listed(Words()), "what is needed"),
        "form": Field(Choice("form", model.FORMS), "which form is shown"),
        "phase": Field(Choice("phase", model.PHASES), "where the movement starts or ends, held"),
        "label": Field(Words(), "words on screen as long as the shot lasts"),
        "angle": Field(Words(), "height of the camera"),
        "move": Field(Choice("move", model.MOVES), "movement of the camera"),
        "lens": Field(Words(), "focal length"),
        "fps": Field(Words(), "frames a second as filmed"),
        "shutter": Field(Words(), "shutter, as in 1/100"),
        "sound": Field(Choice("sound", model.SOUNDS), "with the picture, apart from it, or none"),
        "tempo": Field(Words(), "seconds down-hold-up"),
        "people": Field(Listed(Words()), "who is in it"),
        "wear": Field(Words(), "what they have on"),
        "load": Field(Words(), "weight"),
        "priority": Field(Choice("priority", model.PRIORITIES), "how much it is needed"),
        "takes": Field(Number(1, 100, whole=True), "how often it is filmed"),
        "minutes": Field(Number(0, 600), "minutes to set it up"),
        "safety": Field(Words(), "what to mind while filming"),
        "note": Field(Words(), "anything else for the day"),
    },
)
CARDS = Record(
    model.CardLook,
    {
        "text": Field(Colour(), "colour of the words on screen"),
        "ground": Field(Colour(), "colour behind them"),
        "citations": Field(Flag(), "whether a number that is spoken gets a card with its source"),
    },
)
