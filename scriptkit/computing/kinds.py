"""Tells what one clause does: state something checkable, judge, instruct, or none of these."""

from typing import NamedTuple

from scriptkit.computing.clauses import CONDITIONS, Clause, Cues, Speech
from scriptkit.computing.verbs import AUXILIARIES, PREPOSITIONS, finite_verb, is_command

Spans = list[tuple[int, int]]

SPEAKER = frozenset("i i'm i've i'd i'll we we're we've we'll we'd my our me us mine myself".split())
VIEWER = frozenset("you you're you've you'll you'd".split())
ADVERBS = frozenset(
    (
        "still really just honestly personally quite do also always never actually genuinely kind of would will "
        "rather not happily have only even probably mostly don't can't wouldn't won't used so very pretty fairly "
        "strongly cannot could couldn't can long"
    ).split()
)
ASKED = frozenset("it they you we i he she that this the a your there these those anyone anybody".split())
GRADING = frozenset("give gave giving award awarded put score".split())
GUARDED = frozenset("wouldn't would couldn't could don't".split())
VOICES = {  # the speaker's word, and the list that says what after it voices an opinion
    "i": "opinion-verbs",
    "we": "opinion-verbs",
    "i've": "opinion-verbs",
    "i'd": "opinion-choices",
    "i'll": "opinion-choices",
    "we'd": "opinion-choices",
    "i'm": "opinion-feelings",
    "we're": "opinion-feelings",
    "my": "opinion-nouns",
    "our": "opinion-nouns",
}
GUESSES = frozenset("bet guess hunch hypothesis suspicion theory understanding".split())
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
    while i < clause.end and i in ends:
        i = ends[i]
    return min(i, clause.end)


def grade_at(speech: Speech, i: int) -> int:
    """Where a spoken letter grade that begins at word i ends ("an A", "B plus"), or 0."""
    word, words = speech.words[i], speech.words
    if len(word) != 1 or word not in "abcdfs" or not speech.text[speech.places[i][0]].isupper():
        return 0
    before = words[i - 1] if i else ""
    after = words[i + 1] if i + 1 < len(words) else ""
    if after in ("plus", "minus", "tier"):
        return i + 2
    if before in ("vitamin", "type", "group", "hepatitis") or after[:1].isdigit():
        return 0
    article = word == "a" and before not in ("an", "straight", "solid", "big", "easy", "the", "to")
    return 0 if article and i + 1 not in speech.stops else i + 1


def grades(speech: Speech, clause: Clause) -> Spans:
    """The letter grades spoken in a clause."""
    return [(i, end) for i in range(clause.start, clause.end) if (end := grade_at(speech, i))]


def marked_opinion(speech: Speech, clause: Clause, cues: Cues) -> Spans:
    """The words of a clause by which a listener hears an opinion ("I find", "my pick", "if you ask me")."""
    spans = speech.within("opinion-markers", clause)
    voices = [(i, VOICES[speech.words[i]]) for i in range(clause.start, clause.end) if speech.words[i] in VOICES]
    graded = bool(voices and grades(speech, clause))
    for i, wanted in voices:
        if end := _voiced(speech, clause, i, cues.lists[wanted], graded=graded):
            spans.append((i, end))
    return spans


def _voiced(speech: Speech, clause: Clause, i: int, wanted: frozenset[str], *, graded: bool) -> int:
    """Where an opinion that opens with the speaker's word at i is voiced ("I | still like", "my | own pick"), or 0."""
    word = speech.words[i]
    for j in range(i + 1, min(i + 4, clause.end)):
        after = speech.words[j]
        if after in wanted or (word == "i" and after in GUARDED):
            return j + 1
        if after in GRADING and word in ("i", "we") and graded:
            return j + 1
        if word not in ("my", "our") and after not in ADVERBS:
            return 0
    return 0


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
        if words[i] == "my" and words[i + 1 : i + 2] and words[i + 1] in GUESSES and words[i + 2 : i + 3] == ("is",):
            return i + 3 + (words[i + 3 : i + 4] == ("that",))
    return 0


def content(speech: Speech, clause: Clause) -> Spans:
    """The words of a clause that a record could contradict: effects, comparisons, research, health, measures."""
    names = ("effect-verbs", "causes", "comparatives", "study-words", "health", "measures", "absolutes")
    than = [(i, i + 1) for i in range(clause.start, clause.end) if speech.words[i] == "than"]
    spans = [span for name in names for span in speech.within(name, clause)]
    return spans + [span for span in than if span[1] not in speech.numbers]


def judge_clause(speech: Speech, clause: Clause, cues: Cues, before: str) -> Verdict:
    """What one clause does; `before` is what the one before it does, or "name" where only its subject was said."""
    start = opening(speech, clause)
    if start >= clause.end:
        return NOTHING
    words = speech.words
    if any(span[0] in (start, clause.start) for span in speech.within("transitions", clause)):
        return Verdict("transition", [])
    if speech.within("payers", clause):
        return Verdict("transition", [])
    if words[start] in cues.lists["verbs"] and _carries_on(speech, clause, before):
        spans = [(start, start + 1), *content(speech, clause)]
        return Verdict("claim", spans, 2) if before == "name" else Verdict(before, spans)
    if is_command(speech, clause, start, cues):
        return Verdict("instruction", [(start, min(start + 2, clause.end))])
    if advice := speech.within("advice", clause):
        return Verdict("instruction", advice)
    if _is_posture(speech, clause, start, cues):
        return Verdict("instruction", [(start, clause.end)])
    if words[start] in SPEAKER:
        return _judge_mine(speech, clause, start, cues)
    taste = speech.within("evaluations", clause) + grades(speech, clause)
    if taste or words[start] in IMPRESSIONS:
        return Verdict("opinion", taste or [(start, start + 1)])
    return _judge_statement(speech, clause, start, cues)


def _carries_on(speech: Speech, clause: Clause, before: str) -> bool:
    """Whether a clause that opens with a verb goes on with what was said ("they rest and grow")."""
    return before == "name" or (
        clause.joiner in ("and", "or") and clause.start not in speech.stops and before in CARRIED
    )


def _is_posture(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a short clause is a cue without a verb of its own ("ribs down", "elbows tucked")."""
    words, lists = speech.words, cues.lists
    return (
        2 <= clause.end - start <= 4
        and words[start] in lists["body"]
        and words[clause.end - 1] in lists["postures"]
        and not any(word in AUXILIARIES for word in words[start : clause.end])
    )


def _judge_mine(speech: Speech, clause: Clause, start: int, cues: Cues) -> Verdict:
    """What a clause about the speaker does."""
    words = speech.words
    marks = marked_opinion(speech, clause, cues)
    taste = speech.within("evaluations", clause) + grades(speech, clause)
    if taste and (marks or words[start] in ("i", "i'm", "my", "we", "we're", "our")):
        return Verdict("opinion", taste + marks)
    rest = believed(speech, clause, cues)
    inner = Clause(rest, clause.end, "")
    if rest and rest < clause.end and words[rest] not in SPEAKER:
        weighty = content(speech, inner) + speech.within("topic-words", inner)
        verb = finite_verb(speech, inner, rest, cues)
        if weighty and verb is not None:
            return Verdict("claim", [(start, rest), (verb[0], verb[0] + 1)], 2)
    if rest == clause.end:
        return Verdict("belief", marks)
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
    weighed = [span for name in ("study-words", "measures", "comparatives") for span in speech.within(name, clause)]
    if speech.within("show-words", clause) and not reported and not weighed:
        return Verdict("transition", [])
    verb = finite_verb(speech, clause, start, cues)
    weight = 2 if spans or reported else int(any(speech.within(name, clause) for name in ("topic-words", "hedges")))
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
    if (words[start] in VIEWER and weight < 2) or (words[start] == "your" and not weight):
        return NOTHING
    kind = "condition" if words[start] in CONDITIONS else "claim"
    return Verdict(kind, [(verb[0], verb[0] + 1), *spans, *reported], weight if verb[1] else min(weight, 1))


def _is_impression(words: tuple[str, ...], i: int, end: int) -> bool:
    """Whether the verb at word i tells how something looks or feels ("they look rude"), not where one looks."""
    return words[i] in SENSED and i + 1 < end and words[i + 1] not in NOT_SENSED
