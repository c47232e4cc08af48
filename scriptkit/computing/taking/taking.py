"""A recording held against the script: times by segment, pace, what differs, what to record again."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise

from scriptkit import keys
from scriptkit.computing.aloud import saying
from scriptkit.computing.hearing.claims import Cues
from scriptkit.computing.taking import added, differing, hearing_out, mended, unclear, unmended
from scriptkit.computing.taking.added import Extra
from scriptkit.computing.taking.aligning import Match, Tell
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.computing.timing import SENTENCE_END, pauses_of, rate_of_sample, says_of
from scriptkit.model import (
    Facts,
    HeardSentence,
    Pickup,
    Take,
    TakeChange,
    TakenSegment,
)
from scriptkit.model.recording import Recording, Utterance
from scriptkit.model.taking import ScriptOf

SAID = 0.5  # share of a segment's words from which on it was said
WEIGHTS = {"stop": 0, "cut": 1, "claim": 2, "wording": 3}
LEAST_WORDS = 60  # from which a pace is worked out
PAUSE = 1.2  # seconds: the longest ordinary pause between two lines, one where the segment changes


def hold(
    facts: Facts, recording: Recording, words: Mapping[str, Sequence[str]], cues: Cues, tell: Tell | None = None
) -> Take:
    """Everything that a recording tells of a script; `tell` is told how much of the work is done."""
    script, recorded = hearing_out.compared(facts.segments, recording.words)
    matches = hearing_out.match(script, recorded, tell)
    extras = added.extras(script, matches, recorded, words)
    watched = differing.Watched(facts.episode, facts.spoken_grades, words, recorded.apart)
    gaps = unclear.gaps(matches, recorded, recording.speech) if recording.speech is not None else []
    doubtful = unclear.lines(script, matches, recorded, gaps)
    changes: list[TakeChange] = []
    for number, (one, match) in enumerate(zip(script, _stretched(matches, recorded), strict=True)):
        if match is None:
            changes += _missing(one, watched, unclear=number in doubtful)
        elif recording.speech is None:
            changes += differing.changes(one, match, recorded, watched)
    if recording.speech is None:
        changes = mended.mend(changes, script, extras, recorded, watched)
        changes += added.changes(extras, script, recorded, cues)
    changes += _order(facts, script, matches, recorded)
    others = _others(extras, recorded) + unclear.added(script, gaps, doubtful)
    segments = _segments(facts, script, matches, others, recorded, doubtful)
    changes.sort(key=lambda one: (WEIGHTS[one.weight], one.at is None, one.at or 0.0))
    return Take(
        recording.length,
        *_pace(script, matches, recorded, says_of(facts.episode)),
        segments,
        _all_heard(script, matches, recorded, segments),
        tuple(changes),
        added.ad_libs(extras, script, recorded, cues) if recording.speech is None else (),
        _pickups(facts, changes, script),
        recorded.hesitations,
        added.tries(extras),
        tuple(ScriptOf(one.id, tuple(keys.of(line.text) for line in one.sentences)) for one in facts.segments),
        unmended.kept(changes, facts.segments),
        recording.speech is None,
        len(doubtful),
    )


def _others(extras: Sequence[Extra], recorded: Recorded) -> list[Utterance]:
    """Long stretches of words that are no line of the script."""
    return [
        Utterance(recorded.start(one.first), recorded.end(one.end - 1))
        for one in extras
        if one.kind == "added" and one.end - one.first >= added.LONG
    ]


def _all_heard(
    script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded, segments: Sequence[TakenSegment]
) -> tuple[HeardSentence, ...]:
    """Every line that was said; a few words alike elsewhere are no line of a segment that is missing."""
    missing = {one.id for one in segments if one.state == "missing"}
    there = ((one, match) for one, match in zip(script, matches, strict=True) if one.segment.id not in missing)
    return tuple(_heard(one, match, recorded) for one, match in there if match)


def _heard(one: Spoken, match: Match, recorded: Recorded) -> HeardSentence:
    start, end = recorded.start(match.first), recorded.end(match.last)
    return HeardSentence(one.segment.id, keys.of(one.sentence.text), start, end, match.score / len(one.tokens))


def _missing(one: Spoken, watched: differing.Watched, *, unclear: bool) -> list[TakeChange]:
    """A line that was not said: how much it matters goes by what it is.

    What may have been said in sound and was not made out is told only where it matters.
    """
    text = str(one.sentence.text)
    whole = watched.whole(one)
    marks = {mark.name for _, mark in one.sentence.cues}
    if whole:
        weight, what = "stop", f"the {whole} was not said"
    elif text in watched.grades:
        weight, what = "stop", "a grade was not said"
    elif watched.code and differing.holds_code(one, watched):
        weight, what = "stop", "the sponsor's code was not said"
    elif "payoff" in marks:
        weight, what = "claim", "a promise was not kept"
    elif any(link.stance in ("against", "null", "mixed") for link in one.sentence.links):
        weight, what = "claim", "what speaks against it was not said"
    else:
        weight, what = "wording", "it was not said"
    place = one.sentence.place_of(0)
    if unclear:
        what = f"{what.removesuffix(' was not said')} was not made out: listen whether it was said"
        doubt = TakeChange("claim", "unclear", what, None, one.segment.id, place, text, "", one.at)
        return [doubt] if weight == "stop" else []
    return [TakeChange(weight, "missing", what, None, one.segment.id, place, text, "", one.at)]


def _segments(
    facts: Facts,
    script: Sequence[Spoken],
    matches: Sequence[Match | None],
    others: Sequence[Utterance],
    recorded: Recorded,
    doubtful: Collection[int],
) -> tuple[TakenSegment, ...]:
    """Each segment with when it was said; each lasts until the next one in the recording begins."""
    made: list[TakenSegment] = []
    for segment, planned in zip(facts.segments, facts.timeline.segments, strict=True):
        own = [(one, match) for one, match in zip(script, matches, strict=True) if one.segment is segment]
        there = [match for _, match in own if match]
        all_words = sum(len(one.tokens) for one, _ in own)
        bare = TakenSegment(segment.id, segment.kind, planned.total, None, None, "missing")
        heard = sum(match.score for match in there)
        if not there or heard < SAID * all_words:
            maybe = sum(len(script[at].tokens) for at in doubtful if script[at].segment is segment)
            state = "missing" if heard + maybe < SAID * all_words else "unclear"
            made.append(bare._replace(state=state if all_words else "said"))
            continue
        words = sum(saying.words(one.sentence.text) for one, match in own if match)
        start, end = recorded.start(min(one.first for one in there)), recorded.end(max(one.last for one in there))
        made.append(bare._replace(start=start, end=end, state="said", words=words, silent=planned.silent))
    made += [TakenSegment("", "", 0.0, one.start, one.end, "added") for one in others]
    return _with_ends(_with_moves(made))


def _with_moves(segments: Sequence[TakenSegment]) -> list[TakenSegment]:
    """Those that were said elsewhere than in the order of the script: the fewest that make it so."""
    there = [one for one in segments if one.state == "said" and one.start is not None]
    kept = _longest_rise([one.start or 0.0 for one in there])
    moved = {one.id for at, one in enumerate(there) if at not in kept}
    return [one._replace(state="moved") if one.id in moved and one.state == "said" else one for one in segments]


def _longest_rise(values: Sequence[float]) -> set[int]:
    """The places of a longest run of values that rises, not necessarily side by side."""
    tails: list[float] = []
    ends: list[int] = []
    before: list[int] = []
    for at, value in enumerate(values):
        place = bisect_left(tails, value)
        before.append(ends[place - 1] if place else -1)
        tails[place : place + 1] = [value]
        ends[place : place + 1] = [at]
    kept, at = set(), ends[-1] if ends else -1
    while at >= 0:
        kept.add(at)
        at = before[at]
    return kept


def _with_ends(segments: Sequence[TakenSegment]) -> tuple[TakenSegment, ...]:
    """Each with the start of the next one in the recording as its end; the last one ends with its last word."""
    starts = sorted(one.start for one in segments if one.start is not None)
    made = []
    for one in segments:
        later = [start for start in starts if one.start is not None and start > one.start]
        made.append(one._replace(end=later[0]) if later else one)
    return tuple(made)


def _stretched(matches: Sequence[Match | None], recorded: Recorded) -> list[Match | None]:
    """The places with the words before and behind them that no other line has."""
    firsts = sorted(one.first for one in matches if one)
    lasts = sorted(one.last for one in matches if one)
    made: list[Match | None] = []
    for one in matches:
        if one is None:
            made.append(None)
            continue
        behind = bisect_right(firsts, one.first)
        before = bisect_left(lasts, one.first)
        low = lasts[before - 1] if before else -1
        high = firsts[behind] if behind < len(firsts) else len(recorded.keys)
        made.append(differing.stretched(one, low, high, recorded))
    return made


def _pace(
    script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded, says: Mapping[str, str]
) -> tuple[float | None, float | None]:
    """Words a minute over the lines that count, with the ordinary pauses behind them, and letters a second without.

    A hold, or another try between two lines, counts as the ordinary pause: neither is how fast somebody speaks.
    """
    there = [(one, match) for one, match in zip(script, matches, strict=True) if match]
    there.sort(key=lambda pair: pair[1].first)
    words = sum(saying.words(one.sentence.text) for one, _ in there)
    seconds = sum(recorded.end(match.last) - recorded.start(match.first) for _, match in there)
    spoken = [saying.as_spoken(one.sentence.text, says) for one, _ in there]
    pauses = pauses_of(sum(map(saying.commas, spoken)), 0)
    for (one, match), (other, following) in pairwise(there):
        gap = max(0.0, recorded.start(following.first) - recorded.end(match.last))
        ordinary = gap <= PAUSE
        seconds += gap if ordinary else SENTENCE_END
        pauses += pauses_of(0, 1, ordinary and one.segment is not other.segment)
    if words < LEAST_WORDS or seconds <= 0:
        return None, None
    letters = rate_of_sample(sum(map(saying.letters, spoken)), seconds, pauses)
    return round(60 * words / seconds, 1), round(letters, 2) if letters else None


def _order(
    facts: Facts, script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded
) -> list[TakeChange]:
    """Promises and trade words in the order in which they were spoken: kept after they are made, explained at first."""
    found: list[TakeChange] = []
    made: dict[str, float] = {}
    kept: dict[str, tuple[float, Spoken]] = {}
    for one, match in zip(script, matches, strict=True):
        at = recorded.start(match.first) if match else None
        for _, mark in one.sentence.cues if at is not None else ():
            for name in mark.ids if mark.name in ("promise", "payoff") else ():
                if mark.name == "promise":
                    made[name] = min(made.get(name, at or 0.0), at or 0.0)
                else:
                    kept[name] = max(kept.get(name, (-1.0, one)), (at or 0.0, one), key=lambda pair: pair[0])
    for name, (at, one) in kept.items():
        if name in made and at < made[name]:
            what = f"the promise “{name}” was kept before it was made"
            place, text = one.sentence.place_of(0), str(one.sentence.text)
            found.append(TakeChange("claim", "order", what, at, one.segment.id, place, text, ""))
    for term, words in facts.episode.terms.items():
        if words.gloss:
            found += _unexplained(str(term), str(words.gloss), script, matches, recorded)
    return found


def _unexplained(
    term: str, gloss: str, script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded
) -> list[TakeChange]:
    """A trade word that was heard before the sentence that explains it."""
    uses, explained = [], None
    for one, match in zip(script, matches, strict=True):
        text = one.sentence.text.lower()
        if match and term.lower() in text:
            uses.append((recorded.start(match.first), one))
        if match and gloss.lower() in text:
            at = recorded.start(match.first)
            explained = at if explained is None else min(explained, at)
    if not uses or explained is None:
        return []
    at, one = min(uses, key=lambda pair: pair[0])
    if at >= explained:
        return []
    what = f"“{term}” was heard before it was explained"
    return [
        TakeChange("claim", "order", what, at, one.segment.id, one.sentence.place_of(0), str(one.sentence.text), "")
    ]


def _pickups(facts: Facts, changes: Sequence[TakeChange], script: Sequence[Spoken]) -> tuple[Pickup, ...]:
    """Whole sentences to record again, by set-up: all that stops a release, and what a promise or a dissent needs."""
    lines = {(one.segment.id, one.at): one for one in script}
    wanted: dict[tuple[str, int], Pickup] = {}
    for change in changes:
        line = lines.get((change.segment, change.line))
        if line and (change.weight == "stop" or (change.weight == "claim" and change.kind == "missing")):
            place, text = line.sentence.place_of(0), str(line.sentence.text)
            made = Pickup(_setup(facts, line), change.segment, place, text, change.what)
            wanted.setdefault((change.segment, change.line), made)
    return tuple(sorted(wanted.values(), key=lambda one: one.setup))


def _setup(facts: Facts, line: Spoken) -> str:
    """The set-up of the picture that is planned while a sentence is said."""
    timed = next((one for one in facts.timeline.segments if one.id == line.segment.id), None)
    if timed is None or line.at >= len(timed.sentences):
        return ""
    start = timed.sentences[line.at].start
    shown = [shot for shot in facts.shots if shot.segment == line.segment.id and shot.start is not None]
    before = [shot for shot in shown if (shot.start or 0.0) <= start + 1e-6]
    return (before or shown)[-1 if before else 0].setup if shown else ""
