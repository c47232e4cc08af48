"""The rules that the format's reference states for FCPXML 1.9, as far as a rough cut needs them, and what breaks them.

Times are whole or rational seconds on frames; elements stand in a fixed order; what is referred to is there; what
stands in a sequence follows without a gap, counted from its first timecode; a clip stays inside its asset.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

TIME = re.compile(r"(\d+)(?:/([1-9]\d*))?s")
TIMES = ("offset", "start", "duration", "tcStart", "frameDuration")


class Rule(NamedTuple):
    """What stands in an element, as a pattern over the names of its children; its attributes, needed and others."""

    inside: str
    needed: tuple[str, ...] = ()
    others: tuple[str, ...] = ()


RULES = {
    "fcpxml": Rule("(import-options )?resources library ", ("version",)),
    "resources": Rule("((asset|effect|format|media) )*"),
    "format": Rule("", ("id",), ("name", "frameDuration", "width", "height", "fieldOrder", "colorSpace")),
    "asset": Rule(
        "(media-rep )+(metadata )?",
        ("id",),
        ("name", "uid", "start", "duration", "hasVideo", "format", "hasAudio", "videoSources", "audioSources",
         "audioChannels", "audioRate"),
    ),
    "media-rep": Rule("(bookmark )?", ("src",), ("kind", "sig", "suggestedFilename")),
    "library": Rule("(event )*", (), ("location",)),
    "event": Rule("((project|asset-clip|clip) )*", (), ("name", "uid")),
    "project": Rule("sequence ", (), ("name", "uid", "id", "modDate")),
    "sequence": Rule(
        "(note )?spine (metadata )?",
        ("format",),
        ("duration", "tcStart", "tcFormat", "audioLayout", "audioRate", "renderFormat", "keyword"),
    ),
    "spine": Rule("((asset-clip|gap|clip|title|video|audio|ref-clip|sync-clip|mc-clip|audition|transition) )*"),
    "asset-clip": Rule(
        "(note )?((marker|chapter-marker|rating|keyword) )*(metadata )?",
        ("ref",),
        ("name", "offset", "start", "duration", "enabled", "lane", "format", "tcStart", "tcFormat", "audioRole",
         "videoRole", "srcEnable", "audioStart", "audioDuration", "modDate"),
    ),
    "marker": Rule("", ("start", "value"), ("duration", "completed", "note")),
    "note": Rule(""),
}  # fmt: skip
WORDS = {
    ("fcpxml", "version"): {"1.9"},
    ("sequence", "tcFormat"): {"DF", "NDF"},
    ("asset-clip", "tcFormat"): {"DF", "NDF"},
    ("sequence", "audioLayout"): {"mono", "stereo", "surround"},
    ("sequence", "audioRate"): {"32k", "44.1k", "48k", "88.2k", "96k", "176.4k", "192k"},
    ("media-rep", "kind"): {"original-media", "proxy-media"},
}


def broken_rules(data: bytes) -> list[str]:
    """Every rule that a file breaks, in words."""
    if not data.startswith(b'<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE fcpxml>\n'):
        return ["the head is another"]
    root = ET.fromstring(data)  # noqa: S314 - our own file
    told = [f"the root is {root.tag}"] * (root.tag != "fcpxml")
    for element in root.iter():
        told += _shape(element)
    return told or list(_references(root)) or list(_timing(root))


def _shape(element: ET.Element) -> Iterator[str]:
    rule = RULES.get(element.tag)
    if rule is None:
        yield f"there is no {element.tag}"
        return
    if not re.fullmatch(rule.inside, "".join(f"{one.tag} " for one in element)):
        yield f"{element.tag} holds {[one.tag for one in element]}"
    if (element.text or "").strip() and element.tag != "note":
        yield f"text stands in {element.tag}"
    given = set(element.attrib)
    if set(rule.needed) - given or given - {*rule.needed, *rule.others}:
        yield f"{element.tag} has {sorted(given)}"
    for name, value in element.attrib.items():
        if value not in WORDS.get((element.tag, name), {value}):
            yield f"{name} of {element.tag} is {value}"
        found = TIME.fullmatch(value)
        if name in TIMES and not (found and int(found[1]) < 2**63 and int(found[2] or 1) < 2**31):
            yield f"{name} of {element.tag} is the time {value}"


def _references(root: ET.Element) -> Iterator[str]:
    named = {one.get("id"): one.tag for one in root.iterfind("resources/*")}
    if len(named) != len(root.findall("resources/*")):
        yield "two resources have the same id"
    for element in root.iter():
        for name, kind in (("format", "format"), ("ref", "asset")):
            if name in element.attrib and named.get(element.get(name)) != kind:
                yield f"{name} of {element.tag} refers to {element.get(name)}"


def _timing(root: ET.Element) -> Iterator[str]:
    frame = _time(root.find("resources/format"), "frameDuration")
    sequence = root.find("library/event/project/sequence")
    assets = {one.get("id"): one for one in root.iterfind("resources/asset")}
    for element in root.iter():
        for name in set(TIMES) & set(element.attrib):
            if (_time(element, name) / frame).denominator != 1:
                yield f"{name} of {element.tag} {element.attrib} lies between frames"
    now = _time(sequence, "tcStart")
    end = now + _time(sequence, "duration")
    for clip in root.iterfind(".//spine/*"):
        if _time(clip, "offset") != now:
            yield f"{clip.get('name')} does not follow"
        now = _time(clip, "offset") + _time(clip, "duration")
        first = _time(clip, "start")
        last = first + _time(clip, "duration")
        asset = assets[clip.get("ref")]
        if last <= first or first < (begin := _time(asset, "start")) or last > begin + _time(asset, "duration"):
            yield f"{clip.get('name')} is not inside its asset"
        yield from (
            f"{one.get('value')} is not inside {clip.get('name')}"
            for one in clip.iterfind("marker")
            if not first <= _time(one, "start") < last or _time(one, "duration") != frame
        )
    if now != end:
        yield "the sequence is longer or shorter than its clips"


def _time(element: ET.Element | None, name: str) -> Fraction:
    return Fraction("0" if element is None else element.attrib[name].rstrip("s"))
