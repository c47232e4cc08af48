"""How firmly each sentence speaks of people in general: results in, probably, may, very uncertain."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.hearing.clauses import Speech, take_apart
from scriptkit.computing.numbers.holdings import described
from scriptkit.computing.wordings.firmness import Firmness, is_past, weigh
from scriptkit.computing.wordings.rungs import Rungs, rungs
from scriptkit.model import LADDER, Episode, Headline, Judgement, Segment, Sentence, Source, Weight, Worded

UNJUDGED = frozenset(("question", "opinion"))
EFFECTS = frozenset(("causal", "comparative"))
ASKED = EFFECTS | {"health"}
NOTHING = Worded(0)
MOSTLY = 3  # the step of "probably"
NOTS = frozenset("not no never nobody none without hardly isn't aren't hasn't haven't doesn't don't".split())
ASKING = frozenset("what whatever if whether when until how where why".split())
REACH = 4  # words before a word of proof in which a "not" denies it
PROVES_NOTHING = frozenset(("nothing", "little", "neither", "for"))  # "guaranteed for ten years" is a warranty

Span = tuple[int, int]
__all__ = ["headlines", "hold", "rungs"]


def hold(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    weights: Mapping[str, tuple[Weight | None, ...]],
    register: Mapping[str, Source],
    ladder: Rungs,
) -> dict[str, tuple[Worded, ...]]:
    """By segment, one a sentence."""
    people = _People(register, ladder.people)
    held: dict[str, tuple[Worded, ...]] = {}
    for segment in segments:
        before = ""
        row: list[Worded] = []
        for sentence, judgement, weight in zip(
            segment.sentences, judgements[segment.id], weights[segment.id], strict=True
        ):
            told = people.are_counted(sentence, judgement.numbers)
            named = not sentence.links or told or people.are_named(sentence, before)
            row.append(_hold(sentence, judgement, weight, ladder, told=told)._replace(named=named))
            before = sentence.text
        held[segment.id] = tuple(row)
    return held


def _hold(sentence: Sentence, judgement: Judgement, weight: Weight | None, ladder: Rungs, *, told: bool) -> Worded:
    """One sentence; what is the sponsor's, a caution or an override, and what asks or commands, is not judged."""
    if sentence.sponsor_says or sentence.cautions or sentence.override or _is_unjudged(sentence, judgement):
        return NOTHING
    speech = take_apart(sentence.text, ladder.cues)
    if judgement.kind == "claim" and ASKED.isdisjoint(judgement.flags) and ladder.strict.isdisjoint(speech.words):
        return Worded(0, report=bool(speech.figures) and is_past(speech, ladder.cues))
    commands = judgement.kind == "instruction"
    effect = _states_effect(judgement) and not commands and not told
    firmness = weigh(speech, ladder, effect=effect, commands=commands, told=told)
    banned, loose = _banned(speech, firmness, named=bool(sentence.links or judgement.sure))
    worded = as_worded(speech, firmness, ladder)._replace(banned=banned, loose=loose)
    bears = LADDER.get(weight.certainty, 0) if weight else 0
    if (sentence.opinion or sentence.aside) and worded.step < MOSTLY:
        return NOTHING
    return with_ready(speech, firmness, worded, bears, ladder)


def _is_unjudged(sentence: Sentence, judgement: Judgement) -> bool:
    """Whether a sentence states nothing.

    An opinion or aside that rests on a source is heard as a fact all the same, unless it sounds like an opinion. A
    command with a source may go on with a promise: "... and you'll grow".
    """
    if (sentence.opinion or sentence.aside) and not (sentence.links and judgement.kind == "claim" and judgement.sure):
        return True
    if judgement.kind == "instruction":
        return not sentence.links or " you" not in sentence.text
    return judgement.kind in UNJUDGED or not (sentence.links or judgement.kind == "claim")


def _states_effect(judgement: Judgement) -> bool:
    """Whether the detector heard an effect or a comparison, plainly said."""
    return judgement.strength != "hedged" and not EFFECTS.isdisjoint(judgement.flags)


def as_worded(speech: Speech, firmness: Firmness, ladder: Rungs) -> Worded:
    """What was found of a sentence, by offsets in its text."""
    top = firmness.firmest
    if top is None:
        return Worded(0, report=firmness.report)
    size = _size(speech, top.clause.start, top.clause.end, ladder)
    return Worded(top.step, _offsets(speech, top.at), top.negated, firmness.report, size)


def with_ready(speech: Speech, firmness: Firmness, worded: Worded, bears: int, ladder: Rungs) -> Worded:
    """The same, with a ready sentence where it says more than its evidence bears."""
    if not 0 < bears < worded.step:
        return worded
    from scriptkit.computing.wordings import hedging  # only a sentence at fault needs it

    return worded._replace(ready=hedging.softened(speech, firmness, bears, ladder))


def _offsets(speech: Speech, span: Span) -> Span:
    return speech.places[span[0]][0], speech.places[span[1] - 1][1]


def _size(speech: Speech, start: int, end: int, ladder: Rungs) -> str:
    """How large the effect is said to be: large, moderate, small, none, or nothing is said of it."""
    words = speech.words
    for phrase, size in ladder.sizes:
        n = len(phrase)
        if any(words[i : i + n] == phrase for i in range(start, end - n + 1)):
            return size
    return ""


def _banned(speech: Speech, firmness: Firmness, *, named: bool) -> tuple[tuple[Span, ...], tuple[Span, ...]]:
    """Words that no evidence bears, and words that are mostly wrong, by offsets; `named`: the evidence is named."""
    found = firmness.found
    banned = _proofs(speech, firmness)
    if not named:
        banned += [span for span in found.get("unnamed-evidence", ()) if not _asked(speech, span)]
    stated = [one.clause for one in firmness.statements]
    covered = {i for a, b in speech.found.get("not-absolutes", ()) for i in range(a, b)}
    loose = [
        span
        for span in found.get("banned-on-effects", ())
        if span[0] not in covered
        and not _denied(speech, span)
        and any(one.start <= span[0] < one.end for one in stated)
    ]
    if not speech.figures and "statistically" not in speech.words:
        loose += [span for span in found.get("unmeasured-size", ()) if not _denied(speech, span)]
    return tuple(_offsets(speech, span) for span in sorted(set(banned))), tuple(
        _offsets(speech, span) for span in loose
    )


def _proofs(speech: Speech, firmness: Firmness) -> list[Span]:
    """The words of proof, as words: those that are neither denied, nor hearsay, nor asked for."""
    hearsay = {i for a, b in speech.found.get("reported", ()) for i in range(a, b)}
    found = firmness.found.get("banned-certainty", ())
    return [span for span in found if span[0] not in hearsay and not _denied(speech, span) and not _asked(speech, span)]


def proofs(speech: Speech, firmness: Firmness) -> tuple[Span, ...]:
    """The words of proof of a headline, by offsets in its text."""
    return tuple(_offsets(speech, span) for span in _proofs(speech, firmness))


def _asked(speech: Speech, span: Span) -> bool:
    """Whether it is a topic and no statement: "what the science says about hanging"."""
    return not ASKING.isdisjoint(speech.words[max(0, span[0] - 2) : span[0]])


def _denied(speech: Speech, span: Span) -> bool:
    """Whether a word of proof is taken back: "not proven", "proves nothing"."""
    words = speech.words
    before = words[max(0, span[0] - REACH) : span[0]]
    return not NOTS.isdisjoint(before) or (span[1] < len(words) and words[span[1]] in PROVES_NOTHING)


class _People:
    """Who took part, and in which sources a viewer has heard of them."""

    def __init__(self, register: Mapping[str, Source], words: frozenset[str]) -> None:
        self._register = register
        self._words = words
        self._heard: set[str] = set()

    def are_counted(self, sentence: Sentence, numbers: tuple[float, ...]) -> bool:
        """Whether a sentence says how many people one of its sources had."""
        if not numbers or not sentence.links:
            return False
        sources = [self._register[link.id] for link in sentence.links if link.id in self._register]
        counts = {float(count) for one in sources for count in (one.n, one.n_per_group) if count}
        if not counts.isdisjoint(numbers):
            self._heard.update(one.id for one in sources)
            return True
        return False

    def are_named(self, sentence: Sentence, before: str) -> bool:
        """Whether the people of one of a sentence's sources are named in it, just before, or earlier on."""
        sources = [self._register[link.id] for link in sentence.links if link.id in self._register]
        known = [one for one in sources if one.n or one.population]
        people = self._words.union(*(described(one) for one in known), *(_heads(one) for one in known))
        if any(not people.isdisjoint(_words(text)) for text in (sentence.text, before)):
            self._heard.update(one.id for one in sources)
        return len(known) < len(sources) or not sources or any(one.id in self._heard for one in sources)


def _heads(source: Source) -> frozenset[str]:
    """The nouns that a description of people may end in: "one mail carrier", "walkers over sixty"."""
    words = [word for word in _words(source.population) if len(word) > 3]
    return frozenset(word for word in words if not word.endswith(("ed", "ly", "y")))


def _words(text: str) -> Iterator[str]:
    """The words of a text in lower case."""
    return (word.strip(".,;:!?'\"()“”’") for word in text.lower().replace("-", " ").split())


def headlines(
    episode: Episode,
    segments: Sequence[Segment],
    weights: Mapping[str, tuple[Weight | None, ...]],
    ladder: Rungs,
) -> tuple[Headline, ...]:
    """The title, the question and the promises, judged as sentences."""
    from scriptkit.computing.wordings import headlining

    return headlining.headlines(episode, segments, weights, ladder)
