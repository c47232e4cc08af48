"""Checks of what a sponsor's passage claims: an effect on health or performance needs listed backing of its own."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import risks
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("error", "record", protects=True)
def sponsor_claim_unbacked(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage claims an effect on health or performance, and no backing is listed for it.

    `[sponsor says]` settles price, contents and terms. An effect on a body needs a randomised trial in people, of that
    very product: list the claim under `sponsor: claims:` with `backing: [ID]`. That one is listed does not say that the
    claim is proven; this is no legal advice.

    Rule: FTC Health Products Compliance Guidance, December 2022, as summarised; health benefits need human trials.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Powder, disclosure: Ad. Quennick Powder paid.}
        --- segments/sponsor.md
        Ad. Quennick Powder paid. It boosts your recovery. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Powder, disclosure: Ad. Quennick Powder paid.}
        --- segments/sponsor.md
        Ad. Quennick Powder paid. A tub holds 40 scoops. [sponsor says]
    """
    for risk in risks(facts, "unbacked"):
        yield (
            risk.place,
            f"{quoted(risk.sentence)} claims an effect on a body ({quoted(risk.words, 30)}): {risk.hint}.",
            (
                "Say what it is or costs and not what it does to a body; or list the claim under `sponsor: claims:` "
                "with `backing: [ID]`, a randomised trial in people of this product."
            ),
        )


@check("error", "record", protects=True)
def sponsor_claim_forbidden(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage uses words that no paid passage may say.

    Names of diseases, "clinically proven", "doctor recommended", "boosts testosterone", "burns fat": regulators read
    them as claims that need proof of their own kind, and `[sponsor says]` does not pass them on to somebody else.

    Rule: FTC Health Products Compliance Guidance, December 2022, as summarised; the list of words is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Powder, disclosure: Ad. Quennick Powder paid.}
        --- segments/sponsor.md
        Ad. Quennick Powder paid. It is clinically proven. [sponsor says]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Powder, disclosure: Ad. Quennick Powder paid.}
        --- segments/sponsor.md
        Ad. Quennick Powder paid. It tastes of vanilla. [sponsor says]
    """
    for risk in risks(facts, "never-claimed"):
        yield (
            risk.place,
            f"{quoted(risk.words)} may not be said in a paid passage: {quoted(risk.sentence)}.",
            "Take the sentence out, and tell the sponsor; say what the product is, costs and holds.",
        )


@check("error", "record", protects=True)
def backing_too_weak(facts: Facts) -> Iterator[Found]:
    """The backing listed for a sponsor's claim cannot bear it.

    It has to be a randomised trial in people. Work on animals or cells, muscle activity and before-and-after counts do
    not bear an effect on health or performance. Whether the trial was of this very product nobody but you can see.

    Rule: FTC Health Products Compliance Guidance, December 2022, as summarised.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor:
          name: Quennick Powder
          disclosure: Ad. Quennick Powder paid.
          claims: [{say: In a trial of 40 people they slept longer., sponsor_wording: true, backing: [vell-2020]}]
        sources: {vell-2020: {title: A count of naps, year: 2020, design: survey, n: 40, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor:
          name: Quennick Powder
          disclosure: Ad. Quennick Powder paid.
          claims: [{say: In a trial of 40 people they slept longer., sponsor_wording: true, backing: [vell-2020]}]
        sources: {vell-2020: {title: A trial of naps, year: 2020, design: randomised trial, n: 40, invented: true}}
    """
    for risk in risks(facts, "weak-backing"):
        yield (
            risk.place,
            f"The backing of {quoted(risk.sentence)} cannot bear it: {risk.hint}.",
            "List a randomised trial in people of this product, or take the claim out.",
        )


@check("warning", "record")
def backing_shared(facts: Facts) -> Iterator[Found]:
    """A sponsor's claim rests on a source of the ranking.

    What you found out for the viewer is then lent to who pays; and a source about an exercise is seldom one about the
    product.

    Rule: ours; evidence of the episode is not lent to the sponsor.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: "In a trial of 40 people, grip rose.", source: mora-2022}]}}
        sponsor:
          name: Quennick Bars
          disclosure: Ad. Quennick Bars paid.
          claims: [{say: "In a trial of 40 people, grip rose.", sponsor_wording: true, backing: [mora-2022]}]
        sources: {mora-2022: {title: Timed hangs, year: 2022, design: randomised trial, n: 40, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: "In a trial of 40 people, grip rose.", source: mora-2022}]}}
        sponsor: {name: Quennick Bars, disclosure: Ad. Quennick Bars paid.}
        sources: {mora-2022: {title: Timed hangs, year: 2022, design: randomised trial, n: 40, invented: true}}
    """
    for risk in risks(facts, "shared-backing"):
        yield (
            risk.place,
            f"{quoted(risk.words)} backs the sponsor's claim {quoted(risk.sentence)} and the ranking as well.",
            "Give the claim a source of its own, about the product.",
        )


@check("note", "record")
def own_use_said(facts: Facts) -> Iterator[Found]:
    """A presenter says in a paid passage to use the product.

    It has to be true, and still true on the day the episode is published.

    Rule: 16 CFR 255.1(c), an endorser who is said to use a product must have been a genuine user, and still be one.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. I wear them every day. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid. They come in grey. [sponsor says]
    """
    for risk in risks(facts, "own-use"):
        yield (
            risk.place,
            f"{quoted(risk.sentence)} says that you use it.",
            "Leave it only if it is true and will still be on the day of publication.",
        )
