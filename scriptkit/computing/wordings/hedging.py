"""Says a sentence again as softly as its evidence bears: "builds" as "probably builds" or "may build"."""

from __future__ import annotations

from typing import NamedTuple

from scriptkit.computing.hearing.clauses import Speech, take_apart, verb_form
from scriptkit.computing.wordings.firmness import Firmness, Statement, weigh
from scriptkit.computing.wordings.rungs import BANNED, Rungs

DOUBT = ", but the evidence is very uncertain"
BE = {"is": "be", "are": "be", "am": "be"}
NEGATED = frozenset("isn't aren't doesn't don't won't can't cannot wouldn't".split())
HELPING = {"will": "may", "would": "may", "should": "may", "must": "may", "does": "may", "do": "may", "can": "may"}
HAVE = frozenset(("has", "have"))
SURE = frozenset("definitely clearly certainly absolutely surely undoubtedly obviously always simply actually".split())
LIKELY = frozenset("probably likely usually generally often typically mostly commonly presumably".split())
UNSAFE = frozenset(
    "never only who which what nothing nobody none".split()
)  # before a verb: "never fails", "what builds it"
SHOWN = frozenset("shown found proven proved demonstrated".split())
THEY = frozenset("they you we i".split())


class _Edit(NamedTuple):
    start: int
    end: int
    text: str


def softened(speech: Speech, firmness: Firmness, bears: int, ladder: Rungs) -> str:
    """The sentence with the hedge put in that its certainty bears; "" where that cannot be done safely."""
    edits: list[_Edit] = []
    if any(firmness.found.get(name) for name in BANNED):
        return ""  # "probably proven" is no better
    for one in firmness.statements:
        if one.step <= bears or (bears == 1 and one.step == 2):
            continue
        if speech.words[one.verb - 1] in UNSAFE and one.verb:
            return ""
        made = _probably(speech, one, ladder) if bears == 3 else _may(speech, one, ladder)
        if made is None:
            return ""
        edits += made
    text = speech.text
    for edit in sorted(edits, reverse=True):
        text = text[: edit.start] + edit.text + text[edit.end :]
    if bears == 1:
        body = text.rstrip()
        end = body[-1] if body[-1:] in (".", "!") else "."
        text = body.rstrip(".!") + DOUBT + end
    again = weigh(take_apart(text, ladder.cues), ladder).firmest
    return text if again is not None and again.step <= bears else ""


def _cut(speech: Speech, first: int, last: int, text: str) -> _Edit:
    """Words first to last (not included) said otherwise; with nothing to say, the space behind them goes too."""
    start, end = speech.places[first][0], speech.places[last - 1][1]
    if not text and speech.text[end : end + 1] == " ":
        end += 1
    return _Edit(start, end, text)


def _extras(speech: Speech, verb: int, words: frozenset[str]) -> list[int]:
    """The adverbs right beside a verb that would contradict the hedge."""
    return [i for i in (verb - 1, verb + 1) if 0 <= i < len(speech.words) and speech.words[i] in words]


def _shown(speech: Speech, verb: int) -> bool:
    """Whether "has been shown to" begins at the verb."""
    words = speech.words[verb : verb + 4]
    return len(words) == 4 and words[0] in HAVE and words[1] == "been" and words[2] in SHOWN and words[3] == "to"


def _may(speech: Speech, one: Statement, ladder: Rungs) -> list[_Edit] | None:
    """The edits that make a verb "may ..."."""
    verb, words = one.verb, speech.words
    dropped = _extras(speech, verb, SURE | LIKELY)
    if one.step == 3 and words[verb] in ("is", "are") and words[verb + 1 : verb + 3] == ("likely", "to"):
        return [_cut(speech, verb, verb + 3, "may")]
    if one.step == 3 and words[verb] in ("tends", "tend") and words[verb + 1 : verb + 2] == ("to",):
        return [_cut(speech, verb, verb + 2, "may")]
    if one.step == 3 and not any(words[i] in LIKELY for i in dropped) and words[verb] not in HELPING:
        return None
    edits = [_cut(speech, i, i + 1, "") for i in dropped]
    made = _may_verb(speech, verb, ladder, bare=one.carries_on)
    return None if made is None else [*edits, made]


def _may_verb(speech: Speech, verb: int, ladder: Rungs, *, bare: bool) -> _Edit | None:
    """Say "builds" as "may build", "isn't" as "may not be"; `bare`: the "may" was said before."""
    words = speech.words
    word, after = words[verb], words[verb + 1] if verb + 1 < len(words) else ""
    if _shown(speech, verb):
        return _cut(speech, verb, verb + 4, "may")
    if word in BE:
        return _cut(speech, verb, verb + 2, "may not be") if after == "not" else _cut(speech, verb, verb + 1, "may be")
    if word in ("isn't", "aren't"):
        return _cut(speech, verb, verb + 1, "may not be")
    if word in NEGATED:
        return _cut(speech, verb, verb + 1, "may not")
    if word in HELPING or word in HAVE:
        return _cut(speech, verb, verb + 1, _may_help(word, after, ladder, bare=bare))
    if word.endswith("'ll"):
        return _contracted(speech, verb, word.rpartition("'")[0], "may")
    if word.endswith(("'s", "'re")):
        host = speech.text[speech.places[verb][0] :][: -len(word)] and word.rpartition("'")[0]
        return None if after in ("been", "got") else _contracted(speech, verb, host, "may be")
    base, form = verb_form(word, ladder.cues.lists["verbs"])
    if not base:
        base, form = (word.removesuffix("s"), "s") if word in ("results", "leads", "beats") else (word, "base")
    if form not in ("base", "s"):
        return None
    return _cut(speech, verb, verb + 1, base if bare else f"may {base}")


def _may_help(word: str, after: str, ladder: Rungs, *, bare: bool) -> str:
    """Say "will" as "may", "has" as "may have", and the "do" of "do the same job" as "may do"."""
    if word in HAVE:
        return "may have"
    acts = word in ("do", "does") and after != "not" and not verb_form(after, ladder.cues.lists["verbs"])[0]
    return "may" if not acts else "do" if bare else "may do"


def _contracted(speech: Speech, verb: int, host: str, said: str) -> _Edit:
    """Say "it's" as "it may be", the first part written as it was."""
    start, end = speech.places[verb]
    return _Edit(start, end, f"{speech.text[start : start + len(host)]} {said}")


def _probably(speech: Speech, one: Statement, ladder: Rungs) -> list[_Edit] | None:
    """The edits that put "probably" to a verb."""
    verb, words = one.verb, speech.words
    word = words[verb]
    edits = [_cut(speech, i, i + 1, "") for i in _extras(speech, verb, SURE)]
    if one.carries_on:
        return edits
    if _shown(speech, verb):
        after = words[verb + 4] if verb + 4 < len(words) else ""
        said = after if word == "have" else third_person(after)
        return [*edits, _cut(speech, verb, verb + 5, f"probably {said}")] if after else None
    if word.endswith(("'s", "'re")):
        host = word.rpartition("'")[0]
        return [*edits, _contracted(speech, verb, host, "is probably" if word.endswith("'s") else "are probably")]
    start, end = speech.places[verb]
    behind = (
        word in BE
        or word.endswith("'ll")
        or word in ("will", "would")
        or (word in HAVE and _is_participle(speech, verb + 1, ladder))
    )
    if behind:
        return [*edits, _Edit(end, end, " probably")]
    return [*edits, _Edit(start, start, "probably ")]


def _is_participle(speech: Speech, i: int, ladder: Rungs) -> bool:
    """Whether the word after "has" makes a perfect of it."""
    word = speech.words[i] if i < len(speech.words) else ""
    lists = ladder.cues.lists
    return word == "been" or word in lists["past-forms"] or verb_form(word, lists["verbs"])[1] == "ed"


def third_person(base: str) -> str:
    """Say "build" as "builds", "carry" as "carries", "push" as "pushes"."""
    if base.endswith("y") and base[-2:-1] not in ("a", "e", "o", "u", ""):
        return f"{base[:-1]}ies"
    return f"{base}es" if base.endswith(("s", "sh", "ch", "x", "z", "o")) else f"{base}s"
