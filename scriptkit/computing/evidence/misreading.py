"""Finds where the words of a sentence say more, or something else, than its sources measured."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from scriptkit.computing.evidence import denying, designs, outcomes
from scriptkit.computing.evidence.appraising import SETTLED_WEEKS, Appraisal
from scriptkit.computing.evidence.doubting import Case, Talk
from scriptkit.computing.evidence.lexicon import MOST_LETTERS, Words
from scriptkit.model import Doubt

LARGE = {"between": 0.51, "pre-post": 1.0}  # where a large effect begins, between exercises and from before to after
STUDIES = frozenset("study trial sample group experiment".split())


@lru_cache(maxsize=1)
def _shares() -> re.Pattern[str]:
    """A percentage or a fraction, unless it is said of what."""
    return re.compile(
        r"(?:(?<![\d.,])\d[\d.,]*\s?%|(?<![\w.,-])[\w.,-]+ (?:percent|per cent)\b|\bby (?:\w+ ){0,2}(?:a|an|one|two) "
        r"(?:half|third|quarter|fifth|sixth|tenth|thirds|fifths)\b)(?! of\b| point| \w+ of (?:the|their|those|all)\b)",
        re.IGNORECASE,
    )


def find(case: Case, talk: Talk) -> Iterator[Doubt]:
    """All of it for one sentence. A question, a command or an opinion claims nothing."""
    if case.judgement.kind == "claim" and case.for_it():
        yield from _one_session(case, talk)
        yield from _something_else(case, talk)
        yield from _people(case, talk)
        yield from _size_of_muscle(case, talk)
        yield from _comparison(case, talk)
        yield from denying.find(case, talk, _outcome_words(case, talk))
        yield from _percent(case, talk)
        yield from _large(case, talk)
        yield from _limbs(case, talk)


def _outcome_words(case: Case, talk: Talk) -> Words | None:
    """The words that claim the outcome."""
    text, said = case.sentence.text, case.said.outcome
    return talk.lexicon.first("outcomes", text, said) or talk.lexicon.first("outcomes", text, f"{said}?")


def _one_session(case: Case, talk: Talk) -> Iterator[Doubt]:
    """Activity, soreness or a hormone behind a claim of growth or strength."""
    sources = case.for_it()
    if case.said.outcome not in ("growth", "strength") or not all(one.tested.acute for one in sources):
        return
    weighed = [one for one in sources if one.rank]
    hedged = talk.lexicon.first("evidence-said", case.sentence.text, "hedge")
    # a plain claim is not made good by what was said before it
    if not weighed or "activity" in (talk.kinds(case.segment) if hedged else talk.kinds_from(case)):
        return
    first = weighed[0]
    has = first.tested.words or "one session"
    yield case.doubt("acute-hedged" if hedged else "acute", _outcome_words(case, talk), first.link.id, has)


def _something_else(case: Case, talk: Talk) -> Iterator[Doubt]:
    """Another outcome was measured than is said."""
    sources = case.for_it()
    if all(one.mismatch for one in sources):
        first = sources[0]
        yield case.doubt("other-outcome", _outcome_words(case, talk), first.link.id, first.tested.words)


def _people(case: Case, talk: Talk) -> Iterator[Doubt]:
    """Beginners behind a claim for lifters; animals behind a claim for people."""
    sources, kinds = case.for_it(), talk.kinds
    weighed = [one for one in sources if one.rank]
    if not weighed or not case.said.effect:
        return
    first = weighed[0]
    if all(one.design.kind == "animal" for one in weighed) and "animals" not in kinds(case.segment):
        yield case.doubt("animals", None, first.link.id, _who(first))
    elif (
        _claims_effect(case, talk)
        and all(one.indirect_people for one in weighed)
        and "untrained" not in kinds(case.segment)
    ):
        words = outcomes.says_of_trained(case.sentence.text, talk.lexicon)
        said = talk.lexicon.kinds("evidence-said", case.sentence.text)
        if words or not (said & {"hedge", "open"} or _are_named(case, first, talk)):
            yield case.doubt("untrained", words, first.link.id, _who(first))


def _claims_effect(case: Case, talk: Talk) -> bool:
    """Whether the sentence itself speaks of an effect: "they trained for two months" does not."""
    return bool({"causal", "comparative"} & {*case.judgement.flags}) or _outcome_words(case, talk) is not None


def _are_named(case: Case, one: Appraisal, talk: Talk) -> bool:
    """Whether the segment has said by then who took part, so that nobody takes them for the viewers."""
    return any(talk.names(sentence, one.source) for sentence in talk.sentences(case.segment)[: case.number + 1])


def _who(one: Appraisal) -> str:
    return str(one.source.population or one.source.training)


def _size_of_muscle(case: Case, talk: Talk) -> Iterator[Doubt]:
    """Growth by a rough measure said plainly, or growth before swelling settles."""
    grown = [one for one in case.for_it() if one.rank and one.tested.outcome == "growth" and not one.tested.acute]
    if case.said.outcome != "growth" or not grown:
        return
    first, words, text = grown[0], _outcome_words(case, talk), case.sentence.text
    named = talk.lexicon.kinds("measures", text) & {"rough", "indirect"}
    hedged = talk.lexicon.first("evidence-said", text, "hedge")
    none = talk.lexicon.first("no-difference", text)
    if all(one.tested.how in ("rough", "indirect") for one in grown) and not (named or hedged or none):
        yield case.doubt("rough-measure", words, first.link.id, first.tested.words)
    weeks = [one.source.duration_weeks for one in grown]
    early = [one for one in weeks if one is not None and one < SETTLED_WEEKS]
    about = words or any(one.link.finding for one in grown)
    if (
        about
        and len(early) == len(weeks)
        and not _weeks_said(case, talk, early)
        and talk.is_first(case, "early", first)
    ):
        yield case.doubt("early-growth", words, first.link.id, f"{early[0]:g}")


def _weeks_said(case: Case, talk: Talk, weeks: list[float]) -> bool:
    numbers = case.judgement.numbers
    return any(one in numbers for one in weeks) or "short" in talk.kinds(case.segment)


def _comparison(case: Case, talk: Talk) -> Iterator[Doubt]:
    """A comparison on a study that compared nothing, or of strength between the limbs of one body."""
    if "comparative" not in case.judgement.flags:
        return
    text, lexicon, sources = case.sentence.text, talk.lexicon, case.for_it()
    kinds = lexicon.kinds("evidence-said", text)
    compared = lexicon.first("evidence-said", text, "comparison")
    if compared and not kinds & {"baseline", "uncompared"}:
        alone = [one for one in sources if designs.has_no_comparison(one.source, one.design.kind)]
        if len(alone) == len(sources):
            yield case.doubt("nothing-compared", compared, sources[0].link.id, sources[0].design.told)
    if case.said.outcome == "strength" and all(one.source.comparison == "within-person" for one in sources):
        acute = any(one.tested.acute for one in sources)
        if not acute and "carry-over" not in talk.kinds(case.segment):
            yield case.doubt("other-limb", _outcome_words(case, talk), sources[0].link.id)


def _percent(case: Case, talk: Talk) -> Iterator[Doubt]:
    """A change in percent, and nobody knows of what."""
    text = case.sentence.text
    if "%" not in text and "per" not in text and " by " not in text:
        return
    if talk.lexicon.first("evidence-said", text, "change") is None:
        return
    text = text[:MOST_LETTERS]
    words = _shares().search(text)
    if words is None or re.search(r"\bfrom (?:(?:\w+ )?\d|.{1,40}? to )", text):
        return
    sources = [one for one in case.for_it() if one.design.kind not in denying.COMPARES_NOTHING]
    if sources and not any(_has_base(one) for one in sources):
        yield case.doubt("percent", Words("", words.start(), words.end()), sources[0].link.id)


def _has_base(one: Appraisal) -> bool:
    """Whether the register says of what: a baseline with the change, or two values that are no percents."""
    finding = one.finding
    if finding is None:
        return False
    plain = [value for value in finding.values.values() if "%" not in value and not _in_percent(value)]
    return bool(finding.baseline and finding.absolute) or sum(any(map(str.isdigit, value)) for value in plain) > 1


def _in_percent(value: str) -> bool:
    return "percent" in value.lower() or "per cent" in value.lower()


def _large(case: Case, talk: Talk) -> Iterator[Doubt]:
    """A "large effect" that is none on the scale of its own kind of comparison."""
    words = talk.lexicon.first("evidence-said", case.sentence.text, "large")
    effects = [(one, _scale(one)) for one in case.for_it() if one.finding and one.finding.effect is not None]
    if words is None or not effects:
        return
    if all(abs(one.finding.effect or 0) < LARGE[scale] for one, scale in effects if one.finding):
        one, scale = effects[0]
        kind = "large-between" if scale == "between" else "large-before-after"
        has = f"{one.finding.effect:g}" if one.finding else ""
        yield case.doubt(kind, words, one.link.id, has)


def _scale(one: Appraisal) -> str:
    """Whether an effect stands between exercises or between before and after."""
    if one.finding and one.finding.effect_type:
        return str(one.finding.effect_type)
    return "pre-post" if designs.has_no_comparison(one.source, one.design.kind) else "between"


def _limbs(case: Case, talk: Talk) -> Iterator[Doubt]:
    """Limbs counted as people: the number is that of legs or arms, and no word near it says so."""
    for one in case.appraisals:
        units, people = one.source.n_units, one.source.n
        if not units or people is None or units == people or units not in case.judgement.numbers:
            continue
        words = _counted(case.sentence.text, units, talk)
        if words:
            yield case.doubt("limbs", words, one.link.id, str(people))


def _counted(text: str, number: int, talk: Talk) -> Words | None:
    """The words that speak of so many people, or of a study of so many."""
    from scriptkit.computing.hearing.clauses import split_words
    from scriptkit.computing.hearing.figures import figures

    words, places, glued, _ = split_words(text[:MOST_LETTERS])
    for figure in figures(words, glued):
        if figure.value != number:
            continue
        start, end = places[figure.start][0], places[figure.end - 1][1]
        last = places[min(figure.end + 2, len(places) - 1)][1]
        after = [one for one in talk.lexicon.look(text).get("people-kinds", ()) if end <= one.start and one.end <= last]
        before = {word.rstrip("s") for word in words[max(0, figure.start - 3) : figure.start]}
        if any(one.kind == "limbs" for one in after) or not (after or ("of" in before and before & STUDIES)):
            continue
        return Words("", start, after[0].end if after else end)
    return None
