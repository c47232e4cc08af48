"""The rough cut as FCPXML 1.9."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from xml.sax.saxutils import escape

from scriptkit import timecode
from scriptkit.rendering.cut import Clip, Cut, Marker

# the names that the format has for pictures of 1920 by 1080
_FORMATS = {"23.976": "2398", "29.97": "2997", "59.94": "5994"}
_QUOTES = {'"': "&quot;"}


def fcpxml(cut: Cut) -> bytes:
    """timeline.fcpxml: an asset a set-up, whose file is still to come, and a clip of it for each shot.

    Every time is counted as timecode is, in the sequence and in each asset, as if each camera had run all the time.
    """
    return "".join(f"{line}\n" for line in _lines(cut)).encode(errors="replace")


def _lines(cut: Cut) -> Iterator[str]:
    reels = {reel: f"r{number}" for number, reel in enumerate(dict.fromkeys(one.reel for one in cut.clips), 2)}
    counted = "DF" if timecode.drops(cut.rate) else "NDF"
    start, length = _time(cut, 0), _seconds(cut.length / cut.exact)
    yield '<?xml version="1.0" encoding="UTF-8"?>'
    yield "<!DOCTYPE fcpxml>"
    yield '<fcpxml version="1.9">'
    yield "  <resources>"
    yield _tag("    <format", _format(cut), "/>")
    for reel, name in reels.items():
        yield _tag("    <asset", {"id": name, "name": reel, "start": start, "duration": length, **_MEDIA}, ">")
        yield _tag("      <media-rep", {"kind": "original-media", "src": f"./{reel}.mov"}, "/>")
        yield "    </asset>"
    yield "  </resources>"
    yield "  <library>"
    yield _tag("    <event", {"name": cut.title}, ">")
    yield _tag("      <project", {"name": cut.title}, ">")
    sequence = {"format": "r1", "duration": length, "tcStart": start, "tcFormat": counted, **_SOUND}
    yield _tag("        <sequence", sequence, ">")
    yield "          <spine>"
    for clip, markers in cut.marked():
        yield from _clip(cut, clip, markers, {"ref": reels[clip.reel], "tcFormat": counted})
    yield "          </spine>"
    yield "        </sequence>"
    yield "      </project>"
    yield "    </event>"
    yield "  </library>"
    yield "</fcpxml>"


_MEDIA = {
    "format": "r1", "hasVideo": "1", "hasAudio": "1", "audioSources": "1", "audioChannels": "2", "audioRate": "48000",
}  # fmt: skip
_SOUND = {"audioLayout": "stereo", "audioRate": "48k"}


def _format(cut: Cut) -> dict[str, str]:
    written = cut.rate.removesuffix("df")
    return {
        "id": "r1",
        "name": f"FFVideoFormat1080p{_FORMATS.get(written, written)}",
        "frameDuration": _seconds(1 / cut.exact),
        "width": "1920",
        "height": "1080",
    }


def _clip(cut: Cut, clip: Clip, markers: list[Marker], more: dict[str, str]) -> Iterator[str]:
    start = _time(cut, clip.start)
    times = {"offset": start, "start": start, "duration": _seconds((clip.end - clip.start) / cut.exact)}
    inside = [f"              <note>{escape(remark)}</note>" for remark in ["; ".join(clip.remarks)] if remark]
    frame = _seconds(1 / cut.exact)
    for one in markers:
        told = {"start": _time(cut, one.start), "duration": frame, "value": one.name, "note": one.detail}
        inside.append(_tag("              <marker", told, "/>"))
    yield _tag("            <asset-clip", {"name": clip.name, **times, **more}, ">" if inside else "/>")
    yield from inside
    if inside:
        yield "            </asset-clip>"


def _time(cut: Cut, frame: int) -> str:
    """When a frame is shown, counted from that of 00:00:00:00."""
    return _seconds((cut.first + frame) / cut.exact)


def _seconds(value: Fraction) -> str:
    """Seconds as the format has them: a whole number, or an exact fraction."""
    return f"{value.numerator}/{value.denominator}s" if value.denominator > 1 else f"{value.numerator}s"


def _tag(name: str, attributes: dict[str, str], end: str) -> str:
    return name + "".join(f' {key}="{escape(value, _QUOTES)}"' for key, value in attributes.items()) + end
