"""Checks of spoken text: marks, tags, breath, signs."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.wording import did_you_mean, listed, quoted
from scriptkit.model import Facts

MARKS = (
    "from",
    "opinion",
    "aside",
    "sponsor says",
    "caution",
    "override",
    "pause",
    "hold",
    "shot",
    "screen",
    "promise",
    "payoff",
    "optional",
)
BREATH, BREATH_WITHOUT_COMMA = 30, 22  # words


@check("error")
def not_a_mark(facts: Facts) -> Iterator[Found]:
    """A bracket is no mark, or its mark is not understood.

    Square brackets hold what is not spoken: sources, pictures, pauses. `\\[` writes a bracket that is spoken.

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
            yield (
                bad.place,
                f"The mark {quoted(f'[{bad.raw}]')} is not understood.",
                f"Here {bad.trouble}."
                if not bad.trouble.startswith("it")
                else f"{bad.trouble[:1].upper()}{bad.trouble[1:]}.",
            )
        else:
            first = bad.raw.split(":")[0].split(" ")[0] if bad.raw else ""
            yield (
                bad.place,
                f"The bracket {quoted(f'[{bad.raw}]')} is no mark, so it is neither spoken nor used.",
                did_you_mean(first.lower(), MARKS)
                or f"Marks are {listed(MARKS, 20)}. Write `\\[` for a bracket that is spoken.",
            )


@check("error")
def bracket_not_closed(facts: Facts) -> Iterator[Found]:
    """A bracket in spoken text is opened or closed alone.

    The words of a mark would be read aloud.

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
                        f"The bracket in {quoted(text[max(0, at - 20) :])} is {'not closed' if sign == '[' else 'closed and not opened'}.",
                        "Add its other half, or write a backslash before it if it is to be spoken.",
                    )
                    break


@check("error")
def tag_not_understood(facts: Facts) -> Iterator[Found]:
    """A `{{ ... }}` or `{% ... %}` in spoken text cannot be used.

    Such tags put facts of the outline into the text. A name may be misspelt, a tag left open, or of a kind that spoken text cannot use.
    The segment is read with its tags left out.

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
    names = [
        "exercise",
        "exercises",
        "grade",
        "sponsor",
        "cautions",
        "promises",
        "terms",
        "checklist",
        "episode",
        "name",
        "group",
        "title",
        "question",
        "audience",
    ]
    for trouble in facts.tag_troubles:
        if trouble.kind == "name":
            words = trouble.words
            yield (
                trouble.place,
                f"There is no {quoted(words or trouble.message)} to put into the text.",
                did_you_mean(words, names)
                or "Names are exercise, exercises['ID'], grade, sponsor, cautions, promises, terms, checklist, episode.",
            )
        elif trouble.kind == "forbidden":
            yield (
                trouble.place,
                f"Spoken text cannot use {trouble.message}.",
                "It can use `{{ name }}`, `{% if %}`, `{% for %}`, `{% set %}` and the filters spoken, mid, a, join, first, last, default, lower.",
            )
        elif trouble.kind == "bound":
            yield (
                trouble.place,
                f"A tag in this text is too much: {trouble.message}.",
                "Take the loop out, or write the words out.",
            )
        else:
            yield (
                trouble.place,
                f"A tag in this text is not understood: {trouble.message}.",
                "Look for a `{{` or `{%` without its other half, or an `{% if %}` without `{% endif %}`.",
            )


@check("warning", "record")
def sentence_too_long(facts: Facts) -> Iterator[Found]:
    """A sentence is too long for one breath.

    More than 30 words, or more than 22 without a comma or dash to breathe at.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like to hang from the bar in the park behind my old school after work with my brother and his dog and all of his many friends. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like to hang from the bar in the park. My brother comes along, and so does his dog. [opinion]
    """
    for segment in facts.segments:
        for sentence, count in zip(segment.sentences, facts.word_counts[segment.id], strict=True):
            breathes = any(sign in sentence.text for sign in (",", ";", ":", "–", "—", " - "))
            if count > BREATH or (count > BREATH_WITHOUT_COMMA and not breathes):
                pause = "" if count > BREATH else " and no comma to breathe at"
                yield sentence.place, f"{quoted(sentence.text)} has {count} words{pause}.", "Make two sentences of it."


@check("warning", "record")
def sign_not_speakable(facts: Facts) -> Iterator[Found]:
    """A sign cannot be read aloud.

    Whoever reads from a prompter has to guess at it.

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
