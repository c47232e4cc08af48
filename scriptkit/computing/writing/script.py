"""Outline and segment texts to the script: segments, paragraphs and sentences as they will be spoken, with marks."""

from collections import Counter
from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.computing.writing import attaching, likeness, marks, running_order
from scriptkit.computing.writing.attaching import Home
from scriptkit.computing.writing.filling import Expanded, Expander
from scriptkit.computing.writing.likeness import plain
from scriptkit.computing.writing.paragraphs import RawParagraph, raw_paragraphs
from scriptkit.computing.writing.views import Views
from scriptkit.model import BadMark, Claim, Episode, Mark, Paragraph, Segment, SegmentText, Step, TagTrouble
from scriptkit.places import Place

LINE_ONE = Place("outline.yaml", 1, 1)


class Written(NamedTuple):
    """The script, and what was wrong with its texts."""

    segments: tuple[Segment, ...]
    bad_marks: tuple[BadMark, ...]
    troubles: tuple[TagTrouble, ...]
    sponsor_unplaced: bool


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
        self.lines = _by_rarest_word({tag: plain(one.line) for tag, one in views.cautions.items()})
        self.said: set[str] = set()  # cautions that were spoken so far

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
        if name in self.episode.exercises:
            names = views.of_exercise(name, self.said)
        else:
            names = views.of_group(step) if step.group else views.names
        return self.expander.expand(text, names, views.turn(name))

    def _segment(self, step: Step) -> Segment:
        name, kind = running_order.step_id(step), running_order.step_kind(step, self.episode)
        exercise = self.episode.exercises.get(name)
        text, drafted = self.text_of(step)
        home = exercise.at.place if exercise else LINE_ONE
        paragraphs = self._written(step, text, home, drafted=drafted) if text is not None else ()
        claims = self._claims(name, kind)
        unsaid: tuple[Claim, ...] = ()
        if claims and drafted:
            paragraphs = attaching.with_claims(paragraphs, claims)
        elif claims:
            paragraphs, unsaid = likeness.take_over(paragraphs, claims)
        self._remember(paragraphs)
        return Segment(
            id=name,
            kind=kind,
            title=str(step.title or (exercise.name if exercise else step.group or _title(name))),
            exercise=name if exercise else "",
            paragraphs=paragraphs,
            drafted=drafted,
            file=text.file.name if text is not None and text.origin != "stock" else "",
            at=exercise.at if exercise else step.at if self.episode.order else self.episode.at,
            optional=step.optional,
            target=step.target,
            shots=(*step.shots, *(exercise.shots if exercise else ())),
            unsaid=unsaid,
        )

    def _claims(self, name: str, kind: str) -> tuple[Claim, ...]:
        if name in self.episode.exercises:
            return self.episode.exercises[name].claims
        return self.episode.sponsor.claims if kind == "sponsor" and self.episode.sponsor else ()

    def _written(self, step: Step, text: SegmentText, home: Place, *, drafted: bool) -> tuple[Paragraph, ...]:
        """The paragraphs of a text; what is wrong with it is kept."""
        name = running_order.step_id(step)
        is_stock = text.origin == "stock"
        expanded = self.expand(step, text, self.views)
        for trouble, at in expanded.troubles:
            place = home if is_stock else text.file.place(at)
            self.troubles.append(TagTrouble(trouble.kind, trouble.message, trouble.word, place, name, trouble.known))
        raw = raw_paragraphs(expanded, is_stock=is_stock)
        if drafted and self.draft_views and not expanded.troubles:
            self.drafts[name] = raw_paragraphs(self.expand(step, text, self.draft_views), is_stock=True)
        return self._paragraphs(raw, text, home, name)

    def _paragraphs(
        self, raw: list[RawParagraph], text: SegmentText, home: Place, segment: str
    ) -> tuple[Paragraph, ...]:
        made: list[Paragraph] = []
        stands = Home(None if text.origin == "stock" else text.file, home)
        for one in raw:
            lines = text.paragraphs[one.number] if one.number < len(text.paragraphs) else (0, 0)
            read = self._marks(one, text, home, segment)
            if one.text:
                made.append(attaching.attach(one, read, stands, lines))
                continue
            for mark in attaching.attach_alone(made, read, lines):
                trouble = "it stands before any sentence; put it behind the one it belongs to"
                self.bad_marks.append(BadMark(mark.raw, trouble, mark.place, segment))
        return tuple(made)

    def _marks(self, raw: RawParagraph, text: SegmentText, home: Place, segment: str) -> list[tuple[int, Mark]]:
        read: list[tuple[int, Mark]] = []
        for offset, words, at in raw.marks:
            place = home if text.origin == "stock" else text.file.place(at)
            mark = marks.read(words, place)
            if isinstance(mark, str):
                self.bad_marks.append(BadMark(" ".join(words.split()), mark, place, segment))
            else:
                read.append((offset, mark))
        return read

    def _remember(self, paragraphs: tuple[Paragraph, ...]) -> None:
        """Note which cautions these paragraphs give, so that no later segment gives them again."""
        for paragraph in paragraphs if self.lines else ():
            heard = plain(" ".join(sentence.text for sentence in paragraph.sentences))
            for word in set(heard.split()):
                self.said.update(tag for tag, line in self.lines.get(word, ()) if f" {line} " in f" {heard} ")
            self.said.update(tag for sentence in paragraph.sentences for tag in sentence.cautions)


def _by_rarest_word(lines: Mapping[str, str]) -> dict[str, list[tuple[str, str]]]:
    """Tags and lines under the word of the line that the fewest lines have."""
    counts = Counter(word for line in lines.values() for word in set(line.split()))
    found: dict[str, list[tuple[str, str]]] = {}
    for tag, line in lines.items():
        if line:
            found.setdefault(min(line.split(), key=lambda word: counts[word]), []).append((tag, line))
    return found


def _title(name: str) -> str:
    return name.replace("-", " ").replace("_", " ").strip().capitalize()
