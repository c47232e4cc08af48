"""Findings about spoken text: what cannot be spoken, marks in headings, allow-comments."""

from __future__ import annotations

from scriptkit.reading.faults.kinds import Said, fault
from scriptkit.wording import quoted


@fault("error")
def not_spoken(what: str, words: str) -> Said:
    """A table, code or HTML stands in spoken text.

    None of them can be read aloud, so they are left out of the script.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]

        | a | b |
        | - | - |
        | 1 | 2 |
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]
    """
    return (
        f"Here is {what} ({quoted(words, 40)}), which cannot be spoken and is left out.",
        "Write it as sentences; for words on screen use `[screen: ...]`.",
    )


@fault("warning")
def mark_out_of_place(words: str) -> Said:
    """A mark stands in a heading, which is not spoken.

    Headings are for the author's eye. A mark in one would be lost.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        # Hang [shot FS side: bar hang]

        I like it. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        # Hang

        [shot FS side: bar hang] I like it. [opinion]
    """
    return (
        f"The bracket {quoted(words)} stands in a heading, where it does nothing.",
        "Move it into the paragraph below.",
    )


@fault("error")
def allow_without_reason(words: str) -> Said:
    """An allow-comment has no name or no reason.

    `# allow: NAME because REASON` says that a finding is meant; in spoken text it is
    `<!-- allow: NAME because REASON -->`. Whoever reads the outline next has to know why.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}} # allow: exercise-not-shown
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This allow-comment gives no name or no reason ({quoted(words)}), so it allows nothing.",
        "Write `allow: NAME because REASON`.",
    )


@fault("error")
def ruling_without_reason(sentence: str) -> Said:
    """A sentence is ruled to be no claim, and no reason is given.

    Such a ruling in verdicts.yaml silences the check that asks for a source, so it has to say why, for whoever comes
    after. Until it does, it does not count.

    Rule: ours; an allow-comment needs its reason as well.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar eats your lunch.
        --- verdicts.yaml
        verdicts:
          - {sentence: The bar eats your lunch., verdict: no claim, initials: QN}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar eats your lunch.
        --- verdicts.yaml
        verdicts:
          - {sentence: The bar eats your lunch., verdict: no claim, note: a joke, initials: QN}
    """
    return (
        f"{quoted(sentence)} is ruled to be no claim, and no reason stands beside it, so the ruling does not count.",
        "Say why under `note:`, such as: a joke, a figure of speech.",
    )
