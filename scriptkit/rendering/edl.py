"""The rough cut as a CMX 3600 edit decision list."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit import timecode
from scriptkit.rendering.cut import COLOURS, Clip, Cut, Marker

TITLE = 70  # characters of the title line, its word left out
LONGEST = 80  # characters of a comment that others than us fill


def edl(cut: Cut) -> bytes:
    """timeline.edl: an event a clip. Its source is counted like the cut, as if each camera had run all the time.

    Readers know no comment before the first event, so the rate, which the format has no line for, ends the title.
    """
    rate = f" ({cut.rate.removesuffix('df')} fps)"
    lines = [
        f"TITLE: {_shortened(cut.title, TITLE - len(rate))}{rate}",
        f"FCM: {'DROP FRAME' if timecode.drops(cut.rate) else 'NON-DROP FRAME'}",
        "",
    ]
    for number, (clip, markers) in enumerate(cut.marked(), 1):
        lines += _event(cut, number, clip, markers)
    return ("\n".join(lines).rstrip("\n") + "\n").encode(errors="replace")


def _event(cut: Cut, number: int, clip: Clip, markers: list[Marker]) -> Iterator[str]:
    """The lines of a clip. Behind event 999 comes 1000, in the same columns: a cut that ended there would be short."""
    span = f"{cut.timecode(clip.start)} {cut.timecode(clip.end)}"
    yield f"{number:03}".ljust(5) + f"{clip.reel:<8} V     C        {span} {span}"
    yield f"* FROM CLIP NAME:  {_shortened(clip.name, LONGEST)}"
    for remark in clip.remarks:
        yield f"* NOTE: {remark}"
    for one in markers:
        yield f"* LOC: {cut.timecode(one.start)} {COLOURS[one.kind]:<7} {_shortened(one.name, LONGEST)}"


def _shortened(text: str, longest: int) -> str:
    return text if len(text) <= longest else f"{text[: longest - 3].rstrip()}..."
