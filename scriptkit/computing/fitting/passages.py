"""Finds what the author marked optional, and says of each passage why it may not go, or what goes with it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.fitting.leaning import Script, breaks
from scriptkit.computing.fitting.qualifying import Qualifying
from scriptkit.computing.safeguards.phrases import spots
from scriptkit.computing.safeguards.watching import Lists
from scriptkit.computing.writing.likeness import plain
from scriptkit.computing.writing.running_order import step_id
from scriptkit.model import Facts, Mark, Paragraph, Segment, Sentence
from scriptkit.model.fitting import Cut
from scriptkit.places import Place
from scriptkit.wording import quoted

NEXT = 2  # sentences behind a name that may still disclose an interest


class Part(NamedTuple):
    """A cut with the paragraphs that go with it, and the marks that stand alone right behind them."""

    cut: Cut
    segment: Segment
    paragraphs: tuple[Paragraph, ...]
    behind: tuple[Mark, ...] = ()

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """All sentences that go."""
        return tuple(sentence for paragraph in self.paragraphs for sentence in paragraph.sentences)

    def marks(self) -> Iterator[Mark]:
        """All marks that go or that stand alone behind what goes."""
        for paragraph in self.paragraphs:
            yield from (mark for _, mark in paragraph.loose)
        for sentence in self.sentences:
            yield from (mark for _, mark in sentence.cues)
        yield from self.behind


def find(facts: Facts, words: Mapping[str, Sequence[str]]) -> tuple[Part, ...]:
    """Every optional segment and paragraph in running order, with what protects it and what it breaks."""
    guard = _Guard(facts, words)
    script, qualifying = Script(facts), Qualifying(facts, words)
    found = []
    for part in _optional(facts):
        keeps = part.cut.keeps or guard.keeps(part)
        whole = part.cut.lines is None
        told = () if keeps else breaks(script, part.segment, part.paragraphs, whole=whole)
        told += () if keeps or whole else tuple(qualifying.lost(part.segment, part.paragraphs))
        found.append(part._replace(cut=part.cut._replace(keeps=keeps, breaks=told)))
    return tuple(found)


def _optional(facts: Facts) -> Iterator[Part]:
    steps = {step_id(step): step for step in reversed(facts.episode.order)}
    for segment in facts.segments:
        if segment.optional is not None:
            place = steps[segment.id].at.place if segment.id in steps else segment.at.place
            yield Part(Cut(segment.id, segment.optional, None, place, segment.title), segment, segment.paragraphs)
        by_lines: dict[tuple[int, int], list[Paragraph]] = {}
        for paragraph in segment.paragraphs:
            if paragraph.optional is not None:
                by_lines.setdefault((paragraph.first_line, paragraph.last_line), []).append(paragraph)
        for lines, paragraphs in by_lines.items():
            yield _paragraph(facts, segment, lines, paragraphs)


def _paragraph(facts: Facts, segment: Segment, lines: tuple[int, int], paragraphs: Sequence[Paragraph]) -> Part:
    """A paragraph of a file; a loop may speak it several times."""
    place = Place(segment.file or paragraphs[0].sentences[0].place.file, *(lines[0], 1))
    number = max(paragraph.optional or 1 for paragraph in paragraphs)
    cut = Cut(segment.id, number, lines, place, paragraphs[0].sentences[0].text)
    own = facts.texts.get(segment.id) == segment.file and not segment.file.startswith("../")
    if not own:
        cut = cut._replace(
            keeps="its text serves other segments or episodes as well; give the segment a text of its own"
        )
    last = segment.paragraphs.index(paragraphs[-1]) + 1
    behind = segment.paragraphs[last].loose if segment.paragraphs[last:] else ()
    talk = tuple(mark for _, mark in behind if mark.name in ("promise", "payoff"))
    return Part(cut, segment, tuple(paragraphs), talk)


class _Guard:
    """What no cut may take away, whatever the author marked."""

    def __init__(self, facts: Facts, words: Mapping[str, Sequence[str]]) -> None:
        self.facts, self.lists = facts, Lists(words)
        sponsor = facts.episode.sponsor
        self.disclosures = [plain(one) for one in words.get("disclosures", ())]
        self.own_line = plain(sponsor.disclosure) if sponsor else ""
        self.payers = [plain(one.who) for one in facts.episode.interests] + ([plain(sponsor.name)] if sponsor else [])
        self.told = {passage.told for passage in facts.passages if passage.told}
        lines = (plain(caution.line) for caution in facts.cautions.values())
        self.cautions = [line for line in lines if line]
        self.said = {one.place for one in facts.spoken_cautions if one.state in ("said", "reworded")}

    def keeps(self, part: Part) -> str:
        """Why a passage may not go, in words; nothing where it may."""
        for mark in part.marks():
            if mark.name == "payoff":
                promise = self.facts.episode.promises.get(mark.ids[0] if mark.ids else "", "")
                return f"it keeps the promise {quoted(promise)}" if promise else "it keeps a promise"
        for mark in part.behind:
            return f"[{mark.raw}] stands alone behind it; move the mark into a paragraph"
        if any(self._discloses(part, number) for number in range(len(part.sentences))):
            return "it discloses who pays or what is earned"
        if self._cautions(part):
            return "it gives a caution"
        if any(self._sends_on(one) for one in part.sentences):
            return "it tells the viewer whom to ask, or that this is no medical advice"
        against = [str(link.id) for one in part.sentences for link in one.links if link.stance != "supports"]
        return f"{against[0]} disagrees, and is told here" if against else ""

    def _sends_on(self, sentence: Sentence) -> bool:
        """Whether a sentence sends to a licensed clinician or to emergency help, or says that it is no advice."""
        said, heard = spots(sentence.text), plain(sentence.text)
        if self.lists.holds("referrals", said) or self.lists.holds("emergency-lines", said):
            return True
        return " advice" in f" {heard}" and self.lists.hears("disclaimers", heard)

    def _discloses(self, part: Part, number: int) -> bool:
        sentence = part.sentences[number]
        shown = " ".join(mark.text for _, mark in sentence.cues if mark.name == "screen")
        heard = f" {plain(sentence.text)} "
        if sentence.place in self.told or (self.own_line and f" {self.own_line} " in heard):
            return True
        if part.segment.kind == "sponsor":
            texts = (heard, f" {plain(shown)} ")
            return any(f" {one} " in text for one in self.disclosures for text in texts)
        return self._tells(part, number)

    def _tells(self, part: Part, number: int) -> bool:
        """Whether a sentence tells what is earned from somebody whom it, or one of the two before it, names."""
        every = part.segment.sentences
        at = next((at for at, one in enumerate(every) if one is part.sentences[number]), number)
        before = " ".join(plain(one.text) for one in every[max(0, at - NEXT) : at + 1]).replace("'s ", " ")
        named = any(payer and f" {payer} " in f" {before} " for payer in self.payers)
        return named and bool(self.lists.holds("interest-words", spots(part.sentences[number].text)))

    def _cautions(self, part: Part) -> bool:
        if part.segment.kind == "caution":
            return True
        if any(one.cautions or one.place in self.said for one in part.sentences):
            return True
        heard = f" {plain(' '.join(one.text for one in part.sentences))} "
        return any(f" {line} " in heard for line in self.cautions)
