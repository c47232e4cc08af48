"""The description of a video: eight parts in one order, shortened by steps that leave three of them alone."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.publishing.citing import cite, cite_shortly
from scriptkit.computing.publishing.labelling import bare, same_address
from scriptkit.computing.publishing.pasting import Paste, address
from scriptkit.model import Facts, Interest, Sponsor
from scriptkit.model.publishing import Chapter, Correction, Labelled, Reference
from scriptkit.wording import SAFETY

# each is taken only where the ones before were not enough: what can be found elsewhere goes first
STEPS = (
    "references name their first author alone",
    "references are without their titles",
    "the questions of the checklist are left out",
    "the credits are left out",
    "the references are left out",
    "the chapters are left out",
)


_PAYS = frozenset("a ad an episode for my of paid part partner pays sponsor sponsored sponsors the this video".split())


class Described(NamedTuple):
    """A description, and the steps by which it was shortened; `listed`: the references are in it."""

    text: str
    steps: tuple[str, ...]
    listed: bool


class Parts(NamedTuple):
    """What a description is made of besides the facts."""

    chapters: Sequence[Chapter]
    references: Sequence[Reference]
    corrections: Sequence[Correction]
    links: Sequence[Labelled]
    style: str


def describe(facts: Facts, parts: Parts, paste: Paste) -> Described:
    """The description, no longer than it may be where the steps are enough for that; all of them are tried."""
    text, steps, listed = "", [], True
    for number in range(len(STEPS) + 1):
        shorter = _text(facts, parts, paste, STEPS[:number])
        if number and shorter != text:
            steps.append(STEPS[number - 1])
            listed = listed and STEPS[number - 1] != STEPS[4]
        text = shorter
        if len(text.encode(errors="replace")) <= facts.limits.description_bytes:
            break
    return Described(text, tuple(steps), listed)


def _text(facts: Facts, parts: Parts, paste: Paste, taken: Sequence[str]) -> str:
    """The description after the steps taken."""
    episode = facts.episode
    answer = paste.words(episode.answer or episode.question, episode.at.of("question"))
    blocks = (
        [
            *_disclosure(facts, parts.links, paste),
            *([answer] if answer else []),
        ],
        [_correction(one, paste) for one in parts.corrections],
        [] if STEPS[5] in taken else _chapters(parts.chapters),
        _references(facts, parts, paste, taken),
        _grading(facts, paste, briefly=STEPS[2] in taken),
        _safety(facts, paste),
        _links(facts, parts.links, paste),
        [] if STEPS[3] in taken else [paste.words(one, episode.at.of("credits")) for one in episode.credits],
    )
    return "\n\n".join("\n".join(lines) for lines in blocks if lines) + "\n"


def _disclosure(facts: Facts, links: Sequence[Labelled], paste: Paste) -> list[str]:
    """Who pays and what the presenter earns from: the first lines, which are seen before anybody unfolds the rest."""
    episode = facts.episode
    lines = []
    if episode.sponsor:
        lines.append(paste.words(disclosure(episode.sponsor), episode.sponsor.at.place))
    if any(one.paid for one in links):
        lines.append("Links marked “Ad” below are paid links.")
    told = [_interest(one, paste) for one in episode.interests if not _told_again(one, episode.sponsor)]
    if told:
        lines.append(f"Interests: {'; '.join(told)}.")
    return lines


def disclosure(sponsor: Sponsor) -> str:
    """The outline's disclosure word for word; else one for readers, to whom "this part" would say nothing."""
    return sponsor.disclosure or f"Ad. {sponsor.name} paid for a part of this video."


def _told_again(one: Interest, sponsor: Sponsor | None) -> bool:
    """Whether an interest says no more than the disclosure above it: that the sponsor pays."""
    if sponsor is None or bare(one.who) != bare(sponsor.name):
        return False
    return _PAYS.issuperset(one.what.casefold().split())


def _interest(one: Interest, paste: Paste) -> str:
    return ": ".join(paste.words(part, one.at.place) for part in (one.who, one.what) if part)


def _correction(one: Correction, paste: Paste) -> str:
    """No clock stands in it: a time outside of the chapters may spoil their list; the segment's name finds it."""
    erratum = one.erratum
    was, now, why = (paste.words(part, erratum.at.place) for part in (erratum.was, erratum.now, erratum.why))
    head = ", ".join(part for part in ("CORRECTION", erratum.since, paste.words(one.title, erratum.at.place)) if part)
    return f"{head}. Wrong: “{was}” Right: “{now}”" + (f" Why: {why}" if why else "")


def _chapters(chapters: Sequence[Chapter]) -> list[str]:
    return ["Chapters", *(one.line for one in chapters)] if chapters else []


def _references(facts: Facts, parts: Parts, paste: Paste, taken: Sequence[str]) -> list[str]:
    """The references as far as the steps leave them."""
    if not parts.references:
        return []
    if STEPS[4] in taken:
        page = address(facts.episode.references.page)
        many = len(parts.references)
        where = f": {page}" if page else " is too long to stand here."
        return [f"The list of {many} source{'' if many == 1 else 's'}, numbered as spoken{where}"]
    made = parts.references
    if STEPS[1] in taken:
        made = [one._replace(text=cite_shortly(facts.register[one.id], paste)) for one in made]
    elif STEPS[0] in taken:
        made = [one._replace(text=cite(facts.register[one.id], parts.style, paste, first_author=True)) for one in made]
    return ["Sources, numbered as spoken", *(one.line for one in made)]


def _grading(facts: Facts, paste: Paste, *, briefly: bool) -> list[str]:
    """For whom it was graded, by which checklist, as of when."""
    episode, checklist = facts.episode, facts.episode.checklist
    told = [
        "Graded on a checklist",
        f"for {paste.words(episode.audience, episode.at.of('audience'))}" if episode.audience else "",
        f"as of {episode.publish}" if episode.publish else "",
    ]
    if not checklist:
        return []
    lines = [", ".join(part for part in told if part)]  # its id is a name of the author's own, for comparing episodes
    if not briefly:
        lines += [
            f"{round(100 * facts.criteria_shares.get(name, 0.0), 1):g} % {paste.words(one.ask, one.at.place)}"
            for name, one in checklist.criteria.items()
        ]
    return lines


def _safety(facts: Facts, paste: Paste) -> list[str]:
    """What every episode says, and each caution with the exercises that it is for."""
    spoken = {segment.exercise for segment in facts.segments}
    named: dict[str, list[str]] = {}
    for name, exercise in facts.episode.exercises.items():
        for tag in exercise.cautions if name in spoken else ():
            named.setdefault(tag, []).append(paste.words(exercise.name or name, exercise.at.place))
    known = [(facts.cautions[tag], names) for tag, names in named.items() if tag in facts.cautions]
    return [SAFETY, *(f"{', '.join(names)}: {paste.words(one.line, one.at.place)}" for one, names in known if one.line)]


def _links(facts: Facts, links: Sequence[Labelled], paste: Paste) -> list[str]:
    """The sponsor's link, then the others; what is paid says so at the start of its own line."""
    sponsor = facts.episode.sponsor
    lines, theirs = [], []
    if sponsor and (sponsor.link or sponsor.code):
        # one address is printed once: what the outline calls it goes behind the sponsor's name
        theirs = [one for one in links if sponsor.link and same_address(one.link.to, sponsor.link)]
        who = dict.fromkeys([sponsor.name, *(one.link.what for one in theirs if one.link.what)])
        code = f"code {paste.words(sponsor.code, sponsor.at.place)}" if sponsor.code else ""
        until = f"valid {sponsor.valid[0]} to {sponsor.valid[1]}" if len(sponsor.valid) == 2 else ""
        offer = ", ".join(part for part in (address(sponsor.link), code, until) if part)
        lines.append(f"Ad, paid link: {', '.join(paste.words(one, sponsor.at.place) for one in who)}: {offer}")
    for link, paid, _ in links:
        if any(link is one.link for one in theirs):
            continue
        what = f"{paste.words(link.what, link.at.place)}: " if link.what else ""
        how = paste.words(link.paid, link.at.place) or "paid link"
        lines.append(f"{f'Ad, {how}: ' if paid else ''}{what}{address(link.to)}")
    return lines
