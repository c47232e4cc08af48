"""Checks of spoken text: marks, tags, breath, signs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import MARKS, Facts, TagTrouble
from scriptkit.places import place_of
from scriptkit.wording import did_you_mean, listed, quoted

BREATH, BREATH_WITHOUT_COMMA = 30, 22  # words
_PAUSE = re.compile(r"[,;:–](?!\d)|—| - ")  # not the comma of "1,000"
_BRACKET = re.compile(r"\[[^\[\]]*\]")


@check("error")
def not_a_mark(facts: Facts) -> Iterator[Found]:
    r"""A bracket is no mark, or its mark is not understood.

    Square brackets hold what is not spoken: sources, pictures, pauses. `\[` writes a bracket that is spoken.

    Rule: ours; the marks are those of this tool.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like this one. [opnion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like this one. [opinion]
    """
    for bad in facts.bad_marks:
        if bad.trouble:
            yield bad.place, f"The mark {quoted(f'[{bad.raw}]')} is not understood.", _sentence(bad.trouble)
        else:
            first = bad.raw.split(":")[0].split(" ")[0] if bad.raw else ""
            yield (
                bad.place,
                f"The bracket {quoted(f'[{bad.raw}]')} is no mark, so it is neither spoken nor used.",
                did_you_mean(first.lower(), MARKS)
                or f"Marks are {listed(MARKS, 20)}. Write `\\[` for a bracket that is spoken.",
            )


@check("error")
def mark_in_outline(facts: Facts) -> Iterator[Found]:
    """A bracket stands in words of the outline that are spoken.

    Marks work in the texts of segments. In the outline, keys say the same: `source:`, `opinion: true`, `shots:`,
    `cautions:`. There a bracket would be read aloud as it is.

    Rule: ours; marks work in the texts of segments only.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: "I like it. [opinion]"}]}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: I like it., opinion: true}]}}
    """
    for words in _spoken_words(facts):
        found = _BRACKET.search(words)
        if found:
            yield (
                place_of(words, facts.episode.at.place, found.start()),
                f"The bracket {quoted(found[0])} would be read aloud: in the outline, brackets are no marks.",
                "Take it out, and use the key that says the same: `source:`, `opinion: true`, `cautions:` or `shots:`.",
            )


def _spoken_words(facts: Facts) -> Iterator[str]:
    """Words of the outline that stock texts speak."""
    episode = facts.episode
    for exercise in episode.exercises.values():
        yield from (exercise.name, exercise.override, *(claim.say for claim in exercise.claims))
    if episode.sponsor:
        yield from (episode.sponsor.disclosure, *episode.sponsor.must_say)
        yield from (claim.say for claim in episode.sponsor.claims)
    yield from (caution.line for caution in episode.cautions.values())
    yield from episode.promises.values()


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."


@check("error")
def bracket_not_closed(facts: Facts) -> Iterator[Found]:
    """A bracket in spoken text is opened or closed alone.

    The words of a mark would be read aloud.

    Rule: ours; a mark has two brackets.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like this one. [opinion
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like this one. [opinion]
    """
    for segment in facts.segments:
        if not segment.file:
            continue
        for sentence in segment.sentences:
            text = sentence.text
            for sign, other in (("[", "]"), ("]", "[")):
                if sign in text and text.count(sign) != text.count(other):
                    at = text.index(sign) if sign == "[" else text.rindex(sign)
                    yield (
                        sentence.place_of(at),
                        f"The bracket in {quoted(text[max(0, at - 20) :])} is {_HALF[sign]}.",
                        "Add its other half, or write a backslash before it if it is to be spoken.",
                    )
                    break


_HALF = {"[": "not closed", "]": "closed and not opened"}


@check("error")
def tag_not_understood(facts: Facts) -> Iterator[Found]:
    """A `{{ ... }}` or `{% ... %}` in spoken text cannot be used.

    Such tags put facts of the outline into the text. A name may be misspelt, a tag left open, or of a
    kind that spoken text cannot use. The text is read as if the tag were not there.

    Rule: ours; tags are those of the Jinja template language, of which spoken text may use a safe part.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like the {{ exercise.nam }}. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like the {{ exercise.name | mid }}. [opinion]
    """
    for trouble in facts.tag_troubles:
        message, help_ = _told(trouble)
        yield trouble.place, message, help_


_USE = (
    "It can use `{{ name }}`, `{% if %}`, `{% for %}`, `{% set %}` and the filters spoken, mid, a, join, first, last, "
    "default and lower."
)


def _told(trouble: TagTrouble) -> tuple[str, str]:
    """Message and help."""
    if trouble.kind == "name":
        near = did_you_mean(trouble.words, trouble.known)
        known = f"Names that can stand there: {listed(trouble.known, 16)}." if trouble.known else ""
        otherwise = known or "What stands before the point has no parts; take the point and this name away."
        return f"There is no {quoted(trouble.words)} to put into the text.", near or otherwise
    if trouble.kind == "forbidden":
        return f"Spoken text cannot use {trouble.message}.", did_you_mean(trouble.words, trouble.known) or _USE
    if trouble.kind == "bound":
        return f"A tag in this text is too much: {trouble.message}.", "Make it simpler, or write the words out."
    help_ = "Correct the tag, or write the words out."
    if "not closed" in trouble.message:
        help_ = "Close it with its other half; a tag stands in one paragraph, without an empty line in it."
    elif "has no" in trouble.message:
        help_ = f"Add `{{% end{trouble.words} %}}` where it ends."
    return f"A tag in this text is not understood: {trouble.message}.", help_


@check("warning", "record")
def sentence_too_long(facts: Facts) -> Iterator[Found]:
    """A sentence is too long for one breath.

    More than 30 words, or more than 22 without a comma or dash to breathe at.

    Rule: ours; short sentences are common advice for broadcast writing, the two lengths are our choice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like to hang from the bar in the park behind my old school
        after work with my brother and his dog and all of his friends. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like to hang from the bar in the park. My brother comes along, and so does his dog. [opinion]
    """
    for segment in facts.segments:
        for sentence, count in zip(segment.sentences, facts.word_counts[segment.id], strict=True):
            breathes = _PAUSE.search(sentence.text) is not None
            if count > BREATH or (count > BREATH_WITHOUT_COMMA and not breathes):
                pause = "" if count > BREATH else " and no comma to breathe at"
                yield sentence.place, f"{quoted(sentence.text)} has {count} words{pause}.", "Make two sentences of it."


@check("warning", "record")
def sign_not_speakable(facts: Facts) -> Iterator[Found]:
    """A sign cannot be read aloud.

    Whoever reads from a prompter has to guess at it.

    Rule: ours; to write signs out is common advice for broadcast writing.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I do 3 × 10 of these. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I do three sets of ten of these. [opinion]
    """
    for one in facts.signs:
        yield (
            one.place,
            f"The sign {quoted(one.sign)} in {quoted(one.sentence)} cannot be read aloud.",
            f"{one.hint[:1].upper()}{one.hint[1:]}.",
        )
