"""An episode fitted into a time: what to cut, tried on the episode itself, and the files as they are without it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit import build
from scriptkit.computing import timing
from scriptkit.computing.fitting import choosing, passages
from scriptkit.computing.fitting.choosing import Chosen, Item
from scriptkit.computing.fitting.differing import changed, heard, new_findings
from scriptkit.computing.fitting.mentions import Mentions
from scriptkit.computing.writing.running_order import step_id
from scriptkit.findings import Finding
from scriptkit.material import Material, read
from scriptkit.model import Facts, Segment, Timeline
from scriptkit.model.fitting import Cut, Fit
from scriptkit.reading import cutting
from scriptkit.reading.edited import Edited

MOST_ROUNDS = 12  # of choosing and trying the choice on the files
LAST_ROUNDS = 5  # of these, in which all goes that may go
SLOWEST, FASTEST = 60, 400  # words a minute, as `--pace` takes them
SAME = 0.001  # seconds
FOLLOWS = 3.0  # seconds, at most, by which drafted text follows the cut of a segment: a line of the recap
OUTLINE = "outline.yaml"
LAST = "publish"  # the stage at which everything has to be right


class Shortened(NamedTuple):
    """What to cut, and the files that are other without it, by their names in the episode."""

    fit: Fit
    files: Mapping[str, bytes]


def shorten(material: Material, facts: Facts, wanted: float, pace: float | None) -> Shortened:
    """Choose what to cut so that the episode takes `wanted` seconds or less; nothing is written."""
    return _Shortening(material, facts, wanted, pace).run()


class _Shortening:
    """One episode, its optional passages, and what was found out about cutting them."""

    def __init__(self, material: Material, facts: Facts, wanted: float, pace: float | None) -> None:
        self.material, self.facts, self.wanted, self.pace = material, facts, wanted, pace
        self.found: list[Finding] | None = None  # at the last stage, where each error is one
        self.before = facts.timeline.total
        self.written: dict[frozenset[str], tuple[Segment, ...]] = {}
        self.totals: dict[Chosen, float] = {}
        self.never: list[Chosen] = []  # sets that may not be cut together
        self.cuts: list[Cut] = []
        self.kept: list[Cut] = []
        self.parts: list[passages.Part] = []
        for part in passages.find(facts, material.words):
            if part.cut.keeps:
                self.kept.append(part.cut)
            elif self._spans([part]) is None:
                self.kept.append(
                    part.cut._replace(keeps="`order:` is written so that it cannot be taken out by itself")
                )
            else:
                self.parts.append(part)

    def run(self) -> Shortened:
        """Choose, try the choice on the files as they would be, and choose again where that goes wrong."""
        if self.before <= self.wanted + choosing.SLACK:
            return Shortened(Fit(self.wanted, self.before, self.before, kept=tuple(self.kept)), {})
        self._keep_the_only_ones()
        exact, aim = True, self.wanted
        for number in range(MOST_ROUNDS + LAST_ROUNDS):
            if number == MOST_ROUNDS:
                exact, aim = False, 0.0  # the fewest are not found in time: as much as may go does
            items = self._items()
            choice = choosing.choose(items, self._total, aim, self._too_much, FOLLOWS)
            chosen = choice.chosen - frozenset().union(*(items[one].inside for one in choice.chosen))
            left = self._total(chosen)
            exact = exact and choice.exact and abs(left - choice.left) < SAME
            if choice.reached and left > self.wanted + choosing.SLACK:
                aim -= left - self.wanted
                continue
            tried = self._try(chosen)
            if not tried.trouble:
                return self._told(chosen, tried, reached=left <= self.wanted + choosing.SLACK, exact=exact)
            self._learn(chosen)
        return self._told(frozenset(), self._try(frozenset()), reached=False, exact=False)

    def _told(self, chosen: Chosen, tried: _Tried, *, reached: bool, exact: bool) -> Shortened:
        saved = {one: self.before - self._total(frozenset({one})) for one in chosen}
        cuts = tuple(self.parts[one].cut._replace(saves=saved[one]) for one in sorted(chosen))
        pace = None if reached else self._pace_for(chosen)
        kept = tuple(sorted(self.kept, key=lambda cut: cut.place))
        return Shortened(
            Fit(self.wanted, self.before, tried.total, cuts, kept, reached, pace, exact, tried.news), tried.files
        )

    def _keep_the_only_ones(self) -> None:
        """Set those apart that may not go even alone: all that is said, or all that mentions a source."""
        for (one,) in sorted((only for only in self._all_that_is_said() if len(only) == 1), key=max, reverse=True):
            self._set_apart(one, "it is all that is said in its segment; `order:` can mark the segment itself optional")
        mentions = Mentions(self.facts, self.parts)
        for one in reversed(range(len(self.parts))):
            name = mentions.taken(frozenset({one}))
            if name and self.parts[one].segment.id not in mentions.wholes:
                self._set_apart(one, f"nothing else mentions {name}, and what stays rests on it")

    def _set_apart(self, one: int, why: str) -> None:
        self.kept.append(self.parts.pop(one).cut._replace(keeps=why))
        self.totals = {}
        self.never = []

    def _items(self) -> list[Item]:
        """The passages as they are chosen from, and which of them hang on each other."""
        self.mentions, self.silencing = Mentions(self.facts, self.parts), self._all_that_is_said()
        hanging = set(self.mentions.hanging())
        insides = []
        for one, part in enumerate(self.parts):
            mine = {other for other, inner in enumerate(self.parts) if inner.segment.id == part.segment.id}
            insides.append(frozenset(mine - {one}) if part.cut.lines is None else frozenset())
            if part.cut.lines is None:
                follow = changed(self.facts.segments, self._segments(frozenset({part.segment.id})))
                hanging |= {one} if follow or insides[one] else set()
                hanging |= {other for other, inner in enumerate(self.parts) if inner.segment.id in follow}
        return [
            Item(part.cut.number, self.before - self._total(frozenset({one})), insides[one], one not in hanging)
            for one, part in enumerate(self.parts)
        ]

    def _all_that_is_said(self) -> list[Chosen]:
        """The paragraphs of each segment that would be left without a word if all of them went."""
        found = []
        for segment in self.facts.segments:
            mine = {
                part.cut.lines: one
                for one, part in enumerate(self.parts)
                if part.cut.lines and part.segment.id == segment.id
            }
            spoken = {(one.first_line, one.last_line) for one in segment.paragraphs if one.sentences}
            if mine and spoken <= mine.keys():
                found.append(frozenset(mine.values()))
        return found

    def _too_much(self, chosen: Chosen) -> Chosen | None:
        """The passages of a set of which one has to stay."""
        wholes = frozenset(one for one in chosen if self.parts[one].cut.lines is None)
        if len(wholes) == len(self.facts.segments):
            return wholes
        never = [*self.never, *self.silencing]
        return next((one for one in never if one <= chosen), None) or self.mentions.too_much(chosen)

    def _segments(self, gone: frozenset[str]) -> tuple[Segment, ...]:
        """The script as it is written without some segments."""
        if gone not in self.written:
            episode = self.material.episode
            order = tuple(step for step in episode.order if step_id(step) not in gone)
            material = self.material._replace(episode=episode._replace(order=order))
            self.written[gone] = build.lay_out(material, self.pace).segments if gone else self.facts.segments
        return self.written[gone]

    def _script(self, chosen: Chosen) -> tuple[Segment, ...]:
        """The script without the chosen passages."""
        cuts = [self.parts[one].cut for one in chosen]
        lines = {(cut.segment, cut.lines) for cut in cuts if cut.lines}
        segments = self._segments(frozenset(cut.segment for cut in cuts if cut.lines is None))
        if not lines:
            return segments
        return tuple(
            segment._replace(
                paragraphs=tuple(
                    one
                    for one in segment.paragraphs
                    if one.optional is None or (segment.id, (one.first_line, one.last_line)) not in lines
                )
            )
            for segment in segments
        )

    def _lay(self, segments: Sequence[Segment], pace: float | None) -> Timeline:
        at_pace = self.material.pace(pace)
        return timing.lay(segments, self.material.episode, at_pace)

    def _total(self, chosen: Chosen) -> float:
        if chosen not in self.totals:
            self.totals[chosen] = self._lay(self._script(chosen), self.pace).total if chosen else self.before
        return self.totals[chosen]

    def _pace_for(self, chosen: Chosen) -> int | None:
        """The slowest pace in whole words a minute at which what is left fits."""
        segments = self._script(chosen)
        slow, fast = SLOWEST, FASTEST + 1
        while slow < fast:
            middle = (slow + fast) // 2
            if self._lay(segments, middle).total <= self.wanted + choosing.SLACK:
                fast = middle
            else:
                slow = middle + 1
        return slow if slow <= FASTEST else None

    def _try(self, chosen: Chosen) -> _Tried:
        """The files without the chosen passages, read, timed and checked like any others."""
        files = self._edit([self.parts[one] for one in sorted(chosen)])
        material = read(Edited(self.material.folders.episode, files))
        facts = build.work_out(material, self.pace)
        wanted = self._script(chosen)
        total = facts.timeline.total
        if [heard(one) for one in facts.segments] != [heard(one) for one in wanted]:
            return _Tried(files, total, "the text around it cannot do without it", ())
        if self.found is None:
            self.found = build.check(self.facts, LAST)
        new = new_findings(self.found, build.check(facts, LAST))
        worse = [one for one in new if one.severity == "error" or (one.protects and one.severity == "warning")]
        news = tuple(
            dict.fromkeys(
                f"{one.name}: {one.message}" for one in new if one.severity == "warning" and one.stage != LAST
            )
        )
        return _Tried(files, total, f"`check` would find {worse[0].name}: {worse[0].message}" if worse else "", news)

    def _learn(self, chosen: Chosen) -> None:
        """Find out which of a set that went wrong may not go, or that they may not go together."""
        wrong = [(one, tried.trouble) for one in sorted(chosen) if (tried := self._try(frozenset({one}))).trouble]
        if not wrong:
            self.never.append(chosen)
        for one, trouble in reversed(wrong):
            self._set_apart(one, trouble)

    def _spans(self, parts: Sequence[passages.Part]) -> dict[str, list[cutting.Span]] | None:
        """What to take out of which file; None where the running order does not let go of a segment."""
        files, spans = self.material.folders.files, defaultdict[str, list[cutting.Span]](list)
        places = [part.cut.place for part in parts if part.cut.lines is None]
        if places:
            entries = cutting.order_entries(files[OUTLINE], places)
            if entries is None:
                return None
            spans[OUTLINE] = entries
        for part in parts:
            if part.cut.lines is not None:
                file = files[part.cut.place.file]
                behind = self._behind(part, part.cut.lines)
                spans[file.name] += cutting.paragraph(file, part.cut.lines, behind, self.material.allows)
        return spans

    def _behind(self, part: passages.Part, lines: tuple[int, int]) -> list[tuple[int, int]]:
        """The lines of marks that stand alone behind a paragraph and cover it."""
        own = {mark.place.line for one in part.sentences for _, mark in one.cues if mark.place.line > lines[1]}
        listed = self.material.texts[part.segment.id].paragraphs
        return [one for one in listed if any(one[0] <= line <= one[1] for line in own)]

    def _edit(self, parts: Sequence[passages.Part]) -> dict[str, bytes]:
        folder = self.material.folders.episode
        return {
            name: cutting.without((folder / name).read_bytes(), spans)
            for name, spans in (self._spans(parts) or {}).items()
        }


class _Tried(NamedTuple):
    """An edit tried out: the files, the seconds, what is wrong with it, and new warnings."""

    files: Mapping[str, bytes]
    total: float
    trouble: str
    news: tuple[str, ...]
