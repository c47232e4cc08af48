"""Tells how strongly a claim is worded and what it speaks of: figures, comparisons, causes, health, a sponsor."""

from bisect import bisect_right

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech, take_apart, verb_form
from scriptkit.computing.hearing.kinds import believed
from scriptkit.computing.hearing.verbs import finite_verb
from scriptkit.computing.hearing.voicing import ADVERBS

FLAGS = ("numeric", "comparative", "causal", "health", "sponsor")
UNIVERSAL = frozenset("every only everything".split())
EVER = frozenset("ever can will".split())
SUBJECTS = frozenset("nothing none everyone everybody".split())
PRESSING = frozenset("exactly absolutely literally precisely for".split())
PERSONS = frozenset("you we i they that who which people".split())
BEFORE_VERB = frozenset(
    (
        "to can could may might will would must do does did don't doesn't didn't not won't can't cannot help helps "
        "helped let lets also probably often usually never always actually really it they that which"
    ).split()
)
NOT_SUPERLATIVE = frozenset(
    (
        "test rest chest west best interest guest honest harvest request suggest nest vest invest digest forest "
        "modest manifest contest protest arrest breast crest latest earnest fastest-growing conquest quest pest "
        "wrist"
    ).split()
)
REPORTING = frozenset(
    "study studies trial trials researchers scientists authors paper papers lab review we i data".split()
)
CARRYING = frozenset("it its it's they their they're mine".split())
LOWERING = frozenset("you i we they to and then".split())
SIZES = frozenset("higher lower greater fewer larger smaller".split())
MORE = SIZES | frozenset("more less better worse harder faster slower stronger heavier lighter longer shorter".split())
NOT_COMPARATIVE = frozenset("other longer matter either never number after further water paper answer power".split())
BODY_OF = frozenset("back body leg legs abs half part reps limb limbs end portion section trap traps".split())


def strength(speech: Speech, cues: Cues) -> str:
    """How strongly a claim is worded: hedged, plain or absolute; a hedge beats a word of certainty."""
    found, words = speech.found, speech.words
    if found.get("reported") or _uncovered(speech, "hedges", "not-hedges"):
        return "hedged"
    everything = Clause(0, len(words), "")
    if any(
        believed(speech, everything._replace(start=i), cues)
        for i, word in enumerate(words)
        if word in ("i", "i'd", "we", "my")
    ):
        return "hedged"
    if any(_possible(speech, i, cues) for i, word in enumerate(words) if word == "can"):
        return "hedged"
    sure = _uncovered(speech, "absolutes", "not-absolutes")
    if any(words[a] not in SUBJECTS or _is_subject(speech, a, b) for a, b in sure) or _universal(speech):
        return "absolute"
    return "plain"


def _is_subject(speech: Speech, a: int, b: int) -> bool:
    """Whether "nothing" or "everyone" is what a clause speaks of, or pressed ("exactly nothing")."""
    if b > a + 1 or (a and speech.words[a - 1] in PRESSING) or speech.words[b : b + 1] in (("whatever",), ("at",)):
        return True
    k = bisect_right(speech.clauses, a, key=lambda clause: clause.start) - 1
    return a <= speech.clauses[k].start + 1


def _uncovered(speech: Speech, name: str, exceptions: str) -> list[tuple[int, int]]:
    """The words of a list in the sentence that no phrase of the list of exceptions holds."""
    spans = speech.found.get(name)
    if not spans:
        return []
    covered = {i for a, b in speech.found.get(exceptions, ()) for i in range(a, b)}
    return [span for span in spans if span[0] not in covered]


def _possible(speech: Speech, i: int, cues: Cues) -> bool:
    """Whether the "can" at word i speaks of an outcome ("it can flare up") and not of an ability ("you can lift")."""
    before = speech.words[i - 1] if i else ""
    if before in PERSONS or (i - 1, i) in speech.found.get("people", ()):
        return False
    after = [word for word in speech.words[i + 1 : i + 4] if word not in ADVERBS]
    if not after or (after[0] == "be" and len(after) > 1 and after[1].endswith(("ed", "en"))):
        return False
    return after[0] in cues.lists["verbs"] or after[0] == "be"


def _universal(speech: Speech) -> bool:
    """Whether a clause speaks of all at once: "every lifter ...", "no exercise ever ..."."""
    if speech.words[-1:] == ("period",) and len(speech.words) - 1 in speech.stops:
        return True
    covered = {i for a, b in speech.found.get("not-absolutes", ()) for i in range(a, b)}
    for clause in speech.clauses:
        for i in range(clause.start, min(clause.start + 2, clause.end)):
            word = speech.words[i]
            if word in UNIVERSAL and i not in covered and i + 1 not in speech.numbers:
                return True
            if word == "no" and i not in covered and not EVER.isdisjoint(speech.words[i : clause.end]):
                return True
    return False


def flags(speech: Speech, kind: str, previous: str, segment_kind: str, cues: Cues) -> tuple[str, ...]:
    """What a sentence speaks of, in the order of FLAGS; the first three are asked of claims only."""
    claim = kind == "claim"
    has = (
        claim and bool(speech.found.get("figures")),
        claim and compares(speech),
        claim and bool(causes(speech, cues)),
        kind in ("claim", "opinion", "instruction") and bool(health_words(speech, cues)),
        segment_kind == "sponsor" or _sponsored(speech, previous, cues),
    )
    return tuple(flag for flag, yes in zip(FLAGS, has, strict=True) if yes)


def health_words(speech: Speech, cues: Cues) -> list[tuple[int, int]]:
    """The words near which an editor would want a caution: of the health list, or with a medical ending."""
    spans = _uncovered(speech, "health", "not-health") + _harmed(speech)
    endings = cues.endings
    spans += [(i, i + 1) for i, word in enumerate(speech.words) if len(word) > 7 and word.endswith(endings)]
    return spans


def _harmed(speech: Speech) -> list[tuple[int, int]]:
    """A joint and what is done to it in the same clause: "your knees will thank you", "it chews up elbows"."""
    if not speech.found.get("tender-parts") or not _uncovered(speech, "tender-words", "not-health"):
        return []
    pairs = (
        (speech.within("tender-words", clause), speech.within("tender-parts", clause)) for clause in speech.clauses
    )
    return [span for harms, joints in pairs if harms and joints for span in harms + joints]


def compares(speech: Speech) -> bool:
    """Whether things or conditions are set against each other; a mere threshold ("longer than a minute") is not."""
    if speech.found.get("comparatives"):
        return True
    return any(_compares_at(speech, i) for i in range(len(speech.words)))


def _compares_at(speech: Speech, i: int) -> bool:
    """Whether word i opens a comparison: "than", "as ... as", "the same ... as", "-est", "a fifth more", "no safer"."""
    words = speech.words
    word, after = words[i], words[i + 1] if i + 1 < len(words) else ""
    if word == "than":
        return i + 1 not in speech.numbers and after not in ("that", "just", "about", "around", "roughly")
    if word in ("as", "same"):
        return "as" in words[i + 2 : i + 6] and after not in ("long", "soon", "far", "well")
    if word in MORE:
        if word == "lower" and _is_lowering(speech, i):
            return False
        return i in speech.counted or (word in SIZES and after not in BODY_OF and _is_stated(words, i))
    if word == "no":
        return after.endswith("er") and after not in NOT_COMPARATIVE
    if word == "most":
        return after.endswith("ly")
    return word.endswith("est") and len(word) > 5 and word not in NOT_SUPERLATIVE


def _is_lowering(speech: Speech, i: int) -> bool:
    """Whether the "lower" at i is what somebody does ("you lower yourself") or a movement ("the leg lower is ...")."""
    words = speech.words
    before, after = words[max(0, i - 2) : i], words[i + 1 : i + 2]
    if (before and before[-1] in LOWERING) or (after and after[0].endswith(("self", "selves"))):
        return True
    named = len(before) == 2 and before[0] in ("the", "a", "this", "that", "my") and not before[1].endswith("ly")
    return named and (not after or i + 1 in speech.stops or after[0] in ("is", "isn't", "and", "has", "with"))


def _is_stated(words: tuple[str, ...], i: int) -> bool:
    """Whether the adjective at i is what is stated ("came out lower") and does not only name ("your lower back")."""
    return i == 0 or words[i - 1] not in ("the", "your", "a", "with", "of", "my", "their")


def causes(speech: Speech, cues: Cues) -> list[tuple[int, int]]:
    """The words that assert, deny or explain an effect."""
    spans = list(speech.found.get("causes", ()))
    words, nouns = speech.words, cues.lists["verb-or-noun"]
    for span in speech.found.get("effect-verbs", ()):
        i = span[0]
        base, form = verb_form(words[i], cues.lists["effect-verbs"])
        before, after = words[i - 1] if i else "", words[i + 1] if i + 1 < len(words) else ""
        if base not in nouns:
            if form != "ed" or before not in ("a", "an", "the", "with"):
                spans.append(span)
        elif before in BEFORE_VERB or (form == "ing" and i == 0 and after):
            spans.append(span)
    for clause in speech.clauses:
        verb = finite_verb(speech, clause, clause.start, cues)
        if verb is None:
            continue
        base = verb_form(words[verb[0]], cues.lists["acting-verbs"])[0]
        subject = words[clause.start : verb[0]]
        trained = words[verb[0]].endswith("ed") and words[verb[0] - 1].endswith("ly")
        if base and not trained and REPORTING.isdisjoint(subject):
            spans.append((verb[0], verb[0] + 1))
        elif words[clause.start].endswith("ing") and len(words[clause.start]) > 5:
            spans.append((clause.start, clause.start + 1))
    return spans


def _sponsored(speech: Speech, previous: str, cues: Cues) -> bool:
    """Whether a sentence belongs to a paid passage by its own words, or carries on one that just began."""
    if _uncovered(speech, "sponsor-terms", "not-sponsor"):
        return True
    carried = bool(speech.words) and speech.words[0] in CARRYING
    names = _names(speech)
    if not carried and not names:
        return False
    before = take_apart(previous, cues)
    return bool(before.found.get("sponsor-terms")) and (carried or bool(names & _names(before)))


def _names(speech: Speech) -> set[str]:
    """The words of a sentence that are written like a name, its first word included."""
    return {
        word
        for word, (a, _) in zip(speech.words, speech.places, strict=True)
        if len(word) > 4 and speech.text[a].isupper()
    }
