"""Sentences to seconds, and the whole script laid on one clock. Figures: 68 hours of captioned talks by 66 speakers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.aloud import saying
from scriptkit.model import Episode, Mark, Segment, Sentence, TimedMark, TimedSegment, TimedSentence, Timeline
from scriptkit.model.kept_takes import KeptTake

STOCK_LETTERS = 13.1  # letters a second where no pace is known
STOCK_PACE = 148  # the same in words a minute, as it is reported
COMMA, SENTENCE_END, TOPIC_CHANGE = 0.3, 0.6, 0.6  # seconds of pause
LETTERS_A_WORD, PAUSES_A_WORD = 4.65, 0.051  # how a pace in words a minute, pauses in it, becomes letters a second
SEGMENT_RANGE, WHOLE_RANGE, STOCK_RANGE = (0.10, 0.13), (0.06, 0.12), (0.25, 0.25)
LAST_TAKES = 3  # whose median is the pace of a channel that writes none down
SILENT = frozenset({"pause", "hold"})


def letters_a_second(pace: float) -> float:
    """Letters a second of a pace in words a minute."""
    return LETTERS_A_WORD / (60 / pace - PAUSES_A_WORD)


def rate_of_sample(letters: float, seconds: float, pauses: float) -> float | None:
    """Letters a second of somebody's own speech, the pauses of `pauses_of` left out; None where nothing is left."""
    return letters / (seconds - pauses) if letters > 0 and seconds > pauses else None


def pauses_of(commas: float, sentence_ends: float, topic_changes: float = 0) -> float:
    """Seconds of the ordinary pauses in a stretch of speech."""
    return COMMA * commas + SENTENCE_END * sentence_ends + TOPIC_CHANGE * topic_changes


def says_of(episode: Episode) -> dict[str, str]:
    """How words are spoken, by their lower-case spelling, where the outline says so."""
    says = {str(word).lower(): str(term.say) for word, term in episode.terms.items() if term.say}
    return says | {one.name.lower(): str(one.say) for one in episode.exercises.values() if one.say}


def spoken_seconds(text: str, rate: float, says: Mapping[str, str]) -> float:
    """Seconds to say one sentence at `rate` letters a second, with its pauses at commas and at its end."""
    spoken = saying.as_spoken(text, says)
    return saying.letters(spoken) / rate + pauses_of(saying.commas(spoken), 1)


class Pace:
    """The pace of one episode, in words a minute by kind of segment, and the letters a second that it comes to.

    `given` is `--pace` and goes before all else; then the outline's or the channel's, then the median of the last three
    `takes`, then the stock one. Letters a second that a take has measured are better than those made of its pace.
    """

    def __init__(
        self,
        episode: Episode,
        given: float | None = None,
        *,
        from_channel: bool = False,
        takes: Sequence[KeptTake] = (),
    ) -> None:
        self.given = given
        self.paces = {} if given else dict(episode.paces)
        last = [one for one in takes if one.pace][-LAST_TAKES:]
        taken = _middle([one.pace for one in last if one.pace])
        measured = [one.letters for one in last if one.letters]
        self.pace = given or episode.pace or taken
        written = "channel" if from_channel else "outline"
        self.source = "command" if given else written if episode.pace else "takes" if taken else "stock"
        self.letters = _middle(measured) if self.source == "takes" and len(measured) == len(last) else None

    def of(self, kind: str) -> float | None:
        """The pace of a kind of segment; None where only the stock one is known."""
        return self.paces.get(kind, self.pace)

    def rate(self, kind: str) -> float:
        """Letters a second of a kind of segment, its pauses left out."""
        if self.letters and kind not in self.paces:
            return self.letters
        own = self.of(kind)
        return letters_a_second(own) if own else STOCK_LETTERS


def _middle(values: Sequence[float]) -> float | None:
    """The median, None of nothing; `statistics` costs more to load than all of this."""
    ordered = sorted(values)
    if not ordered:
        return None
    return (ordered[(len(ordered) - 1) // 2] + ordered[len(ordered) // 2]) / 2


def lay(segments: Sequence[Segment], episode: Episode, pace: Pace) -> Timeline:
    """The script on the clock: every sentence and mark with its time, every segment with low and high."""
    says = says_of(episode)
    timed: list[TimedSegment] = []
    clock = 0.0
    last = max((number for number, segment in enumerate(segments) if segment.sentences), default=0)
    for number, segment in enumerate(segments):
        one = _segment(segment, clock, pace, says, last=number == last)
        timed.append(one)
        clock += one.total
    spoken = sum(one.spoken for one in timed)
    personal = all(pace.of(segment.kind) for segment in segments) and bool(segments)
    down, up = WHOLE_RANGE if personal else STOCK_RANGE
    return Timeline(
        pace.pace or STOCK_PACE,
        pace.source,
        episode.runtime.target,
        clock,
        clock - down * spoken,
        clock + up * spoken,
        tuple(timed),
    )


def _segment(segment: Segment, start: float, pace: Pace, says: Mapping[str, str], *, last: bool) -> TimedSegment:
    own, rate = pace.of(segment.kind), pace.rate(segment.kind)
    clock = _Clock(segment.id, start)
    for paragraph in segment.paragraphs:
        clock.loose(paragraph.loose)
        for sentence in paragraph.sentences:
            clock.say(sentence, spoken_seconds(sentence.text, rate, says))
    if clock.sentences and not last:
        clock.change_topic()
    spoken, silent = sum(one.spoken for one in clock.sentences), clock.silent
    down, up = SEGMENT_RANGE if own else STOCK_RANGE
    total = spoken + silent
    words = sum(saying.words(sentence.text) for sentence in segment.sentences)
    return TimedSegment(
        segment.id, segment.kind, start, spoken, silent, total, total - down * spoken, total + up * spoken, words,
        tuple(clock.sentences), tuple(clock.marks),
    )  # fmt: skip


class _Clock:
    """Runs through one segment."""

    def __init__(self, segment: str, start: float) -> None:
        self.segment, self.now, self.silent = segment, start, 0.0
        self.sentences: list[TimedSentence] = []
        self.marks: list[TimedMark] = []

    def loose(self, cues: Sequence[tuple[int, Mark]]) -> None:
        """Marks that stand between paragraphs."""
        for _, mark in cues:
            self._mark(mark, self.now)
            if mark.name in SILENT:
                self._wait(mark)

    def say(self, sentence: Sentence, seconds: float) -> None:
        """One sentence; what stands inside it comes in proportion to the letters before it."""
        start, silent = self.now, 0.0
        voice = max(0.0, seconds - SENTENCE_END)
        for offset, mark in sentence.cues:
            share = offset / len(sentence.text) if sentence.text else 1.0
            # behind the full stop the pause of the sentence is over
            into = seconds if share >= 1.0 else voice * share
            self._mark(mark, start + into + silent)
            if mark.name in SILENT:
                silent += mark.seconds or 0.0
        self.silent += silent
        self.now = start + seconds + silent
        self.sentences.append(TimedSentence(start, self.now, seconds, silent, seconds - voice))

    def change_topic(self) -> None:
        """The longer pause before the next segment belongs to the last sentence of this one."""
        last, done = self.sentences[-1], len(self.sentences)
        self.now += TOPIC_CHANGE
        self.sentences[-1] = last._replace(
            end=last.end + TOPIC_CHANGE, spoken=last.spoken + TOPIC_CHANGE, closing=last.closing + TOPIC_CHANGE
        )
        # what stands behind the last sentence comes after its pause
        self.marks = [
            one._replace(start=one.start + TOPIC_CHANGE) if one.sentence == done else one for one in self.marks
        ]

    def _mark(self, mark: Mark, at: float) -> None:
        self.marks.append(TimedMark(self.segment, mark, at, len(self.sentences)))

    def _wait(self, mark: Mark) -> None:
        self.silent += mark.seconds or 0.0
        self.now += mark.seconds or 0.0
