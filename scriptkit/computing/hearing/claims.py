"""Judges what kind of sentence a spoken sentence is, by clauses, and says which words gave it away."""

import re
from itertools import pairwise

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech, compile_cues, take_apart
from scriptkit.computing.hearing.kinds import DENIALS, NOTHING, Verdict, judge_clause
from scriptkit.computing.hearing.tiers import is_asserted, is_sure, warns
from scriptkit.computing.hearing.voicing import Spans, marked_opinion
from scriptkit.computing.hearing.wording import flags, health_words, strength
from scriptkit.model import Judgement

# A tag at the end of a statement, and the opening by which a question states ("did you know ...").
TAG = re.compile(
    r"\s*(?:(?:is|are|was|were|do|does|did|has|have|can|could|will|would)(?:n['’]t)?\s(?:it|they|he|she|that|there|you|we)"
    r"|right|huh|yeah|no)\W*",
    re.IGNORECASE,
)
ASSERTING = re.compile(
    r"\W*(?:(?:and|so|but|okay|ok)\s)?did(?:n['’]t)?\syou\s(?:also\s)?(?:know|realise|realize|notice)\b", re.IGNORECASE
)
REMARKING = frozenset("to in by for of at like with past under over after despite on".split())
STATING = frozenset(("claim", "condition", "fragment"))
BESIDE = frozenset(("instruction", "opinion", "mine", "transition"))
CHATTY = frozenset(("opening", "group", "recap", "close"))  # a bare "it is ..." is small talk there


__all__ = ["Cues", "Judgement", "compile_cues", "has_opinion_marker", "judge"]


def has_opinion_marker(sentence: str, cues: Cues) -> bool:
    """Whether a listener can hear that the sentence is the speaker's own opinion."""
    speech = take_apart(sentence, cues)
    if marked_opinion(speech, Clause(0, len(speech.words), ""), cues):
        return True
    return any(_is_own_search(speech, clause) for clause in speech.clauses)


def _is_own_search(speech: Speech, clause: Clause) -> bool:
    """Whether a clause tells that the speaker found no research ("I found no trial of it")."""
    words = speech.words[clause.start : clause.end]
    if not words or words[0] not in ("i", "we", "i've", "we've") or not speech.within("study-words", clause):
        return False
    return any(word in DENIALS or word.endswith("n't") for word in words)


def judge(sentence: str, previous: str, segment_kind: str, cues: Cues, *, caution: bool = False) -> Judgement:
    """The kind of one sentence, from itself, the sentence before it and the kind of segment it stands in.

    `caution`: the sentence has a caution mark, which settles its warnings and nothing else.
    """
    speech = take_apart(sentence, cues)
    asked = _asking(speech)
    verdicts = [] if asked is not None else _verdicts(speech, cues, caution=caution)
    kind, spans = _together(speech, verdicts, previous, segment_kind) if asked is None else ("question", asked)
    spoken_of = flags(speech, kind, previous, segment_kind, cues)
    of_health = health_words(speech, cues) if "health" in spoken_of else []
    return Judgement(
        kind,
        strength(speech, cues) if kind == "claim" else None,
        spoken_of,
        speech.written([*of_health, *spans]),
        tuple(figure.value for figure in speech.figures),
        kind != "claim" or _is_sure(speech, verdicts, previous, segment_kind, cues),
        kind != "claim" or "health" not in spoken_of or is_asserted(speech, cues),
    )


def _is_sure(speech: Speech, verdicts: list[Verdict], previous: str, segment_kind: str, cues: Cues) -> bool:
    """Whether the clauses that state something need a source, and not only may be a claim."""
    stated = [both for both in zip(speech.clauses, verdicts, strict=True) if both[1].kind in STATING]
    return is_sure(speech, stated, cues, fitting=segment_kind == "sponsor" or previous.rstrip().endswith("?"))


def _asking(speech: Speech) -> Spans | None:
    """The words by which a sentence asks, None where it does not; a question mark needs no words."""
    if _asks(speech.text):
        return []
    return [span for span in speech.found.get("questions", ()) if _is_reported(speech, span[0])] or None


def _verdicts(speech: Speech, cues: Cues, *, caution: bool) -> list[Verdict]:
    """What each clause does."""
    verdicts: list[Verdict] = []
    for k, clause in enumerate(speech.clauses):
        before = verdicts[-1].kind if verdicts else ""
        verdicts.append(judge_clause(speech, clause, cues, "name" if _resumes(speech, verdicts, k) else before))
    if _stipulates(speech):
        return [NOTHING] * len(verdicts)
    if caution or _defers(speech, verdicts):
        both = zip(speech.clauses, verdicts, strict=True)
        return [_without_warning(speech, clause, verdict, cues, of_harm=not caution) for clause, verdict in both]
    return verdicts


def _stipulates(speech: Speech) -> bool:
    """Whether a sentence only says how the speaker uses a word: "by volume I mean", "when I say failure, I mean"."""
    words = speech.words
    if words[:1] not in (("by",), ("when",), ("what",)) and "which" not in words:
        return False
    pairs = pairwise(words)
    return any(pair in (("i", "mean"), ("we", "mean"), ("i", "call")) for pair in pairs) and (
        words[0] in ("by", "when") or "by which i mean" in " ".join(words)
    )


def _defers(speech: Speech, verdicts: list[Verdict]) -> bool:
    """Whether a sentence tells the viewer to stop or to ask a professional ("..., see a doctor", "one for your GP")."""
    spans = speech.found.get("deferrals", ())
    if any(after[0] - before[1] < 3 for before, after in pairwise(spans)):
        return True
    return bool(spans) and any(verdict.kind == "instruction" for verdict in verdicts)


def _without_warning(speech: Speech, clause: Clause, verdict: Verdict, cues: Cues, *, of_harm: bool) -> Verdict:
    """What a clause beside a caution does: where it only warns (`of_harm`: of harm), it tells the viewer what to do."""
    if verdict.kind not in STATING or (of_harm and not speech.within("health", clause)):
        return verdict
    return verdict._replace(kind="instruction") if warns(speech, clause, cues) else verdict


def _asks(text: str) -> bool:
    """Whether a sentence asks; "did you know" and "..., isn't it?" state something."""
    text = text.rstrip(" \t\n\"”'’)")
    if not text.endswith("?") or ASSERTING.match(text):
        return False
    tail = text[text.rfind(",") + 1 :]
    return len(tail) == len(text) or not TAG.fullmatch(tail)


def _resumes(speech: Speech, verdicts: list[Verdict], k: int) -> bool:
    """Whether clause k goes on after a remark between commas: "Heavy sleds, oddly, build the calves"."""
    if k < 2 or verdicts[k - 2].kind != "fragment":
        return False
    name, remark = speech.clauses[k - 2], speech.clauses[k - 1]
    plural = speech.words[name.end - 1].endswith("s")
    aside = verdicts[k - 1].kind == "belief" or verdicts[k - 1] == NOTHING or speech.words[remark.start] == "according"
    aside = aside or (speech.words[remark.start] in REMARKING and remark.end - remark.start <= 4)
    return plural and (aside or (remark.end - remark.start == 1 and speech.words[remark.start].endswith("ly")))


def _is_reported(speech: Speech, i: int) -> bool:
    """Whether "asks whether" at word i reports a viewer's question: early on, and not the speaker's own."""
    return i < speech.clauses[0].end and (not i or speech.words[i - 1] not in ("i", "we", "questions", "question"))


def _together(speech: Speech, verdicts: list[Verdict], previous: str, segment_kind: str) -> tuple[str, Spans]:
    """One kind from the kinds of the clauses: a claim beats an instruction, that an opinion."""
    by: dict[str, list[Verdict]] = {}
    for verdict in verdicts:
        by.setdefault(verdict.kind, []).append(verdict)
    stated = by.get("claim", [])
    if not BESIDE.isdisjoint(by):
        stated = _standing(speech, verdicts)
    elif segment_kind in CHATTY:
        stated = [verdict for verdict in stated if verdict.weight]
    if stated:
        return "claim", _spans(stated)
    first = next((verdict.kind for verdict in verdicts if verdict.kind in ("instruction", "opinion")), "")
    if first:
        return first, _spans(by[first])
    if "belief" in by:
        return "opinion", _spans(by["belief"])
    if any(verdict.weight for verdict in by.get("condition", ())):
        return "claim", _spans(by["condition"])
    if BESIDE.isdisjoint(by):
        return _fragments(speech, by.get("fragment", []), previous, segment_kind)
    return "other", []


def _spans(verdicts: list[Verdict]) -> Spans:
    """The words that decided several clauses."""
    return [span for verdict in verdicts for span in verdict.spans]


def _standing(speech: Speech, verdicts: list[Verdict]) -> list[Verdict]:
    """The statements that count beside a command, a taste or a word about the speaker.

    Those with an effect or a figure, one that opens the sentence, and what a command leads to ("... and it fades").
    """
    found: list[Verdict] = []
    commanded = False
    first = next((k for k, verdict in enumerate(verdicts) if verdict != NOTHING), 0)
    for k, verdict in enumerate(verdicts):
        if _is_purpose(speech, speech.clauses[k]):
            continue
        follows = commanded and speech.clauses[k].joiner in ("and", "because", "so", "otherwise")
        if verdict.kind == "claim" and (verdict.weight == 2 or (verdict.weight and k == first) or follows):
            found.append(verdict)
        commanded = commanded or verdict.kind == "instruction"
    return found


def _is_purpose(speech: Speech, clause: Clause) -> bool:
    """Whether a clause tells what a command is for: "..., so that your feet lie flat"."""
    return speech.words[clause.start : clause.start + 2] == ("so", "that")


def _fragments(speech: Speech, fragments: list[Verdict], previous: str, segment_kind: str) -> tuple[str, Spans]:
    """What a sentence without a verb is: an answer, a share, a comparison or a sponsor's figure states something."""
    spans = _spans(fragments)
    marks = [span for name in ("hedges", "absolutes", "comparatives") for span in speech.found.get(name, ())]
    answers = previous.rstrip().endswith("?") or segment_kind == "sponsor"
    if answers and (spans or speech.figures):
        return "claim", spans + list(speech.found["figures"])
    shares = any("percent" in speech.words[figure.end : figure.end + 2] for figure in speech.figures)
    if (marks or shares) and any(verdict.weight for verdict in fragments):
        return "claim", spans + marks
    return "other", []
