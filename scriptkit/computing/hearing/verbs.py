"""Finds the verb that makes a clause a statement or a command."""

from scriptkit.computing.hearing.clauses import CONDITIONS, Clause, Cues, Speech, verb_form

THEM = frozenset(
    "it they he she that this there these those which it's they're that's there's he's she's what's".split()
)
AUXILIARIES = frozenset(
    (
        "is are was were am has have had does do did will would can could may might must shall isn't aren't wasn't "
        "weren't hasn't haven't hadn't doesn't don't didn't won't wouldn't can't cannot couldn't mustn't ain't"
    ).split()
)
NOT_BEFORE_VERB = frozenset(
    (
        "to a an the this these those my your our their its his of in on with for by at from into than as or no any "
        "against first second third last next single same other extra per every each let lets help helps make makes"
    ).split()
)
OWNERS = frozenset("group's side's team's leg's arm's half's crew's others'".split())  # "the other group's 6"
OWNED = frozenset("the your their its my his her our".split())
MET = frozenset("you us them it me everyone everybody anyone people".split())
NO_DOING = frozenset("nothing something anything everything thing during morning evening spring string king".split())
CONTRACTED_BE = frozenset(
    (
        "off on out up down done gone over the a an not about been got still just never always in on at too as "
        "more less what where why how my your our usually probably often only really pretty so all"
    ).split()
)
SPEAKERS = frozenset(
    (
        "i you we they i'm i've i'd i'll you're you've you'll you'd we've we're we'd they're they've they'd people "
        "he she"
    ).split()
)
PREPOSITIONS = frozenset("of in and for with is at to on as or between by under over like".split())
NOT_AFTER_VERB = frozenset(
    "next first today again too here then now only please that which who are is were was and plus".split()
)
RELATIVES = frozenset("what who whom whose how why that which".split())
BEFORE_ANY = (
    "still rarely seldom likely often usually which who that also only never always really actually just".split()
)
SINGULAR = frozenset((*BEFORE_ANY, "it", "this", "he", "she"))
PLURAL = frozenset((*BEFORE_ANY, "probably", "mostly", "they", "you", "we", "people"))
ONE = frozenset("it which he she".split())
NO_VERB = frozenset("always perhaps sometimes besides this less unless plus thus yours ours theirs".split())
PARTICLES = frozenset("up ups down off offs out outs in ins over back through".split())
HALTING = frozenset("stop rest pause".split())
REACHING = frozenset("peak start end sit rise fall last stop cost land".split())
REACHED = frozenset("at around about between from to within by only".split())
NOT_STRANGE = frozenset(  # what stands before "the" and "your" and is no verb
    (
        "across towards besides unless plus minus versus always sometimes its as than that is was perhaps whereas "
        "all both half twice once even just only not and but for nor yet such what which who when while where if "
        "because since before after until till though although about above against along among around behind below "
        "beneath beside between beyond despite down during except from inside into like near off onto out outside "
        "over past per round through throughout under underneath toward upon with within without via save then now "
        "here there too also again away back afterwards backwards forwards upwards downwards instead regardless "
        "almost nearly roughly exactly mostly mainly often never ever still already later sooner today tonight"
    ).split()
)
TAKES_OBJECT = frozenset(
    (
        "the a an your their its it them you his her our each every more less most no some any that exactly roughly "
        "about up down in out on off over under into through from to at with for against underneath beneath behind "
        "above below across along around between near away back better worse well"
    ).split()
)


def finite_verb(speech: Speech, clause: Clause, start: int, cues: Cues) -> tuple[int, bool] | None:
    """The first word that makes a clause a statement, and whether it belongs to the clause's own subject.

    "The weight you lift" has a verb whose subject is not the first noun: it counts only where there is no other.
    """
    embedded = None
    for i in range(start, clause.end):
        if not _is_finite(speech, clause, start, i, cues):
            continue
        after_speaker = i - 1 > start and speech.words[i - 1] in SPEAKERS and speech.words[i - 2] not in CONDITIONS
        if after_speaker or (i > start and speech.words[i] in SPEAKERS):
            embedded = embedded or (i, False)
        else:
            return i, True
    return embedded or _noun_like_verb(speech, clause, start, cues)


def _noun_like_verb(speech: Speech, clause: Clause, start: int, cues: Cues) -> tuple[int, bool] | None:
    """A word that may be a noun and is the only one that can carry the clause: "beetroot raises endurance"."""
    words, nouns = speech.words, cues.lists["verb-or-noun"]
    for i in range(start + 1, clause.end - 1):
        if words[i - 1] in ONE and words[i].endswith("s") and len(words[i]) > 3 and words[i] not in NO_VERB:
            return i, True  # "it soaks up ..."
        base, form = verb_form(words[i], cues.lists["verbs"])
        if base not in nouns or words[i - 1] in NOT_BEFORE_VERB:
            continue
        led = words[i + 1] in PREPOSITIONS and base not in cues.lists["effect-verbs"]
        if form == "base" and is_plural(words[i - 1]) and not led:
            return i, True
        named = led or words[i + 1] in NOT_AFTER_VERB or words[i + 1] in cues.lists["verbs"]  # "sled pushes look rude"
        if form == "s" and not is_plural(words[i - 1]) and not named:
            return i, True
        if base in REACHING and form == "s" and words[i + 1] in REACHED:
            return i, True  # "the spurt peaks at ..."
    return _strange_verb(speech, clause, start, cues)


def _strange_verb(speech: Speech, clause: Clause, start: int, cues: Cues) -> tuple[int, bool] | None:
    """A word that no list knows, between a noun and what only an object opens with: "your traps nick the load".

    Behind what somebody does, a word in -s is a verb before a person too: "skipping sharpens you up".
    """
    words = speech.words
    doing = any(word.endswith("ing") and len(word) > 4 and word not in NO_DOING for word in words[start : start + 2])
    for i in range(start + 1, clause.end - 1):
        word, before = words[i], words[i - 1]
        met = words[i + 1] in OWNED or (doing and word.endswith("s") and _is_met(words, i + 1, clause.end, cues))
        if not met or len(word) < 3 or word in NOT_STRANGE or before in NOT_BEFORE_VERB:
            continue
        if word.endswith("ed") or (word.endswith("s") and not word.endswith("ss")) or is_plural(before):
            return i, True
    return None


def _is_met(words: tuple[str, ...], i: int, end: int, cues: Cues) -> bool:
    """Whether something is done to the person at word i, who does nothing in turn ("bands you own")."""
    after = words[i + 1] if i + 1 < end else ""
    return words[i] in MET and after not in cues.lists["verbs"] and after not in AUXILIARIES


def _is_finite(speech: Speech, clause: Clause, start: int, i: int, cues: Cues) -> bool:
    """Whether word i can carry a statement."""
    words, nouns = speech.words, cues.lists["verb-or-noun"]
    word, before = words[i], words[i - 1] if i > start else ""
    after = words[i + 1] if i + 1 < clause.end else ""
    if word in AUXILIARIES:
        return True
    if "'" in word:
        if word.endswith("'s"):
            return word in THEM or after in CONTRACTED_BE or after.endswith("ing") or _has_number(speech, i)
        return word.endswith(("'re", "'ve", "'ll", "'d", "n't", "'m"))
    if i == start and clause.start and word in cues.lists["past-forms"] and word not in cues.lists["verbs"]:
        return after in TAKES_OBJECT or i + 1 in speech.numbers
    base, form = verb_form(word, cues.lists["verbs"])
    if form == "s" and (before == "this" or (before == "that" and base in cues.lists["effect-verbs"])):
        return True  # "this fixes it"; no plural stands behind "this"
    if i == start or before in NOT_BEFORE_VERB:
        return i == start and form == "s" and (base not in nouns or (after in OWNED and not clause.joiner))
    if word in cues.lists["past-forms"]:
        return True
    if not base or form == "ing":
        return False
    if base not in nouns or form == "ed":
        return True
    object_ = "the" if after and i + 1 in speech.numbers else after
    return _reads_as_verb(before, form, object_, effect=base in cues.lists["effect-verbs"])


def _has_number(speech: Speech, i: int) -> bool:
    """Whether "'s" opens a number: "the drop's 20 percent", and not "the other group's 6"."""
    return i + 1 in speech.numbers and speech.words[i] not in OWNERS


def _reads_as_verb(before: str, form: str, after: str, *, effect: bool) -> bool:
    """Whether a word that may be a noun is a verb between these two ("bands help", "it works", "this forces the")."""
    if form == "s":
        return before in SINGULAR or (after in TAKES_OBJECT and not is_plural(before))
    return before in PLURAL or (is_plural(before) and (effect or after in TAKES_OBJECT))


def is_plural(word: str) -> bool:
    """Whether a noun looks like several; the Latin names of muscles do not ("soleus", "subscapularis")."""
    return word.endswith("s") and not word.endswith(("ss", "us", "is"))


def is_command(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether the words from `start` tell the viewer to do something."""
    if start >= clause.end:
        return False
    word = speech.words[start]
    after = speech.words[start + 1] if start + 1 < clause.end else ""
    if word in ("don't", "do"):
        return _is_command_to_do(speech, start, after)
    if word == "be":
        return True
    if word == "save" and after in ("for", "one"):
        return False
    if _is_named_by_verb(speech, clause, start, cues):
        return False
    if word not in cues.lists["verbs"] or after in AUXILIARIES or after.endswith(("n't", "'s")):
        return False
    if word in ("go", "come", "try", "get") and after in cues.lists["verbs"]:
        return True
    if word in cues.lists["verb-or-noun"]:
        return _is_verb_here(speech, clause, start, cues) or _is_code(speech, start + 1)
    named = after not in cues.lists["follow-commands"] and start + 2 < clause.end
    return not (named and _states(speech, clause, start, start + 2, cues))


def _is_named_by_verb(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a verb and its particle, joined by a hyphen, name what a statement is about: "set-up time fell"."""
    if start + 2 >= clause.end or speech.words[start + 1] not in PARTICLES:
        return False
    joined = speech.text[speech.places[start][1] : speech.places[start + 1][0]] == "-"
    return joined and _stated_before_condition(speech, clause, start + 2, cues)


def _is_command_to_do(speech: Speech, start: int, after: str) -> bool:
    """Whether "do" or "don't" at `start` commands ("do two sets", "don't rush") and does not ask."""
    if speech.words[start] == "don't":
        return after not in ("", "you", "they", "we", "i")
    if start + 1 in speech.numbers or after in ("not", "it", "them", "a", "both"):
        return True
    return after in ("the", "this", "that", "your", "these") and not speech.text.rstrip().endswith("?")


def _is_code(speech: Speech, i: int) -> bool:
    """Whether word i is written all in capitals, like a code to type in."""
    return i < len(speech.words) and len(speech.words[i]) > 3 and speech.written([(i, i + 1)])[0].isupper()


def _is_verb_here(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a word that may be a noun opens a command: "lower the bar", not "lower reps" or "rest of the day is"."""
    after = speech.words[start + 1] if start + 1 < clause.end else ""
    if (
        after == "and"
        and speech.words[start] in HALTING
        and speech.words[min(start + 2, clause.end - 1)] in cues.lists["verbs"]
    ):
        return True  # "stop and have somebody look"
    if after not in cues.lists["follow-commands"]:
        return after.endswith("ly") and not finite_verb(speech, clause, start + 2, cues)
    return after not in PREPOSITIONS or not _stated_before_condition(speech, clause, start + 1, cues)


def _states(speech: Speech, clause: Clause, start: int, i: int, cues: Cues) -> bool:
    """Whether word i is a verb after a plural name ("wobble boards seem"), no participle ("keep elbows tucked")."""
    return not speech.words[i].endswith("ed") and _is_finite(speech, clause, start, i, cues)


def _stated_before_condition(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a verb of its own follows before any "if", "when", "what" or "that"."""
    end = next(
        (i for i in range(start, clause.end) if speech.words[i] in CONDITIONS or speech.words[i] in RELATIVES),
        clause.end,
    )
    found = finite_verb(speech, Clause(clause.start, end, clause.joiner), start, cues)
    return found is not None and found[1]
