"""Which findings belong to which sentence and to which source, by where they stand."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from scriptkit.findings import Finding
from scriptkit.model import Facts, Sentence, Source
from scriptkit.places import Place
from scriptkit.wording import quoted

Anchor = tuple[tuple[int, int], int, int]  # line and column of a sentence, its last line, its number


def by_sentence(facts: Facts, found: Sequence[Finding]) -> dict[int, list[Finding]]:
    """The findings at the words, the marks and the outline's lines of each sentence, by its number."""
    anchors: dict[str, list[Anchor]] = {}
    texts: list[str] = []
    for segment in facts.segments if found else ():
        for paragraph in segment.paragraphs:
            for sentence in paragraph.sentences:
                for place, last in _spans(sentence, paragraph.last_line if segment.file else 0):
                    anchors.setdefault(place.file, []).append((place[1:], last, len(texts)))
                texts.append(quoted(sentence.text))
    starts = {file: sorted(own) for file, own in anchors.items()}
    by: dict[int, list[Finding]] = {}
    for one in found:
        number = _nearest(starts.get(one.place.file, []), one, texts)
        if number is not None:
            by.setdefault(number, []).append(one)
    return by


def _spans(sentence: Sentence, last_line: int) -> list[tuple[Place, int]]:
    """Where a sentence stands, and the claim of the outline that it says, each with its last line."""
    spans = [(sentence.place, max(last_line, sentence.place.line))]
    if sentence.claim:
        at = sentence.claim.at
        places = [at.place, *at.keys.values()]
        for link in sentence.claim.source:
            places += [link.at.place, *link.at.keys.values()]
        last = max(place.line for place in places)
        if last_line:
            spans.append((at.place, last))
        else:
            spans = [(min(at.place, sentence.place), max(last, sentence.place.line))]
    return spans


def _nearest(starts: list[Anchor], one: Finding, texts: list[str]) -> int | None:
    """The number of the sentence a finding stands at; of several at one place, of the one that it quotes."""
    place = one.place[1:]
    last = bisect_right(starts, place, key=lambda anchor: anchor[0]) - 1
    if last < 0 or starts[last][1] < one.place.line:
        return None
    tied = [anchor[2] for anchor in starts[max(0, last - 20) : last + 1] if anchor[0] == starts[last][0]]
    return next((number for number in tied if texts[number] in one.message), tied[0])


def by_source(facts: Facts, found: Sequence[Finding]) -> dict[str, list[Finding]]:
    """The findings at the entry of each source in its register, by the source's id."""
    entries = sorted((*_entry(source), name) for name, source in facts.register.items())
    by: dict[str, list[Finding]] = {}
    for one in found:
        at = bisect_right(entries, (one.place.file, one.place.line + 1)) - 1
        if at >= 0 and entries[at][0] == one.place.file and one.place.line <= entries[at][2]:
            by.setdefault(entries[at][3], []).append(one)
    return by


def _entry(source: Source) -> tuple[str, int, int]:
    """The file of a source, and the first and the last line of its entry."""
    spots = [source.at, *(finding.at for finding in source.findings.values())]
    lines = [place.line for spot in spots for place in (spot.place, *spot.keys.values())]
    return source.at.place.file, source.at.place.line, max(lines)
