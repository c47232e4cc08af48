"""Finds the words by which a listener hears an opinion: "I find", "my pick", "from me", a letter grade."""

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech

Spans = list[tuple[int, int]]

ADVERBS = frozenset(
    (
        "still really just honestly personally quite do also always never actually genuinely kind of would will "
        "rather not happily have only even probably mostly don't can't wouldn't won't used so very pretty fairly "
        "strongly cannot could couldn't can long"
    ).split()
)
LETTERS = frozenset("abcdfs")
GRADING = frozenset("give gave giving award awarded put score".split())
AWARDED = frozenset("a an solid straight big easy gets get got earns earn earned".split())
GRADE_AFTER = frozenset(
    "from for and or because but at on with in if to this by as is though overall grade pile tier bucket list".split()
)
BEING = (("am",), ("are",))
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


def grade_at(speech: Speech, i: int) -> int:
    """Where a spoken letter grade that begins at word i ends ("an A", "B plus"), or 0."""
    word, words = speech.words[i], speech.words
    if word not in LETTERS or not speech.text[speech.places[i][0]].isupper():
        return 0
    before = words[i - 1] if i else ""
    after = words[i + 1] if i + 1 < len(words) else ""
    if after in ("plus", "minus", "tier"):
        return i + 2
    if before in ("vitamin", "type", "group", "hepatitis") or after[:1].isdigit():
        return 0
    if word != "a" and after and i + 1 not in speech.stops and before not in AWARDED and after not in GRADE_AFTER:
        return 0  # "B skips" are no grade
    article = word == "a" and before not in ("an", "straight", "solid", "big", "easy", "the", "to")
    return 0 if article and i + 1 not in speech.stops else i + 1


def grades(speech: Speech, clause: Clause) -> Spans:
    """The letter grades spoken in a clause."""
    letters = (i for i in range(clause.start, clause.end) if speech.words[i] in LETTERS)
    return [(i, end) for i in letters if (end := grade_at(speech, i))]


def marked_opinion(speech: Speech, clause: Clause, cues: Cues) -> Spans:
    """The words of a clause by which a listener hears an opinion ("I find", "my pick", "if you ask me")."""
    spans = speech.within("opinion-markers", clause)
    voices = [(i, VOICES[speech.words[i]]) for i in range(clause.start, clause.end) if speech.words[i] in VOICES]
    graded = bool(voices and grades(speech, clause))
    for i, wanted in voices:
        if end := _voiced(speech, clause, i, cues.lists[wanted], cues.lists["opinion-feelings"], graded=graded):
            spans.append((i, end))
    return spans


def _voiced(
    speech: Speech, clause: Clause, i: int, wanted: frozenset[str], feelings: frozenset[str], *, graded: bool
) -> int:
    """Where an opinion that opens with the speaker's word at i is voiced ("I | still like", "my | own pick"), or 0."""
    word = speech.words[i]
    if word in ("i", "we") and speech.words[i + 1 : i + 2] in BEING:
        return i + 3 if not feelings.isdisjoint(speech.words[i + 2 : min(i + 4, clause.end)]) else 0
    for j in range(i + 1, min(i + 4, clause.end)):
        after = speech.words[j]
        if after in wanted or (word == "i" and after in GUARDED):
            return j + 1
        if after in GRADING and word in ("i", "we") and graded:
            return j + 1
        if word not in ("my", "our") and after not in ADVERBS:
            return 0
    return 0
