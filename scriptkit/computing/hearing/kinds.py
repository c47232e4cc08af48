"""Tells what one clause does: state something checkable, judge, instruct, or none of these."""

from typing import NamedTuple

from scriptkit.computing.hearing.clauses import CONDITIONS, Clause, Cues, Speech, verb_form
from scriptkit.computing.hearing.coaching import cue
from scriptkit.computing.hearing.verbs import AUXILIARIES, PREPOSITIONS, finite_verb, is_command, is_plural
from scriptkit.computing.hearing.voicing import ADVERBS, Spans, grades, marked_opinion

SPEAKER = frozenset("i i'm i've i'd i'll we we're we've we'll we'd my our me us mine myself".split())
VIEWER = frozenset("you you're you've you'll you'd".split())
ASKED = frozenset("it they you we i he she that this the a your there these those anyone anybody".split())
SHARES = frozenset("most more less half all nothing no little much enough".split())
SOMEBODY = frozenset("he he's he'll she she's she'll someone someone's somebody somebody's".split())
CALLED = frozenset("people everyone folks friends hero".split())  # "people, squat" calls; "people squat" states
DROPPED = frozenset("reckon guess suspect figure bet gather doubt".split())
ASKERS = frozenset("how what which who where why when".split())
HANDLED = frozenset("the your a an it them these those".split())  # "gather the plates" is a command
LOVING = frozenset("love loved hate hated adore loathe dig".split())
PRAISE = (("the", "best"), ("the", "worst"), ("the", "greatest"))
MINE = (("me",), ("my",), ("mine",))
OFFERED = frozenset("tell give show send use follow copy watch join let check visit get grab try click find".split())
GUESSES = frozenset("bet guess hunch hypothesis suspicion theory understanding".split())
CONTENT = ("effect-verbs", "causes", "comparatives", "study-words", "health", "measures", "absolutes", "than")
MATTERS = ("topic-words", "health", "effect-verbs", "study-words", "figures", "comparatives")
CARRIED = frozenset("claim condition mine".split())
DENIALS = frozenset("no not never cannot nothing without neither nor".split())
IMPRESSIONS = frozenset("sounds smells tastes feels".split())
SENSED = frozenset("look looks looked feel feels felt sound sounds sounded smell smells taste tastes".split())
NOT_SENSED = frozenset(
    "at for into like as the a an your their its it this that how what where in on from to up".split()
)


class Verdict(NamedTuple):
    """What a clause does, the words that say so, and how surely: 0 form alone, 1 a topic, 2 an effect or figure."""

    kind: str
    spans: Spans
    weight: int = 0


NOTHING = Verdict("other", [])


def opening(speech: Speech, clause: Clause) -> int:
    """The first word of a clause after the words that only connect."""
    i = clause.start
    ends = dict(speech.within("connectives", clause))
    while i < clause.end and i in ends and not (speech.words[i] in CALLED and ends[i] not in speech.stops):
        i = ends[i]
    return min(i, clause.end)


def believed(speech: Speech, clause: Clause, cues: Cues) -> int:
    """Where the statement begins that a clause only believes ("I suspect | the tendon adapts"), or 0."""
    words = speech.words
    for i in range(clause.start, min(clause.start + 3, clause.end)):
        if words[i] in ("i", "i'd", "i'm", "we"):
            for j in range(i + 1, min(i + 4, clause.end)):
                if words[j] in cues.lists["belief-verbs"]:
                    return j + 1
                if words[j] not in ADVERBS:
                    return 0
        if i == clause.start and _drops_speaker(words, i, clause.end):
            return i + 1
        if words[i] == "my" and words[i + 1 : i + 2] and words[i + 1] in GUESSES and words[i + 2 : i + 3] == ("is",):
            return i + 3 + (words[i + 3 : i + 4] == ("that",))
    return 0


def content(speech: Speech, clause: Clause) -> Spans:
    """The words of a clause that a record could contradict: effects, comparisons, research, health, measures."""
    return [span for name in CONTENT if name in speech.found for span in speech.within(name, clause)]


def tasted(speech: Speech, clause: Clause, cues: Cues) -> Spans:
    """The words of taste in a clause, letter grades among them."""
    spans = [span for span in speech.within("evaluations", clause) if not _is_share(speech, span, cues)]
    return spans + grades(speech, clause)


def _is_share(speech: Speech, span: tuple[int, int], cues: Cues) -> bool:
    """Whether "out of ten" tells how many of those counted ("nine out of ten people"), and rates nothing."""
    start, end = span[1] - 3, span[1]
    if start < 0 or speech.words[start : start + 2] != ("out", "of"):
        return False
    if start and speech.words[start - 1] == "times":
        return True
    after = speech.words[end] if end < len(speech.words) and end not in speech.stops else ""
    if after and speech.within("people", Clause(end, end + 1, "")):
        return True
    base = verb_form(after, cues.lists["verbs"])[0]
    return is_plural(after) and after not in AUXILIARIES and (not base or base in cues.lists["verb-or-noun"])


def judge_clause(speech: Speech, clause: Clause, cues: Cues, before: str) -> Verdict:
    """What one clause does; `before` is what the one before it does, or "name" where only its subject was said."""
    start = opening(speech, clause)
    if start >= clause.end:
        return NOTHING
    words = speech.words
    if _is_between(speech, clause, start):
        return Verdict("transition", [])
    if before == "mine" and clause.joiner == "and" and words[start] in AUXILIARIES:
        return Verdict("mine", [])  # "... and had to be helped up"
    if words[start] in cues.lists["verbs"] and _carries_on(speech, clause, before):
        spans = [(start, start + 1), *content(speech, clause)]
        return Verdict("claim", spans, 2) if before == "name" else Verdict(before, spans)
    if told := _told(speech, clause, start, cues):
        return told
    if words[start] in SPEAKER or _drops_speaker(words, start, clause.end):
        return _judge_mine(speech, clause, start, cues)
    taste = tasted(speech, clause, cues)
    if taste or words[start] in IMPRESSIONS:
        return Verdict("opinion", taste or [(start, start + 1)])
    return _judge_statement(speech, clause, start, cues)


def _is_between(speech: Speech, clause: Clause, start: int) -> bool:
    """Whether a clause only announces or connects, or says who pays."""
    opened = any(span[0] in (start, clause.start) for span in speech.within("transitions", clause))
    return opened or bool(speech.within("payers", clause))


def _told(speech: Speech, clause: Clause, start: int, cues: Cues) -> Verdict | None:
    """What a clause does that tells the viewer to do something, or only looks like it ("hate it", "ask me how")."""
    words = speech.words
    if is_command(speech, clause, start, cues) and not _drops_speaker(words, start, clause.end):
        loved = [b for a, b in speech.within("evaluations", clause) if a == start and b > a + 1]
        if loved or words[start] in LOVING or any(a == start for a, _ in speech.within("opinion-markers", clause)):
            return Verdict("opinion", [(start, min(start + 2, clause.end))])
        if words[start + 1 : start + 2] in MINE and words[start] not in OFFERED:
            return Verdict("mine", [])
        return Verdict("instruction", [(start, min(start + 2, clause.end))])
    advised = [span for span in speech.within("advice", clause) if not span[0] or words[span[0] - 1] not in SPEAKER]
    if advised:
        return Verdict("instruction", advised)
    end = cue(speech, clause, start, cues)
    return Verdict("instruction", [(start, end)]) if end else None


def _drops_speaker(words: tuple[str, ...], start: int, end: int) -> bool:
    """Whether a clause opens with the speaker's belief and leaves the speaker out: "reckon most calves ..."."""
    if words[start] not in DROPPED or start + 2 >= end or words[start + 1] in ASKERS:
        return False
    return words[start] in ("reckon", "suspect") or words[start + 1] not in HANDLED


def _carries_on(speech: Speech, clause: Clause, before: str) -> bool:
    """Whether a clause that opens with a verb goes on with what was said ("they rest and grow")."""
    return before == "name" or (
        clause.joiner in ("and", "or") and clause.start not in speech.stops and before in CARRIED
    )


def _judge_mine(speech: Speech, clause: Clause, start: int, cues: Cues) -> Verdict:
    """What a clause about the speaker does."""
    words = speech.words
    if speech.within("show-words", clause) and not content(speech, clause):
        return Verdict("transition", [])
    marks = marked_opinion(speech, clause, cues)
    taste = tasted(speech, clause, cues)
    if taste and (marks or words[start] in ("i", "i'm", "my", "we", "we're", "our")):
        return Verdict("opinion", taste + marks)
    rest = believed(speech, clause, cues)
    inner = Clause(rest, clause.end, "")
    if rest and rest < clause.end and words[rest] not in SPEAKER:
        weighty = _beyond_praise(speech, inner) + speech.within("topic-words", inner)
        verb = finite_verb(speech, inner, rest, cues)
        if weighty and verb is not None:
            return Verdict("claim", [(start, rest), (verb[0], verb[0] + 1)], 2)
    if rest == clause.end:
        return Verdict("belief", marks)
    if spans := _hearsay(speech, clause, start):
        return Verdict("claim", spans, 2)
    return _judge_seen(speech, clause, start, cues, marks)


def _beyond_praise(speech: Speech, clause: Clause) -> Spans:
    """The checkable words of a clause but for "the best" and "the worst", which after "I think" only praise."""
    return [span for span in content(speech, clause) if speech.words[span[0] : span[1]] not in PRAISE]


def _hearsay(speech: Speech, clause: Clause, start: int) -> Spans:
    """The words by which somebody of the speaker's states something ("my physio says it cures ...")."""
    told = speech.within("reported", clause)
    if not told or speech.words[start] not in ("my", "our") or "i" in speech.words[start : clause.end]:
        return []
    spans = content(speech, clause)
    return told + spans if spans else []


def _judge_seen(speech: Speech, clause: Clause, start: int, cues: Cues, marks: Spans) -> Verdict:
    """What a clause about the speaker does that may tell of research or of the people they trained."""
    words = speech.words
    study = speech.within("study-words", clause)
    seen = any(_is_seen(speech, i, cues) for i in range(start, clause.end))
    if words[start] == "our" and speech.within("measures", clause):
        return Verdict("claim", speech.within("measures", clause), 2)
    if study and words[start] in ("we", "i", "i've", "we've", "our") and not marks and _tells_of(speech, clause):
        return Verdict("claim", study, 2)
    if seen and words[start] in ("i've", "i", "we've") and (content(speech, clause) or speech.within("people", clause)):
        return Verdict("claim", content(speech, clause) or [(start, start + 2)], 2)
    return Verdict("opinion", marks) if marks else Verdict("mine", [])


def _tells_of(speech: Speech, clause: Clause) -> bool:
    """Whether a clause that names the speaker and a study tells what is in it ("we have no trial")."""
    denied = any(word in DENIALS or word.endswith("n't") for word in speech.words[clause.start : clause.end])
    names = ("figures", "people", "effect-verbs", "comparatives", "hedges", "topic-words", "causes")
    return denied or any(speech.within(name, clause) for name in names)


def _is_seen(speech: Speech, i: int, cues: Cues) -> bool:
    """Whether word i tells what the speaker saw in people ("I have coached"), and not where ("I trained in a hall")."""
    after = speech.words[i + 1] if i + 1 < len(speech.words) else ""
    return speech.words[i] in cues.lists["experience"] and after not in PREPOSITIONS


def _beyond_taste(speech: Speech, clause: Clause, marks: Spans, cues: Cues) -> bool:
    """Whether a clause that names the speaker still states something: a study, a figure, people, or an effect."""
    names = ["study-words", "measures", "people"]
    if not speech.within("opinion-markers", clause):  # "in my book five is ..." measures nothing
        names.append("figures")
    if speech.within("health", clause) and (speech.within("effect-verbs", clause) or speech.within("causes", clause)):
        return True
    if all(speech.words[end - 1] in cues.lists["belief-verbs"] for _, end in marks):
        names.append("effect-verbs")
    return any(speech.within(name, clause) for name in names)


def _judge_statement(speech: Speech, clause: Clause, start: int, cues: Cues) -> Verdict:
    """What a clause about the world does: with a finite verb it states something; talk about the show does not."""
    words = speech.words
    reported = speech.within("reported", clause)
    spans = content(speech, clause)
    if speech.within("show-words", clause) and not reported and not _is_weighed(speech, clause):
        return Verdict("transition", [])
    anybody = words[start] in SOMEBODY or ("scene-words" in speech.found and speech.within("scene-words", clause))
    if anybody and not _has_matter(speech, clause, spans):
        return Verdict("mine", [])
    verb = finite_verb(speech, clause, start, cues)
    certain = speech.within("absolutes", clause)
    weight = (
        2
        if reported or any(span not in certain for span in spans)
        else int(bool(spans) or any(speech.within(name, clause) for name in ("topic-words", "hedges")))
    )
    marks = marked_opinion(speech, clause, cues)
    if verb is None:
        return Verdict("opinion", marks) if marks and weight < 2 else Verdict("fragment", spans, weight)
    hard = _beyond_taste(speech, clause, marks, cues)
    if any(word in SPEAKER for word in words[start : clause.end]) and not hard:
        return Verdict("opinion", marks) if marks else Verdict("mine", [])
    if verb[0] == start and words[start] in AUXILIARIES and words[start + 1 : start + 2] and words[start + 1] in ASKED:
        return NOTHING
    if not spans and _is_impression(words, verb[0], clause.end):
        return Verdict("opinion", [(verb[0], verb[0] + 2)])
    if not verb[1] and weight < 2 and not cues.lists["body"].isdisjoint(words[start : start + 2]):
        return Verdict("instruction", [(start, start + 2)])
    if words[start] in VIEWER and weight == 1 and not SHARES.isdisjoint(words[verb[0] + 1 : verb[0] + 2]):
        weight = 2  # "you get most of the strength ..."
    if (words[start] in VIEWER and weight < 2 and not spans) or (words[start] == "your" and not weight):
        return NOTHING
    kind = "condition" if words[start] in CONDITIONS else "claim"
    return Verdict(kind, [(verb[0], verb[0] + 1), *spans, *reported], weight if verb[1] else min(weight, 1))


def _is_weighed(speech: Speech, clause: Clause) -> bool:
    """Whether a clause speaks of research, a measure or a comparison."""
    return any(speech.within(name, clause) for name in ("study-words", "measures", "comparatives"))


def _has_matter(speech: Speech, clause: Clause, spans: Spans) -> bool:
    """Whether a clause with a figure of a joke or a scene in it speaks of the field at all."""
    return bool(spans) or any(speech.follows(name, clause.start) for name in MATTERS)


def _is_impression(words: tuple[str, ...], i: int, end: int) -> bool:
    """Whether the verb at word i tells how something looks or feels ("they look rude"), not where one looks."""
    return words[i] in SENSED and i + 1 < end and words[i + 1] not in NOT_SENSED
