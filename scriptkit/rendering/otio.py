"""The rough cut as OpenTimelineIO has it."""

from __future__ import annotations

from scriptkit import timecode
from scriptkit.rendering import sheets
from scriptkit.rendering.cut import COLOURS, Clip, Cut, Marker
from scriptkit.rendering.rows import Row


def otio(cut: Cut) -> bytes:
    """timeline.otio: one track of clips whose media is missing, and the markers on the timeline.

    A source is counted like the cut, as if each camera had run all the time. Rates are the floats that the format asks
    for; the exact one stands in the metadata.
    """
    metadata = {
        "rate": cut.rate,
        "frames_per_second": f"{cut.exact.numerator}/{cut.exact.denominator}",
        "drop_frame": timecode.drops(cut.rate),
        "start_timecode": cut.timecode(0),
    }
    track = {**_named("Track.1", "V1"), **_plain(), "kind": "Video", "children": [_clip(cut, one) for one in cut.clips]}
    stack = {**_named("Stack.1", "tracks"), **_plain([_marker(cut, one) for one in cut.markers]), "children": [track]}
    timeline = {
        **_named("Timeline.1", cut.title, {"scriptkit": metadata}),
        "global_start_time": _time(cut, cut.first),
        "tracks": stack,
    }
    return sheets.to_json(timeline)


def _clip(cut: Cut, clip: Clip) -> Row:
    # a Clip.1 is read by every version, a Clip.2 by those since 0.15
    told = {"shot": clip.shot.number, "setup": clip.shot.setup, "segment": clip.shot.segment}
    if clip.remarks:
        told["remarks"] = list(clip.remarks)
    media = {**_named("MissingReference.1", clip.reel), "available_range": _range(cut, cut.first, cut.length)}
    return {
        **_named("Clip.1", clip.name, {"scriptkit": told, "cmx_3600": {"reel": clip.reel}}),
        **_plain(),
        "source_range": _range(cut, cut.first + clip.start, clip.end - clip.start),
        "media_reference": media,
    }


def _marker(cut: Cut, one: Marker) -> Row:
    return {
        **_named("Marker.2", one.name, {"scriptkit": {"kind": one.kind.lower()}}),
        "color": COLOURS[one.kind],
        "comment": one.detail,
        "marked_range": _range(cut, one.start, one.end - one.start),
    }


def _named(schema: str, name: str, metadata: Row | None = None) -> Row:
    return {"OTIO_SCHEMA": schema, "name": name, "metadata": metadata or {}}


def _plain(markers: list[Row] | None = None) -> Row:
    return {"source_range": None, "effects": [], "markers": markers or []}


def _range(cut: Cut, start: int, length: int) -> Row:
    return {"OTIO_SCHEMA": "TimeRange.1", "start_time": _time(cut, start), "duration": _time(cut, length)}


def _time(cut: Cut, frames: int) -> Row:
    return {"OTIO_SCHEMA": "RationalTime.1", "value": float(frames), "rate": float(cut.exact)}
