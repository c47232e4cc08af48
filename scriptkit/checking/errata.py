"""Checks of errata: where each belongs, since when it is known, and whether the script still says what was wrong."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.places import place_of
from scriptkit.wording import did_you_mean, quoted


@check("error")
def erratum_nowhere(facts: Facts) -> Iterator[Found]:
    """An erratum is about a segment that the episode does not have.

    `where:` is the id of a segment or of an exercise. The correction then stands at its row of the script, and names it
    in the description.

    Rule: ours; a correction has to say what it corrects.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks, where: hagn, since: 2026-04-01}]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01}]
    """
    known = [*(segment.id for segment in facts.segments), *facts.episode.exercises]
    for one in facts.publication.corrections:
        where = one.erratum.where
        if where and where not in known:
            yield (
                place_of(where, one.erratum.at.place),
                f"There is no segment and no exercise {quoted(where)}.",
                did_you_mean(where, known) or "Write the id of the segment that is corrected.",
            )


@check("warning", "publish")
def erratum_incomplete(facts: Facts) -> Iterator[Found]:
    """An erratum does not say what was wrong and what is right, in which segment, or since when it is known.

    Viewers who saw the episode before that day want to know whether they heard it wrong.

    Rule: ours, by the correction policies of newspapers: what was wrong, what is right, where, since when.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks}]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01}]
    """
    for one in facts.publication.corrections:
        erratum = one.erratum
        said, meant = " ".join(erratum.was.split()), " ".join(erratum.now.split())
        lacks = [
            (not said or not meant or said == meant, "what was wrong and what is right", "`was:` and `now:`"),
            (not erratum.where, "which segment it is about", "`where:` with the segment's id"),
            (not erratum.since, "since when it is known", "`since:` with the day"),
        ]
        missing = [(what, help_) for is_so, what, help_ in lacks if is_so]
        if missing:
            yield (
                erratum.at.place,
                f"The erratum {quoted(erratum.was)} does not say {' or '.join(what for what, _ in missing)}.",
                f"Add {' and '.join(help_ for _, help_ in missing)}.",
            )


@check("warning", "record")
def erratum_still_said(facts: Facts) -> Iterator[Found]:
    """The script still says what an erratum calls wrong.

    It is looked for in the erratum's segment, or in the whole script where none is named; "10" and "ten" are the same.
    Whoever records, captions or quotes from the script would repeat the mistake. Where the script is to stay as it was
    published, allow it.

    Rule: ours; a correction that the script does not know of comes undone with the next recording.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01}]
        --- segments/hang.md
        They hung for 10 weeks. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata: [{was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01}]
        --- segments/hang.md
        They hung for 8 weeks. [aside]
    """
    for one in facts.publication.corrections:
        if one.said:
            yield (
                one.said,
                f"This still says {quoted(one.erratum.was)}, which an erratum corrects: {quoted(one.sentence)}",
                f"Say {quoted(one.erratum.now, 200)}.",
            )
