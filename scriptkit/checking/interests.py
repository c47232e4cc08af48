"""Checks of what the presenter earns from: it is disclosed before a grade that may favour it."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import risks
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("error", "record", protects=True)
def interest_not_disclosed(facts: Facts) -> Iterator[Found]:
    """Something the presenter earns from is spoken of in a graded segment before that is disclosed.

    `interests:` and the sponsor say who that is. A viewer has to know it before the grade: in the sponsor's passage, or
    in a sentence that says what the interest is ("they paid me", "I own part of it", "they sent me one for free").
    This check is no legal advice.

    Rule: 16 CFR 255.5(a), a material connection is disclosed, with its nature; "before the grade" is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: A}}
        interests: [{who: Quennick Bars, what: part owner}]
        --- segments/hang.md
        Here it is, on a bar by Quennick Bars. [aside] I give it an A. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: A}}
        interests: [{who: Quennick Bars, what: part owner}]
        --- segments/hang.md
        I own part of Quennick Bars, who made this one. [aside] I give it an A. [opinion]
    """
    what = {one.who: one.what for one in facts.episode.interests}
    for risk in risks(facts, "interest"):
        nature = what.get(risk.hint, "")
        yield (
            risk.place,
            f"{quoted(risk.hint)} is spoken of in a graded segment, and nobody has said what it is to you by then.",
            (
                f"Say first what the interest is{f' ({quoted(nature)})' if nature else ''}, for instance: "
                f"{quoted(f'You should know that {risk.hint} paid me.', 120)}"
            ),
        )


@check("note", "record")
def interest_not_in_recap(facts: Facts) -> Iterator[Found]:
    """An interest that touches the ranking is not told again in the recap.

    Who skips to the recap hears the grades there, and has not heard who paid.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: A}}
        interests: [{who: Quennick Bars, what: part owner}]
        --- segments/hang.md
        I own part of Quennick Bars, who made this one. [aside] I give it an A. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: A}}
        interests: [{who: Quennick Bars, what: part owner}]
        --- segments/hang.md
        I own part of Quennick Bars, who made this one. [aside] I give it an A. [opinion]
        --- segments/recap.md
        The bar hang gets an A from me. [opinion] I own part of Quennick Bars, who made it. [aside]
    """
    for risk in risks(facts, "not-in-recap"):
        yield (
            risk.place,
            f"The ranking speaks of {quoted(risk.words)}, and the recap does not say what it is to you.",
            "Say it there again in one sentence.",
        )
