"""Checks of what goes under the published video: title, chapters, description, links."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.places import place_of
from scriptkit.wording import is_web_address, quoted

WORTH_CHAPTERS = 60  # seconds


@check("error", "publish")
def title_too_long(facts: Facts) -> Iterator[Found]:
    """The title is longer than a page that shows videos takes.

    Such a page refuses it or cuts it. About the first sixty characters are shown in lists.

    Rule: ours, in `limits.toml`: the limit that such pages commonly have.

    Bad:
        title: A hundred and one ways to hang, from a bar, from a towel, from a ring, and from all else that bears you
        exercises: {hang: {name: Bar hang}}
    Good:
        title: Ways to hang from a bar, from a towel, and from a ring
        exercises: {hang: {name: Bar hang}}
    """
    title, most = " ".join(facts.episode.title.split()), facts.limits.title_characters
    if len(title) > most:
        yield (
            facts.episode.at.of("title"),
            f"The title has {len(title)} characters, and {most} is what a page that shows videos takes.",
            f"Shorten it by {len(title) - most:.0f}.",
        )


@check("error", "publish")
def title_with_bracket(facts: Facts) -> Iterator[Found]:
    """The title holds an angle bracket.

    Pages that show videos refuse a title with `<` or `>`.

    Rule: ours: such pages commonly take neither sign.

    Bad:
        title: Grip in <12 weeks
        exercises: {hang: {name: Bar hang}}
    Good:
        title: Grip in under 12 weeks
        exercises: {hang: {name: Bar hang}}
    """
    title = facts.episode.title
    at = next((at for at, sign in enumerate(title) if sign in "<>"), None)
    if at is not None:
        yield (
            place_of(title, facts.episode.at.of("title"), at),
            f'The title holds "{title[at]}", and a page that shows videos takes no such sign.',
            'Say it in words: "under", "over".',
        )


@check("note", "publish")
def bracket_replaced(facts: Facts) -> Iterator[Found]:
    """A text with an angle bracket stands in the description in other words.

    Pages that show videos take no `<` and no `>`. "<12 weeks" becomes "under 12 weeks"; a bracket that is no bound
    becomes a sign that looks like it.

    Rule: ours: such pages commonly take neither sign.

    Bad:
        title: One
        answer: For me <12 weeks were enough.
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        answer: For me less than 12 weeks were enough.
        exercises: {hang: {name: Bar hang}}
    """
    for one in facts.publication.replaced:
        yield (
            one.place,
            f"{quoted(one.words)} stands in the description as {quoted(one.instead)}.",
            "Write it out, if it should be said otherwise.",
        )


@check("note", "publish")
def chapters_too_few(facts: Facts) -> Iterator[Found]:
    """There are too few segments for chapters.

    A page that shows videos makes chapters of three times or more, each at least ten seconds long. Short segments join
    a neighbour. Where fewer would be left, chapters.txt stays empty and the description has none. An episode shorter
    than a minute is left in peace.

    Rule: ours, in `limits.toml`: the rule that such pages commonly have.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [hang]
        --- segments/hang.md
        Here it is. [aside] [hold 70s: hang]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [hang]
        --- segments/hang.md
        Here it is. [aside] [hold 10s: hang]
    """
    made, limits = facts.publication, facts.limits
    if facts.timeline.total >= WORTH_CHAPTERS and made.parts < limits.chapters:
        yield (
            facts.episode.at.of("order"),
            f"There are no chapters: {made.parts} would come about, and {limits.chapters} are needed.",
            "Split a long segment in two, or leave it so.",
        )


@check("warning", "publish")
def chapter_title_cut(facts: Facts) -> Iterator[Found]:
    """A chapter's title is longer than what is shown of it.

    In chapters.txt it ends behind a whole word, with an ellipsis.

    Rule: ours, in `limits.toml`: what such pages commonly show.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang with straight arms and with both feet off the floor}}
        order: [opening, hang, recap, close]
        --- segments/opening.md
        Hello. [aside] [hold 10s: hello]
        --- segments/hang.md
        Here it is. [aside] [hold 10s: hang]
    Good:
        title: One
        exercises: {hang: {name: Bar hang with straight arms}}
        order: [opening, hang, recap, close]
        --- segments/opening.md
        Hello. [aside] [hold 10s: hello]
        --- segments/hang.md
        Here it is. [aside] [hold 10s: hang]
    """
    for one in facts.publication.chapters:
        if one.title != one.whole:
            yield (
                one.place,
                f"{quoted(one.whole, 200)} has {len(one.whole)} characters; the chapter is called {quoted(one.title)}.",
                "Give it a shorter `title:` in `order:`, or leave it so.",
            )


@check("warning", "publish")
def link_perhaps_paid(facts: Facts) -> Iterator[Found]:
    """A link looks like one that pays the presenter, and is not marked as paid.

    Its address has a part such as `ref=` or `aff=`. With `paid:` the description says so at the start of its line.
    Links that name the sponsor or an interest, or lead to the sponsor's host, are marked in any case.

    Rule: ours, by published disclosure guidance: a link that pays is labelled where it stands.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        links: [{to: "https://example.org/bars?ref=grip", what: The bar I use}]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        links: [{to: "https://example.org/bars?ref=grip", what: The bar I use, paid: affiliate}]
    """
    for one in facts.publication.links:
        if one.sign and not one.paid:
            yield (
                place_of(one.link.to, one.link.at.place),
                f'"{one.sign}=" in {quoted(one.link.to)} looks like a link that pays you, and is not marked so.',
                "Add `paid:` with how, such as `paid: affiliate`, or allow it.",
            )


@check("error", "publish")
def description_too_long(facts: Facts) -> Iterator[Found]:
    """The description is too long, and no step makes it short enough.

    What is left then are disclosure, answer, corrections, cautions and links, and none of them is dropped for room.

    Rule: ours, in `limits.toml`: the limit that pages which show videos commonly have, in bytes of UTF-8.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata:
          [&a {was: "they hung for ten weeks, twice a week and on some weekends, with a rest of three minutes",
               now: "they hung for eight weeks, twice a week and on no weekend, with a rest of two minutes"},
           *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        errata:
          - {was: ten weeks, now: eight weeks, where: hang, since: 2026-04-01}
    """
    made, most = facts.publication, facts.limits.description_bytes
    if made.size > most:
        yield (
            facts.episode.at.place,
            f"The description has {made.size:,} bytes and may have {most:,}, shortened as far as it can be.",
            "Shorten corrections, cautions or links in the outline; none of them is dropped for room.",
        )


@check("note", "publish")
def description_shortened(facts: Facts) -> Iterator[Found]:
    """The description was shortened to fit.

    The steps are taken one after the other, as far as needed: references with their first author alone, without
    titles, the checklist without its questions, no credits, no references, no chapters. Disclosure, corrections and
    cautions always stay.

    Rule: ours, in `limits.toml`: the limit that pages which show videos commonly have, in bytes of UTF-8.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        credits:
          [&a "N. N. and her brother held the camera, and the friend of a friend who would not be named held the lamp",
           *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a,
           *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        credits: [N. N. held the camera]
    """
    made = facts.publication
    if made.steps:
        yield (
            facts.episode.at.place,
            f"To fit, the description was shortened: {'; '.join(made.steps)}.",
            "Look at description.txt of a build; what it leaves out is in the other files.",
        )


@check("warning", "publish")
def references_not_listed(facts: Facts) -> Iterator[Found]:
    """The references do not fit into the description, and no page is named where they stand.

    A viewer who wants to look a claim up finds nothing.

    Rule: ours; what is said to rest on sources has to show them.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, year: 2022, invented: true}}
        errata:
          [&a {was: "they hung for ten weeks, twice a week and on some weekends, with a rest of three minutes",
               now: "they hung for eight weeks, twice a week and on no weekend, with a rest of two minutes"},
           *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a, *a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, year: 2022, invented: true}}
        references: {page: https://example.org/hangs}
    """
    made, episode = facts.publication, facts.episode
    if not made.listed and not episode.references.page:
        yield (
            episode.at.of("references"),
            f"The {len(made.references)} references do not fit into the description, and stand nowhere else.",
            "Put references.txt of a build on a page, and name it: `references: {page: ADDRESS}`.",
        )


@check("error", "publish")
def link_form(facts: Facts) -> Iterator[Found]:
    """A link of the description is not an address that can be typed or clicked.

    Rule: ours, after RFC 3986: https, a host with a dot, no white space.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        links: [{to: see my notes, what: The bar I use}]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        links: [{to: "https://example.org/bars", what: The bar I use}]
    """
    for link in facts.episode.links:
        if not is_web_address(link.to.removeprefix("http://")):
            yield (
                link.at.of("to"),
                f"{quoted(link.to)} is no address that can be typed or clicked.",
                "Write it as `https://example.org/bars`.",
            )
