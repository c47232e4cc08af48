"""Tells what an honest editor would stop for from what only may be a claim, and a warning from a promise."""

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech, verb_form
from scriptkit.computing.hearing.kinds import DENIALS, SPEAKER, Verdict
from scriptkit.computing.hearing.verbs import finite_verb

# Subject matter without which a statement is rarely more than a joke or a scene.
MATTER = ("topic-words", "health", "study-words", "reported")
# What is checkable whatever it speaks of, as long as the speaker tells nothing of their own.
CHECKABLE = ("measures", "comparatives", "hedges", "sponsor-terms", "effect-verbs", "causes")
DENYING = DENIALS | {"none", "nobody"}
OWN = frozenset("i my our we me us i've we've".split())
ADDING = frozenset("and because so".split())
AGREEING = frozenset("do does did can will is are right true correct agree".split())
BEING = frozenset("is are was were".split())
TELLING = (
    "topic-words", "health", "study-words", "measures", "comparatives", "hedges", "absolutes", "effect-verbs", "causes",
)  # fmt: skip
PROMISING = ("comparatives", "measures", "study-words")


def is_sure(speech: Speech, stated: list[tuple[Clause, Verdict]], cues: Cues, *, fitting: bool) -> bool:
    """Whether a claim needs a source or an opinion mark, and not only may be one; `stated` are its clauses that state.

    A statement about the field does, unless the speaker is in it and nothing of weight is said; one about anything
    else only with a measure, a comparison or a hedge, or where it is `fitting`: as the answer to a question, or in a
    sponsor's passage. "X is a Y" with a Y from elsewhere is a figure of speech.
    """
    stating = [clause for clause, _ in stated]
    seen = any(word in cues.lists["experience"] for word in speech.words) and speech.found.get("people")
    scene = speech.found.get("scene-words") or not SPEAKER.isdisjoint(speech.words)
    mine = bool(scene) and not seen
    if seen or _has(speech, stating, MATTER):
        weighty = not mine or any(verdict.weight == 2 for _, verdict in stated)
    else:
        weighty = not mine and (fitting or _is_checkable(speech, stating)) and not speech.found.get("show-words")
    return weighty and (fitting or not all(_is_likened(speech, clause, cues) for clause in stating))


def _has(speech: Speech, clauses: list[Clause], names: tuple[str, ...]) -> bool:
    """Whether one of the clauses has a word of one of the lists."""
    return any(speech.within(name, clause) for name in names if name in speech.found for clause in clauses)


def _is_checkable(speech: Speech, clauses: list[Clause]) -> bool:
    """Whether a record could contradict one of the clauses, whatever it speaks of."""
    return _has(speech, clauses, CHECKABLE) or any("than" in speech.words[one.start : one.end] for one in clauses)


def _is_likened(speech: Speech, clause: Clause, cues: Cues) -> bool:
    """Whether a clause says of something what it is, in words from outside the field ("a sled is a wheelbarrow")."""
    verb = finite_verb(speech, clause, clause.start, cues)
    if verb is None:
        return False
    word = speech.words[verb[0]]
    named = word in BEING or word.endswith(("'s", "'re"))
    if not named or _has(speech, [clause], ("study-words", "reported", "health")):
        return False
    end = next((i for i in range(verb[0] + 1, clause.end) if speech.words[i] in ("of", "with", "who")), clause.end)
    return not _has(speech, [Clause(verb[0] + 1, end, "")], TELLING)


def is_asserted(speech: Speech, cues: Cues) -> bool:
    """Whether the speaker vouches for an effect: not where others say it, and not where only a benefit is denied."""
    if speech.found.get("reported") and OWN.isdisjoint(speech.words):
        return any(clause.joiner in ADDING and speech.words[clause.end - 1] in AGREEING for clause in speech.clauses)
    names = ("effect-verbs", "causes", "comparatives", "measures")
    if speech.found.get("disclaimers"):  # "I'm not a doctor, and nothing here is treatment"
        rest = [clause for clause in speech.clauses if not speech.within("disclaimers", clause)]
        return any(_has(speech, [clause], names) or _gains(speech, clause, cues) for clause in rest)
    effects = [clause for clause in speech.clauses if _has(speech, [clause], names) or _gains(speech, clause, cues)]
    return not effects or not all(_denies_gain(speech, clause, cues) for clause in effects)


def _denies_gain(speech: Speech, clause: Clause, cues: Cues) -> bool:
    """Whether a clause says that something does no good ("none of these cures anything")."""
    words = speech.words[clause.start : clause.end]
    denied = any(word in DENYING or word.endswith("n't") for word in words)
    return denied and _gains(speech, clause, cues)


def _gains(speech: Speech, clause: Clause, cues: Cues) -> bool:
    """Whether a clause has a word of doing good."""
    return any(verb_form(word, cues.lists["gains"])[0] for word in speech.words[clause.start : clause.end])


def warns(speech: Speech, clause: Clause, cues: Cues) -> bool:
    """Whether a clause of a sentence that gives a caution only warns, and promises nothing that needs a source.

    A gain is promised ("doubles your bench", "protects your knees"), and so is what is compared, measured or studied
    without a word of harm.
    """
    words = speech.words[clause.start : clause.end]
    denied = any(word in DENIALS or word.endswith("n't") for word in words)
    if not denied and _gains(speech, clause, cues):
        return False
    return bool(speech.within("health", clause)) or not ("than" in words or _has(speech, [clause], PROMISING))
