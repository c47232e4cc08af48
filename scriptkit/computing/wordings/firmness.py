"""Tells how firmly a sentence speaks of people in general, clause by clause, and which word says so."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech, verb_form
from scriptkit.computing.hearing.kinds import SPEAKER, believed, opening
from scriptkit.computing.hearing.verbs import finite_verb, is_command
from scriptkit.computing.hearing.wording import MORE
from scriptkit.computing.wordings.effects import LIKE_NOUNS, NEAR, NOT, Effects, any_in, is_counted
from scriptkit.computing.wordings.rungs import STUDIES, Mark, Rungs, Span, find, hedges

PAST = frozenset("was were did had wasn't weren't didn't hadn't".split())
PRESENT = frozenset(
    "is are am has have does do will would can could may might must should isn't aren't hasn't haven't doesn't don't "
    "won't wouldn't can't cannot".split()
)
CONDITIONAL = frozenset(
    "whichever whatever however if whether unless until when whenever once before after wherever".split()
)
CLAIMING = frozenset("know knows sure certain convinced".split())
NO_NEGATION = frozenset("only just merely doubt question fails fail matter less".split())
GROUPS = frozenset("group groups side sides team arm others other half".split())
NAMING = frozenset("that this the a one same our their each every".split())
YOU = frozenset("you you're you've your".split())
COPULAS = frozenset("is isn't was are".split())
PAPERS = frozenset("it this that which they".split())
HAVING = frozenset("has have was were had hasn't haven't wasn't weren't".split())
EDITED = frozenset("corrected retracted withdrawn republished reanalysed reanalyzed".split())
INNER = frozenset("in from by of than with that which".split())
WHOLE = 3  # words of a hedge that is a clause by itself
MOST_CLAUSES = 60  # of a sentence that are looked at; nobody says more in one breath
MOST_VERBS = 4  # verbs of a clause that are looked at
AMBIGUOUS = frozenset("put hit cut hurt set read spread quit cost fit split shed beat".split())  # past or present


class Statement(NamedTuple):
    """What one clause states: its step, the words that say so, its verb, and how it hangs together with others."""

    step: int
    at: tuple[int, int]
    verb: int
    negated: bool
    carries_on: bool  # it has no subject of its own: "... and strengthens the tendon"
    clause: Clause


class Firmness:
    """How firmly a sentence speaks; `report`: a clause tells in the past what was found, `found`: where words stand."""

    __slots__ = ("found", "report", "statements")

    def __init__(self, statements: Sequence[Statement], found: Mapping[str, tuple[Span, ...]], *, report: bool) -> None:
        self.statements = tuple(statements)
        self.report = report
        self.found = found

    @property
    def firmest(self) -> Statement | None:
        """The statement that says most; of equal ones the first."""
        return max(self.statements, key=lambda one: one.step, default=None)


def weigh(
    speech: Speech, ladder: Rungs, *, effect: bool = False, commands: bool = False, told: bool = False
) -> Firmness:
    """How firmly each clause of a sentence states an effect on people in general.

    `effect`: the sentence is known to state one, so that its first clause in the present does where no word says so;
    `commands`: it tells the viewer to do something, and that part states nothing; `told`: it says how
    many people a study had, so that "heavy loads beat light ones" is what happened there.
    """
    found = find(speech.words, ladder)
    marks = hedges(speech, found)
    effects = Effects(speech, ladder.cues, found.get("ladder-claims", ()))
    thin = [a for a, _ in found.get("ladder-caveats", ())]
    statements: list[Statement] = []
    others: list[Statement] = []
    report = caveat = False
    # "if I had to bet, ..." and "it looks as if ..." hold for all that is said
    ceiling = min((step for step, a, b in marks if step and b - a >= WHOLE), default=4)
    under_if = False
    for k, clause in enumerate(speech.clauses[:MOST_CLAUSES]):
        verb, past, start = _verb(speech, clause, opening(speech, clause), ladder)
        under_if = _is_condition(speech, k, clause, start, under_if=under_if)
        past = past or (told and verb is not None and speech.words[verb] in AMBIGUOUS)
        report = report or (past and (any_in(speech.numbers, start, clause) or effects.are_in(start, clause)))
        if verb is None or _is_belief(speech, clause) or _on_evidence(speech, clause, start, verb, marks):
            ceiling = min([ceiling, *(step for step, a, _ in marks if clause.start <= a < clause.end and step)])
            caveat = caveat or (verb is not None and any_in(thin, verb, clause))
        elif not past and not under_if and not _skipped(speech, clause, start, ladder):
            if commands and is_command(speech, clause, start, ladder.cues):
                continue
            stated = _state(speech, clause, start, verb, marks)
            if effects.are_in(start, clause):
                statements.append(_inheriting(stated, statements))
            else:
                others.append(stated)
    if effect and not statements and not report:
        statements = others[:1]
    capped = [_capped(one, ceiling, caveat=caveat) for one in statements if one.step]
    return Firmness([_at_hedge(one, marks, ceiling) for one in capped], found, report=report)


def _is_belief(speech: Speech, clause: Clause) -> bool:
    """Whether a clause only says that the speaker believes the rest: "..., I suspect, ..."."""
    return clause.end - clause.start <= 3 and speech.words[clause.start] in SPEAKER


def _inheriting(stated: Statement, before: Sequence[Statement]) -> Statement:
    """A statement without a subject of its own is no firmer than the one it carries on."""
    return stated._replace(step=min(stated.step, before[-1].step)) if stated.carries_on and before else stated


def _capped(one: Statement, ceiling: int, *, caveat: bool) -> Statement:
    """A statement as what stands beside it lets it stand: "may", and the evidence is thin, is the lowest step."""
    step = min(one.step, ceiling)
    if caveat:
        step = 1 if one.step <= 2 else min(step, 2)
    return one._replace(step=step)


def _verbs(speech: Speech, clause: Clause, start: int, cues: Cues) -> Iterator[int]:
    """The finite verbs of a clause, the first few."""
    for _ in range(MOST_VERBS):
        verb = finite_verb(speech, clause, start, cues)
        if verb is None:
            return
        i = verb[0]
        counted = speech.words[i] in LIKE_NOUNS and is_counted(speech, i)
        named = speech.words[i] in STUDIES and i and speech.words[i - 1] in NAMING  # "in that study"
        if not counted and not named:
            yield i
        start = verb[0] + 1


def _is_past(speech: Speech, i: int, cues: Cues) -> bool:
    """Whether the verb at word i tells what was; "heavy loads beat light ones" may be either."""
    word = speech.words[i]
    if word in PAST:
        return True
    if word in PRESENT:
        return False
    if word in AMBIGUOUS:
        if i + 1 in speech.numbers:
            return True  # "squats put 66 millilitres on"
        subject = i - 2 if i > 1 and speech.words[i - 1].endswith("ly") else i - 1
        return subject >= 0 and not speech.words[subject].endswith("s") and speech.words[subject] not in PRESENT
    return word in cues.lists["past-forms"] or verb_form(word, cues.lists["verbs"])[1] == "ed"


def is_past(speech: Speech, cues: Cues) -> bool:
    """Whether any word of a sentence tells what was; for sentences that state no effect, where that is enough."""
    return any(_is_past(speech, i, cues) for i in range(len(speech.words)))


def _verb(speech: Speech, clause: Clause, start: int, ladder: Rungs) -> tuple[int | None, bool, int]:
    """The verb by which a clause is judged, whether it reports in the past, and where its own statement begins.

    A study's own verb hands over to what it says: "the trial finds that hanging builds grip" is judged by "builds".
    """
    cues, words = ladder.cues, speech.words
    if start < len(words) and words[start] in SPEAKER:
        start = next((i + 1 for i in range(start, min(start + 4, clause.end)) if words[i] in CLAIMING), start)
        start += words[start : start + 1] == ("that",)
    narrates = [i for i in range(clause.start, clause.end) if ((), "ladder-narrators") in ladder.own.get(words[i], ())]
    if narrates and (narrates[0] > start and _narrated_by(speech, start, narrates[0])):
        inner = narrates[0] + 1 + (words[narrates[0] + 1 : narrates[0] + 2] == ("that",))
        verb = next(_verbs(speech, clause, inner, cues), None)
        if verb is None:
            return narrates[0], True, inner  # "the trial showed more growth"
        return verb, _is_past(speech, verb, cues), inner
    chosen: int | None = None
    for i in _verbs(speech, clause, start, cues):
        if _is_past(speech, i, cues):
            if chosen is None and not (
                (words[i].endswith("ed") or words[i] in AMBIGUOUS) and _goes_on_present(speech, clause, i, cues)
            ):
                return i, True, start
        elif words[i - 1] in MORE and i - 1 == start:
            continue  # "more sets"
        elif chosen is None or (_is_relative(speech, chosen, start) and not _is_relative(speech, i, start)):
            chosen = i
    if chosen is None:  # forms that read as nouns elsewhere
        likely = (i for i in range(start + 1, clause.end) if words[i] in LIKE_NOUNS)
        chosen = next((i for i in likely if not is_counted(speech, i)), None)
    return chosen, chosen is not None and _is_told_as_now(speech, clause, start, chosen), start


def _is_told_as_now(speech: Speech, clause: Clause, start: int, verb: int) -> bool:
    """Whether a story of one study is told in the present: "and the ledge group ends up with 1.6 millimetres"."""
    subject = speech.words[start:verb]
    return not GROUPS.isdisjoint(subject) and any_in(speech.numbers, verb, clause)


def _narrated_by(speech: Speech, start: int, verb: int) -> bool:
    """Whether a study or its authors are the subject of the verb; "has been shown" has none."""
    return verb - start < 8 and not STUDIES.isdisjoint(speech.words[start:verb])


def _is_relative(speech: Speech, i: int, start: int) -> bool:
    """Whether the verb at word i only describes a noun: "the exercise that loads the calf"."""
    return i - 1 > start and speech.words[i - 1] in ("that", "which", "who")


def _goes_on_present(speech: Speech, clause: Clause, i: int, cues: Cues) -> bool:
    """Whether an "-ed" at word i only describes ("runners trained on a ledge gain more")."""
    later = next(_verbs(speech, clause, i + 1, cues), None)
    if later is None or (speech.words[later].endswith("'s") and later + 1 in speech.numbers):
        return False  # "gained 3 to the other group's 2"
    return not _is_past(speech, later, cues) and speech.words[later] not in ("could", "would")


def _on_evidence(speech: Speech, clause: Clause, start: int, verb: int, marks: list[Mark]) -> bool:
    """Whether a clause speaks of the evidence itself: "the evidence is thin", "that's one small trial"."""
    words = speech.words
    subject = words[start:verb]
    if start < len(words) and words[start] in ("in", "from", "across", "according", "with"):
        return False
    if not STUDIES.isdisjoint(subject):
        return True
    named = STUDIES - LIKE_NOUNS
    said = words[verb + 1 : verb + 7]
    study = next((i for i, word in enumerate(said) if word in named), None)
    if (
        words[verb] in COPULAS
        and said[:1] in (("a",), ("an",), ["a"], ["an"])
        and study
        and INNER.isdisjoint(said[:study])
    ):
        return True  # "the best I have is a before-and-after study"
    edited = words[verb] in HAVING and not EDITED.isdisjoint(words[verb + 1 : verb + 5])
    if edited and start < verb and words[start] in PAPERS:
        return True  # "it has since been corrected"
    short = verb - start <= 1 and not named.isdisjoint(words[verb + 1 : clause.end])
    return short and (words[start] in ("that's", "it's", "this", "that", "it", "there's", "there") or bool(marks))


def _skipped(speech: Speech, clause: Clause, start: int, ladder: Rungs) -> bool:
    """Whether a clause states nothing, since it is about the speaker."""
    words = speech.words
    if words[start] not in SPEAKER:
        return False
    rest = believed(speech, clause._replace(start=start), ladder.cues)
    return not rest and CLAIMING.isdisjoint(words[start : start + 4])


def _is_condition(speech: Speech, k: int, clause: Clause, start: int, *, under_if: bool) -> bool:
    """Whether a clause is a condition before what follows, or goes on with one: "if you're new, and you lift"."""
    if k + 1 >= len(speech.clauses):
        return False
    goes_on = clause.joiner in ("and", "or") and start < len(speech.words) and speech.words[start] in YOU
    return (start < len(speech.words) and speech.words[start] in CONDITIONAL) or (under_if and goes_on)


def _state(speech: Speech, clause: Clause, start: int, verb: int, marks: list[Mark]) -> Statement:
    """What a clause states in the present."""
    mine = [mark for mark in marks if clause.start <= mark[1] < clause.end]
    step = min((mark[0] for mark in mine), default=4)
    carries_on = verb == start and clause.joiner in ("", "and", "or") and start > 0
    return Statement(step, (verb, verb + 1), verb, _negated(speech, clause, verb), carries_on, clause)


def _negated(speech: Speech, clause: Clause, verb: int) -> bool:
    """Whether a clause denies: "doesn't build", "makes no difference"; "not only" and "never fails" do not."""
    words = speech.words
    for i in range(max(clause.start, verb - NEAR), min(verb + NEAR + 1, clause.end)):
        if words[i] in NOT or words[i].endswith("n't"):
            after = words[i + 1] if i + 1 < len(words) else ""
            if after not in NO_NEGATION:
                return True
    return False


def _at_hedge(one: Statement, marks: list[Mark], ceiling: int) -> Statement:
    """Let a lowered statement point at the words that lower it."""
    if one.step == 4:
        return one
    hedge = next((mark for mark in marks if mark[0] == one.step and one.clause.start <= mark[1] < one.clause.end), None)
    hedge = hedge or next((mark for mark in marks if mark[0] == min(one.step, ceiling)), None)
    return one._replace(at=hedge[1:]) if hedge else one
