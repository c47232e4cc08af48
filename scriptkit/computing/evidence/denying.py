"""Finds sentences that say there is no difference, or no effect, where their sources do not show that."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from scriptkit.computing.evidence import designs
from scriptkit.computing.evidence.appraising import Appraisal, is_narrow
from scriptkit.computing.evidence.doubting import Case, Talk
from scriptkit.computing.evidence.lexicon import MOST_LETTERS, Words
from scriptkit.model import Doubt

NOT_AFTER = frozenset(
    (
        "not isn't wasn't aren't weren't doesn't don't rather mean means prove proves proof include includes included "
        "hold holds held cross crosses crossed span spans contain contains compatible rule exclude excludes"
    ).split()
)
GOES_ON = frozenset(
    (
        "as for in whether either with when after before on and or no regardless from at by growth strength gains "
        "results muscle"
    ).split()
)
COMPARES_NOTHING = designs.NO_EFFECTS | {"survey", "sheet", "opinion"}


def find(case: Case, talk: Talk, outcome: Words | None) -> Iterator[Doubt]:
    """Both for one sentence; `outcome` are the words that claim it."""
    yield from _no_difference(case, talk)
    yield from _denied(case, outcome)


def _no_difference(case: Case, talk: Talk) -> Iterator[Doubt]:
    """No difference, without an interval that shows it."""
    text = case.sentence.text
    words = talk.lexicon.first("no-difference", text)
    if (
        words is None
        or talk.lexicon.kinds("evidence-said", text) & {"hedge", "outset"}
        or "open" in talk.kinds_from(case)
    ):
        return
    before = text[max(0, words.start - 40) : words.start].lower().replace("’", "'").split()[-4:]
    after = re.match(r" (\w{1,20})", text[words.end : words.end + 22])
    if not NOT_AFTER.isdisjoint(before) or (words.kind == "ends" and after and after[1].lower() not in GOES_ON):
        return
    sources = [one for one in case.for_it() if one.design.kind and one.design.kind not in COMPARES_NOTHING]
    told = case.said.effect or any(one.finding for one in sources)
    if sources and told and not any(_shows_none(one) for one in case.appraisals):
        yield case.doubt("no-difference", words, sources[0].link.id, _interval(sources))


def _denied(case: Case, said: Words | None) -> Iterator[Doubt]:
    """An effect is denied, and the whole interval of the one source shows it: a "not" too many, or the wrong source."""
    sources = case.appraisals
    if len(sources) != 1 or sources[0].tested.outcome != case.said.outcome or not _shows_some(sources[0]):
        return
    text = case.sentence.text[:MOST_LETTERS]
    if "n't" not in text.replace("’", "'") and " not " not in text and " never " not in text:
        return
    words = _denies().search(text)
    if words and said and said.end > words.end() and not _limits().search(text):
        yield case.doubt("denied", Words("", words.start(), words.end()), sources[0].link.id, _interval(sources))


@lru_cache(maxsize=1)
def _denies() -> re.Pattern[str]:
    return re.compile(
        r"\b(?:(?:do|does|did|wo|ca)n['’]t|(?:do|does|did|will) not|cannot|never) (?:\w+ )?"
        r"(?:make|build|grow|increase|improve|raise|boost|strengthen|add|give|help)s?\b",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _limits() -> re.Pattern[str]:
    return re.compile(
        r"\b(?:than|as|any ?more|more|better|best|alone|only|just|enough|necessarily|always|everyone|everybody|"
        r"overnight|without|unless|if|until|much|mean|other|magically|instantly|by itself|on (?:its|their) own)\b",
        re.IGNORECASE,
    )


def _shows_some(one: Appraisal) -> bool:
    """Whether the whole interval of a supporting source lies clear of no effect."""
    ci = one.interval()
    return ci is not None and one.link.stance == "supports" and ci[0] * ci[1] > 0


def _shows_none(one: Appraisal) -> bool:
    """Whether the whole interval of a comparison leaves nothing that matters."""
    ci = one.interval()
    between = one.finding is not None and one.finding.effect_type != "pre-post"
    return between and ci is not None and is_narrow(ci)


def _interval(sources: Sequence[Appraisal]) -> str:
    """The widest interval in words, "" where none is given."""
    given = [ci for one in sources if (ci := one.interval())]
    if not given:
        return ""
    low, high = max(given, key=lambda one: one[1] - one[0])
    return f"{low:g} to {high:g}"
