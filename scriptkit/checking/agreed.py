"""Checks that hold a sponsor's passage against what was agreed with them: points, words, code, link, approval."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import risks
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("error", "record")
def must_say_missing(facts: Facts) -> Iterator[Found]:
    """A point that was agreed with the sponsor is not spoken in their passage.

    Case and punctuation aside the words have to be there; a number may be written in words or digits.

    Rule: ours; what a contract asks for word for word is looked for word for word.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., must_say: [free returns for sixty days]}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. You can send them back for free. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., must_say: [free returns for sixty days]}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. They offer free returns for 60 days. [sponsor says]
    """
    for risk in risks(facts, "must-say"):
        near = f" {quoted(risk.sentence)} comes near." if risk.sentence else ""
        yield (
            risk.place,
            f"Nobody says {quoted(risk.words)} in the sponsor's passage.{near}",
            f"Say it there word for word: {quoted(f'They promise {risk.words}.', 120)} `[sponsor says]`.",
        )


@check("error", "record", protects=True)
def never_say_spoken(facts: Facts) -> Iterator[Found]:
    """Words that were agreed not to be said are said, or shown, as the sponsor's.

    They are looked for in the sponsor's passage, on its cards, and in every sentence marked `[sponsor says]`, in any
    form of the words: "prevents injury" is found in "preventing injuries".

    Rule: ours; the words come from the outline.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., never_say: [the softest]}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. They are the softest on the hill. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., never_say: [the softest]}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. They are merino and nylon. [sponsor says]
    """
    for risk in risks(facts, "never-say"):
        yield (
            risk.place,
            f"{quoted(risk.sentence)} says {quoted(risk.words)}, which `never_say:` keeps out.",
            "Take the words out; what stays is what was agreed.",
        )


@check("error", "record")
def code_differs(facts: Facts) -> Iterator[Found]:
    """A discount code in the sponsor's passage is not the outline's.

    It may be spoken as it is written or letter by letter ("H-I-L-L ten"); another code leads viewers nowhere.

    Rule: ours; one code, the same by ear and on screen.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        [screen: HILL10] Ad. Quennick Socks paid. The code is HILL15. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        [screen: HILL10] Ad. Quennick Socks paid. The code is HILL10. [sponsor says]
    """
    code = facts.episode.sponsor.code if facts.episode.sponsor else ""
    for risk in risks(facts, "other-code"):
        yield (
            risk.place,
            f"{quoted(risk.words)} looks like a code, and the outline's is {quoted(code)}.",
            "Write it as `{{ sponsor.code }}`, so that it stands in one place.",
        )


@check("warning", "record")
def code_not_spoken(facts: Facts) -> Iterator[Found]:
    """The outline gives a discount code, and nobody says it in the sponsor's passage.

    Rule: ours; a code that was agreed is heard and seen.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        [screen: HILL10] Ad. Quennick Socks paid. The code is on screen. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        [screen: HILL10] Ad. Quennick Socks paid. The code is H-I-L-L ten. [sponsor says]
    """
    for risk in risks(facts, "code-not-spoken"):
        yield (
            risk.place,
            f"Nobody says the code {quoted(risk.words)} in the sponsor's passage.",
            "Say it there: `The code is {{ sponsor.code }}.`",
        )


@check("warning", "publish")
def code_not_on_screen(facts: Facts) -> Iterator[Found]:
    """The outline gives a discount code, and no card in the sponsor's passage shows it.

    Rule: ours; a code that is only heard is typed wrong.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. The code is HILL10. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., code: HILL10}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. [screen: HILL10] The code is HILL10. [sponsor says]
    """
    for risk in risks(facts, "code-not-shown"):
        yield (
            risk.place,
            f"No card in the sponsor's passage shows the code {quoted(risk.words)}.",
            "Put `[screen: {{ sponsor.code }}]` before the sentence that says it.",
        )


@check("error", "record")
def sponsor_link_differs(facts: Facts) -> Iterator[Found]:
    """A link in the sponsor's passage leads elsewhere than the outline's.

    Rule: ours; one address, the same by ear and on screen.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., link: https://example.org/hill}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. You find them at example.com/hill. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., link: https://example.org/hill}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. You find them at example.org/hill. [sponsor says]
    """
    link = facts.episode.sponsor.link if facts.episode.sponsor else ""
    for risk in risks(facts, "other-link"):
        yield (
            risk.place,
            f"{quoted(risk.words)} is not the outline's link, {quoted(link)}.",
            "Write it as `{{ sponsor.link }}`, so that it stands in one place.",
        )
