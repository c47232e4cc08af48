"""The claims ledger as rows: each spoken sentence, what it rests on, what is open about it, what was ruled of it."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence

from scriptkit import keys
from scriptkit.findings import Finding
from scriptkit.model import Facts, Judgement, Link, Pair, Segment, Sentence, Verdict, Weight
from scriptkit.rendering import anchoring
from scriptkit.rendering.rows import Row, owned
from scriptkit.times import thousandths
from scriptkit.wording import quoted, signed

RULED = ("verified", "changed", "unsupported", "no-claim")  # how a sentence stands that has a verdict
# findings that say again what the verdict says
OF_AD_LIBS = "ad-lib-without-source"  # stands at the sentence before, and belongs to what was said behind it
OF_VERDICTS = ("verdict-unsupported", "verdict-asks-for-change", "verdict-void", "claims-not-verified")


def sentences(facts: Facts, found: Sequence[Finding] = ()) -> list[Row]:
    """Every spoken sentence in running order; `found` are the findings, of which each row gets those at its words."""
    at_words = anchoring.by_sentence(facts, [one for one in found if one.name not in (*OF_VERDICTS, OF_AD_LIBS)])
    replaced = {id(one.sentence): one.verdict for one in facts.void_verdicts if one.sentence is not None}
    rows: list[Row] = []
    number = 0
    beside = _ad_libs(facts, found)
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        said = segment.sentences
        nothing = (None,) * len(said)
        columns = (
            facts.judgements[segment.id],
            facts.weights.get(segment.id, nothing),
            facts.ruled.get(segment.id, nothing),
            timed.sentences,
        )
        for line, (sentence, judgement, weight, verdict, time) in enumerate(zip(said, *columns, strict=True)):
            row = {
                **_said(segment, sentence, judgement),
                "certainty": (weight.certainty or None) if weight else None,
                "start_s": thousandths(time.start),
                **_weighed(sentence, weight, facts),
                "findings": [_finding(one) for one in at_words.get(number, ()) if not one.allowed],
                "allowed": [_allowed(one) for one in at_words.get(number, ()) if one.allowed],
                "key": keys.of(sentence.text),
                "ad_lib": False,
            }
            row |= _standing(row, judgement, verdict, replaced.get(id(sentence)))
            rows.append({**row, "to_verify": _to_verify(row)})
            rows += [{**one, "start_s": thousandths(time.start + time.spoken)} for one in beside[segment.id, line]]
            number += 1
    return rows


def _ad_libs(facts: Facts, found: Sequence[Finding]) -> dict[tuple[str, int], list[Row]]:
    """A row for each claim that was said and is not in the script, by segment and number of the sentence before it."""
    segments = {segment.id: segment for segment in facts.segments}
    made: dict[tuple[str, int], list[Row]] = defaultdict(list)
    for one in facts.ad_libs:
        said = Sentence(one.text, one.place)
        own = [each for each in found if each.name == OF_AD_LIBS and quoted(one.text) in each.message]
        row = {
            **_said(segments[one.segment], said, one.judgement),
            "certainty": None,
            "start_s": 0.0,
            **_weighed(said, None, facts),
            "findings": [_finding(each) for each in own if not each.allowed],
            "allowed": [_allowed(each) for each in own if each.allowed],
            "key": keys.of(one.text),
            "ad_lib": True,
        }
        state, words = "open", "ad-lib, needs a source"
        if row["allowed"]:
            state, words = "allowed", f"ad-lib, allowed because {row['allowed'][0]['because']}"
        elif not one.judgement.sure:
            state, words = "maybe", "ad-lib, may be a claim"
        standing = {"state": state, "states": [state], "status": words, "ruling": _ruling(None), "to_verify": False}
        made[one.segment, one.line].append({**row, **standing})
    return made


def void(facts: Facts) -> list[Row]:
    """The verdicts on sentences that are gone, and what is said in their place."""
    rows = []
    for one in facts.void_verdicts:
        now = one.sentence
        rows.append(
            {
                **_ruling(one.verdict),
                "text": str(one.verdict.sentence),
                "key": one.verdict.key,
                "told": told(one.verdict),
                "segment": one.segment,
                "now": now.text if now else None,
                "file": now.place.file if now else None,
                "line": now.place.line if now else None,
            }
        )
    return rows


def of_sources(facts: Facts, found: Sequence[Finding]) -> dict[str, list[Row]]:
    """What is open about each source itself, by its id."""
    of_each = anchoring.by_source(facts, [one for one in found if not one.allowed])
    return {name: [_finding(one) for one in own] for name, own in of_each.items()}


def of_headlines(found: Sequence[Finding]) -> list[Row]:
    """What is open about the title, the question and the promises."""
    return [_finding(one) for one in found if one.name.startswith("headline-") and not one.allowed]


def tally(rows: Sequence[Row]) -> Row:
    """How many claims there are, how they stand, and how certain they are."""
    claims = [row for row in rows if row["kind"] == "claim" and row["state"] != "maybe"]
    states = Counter(row["state"] for row in rows)
    certain = Counter(row["certainty"] for row in claims)
    return {
        "claims": len(claims),
        "open": sum("open" in row["states"] or row["state"] in ("changed", "unsupported") for row in claims),
        "settled": sum(row["state"] in ("settled", "verified") and "open" not in row["states"] for row in claims),
        "bare": sum("needs a source" in row["status"] for row in claims),
        "to_verify": sum(row["to_verify"] for row in rows),
        "verified": sum(row["to_verify"] and row["state"] == "verified" for row in rows),
        "left": sum(row["to_verify"] and row["state"] not in RULED for row in rows),
        "not_to_verify": list(Counter(_why_not(row) for row in claims if not row["to_verify"]).items()),
        "opinions": sum(row["kind"] == "opinion" for row in rows),
        **{name: states[name] for name in ("maybe", "allowed", "changed", "unsupported", "no-claim", "void")},
        "certainty": [(word, certain[word]) for word in ("high", "moderate", "low", "very low") if certain[word]],
    }


def _said(segment: Segment, sentence: Sentence, judgement: Judgement) -> Row:
    kind = "opinion" if sentence.opinion and judgement.kind == "claim" else judgement.kind
    return {
        "segment": segment.id,
        "file": sentence.place.file,
        "line": sentence.place.line,
        "text": sentence.text,
        "kind": kind,
        "strength": judgement.strength if kind == "claim" else None,
        "flags": list(judgement.flags),
        "triggers": list(judgement.triggers),
        "sources": list(dict.fromkeys(str(link.id) for link in sentence.links)),
        "column": sentence.place.column,
        "marks": owned(sentence),
        "numbers": list(judgement.numbers),
        "sure": judgement.sure,
    }


def _weighed(sentence: Sentence, weight: Weight | None, facts: Facts) -> Row:
    pairs = {(one.source, one.finding, one.stance): one for one in weight.pairs} if weight else {}
    return {
        "outcome": weight.outcome if weight else "",
        "computed": (weight.computed or None) if weight else None,
        "why": list(weight.steps) if weight else [],
        "evidence": [_evidence(link, pairs, facts) for link in dict.fromkeys(sentence.links)],
    }


def _evidence(link: Link, pairs: dict[tuple[str, str, str], Pair], facts: Facts) -> Row:
    """One source behind a sentence: what it says, and what it weighs for this sentence."""
    source = facts.register.get(link.id)
    own = source.findings if source else {}
    pair = pairs.get((link.id, link.finding, link.stance)) or _only(pairs, link)
    name = link.finding or (pair.finding if pair else "")
    finding = own.get(name) or (next(iter(own.values())) if len(own) == 1 else None)
    return {
        "source": str(link.id),
        "title": str(source.title) if source else "",
        "known": source is not None,
        "finding": str(finding.id if finding else name),
        "stance": str(link.stance),
        "level": pair.level if pair else None,
        "certainty": (pair.certainty or None) if pair else None,
        "why": list(pair.steps) if pair else [],
        "unnamed": [] if finding or name else [str(one) for one in own],
        "outcome": str(finding.outcome) if finding else "",
        "result": str(finding.result) if finding else "",
        "values": {str(key): str(value) for key, value in finding.values.items()} if finding else {},
        "quote": str(finding.quote) if finding else "",
        "page": str(finding.page) if finding else "",
    }


def _only(pairs: dict[tuple[str, str, str], Pair], link: Link) -> Pair | None:
    """The pair of a link that names no finding, or whose pair does not."""
    fit = [one for one in pairs.values() if one.source == link.id and one.stance == link.stance]
    return fit[0] if len(fit) == 1 else None


def _finding(one: Finding) -> Row:
    place = {"file": one.place.file, "line": one.place.line, "column": one.place.column}
    return {"name": one.name, "severity": one.severity, **place, "message": one.message, "help": one.help}


def _allowed(one: Finding) -> Row:
    return {"name": one.name, "message": one.message, "because": one.allowed}


def told(one: Verdict) -> str:
    """A verdict in words, with who gave it and when."""
    words = {"changed": "change asked for", "unsupported": "found unsupported"}.get(one.verdict, str(one.verdict))
    return signed(words, one.initials, one.date)


def _ruling(one: Verdict | None) -> Row:
    names = ("verdict", "note", "page", "initials", "date")
    return {name: str(getattr(one, name)) if one else "" for name in names}


def _standing(row: Row, judgement: Judgement, verdict: Verdict | None, before: Verdict | None) -> Row:
    """How it stands: `state` for programs, `status` in words; and the verdict's own parts."""
    parts: list[tuple[str, str]] = []
    if verdict:
        parts.append((str(verdict.verdict).replace(" ", "-"), told(verdict)))
    elif before:
        parts.append(("void", f"void: {told(before)}, in other words"))
    parts += _open(row)
    if not parts:
        parts.append(_settled(row, judgement))
    return {
        "state": parts[0][0],
        "states": list(dict.fromkeys(state for state, _ in parts)),
        "status": "; ".join(words for _, words in parts if words),
        "ruling": _ruling(verdict),
    }


def _to_verify(row: Row) -> bool:
    """Whether a fact-checker is asked for a verdict: it is a claim, and the author does not call it anything else."""
    marks = row["marks"]
    owned = "aside" in marks or any(one.startswith("caution ") for one in marks)
    return row["kind"] == "claim" and row["sure"] and not owned


def _why_not(row: Row) -> str:
    """Why nobody asks for a verdict on a claim."""
    if row["ad_lib"]:
        return "said without the script"
    if "aside" in row["marks"]:
        return "the author's own asides"
    return "cautions" if row["sure"] else "perhaps none"


def _open(row: Row) -> list[tuple[str, str]]:
    names = {one["name"] for one in row["findings"]}
    errors, warnings = (sum(one["severity"] == which for one in row["findings"]) for which in ("error", "warning"))
    if "claim-without-source" in names and not row["sources"]:
        errors -= 1
        needs = [("open", "needs a source")]
    else:
        needs = []
    for count, word, what in ((errors, "error", "to mend"), (warnings, "warning", "to look at")):
        if count > 0:
            needs.append(("open", f"{count} {word}{'s' if count > 1 else ''} {what}"))
    return needs


def _settled(row: Row, judgement: Judgement) -> tuple[str, str]:
    if row["kind"] == "opinion":
        return "opinion", "opinion"
    if judgement.kind != "claim":
        return "none", ""
    if row["sources"]:
        return "settled", "sourced"
    for one in row["allowed"]:
        if one["name"] == "claim-without-source":
            return "allowed", f"no source, allowed because {one['because']}"
    for mark, words in (("sponsor says", "sponsor's wording"), ("aside", "aside")):
        if mark in row["marks"]:
            return "settled", words
    return ("settled", "nothing open") if judgement.sure else ("maybe", "may be a claim")
