"""Checks of how a sponsor's passage tells that it is paid for; whether the law is met is for the author to find out."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import paid_for, quoted


def _line(facts: Facts) -> str:
    """The outline's disclosure, or a sentence that is one."""
    sponsor = facts.episode.sponsor
    if sponsor and sponsor.disclosure:
        return sponsor.disclosure
    return paid_for(sponsor.name if sponsor and sponsor.name else "NAME")


@check("error", "record", protects=True)
def sponsor_not_disclosed(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage does not say at its start that it is paid for.

    A listener has to hear it within the first three seconds, in plain words. Where an episode has several such
    passages, each one has to say it. This check is no legal advice, and passing it does not say that the law is met:
    which rules apply where you publish is for you to find out.

    Rule: 16 CFR 255.0(f), a disclosure is clear and conspicuous, that is, unavoidable; the three seconds are ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        They come in four sizes and in one sensible grey, on foot and by post. [sponsor says]

        Ad. Quennick Socks paid for this part.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part.

        They come in four sizes and in one sensible grey. [sponsor says]
    """
    for passage in facts.passages:
        if passage.told is None:
            yield (
                passage.place,
                f"The sponsor's passage starts with {quoted(passage.first_words)} and does not say it is paid for.",
                f"Start it with {quoted(_line(facts))}.",
            )


@check("error", "record", protects=True)
def disclosure_unclear(facts: Facts) -> Iterator[Found]:
    """A disclosure uses words that published guidance calls unclear.

    What is too vague is listed for each market that `markets:` names, in scriptkit/words, with the guidance and its
    date. For the UK "sponsored", "gifted" or "thanks to" alone does not do; for the US vague tags such as "collab" do
    not. Passing is no statement that the law is met: the lists are a reader's summary, they grow old, and which rules
    apply is for you to find out.

    Rule: UK influencers' guide, 3rd edition, 23 March 2023; 16 CFR 255 as revised on 26 July 2023.

    Bad:
        title: One
        markets: [UK]
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: This part is sponsored by Quennick Socks.}
    Good:
        title: One
        markets: [UK]
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
    """
    sponsor = facts.episode.sponsor
    name = sponsor.name if sponsor else "NAME"
    for passage in facts.passages:
        for market, words in passage.vague[:1] if passage.told else ():
            guidance = f"which guidance for the {market} calls unclear" if market else "which does not tell who paid"
            yield (
                passage.told or passage.place,
                f"The disclosure rests on {quoted(words)}, {guidance}.",
                f"Say {quoted(paid_for(name))}. No check can say that the law is met.",
            )


@check("error", "record", protects=True)
def claim_before_disclosure(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage praises before it says that it is paid for.

    A viewer weighs a claim by who pays for it, so the disclosure is the first thing that is said.

    Rule: 16 CFR 255.0(f) and the UK influencers' guide ask for a label up front; "before any claim" is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        They are the warmest. [sponsor says] Ad. Quennick Socks paid for this part.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part. They are the warmest. [sponsor says]
    """
    for passage in facts.passages:
        if passage.told is not None and passage.first_claim is not None:
            yield (
                passage.first_claim,
                f"The passage starts with {quoted(passage.first_words)} and says only after it that it is paid for.",
                f"Put the disclosure first: {quoted(_line(facts))}.",
            )


@check("error", "publish", protects=True)
def disclosure_not_on_screen(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage does not show at its start that it is paid for.

    Who watches without sound never hears it, so it stands on screen as well, from the first three seconds on. Until
    the episode is published this is a note, since a card can still be put in after the recording.

    Rule: FTC "Disclosures 101" as summarised, say it and show it; the three seconds are ours. A pass is not the law.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        [screen: Ad. Quennick Socks paid for this part.] Ad. Quennick Socks paid for this part. [pause 1s]
    """
    for passage in facts.passages:
        if passage.card is None:
            yield (
                passage.told or passage.place,
                "No card at the start of the sponsor's passage shows that it is paid for.",
                f"Put `[screen: {_line(facts)}]` before its first sentence.",
            )


@check("warning", "record", protects=True)
def disclosure_card_short(facts: Facts) -> Iterator[Found]:
    """The card of a disclosure is gone before it can be read.

    It takes a third of a second a word and one second more, and never less than three seconds. A card stays until the
    next `[screen ...]`, the end of the segment, or as long as it says.

    Rule: FTC criteria as summarised, long enough to be read; the seconds are ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        [screen 1s: Ad. Quennick Socks paid for this part.] Ad. Quennick Socks paid for this part.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        --- segments/sponsor.md
        [screen: Ad. Quennick Socks paid for this part.] Ad. Quennick Socks paid for this part. [pause 1s]
    """
    for passage in facts.passages:
        if passage.card is not None and passage.card < passage.needed - 0.05:
            yield (
                passage.card_place,
                f"The card of the disclosure is up for {passage.card:.1f} s, and takes {passage.needed:.1f} s to read.",
                "Leave it up longer: take its time away, or let the next `[screen ...]` come later.",
            )


@check("note", "publish")
def market_not_covered(facts: Facts) -> Iterator[Found]:
    """A market has rules on paid passages for which there is no word list here.

    The lists here follow guidance of the US and the UK. In the EU the law bans hidden advertising and leaves the words
    to each country and language; and the platform's own switch for paid content is turned on besides, never instead.

    Rule: Directive 2005/29/EC, Annex I, no. 11 and 22; it names no words.

    Bad:
        title: One
        markets: [EU]
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
    Good:
        title: One
        markets: [US, UK]
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
    """
    if not facts.passages:
        return
    for market in facts.uncovered_markets:
        where = (
            "each country of the EU has its own wording"
            if market == "EU"
            else f"there is no word list for {quoted(market)}"
        )
        yield (
            facts.episode.at.of("markets"),
            f"Whether the disclosure is clear there is not checked: {where}.",
            "Look up the wording that is asked for there, and turn on the platform's own declaration as well.",
        )


@check("error", "record")
def sponsor_not_spoken(facts: Facts) -> Iterator[Found]:
    """The outline has a sponsor, and the running order has no passage of theirs.

    Rule: ours; a passage that was sold is part of the plan.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        order: [opening, hang, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        order: [opening, hang, sponsor, close]
    """
    sponsor = facts.episode.sponsor
    if sponsor and not any(segment.id == sponsor.segment or segment.kind == "sponsor" for segment in facts.segments):
        yield (
            sponsor.at.place,
            f"The passage of {quoted(sponsor.name)} is not in the running order.",
            f"Add `{sponsor.segment}` to `order:`, or delete `sponsor:`.",
        )
