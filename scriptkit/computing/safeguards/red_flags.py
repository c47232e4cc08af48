"""Finds signs of an emergency or an illness that nothing answers in their segment, and exercise advised beside them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards.phrases import Hit, Spot, denied, spots
from scriptkit.computing.safeguards.watching import YOU, Lists, Seen
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Risk, Segment, Sentence

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

EMERGENCY, CLINICIAN, DIAGNOSIS = "emergency-signs", "clinician-signs", "diagnoses"
ME = frozenset("i i'm i've i'd my me mine myself".split())
CONDITIONS = frozenset("after if when whenever anyone anybody unless those who".split())
SUFFERS = CONDITIONS | frozenset("got have has having with for suffer".split())
ASKED = frozenset(
    (
        "asks asked ask writes wrote emails emailed messaged viewer viewers subscriber subscribers follower followers "
        "question questions comment comments somebody"
    ).split()
)
LEAD_INS = frozenset("then just simply so please always instead and but or still only now first maybe even".split())
MODALS = frozenset("should can could would might must i'd we'd you'd recommend suggest i'll let's to".split())
BRIDGES = ("until then", "in the meantime", "meanwhile", "instead", "for now", "if so", "then")
AVOIDS = frozenset(
    "skip avoid leave stay not isn't aren't don't doesn't won't never wait stop without out rest ask see".split()
)


def find(script: Script, seen: Sequence[Seen], lists: Lists) -> Iterator[Risk]:
    """All of them, segment by segment."""
    names = [tuple(plain(one.name).split()) for one in script.episode.exercises.values() if one.name]
    for _, group in groupby(
        (one for one in seen if one.of(EMERGENCY, CLINICIAN, DIAGNOSIS)), lambda one: one.segment.id
    ):
        rows = list(group)
        answers = _Answers(rows[0].segment, script.plain[rows[0].segment.id], lists)
        for row in rows:
            told = list(_unanswered(row, answers, lists))
            urgent = any(risk.kind == "emergency" for risk in told)
            # what to say beside a sign answers it as well, so it is told once
            yield from [_in_tier(risk, urgent) for risk in _advised(row, answers, lists, names)] or told


def _in_tier(advice: Risk, urgent: bool) -> Risk:  # noqa: FBT001 - read with its name where it is called
    """Advice beside a sign; beside one of an emergency that nothing answers, what to say is another."""
    return advice._replace(kind="advice-in-emergency") if urgent else advice


class _Answers:
    """The sentences of a segment that answer a sign: stop and get emergency help, or ask a licensed clinician."""

    def __init__(self, segment: Segment, plain_sentences: Sequence[str], lists: Lists) -> None:
        self.segment, self.plain, self.lists = segment, plain_sentences, lists
        self.followers = _followers(segment)
        self.said = [spots(sentence.text) for sentence in segment.sentences]
        self.defers = [self._defers(number) for number in range(len(self.said))]
        self.stops = [bool(lists.holds("stopping", one)) for one in self.said]
        self.emergency = any(self._sends_for_help(number) for number in range(len(self.said)))

    def _heard(self, name: str, number: int) -> bool:
        """Whether a sentence says words of a list plainly: not as a question, not denied, not played down."""
        if not self.lists.holds(name, self.said[number]):
            return False
        asked = self.segment.sentences[number].text.rstrip().endswith("?")
        return not asked and not self.lists.hears("softeners", self.plain[number])

    def _defers(self, number: int) -> bool:
        return self._heard("referrals", number)

    def _sends_for_help(self, number: int) -> bool:
        near = self.stops[max(0, number - 1) : number + 2]
        return any(near) and self._heard("emergency-lines", number)


def _followers(segment: Segment) -> set[int]:
    """The numbers of the sentences that follow another one in their paragraph."""
    found: set[int] = set()
    first = 0
    for paragraph in segment.paragraphs:
        found.update(range(first + 1, first + len(paragraph.sentences)))
        first += len(paragraph.sentences)
    return found


def _unanswered(row: Seen, answers: _Answers, lists: Lists) -> Iterator[Risk]:
    """A sign that is spoken of in a segment without the line of its tier; the first of a sentence."""
    emergencies = [hit for hit in row.of(EMERGENCY) if _is_meant(row, hit, lists)]
    if emergencies:
        if not answers.emergency:
            yield row.risk("emergency", emergencies[0])
        return
    signs = [hit for hit in row.of(CLINICIAN) if _is_meant(row, hit, lists) and _is_addressed(row, hit, answers)]
    if signs and not answers.emergency and not any(answers.defers):
        yield row.risk("clinician", signs[0])


def _is_meant(row: Seen, hit: Hit, lists: Lists) -> bool:
    """Whether a sign may be the viewer's: not one that a study reports, nor one that nobody had."""
    if row.speaks_to_viewer():
        return True
    return not row.sentence.links and not denied(row.said, hit, lists["denials"])


def _is_addressed(row: Seen, hit: Hit, answers: _Answers) -> bool:
    """Whether a viewer is spoken to or asks; a speaker's own story and plain teaching are not."""
    words = row.words()
    before = answers.said[row.number - 1] if row.number else ()
    asked = row.judgement.kind == "question" or not ASKED.isdisjoint(words | {spot.word for spot in before})
    if asked or not YOU.isdisjoint(words):
        return True
    if not ME.isdisjoint(words):
        return False
    opening = CONDITIONS if row.judgement.kind == "claim" else SUFFERS
    return row.judgement.kind == "instruction" or _as_condition(row.said, hit, opening)


def _as_condition(said: Sequence[Spot], hit: Hit, opening: frozenset[str] = SUFFERS) -> bool:
    """Whether words open a condition or name who has it: "if ... surgery", "anyone with a hernia"."""
    return any(spot.word in opening for spot in said[max(0, hit.first - 6) : hit.first])


def _advised(row: Seen, answers: _Answers, lists: Lists, names: Sequence[tuple[str, ...]]) -> Iterator[Risk]:
    """Exercise that is prescribed to somebody with a sign or a diagnosis, there or in the next sentence."""
    hits = [hit for hit in row.of(EMERGENCY, CLINICIAN, DIAGNOSIS) if _is_theirs(row, hit, lists)]
    if not hits:
        return
    hit = hits[-1]
    advice = _advice(row.said, hit, lists) or _named(row.said, hit, names)
    if advice is not None:
        yield row.risk("advice", hit, _words(row.sentence, row.said, advice))
        return
    following = row.number + 1
    told = row.judgement.kind == "claim" or answers.defers[row.number]  # nobody is left waiting for an answer
    if following not in answers.followers or (told and not answers.plain[following].startswith(BRIDGES)):
        return
    said = answers.said[following]
    advice = _advice(said, None, lists)
    if advice is not None:
        yield row.risk("advice", hit, _words(row.segment.sentences[following], said, advice))


def _is_theirs(row: Seen, hit: Hit, lists: Lists) -> bool:
    """Whether somebody is said or asked to have it, and not said not to."""
    if row.sentence.links and not row.speaks_to_viewer():
        return False
    opens = hit.first == 0 and row.judgement.kind == "question"
    return (opens or _as_condition(row.said, hit)) and not denied(row.said, hit, lists["denials"])


def _advice(said: Sequence[Spot], hit: Hit | None, lists: Lists) -> tuple[int, int] | None:
    """The words that prescribe exercise: a command, or "you could do"; of a clause that asks no clinician."""
    found = [one for one in lists.holds("recommending", said) if _is_command(said, one.first, hit)]
    found += lists.holds("recommended", said)
    for one in sorted(found, key=lambda each: each.first):
        clause = [spot for spot in said if spot.clause == said[one.first].clause]
        inside = hit is not None and hit.first <= one.first <= hit.last
        if not inside and not lists["clinicians"].find(clause) and "not" not in _after(said, one.last):
            return one.first, one.last
    return None


def _after(said: Sequence[Spot], last: int) -> list[str]:
    return [spot.word for spot in said[last + 1 : last + 2]]


def _is_command(said: Sequence[Spot], at: int, hit: Hit | None) -> bool:
    """Whether a verb opens a clause, follows "you should" and the like, or follows right behind the sign."""
    if hit is not None and at == hit.last + 1:
        return True
    while at > 0 and said[at - 1].clause == said[at].clause and said[at - 1].word in LEAD_INS:
        at -= 1
    return at == 0 or said[at - 1].clause != said[at].clause or said[at - 1].word in MODALS


def _named(said: Sequence[Spot], hit: Hit, names: Sequence[tuple[str, ...]]) -> tuple[int, int] | None:
    """An exercise of the episode, named behind the sign in a sentence that does not keep a viewer from it."""
    words = [spot.word for spot in said]
    if not AVOIDS.isdisjoint(words):
        return None
    for name in names:
        for at in range(hit.last + 1, len(words) - len(name) + 1):
            named = (*words[at : at + len(name) - 1], words[at + len(name) - 1].removesuffix("s"))
            if name in (named, tuple(words[at : at + len(name)])) and said[at].clause != said[hit.last].clause:
                return at, at + len(name) - 1
    return None


def _words(sentence: Sentence, said: Sequence[Spot], span: tuple[int, int]) -> str:
    return sentence.text[said[span[0]].start : said[min(span[1] + 4, len(said) - 1)].end]
