"""Outline and segment texts to the script: segments, paragraphs and sentences as they will be spoken, with their marks."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Mapping
from typing import NamedTuple

from scriptkit import codes
from scriptkit.computing import marks, running_order, sentences
from scriptkit.computing.expanding import Expanded, Expander
from scriptkit.computing.views import Views
from scriptkit.model import BadMark, Claim, Episode, Mark, Paragraph, Segment, SegmentText, Sentence, Step, TagTrouble
from scriptkit.places import Place, SourceFile, Text

_CODE = re.compile("([\x01\x03\x06])(-?\\d+)\x02|\x04(\\d+)\x02([^\x05]*)\x05")
_INNER_CODE = re.compile("[\x01\x03\x06]-?\\d+\x02")
_WORD = re.compile(r"\S+")
_CLOSES = tuple(".,;:!?)…")
_TIMED = frozenset({"shot", "screen", "pause", "hold", "promise", "payoff"})

Piece = tuple[int, Text | None, int]


class RawParagraph(NamedTuple):
    """A paragraph before it is split into sentences: its words, the pieces they come from, and marks at offsets."""

    text: str
    pieces: list[Piece]
    marks: list[tuple[int, str, int]]  # offset in text, what stands between the brackets, offset in the file
    number: int


class Written(NamedTuple):
    """The script, and what was wrong with its texts."""

    segments: tuple[Segment, ...]
    bad_marks: tuple[BadMark, ...]
    troubles: tuple[TagTrouble, ...]
    sponsor_unplaced: bool


def raw_paragraphs(expanded: Expanded, is_stock: bool) -> list[RawParagraph]:
    """Take the codes out of a rendered text: paragraphs of words, each word with the place it comes from.

    In stock text a place is an offset in words of the outline, where a value is such words, and none elsewhere;
    in an author's file it is an offset in that file, for a value that of its tag.
    """
    made: list[RawParagraph] = []
    builder = _Builder(0)
    value: Text | None = None
    at, moves = -1, False
    position = 0
    for found in [*_CODE.finditer(expanded.text), None]:
        chunk = expanded.text[position : found.start() if found else len(expanded.text)]
        if chunk:
            builder.words(chunk, value, at, moves)
            at += len(chunk) if moves else 0
        if found is None:
            break
        position = found.end()
        if found[1] == codes.PARAGRAPH:
            builder.finish(made)
            builder = _Builder(int(found[2]))
        elif found[1] == codes.AT:
            value, at, moves = None, -1 if is_stock else int(found[2]), not is_stock
        elif found[1] == codes.VALUE:
            known = expanded.values[int(found[2])] if int(found[2]) >= 0 else None
            value = known if is_stock and isinstance(known, Text) else None
            at, moves = (0, True) if value is not None else (-1 if is_stock else at, False)
        else:
            builder.mark(_INNER_CODE.sub("", found[4]), int(found[3]))
    builder.finish(made)
    return made


class _Builder:
    """Gathers the words and marks of one paragraph."""

    def __init__(self, number: int) -> None:
        self.number = number
        self.parts: list[str] = []
        self.pieces: list[Piece] = []
        self.marks: list[tuple[int, str, int]] = []
        self.size = 0
        self.space = False
        self.after_mark = False

    def words(self, chunk: str, value: Text | None, at: int, moves: bool) -> None:
        """Add text that starts at offset `at` of the file or of a value; all of it stands there unless it `moves`."""
        first = True
        for found in _WORD.finditer(chunk):
            if found.start() > 0 or not first:
                self.space = True
            first = False
            word = found[0]
            if self.space and self.size and not (self.after_mark and word.startswith(_CLOSES)):
                self.parts.append(" ")
                self.size += 1
            self.space = self.after_mark = False
            self.pieces.append((self.size, value, at + found.start() if moves else at))
            self.parts.append(word)
            self.size += len(word)
        if chunk[-1].isspace():
            self.space = True

    def mark(self, raw: str, at: int) -> None:
        """Add a mark."""
        self.marks.append((self.size, raw, at))
        self.after_mark = True

    def finish(self, made: list[RawParagraph]) -> None:
        """Close the paragraph; an empty one vanishes."""
        text = "".join(self.parts)
        if text or self.marks:
            made.append(RawParagraph(text, self.pieces, self.marks, self.number))


class Writer:
    """Writes the script of one episode. `texts` are the author's own by segment id, `stock` the texts by kind."""

    def __init__(
        self,
        episode: Episode,
        texts: Mapping[str, SegmentText],
        stock: Mapping[str, SegmentText],
        views: Views,
        draft_views: Views | None = None,
    ) -> None:
        self.episode, self.texts, self.stock, self.views, self.draft_views = episode, texts, stock, views, draft_views
        self.drafts: dict[str, list[RawParagraph]] = {}  # by segment, where `draft_views` are given
        self.expander = Expander()
        self.bad_marks: list[BadMark] = []
        self.troubles: list[TagTrouble] = []
        self.spoken: list[str] = []  # normalised words of every sentence so far, for cautions that were said
        self.said: list[str] = []

    def write(self) -> Written:
        """The whole script, in running order."""
        steps, unplaced = running_order.planned(self.episode, self.texts)
        segments = tuple(self._segment(step) for step in steps)
        return Written(segments, tuple(self.bad_marks), tuple(self.troubles), unplaced)

    def text_of(self, step: Step) -> tuple[SegmentText | None, bool]:
        """The text of a segment, and whether it is the stock one (or the channel's own version of the stock one)."""
        name, kind = running_order.step_id(step), running_order.step_kind(step, self.episode)
        if name in self.texts:
            return self.texts[name], False
        if kind in self.texts and kind in self.stock:
            return self.texts[kind], True
        return self.stock.get(kind), True

    def expand(self, step: Step, text: SegmentText, views: Views) -> Expanded:
        """The rendered text of a segment."""
        name = running_order.step_id(step)
        turn = views.order.index(name) if name in views.order else len(views.order)
        if name in self.episode.exercises:
            names = views.of_exercise(name, self.said)
        else:
            names = views.of_group(step) if step.group else views.names
        return self.expander.expand(text.template, names, turn)

    def _segment(self, step: Step) -> Segment:
        name, kind = running_order.step_id(step), running_order.step_kind(step, self.episode)
        exercise = self.episode.exercises.get(name)
        text, drafted = self.text_of(step)
        home = exercise.at.place if exercise else step.at.place if self.episode.order else self.episode.at.place
        title = str(exercise.name) if exercise else str(step.group) if step.group else _title(name)
        paragraphs: tuple[Paragraph, ...] = ()
        if text is not None:
            expanded = self.expand(step, text, self.views)
            if expanded.trouble:
                where = home if text.origin == "stock" else text.file.place(expanded.trouble.line)
                self.troubles.append(
                    TagTrouble(expanded.trouble.kind, expanded.trouble.message, expanded.trouble.words, where, name)
                )
            paragraphs = self._paragraphs(raw_paragraphs(expanded, text.origin == "stock"), text, home, name)
            if drafted and self.draft_views and not expanded.trouble:
                self.drafts[name] = raw_paragraphs(self.expand(step, text, self.draft_views), True)
        claims = (
            exercise.claims
            if exercise
            else self.episode.sponsor.claims
            if kind == "sponsor" and self.episode.sponsor
            else ()
        )
        if claims and not drafted:
            paragraphs = _taken_over(paragraphs, claims)
        self._remember(paragraphs)
        at = exercise.at if exercise else step.at if self.episode.order else self.episode.at
        file = text.file.name if text is not None and text.origin != "stock" else ""
        return Segment(
            name, kind, title, name if exercise else "", paragraphs, drafted, file, at, step.optional, step.target,
            (*step.shots, *(exercise.shots if exercise else ())),
        )  # fmt: skip

    def _remember(self, paragraphs: tuple[Paragraph, ...]) -> None:
        for paragraph in paragraphs:
            self.spoken.append(" ".join(plain(sentence.text) for sentence in paragraph.sentences))
            for sentence in paragraph.sentences:
                self.said.extend(sentence.cautions)
        for tag, caution in self.views.cautions.items():
            if (
                tag not in self.said
                and caution.line
                and any(plain(caution.line) in words for words in self.spoken[-len(paragraphs) :])
            ):
                self.said.append(str(tag))

    def _paragraphs(
        self, raw: list[RawParagraph], text: SegmentText, home: Place, segment: str
    ) -> tuple[Paragraph, ...]:
        made: list[Paragraph] = []
        for one in raw:
            lines = text.paragraphs[one.number] if one.number < len(text.paragraphs) else (0, 0)
            read = self._marks(one, text, home, segment)
            origin = None if text.origin == "stock" else text.file
            if not one.text:
                _alone(made, read, lines)
                continue
            made.append(_paragraph(one, read, origin, home, lines))
        return tuple(made)

    def _marks(self, raw: RawParagraph, text: SegmentText, home: Place, segment: str) -> list[tuple[int, Mark]]:
        read: list[tuple[int, Mark]] = []
        for offset, words, at in raw.marks:
            place = home if text.origin == "stock" else text.file.place(at)
            mark = marks.read(words, place)
            if isinstance(mark, str):
                self.bad_marks.append(BadMark(words, mark, place, segment))
            else:
                read.append((offset, mark))
        return read


def _title(name: str) -> str:
    return name.replace("-", " ").replace("_", " ").strip().capitalize()


def plain(text: str) -> str:
    """Words alone, lower case: what two wordings are compared by."""
    return " ".join(re.findall(r"[^\W_]+(?:['’][^\W_]+)?", text.lower().replace("’", "'")))


def _alone(made: list[Paragraph], read: list[tuple[int, Mark]], lines: tuple[int, int]) -> None:
    """Marks that are a paragraph by themselves: what is said of sentences covers the paragraph before; pictures and pauses stand where they are."""
    covering = [(0, mark) for _, mark in read if mark.name not in _TIMED]
    loose = tuple((0, mark) for _, mark in read if mark.name in _TIMED)
    if covering and made:
        before = made[-1]
        number = next((mark.number for _, mark in covering if mark.name == "optional"), before.optional)
        changed = list(before.sentences)
        for _, mark in covering:
            # a source, an opinion or an aside covers all of it, a caution or a reason the sentence just before
            whole = mark.name in marks.SOURCE_MARKS or mark.name == "sponsor says"
            for place in range(len(changed)) if whole else range(max(0, len(changed) - 1), len(changed)):
                changed[place] = _marked(changed[place], mark)
        made[-1] = before._replace(sentences=tuple(changed), optional=number)
    if loose:
        made.append(Paragraph((), loose, None, *lines))


def _paragraph(
    raw: RawParagraph, read: list[tuple[int, Mark]], origin: SourceFile | None, home: Place, lines: tuple[int, int]
) -> Paragraph:
    spans = sentences.split(raw.text) or [(0, len(raw.text))]
    starts = [start for start, _ in spans]
    made = [_sentence(raw, start, end, origin, home) for start, end in spans]
    optional = None
    for offset, mark in read:
        # right after the full stop belongs to the sentence before, as does everything inside it
        number = max(0, bisect_right(starts, offset - 1) - 1 if offset else 0)
        within = min(max(0, offset - spans[number][0]), spans[number][1] - spans[number][0])
        made[number] = _marked(made[number], mark)._replace(cues=(*made[number].cues, (within, mark)))
        if mark.name == "optional":
            optional = mark.number
    return Paragraph(tuple(made), (), optional, *lines)


def _sentence(raw: RawParagraph, start: int, end: int, origin: SourceFile | None, home: Place) -> Sentence:
    first = max(0, bisect_right(raw.pieces, start, key=lambda piece: piece[0]) - 1)
    last = bisect_right(raw.pieces, end - 1, key=lambda piece: piece[0])
    pieces = tuple((offset - start, value, at) for offset, value, at in raw.pieces[first:last])
    sentence = Sentence(raw.text[start:end], home, pieces=pieces, origin=origin, home=home)
    if origin is not None:
        return sentence._replace(place=sentence.place_of(0))
    # a drafted sentence stands where the words it was made from stand
    made_from = next((offset for offset, value, _ in pieces if value is not None), None)
    return sentence if made_from is None else sentence._replace(place=sentence.place_of(made_from))


def _marked(sentence: Sentence, mark: Mark) -> Sentence:
    """The sentence with what a mark says of it."""
    if mark.name == "from":
        return sentence._replace(links=(*sentence.links, *mark.links))
    if mark.name == "caution":
        return sentence._replace(cautions=(*sentence.cautions, *mark.ids))
    if mark.name in ("opinion", "aside", "override"):
        return sentence._replace(**{mark.name: True})
    return sentence._replace(sponsor_says=True) if mark.name == "sponsor says" else sentence


def _taken_over(paragraphs: tuple[Paragraph, ...], claims: tuple[Claim, ...]) -> tuple[Paragraph, ...]:
    """A sentence that says the same as a claim of the outline takes over the claim's sources."""
    return tuple(
        paragraph._replace(sentences=tuple(_with_claim(sentence, claims) for sentence in paragraph.sentences))
        for paragraph in paragraphs
    )


def _with_claim(sentence: Sentence, claims: tuple[Claim, ...]) -> Sentence:
    for claim in claims:
        if not says_the_same(sentence.text, claim.say):
            continue
        known = {(link.id, link.finding) for link in sentence.links}
        more = tuple(link for link in claim.source if (link.id, link.finding) not in known)
        return sentence._replace(
            links=(*sentence.links, *more),
            opinion=sentence.opinion or claim.opinion,
            sponsor_says=sentence.sponsor_says or claim.sponsor_wording,
        )
    return sentence


def says_the_same(one: str, other: str) -> bool:
    """Whether two wordings are the same but for a word in seven: case, punctuation and order aside."""
    first, second = set(plain(one).split()), set(plain(other).split())
    if not first or not second:
        return False
    return len(first & second) / len(first | second) >= 0.85
