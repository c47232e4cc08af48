"""Holds the sponsor's passage against what was agreed: points to say, words not to say, code and link."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from scriptkit.computing.aloud.saying import as_spoken
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Risk, Segment, Sentence, Sponsor
from scriptkit.places import Place, place_of

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

NEAR = 0.5  # share of a point's words in one sentence that makes it a wording of the point
MOST_NEAR = 100  # points not spoken, for which the nearest sentence is looked for
LEAST_CODE = 3  # signs; shorter ones look like too many other words
TYPO = 2  # signs that may be wrong in what was meant to be the code
_ENDINGS = (("ies", "y"), ("sses", "ss"), ("ing", ""), ("ed", ""), ("es", ""), ("e", ""), ("s", ""))
_CODE = re.compile(r"(?:[A-Z0-9]*[A-Z][A-Z0-9]*\d[A-Z0-9]*|\d+[A-Z]{2,}[A-Z0-9]*|[A-Z]{4,})")
_SPELLED = re.compile(r"\b[A-Z](?:[-. ][A-Z]\b){2,}(?:[- ]\w+)?")
_SAYS_CODE = frozenset(("code", "codes"))
_LINK = re.compile(r"(?:https?://)?(?:[a-z0-9-]{1,63}\.){1,4}[a-z]{2,12}\b(?:/[^\s,;:!?)\]\"”]*)?", re.IGNORECASE)


def find(script: Script, paid: Sequence[Segment]) -> Iterator[Risk]:
    """All that differs from the outline; nothing where the outline has no sponsor."""
    sponsor = script.episode.sponsor
    if sponsor is None:
        return
    ids = {segment.id for segment in paid}
    shown = [(card.segment, card.text, card.place) for card in script.cards if card.segment in ids]
    yield from _unsaid(sponsor, paid)
    yield from _forbidden(script, sponsor, ids, shown)
    if sponsor.code:
        yield from _codes(sponsor, paid, shown)
    if sponsor.link:
        yield from _links(sponsor, paid, shown)


def said(text: str) -> str:
    """A text as plain words with its numbers written out and a space at both ends."""
    return f" {plain(as_spoken(text))} "


def _unsaid(sponsor: Sponsor, paid: Sequence[Segment]) -> Iterator[Risk]:
    """Points that are not spoken, with the sentence that comes near."""
    if not sponsor.must_say:
        return
    sentences = [sentence.text for segment in paid for sentence in segment.sentences]
    heard = [said(text) for text in sentences]
    words_of = [frozenset(text.split()) for text in heard]
    looked_for = 0
    whole = f" {' '.join(' '.join(heard).split())} "
    for point in sponsor.must_say:
        wanted = said(point)
        if wanted.strip() and wanted not in whole:
            near = _near(set(wanted.split()), words_of) if looked_for < MOST_NEAR else None
            looked_for += 1
            words = "" if near is None else sentences[near]
            yield Risk("must-say", paid[0].id, place_of(point, sponsor.at.of("must_say")), point, words)


def _near(wanted: set[str], heard: Sequence[frozenset[str]]) -> int | None:
    """The number of the sentence that has most words of a point, where it has half of them."""
    shares = [(len(wanted & words) / len(wanted), -number) for number, words in enumerate(heard)]
    best = max(shares, default=(0.0, 0))
    return -best[1] if best[0] >= NEAR else None


def _stem(word: str) -> str:
    """A word without its ending, so that "prevents injury" is found in "preventing injuries"."""
    word = word.removesuffix("'s")
    ending = next(((old, new) for old, new in _ENDINGS if word.endswith(old) and len(word) - len(old) > 2), ("", ""))
    return word[: len(word) - len(ending[0])] + ending[1]


def _stems(text: str) -> str:
    return f" {' '.join(map(_stem, said(text).split()))} "


def _forbidden(
    script: Script, sponsor: Sponsor, ids: set[str], shown: Sequence[tuple[str, str, Place]]
) -> Iterator[Risk]:
    """Words not to say that are said in the sponsor's passage, in the sponsor's words elsewhere, or shown."""
    banned = [(words, _stems(words)) for words in sponsor.never_say if plain(words)]
    if not banned:
        return
    for segment in script.segments:
        for sentence in segment.sentences:
            if segment.id in ids or sentence.sponsor_says:
                stems = _stems(sentence.text)
                for words, wanted in banned:
                    if wanted in stems:
                        yield Risk("never-say", segment.id, _at(sentence, words), words, sentence.text)
    for name, text, place in shown:
        yield from (Risk("never-say", name, place, words, text) for words, wanted in banned if wanted in _stems(text))


def _at(sentence: Sentence, words: str) -> Place:
    """Where the first of some words stands in a sentence."""
    first = _stem(plain(words).split()[0])
    for one in re.finditer(r"[^\W_]+(?:['’][^\W_]+)*", sentence.text):
        if _stem(one[0].lower().replace("’", "'")) == first:
            return sentence.place_of(one.start())
    return sentence.place


def squeezed(text: str) -> str:
    """Letters and digits of a text as it is spoken: "HILL10" and "H-I-L-L ten" are the same."""
    return "".join(sign for sign in as_spoken(text).lower() if sign.isalnum())


def _codes(sponsor: Sponsor, paid: Sequence[Segment], shown: Sequence[tuple[str, str, Place]]) -> Iterator[Risk]:
    """A code that is not the outline's, and the outline's where it is not spoken or not shown."""
    code = squeezed(sponsor.code)
    place = place_of(sponsor.code, sponsor.at.of("code"))
    if not any(code in squeezed(sentence.text) for segment in paid for sentence in segment.sentences):
        yield Risk("code-not-spoken", paid[0].id, place, sponsor.code, "")
    if not any(code in squeezed(text) for _, text, _ in shown):
        yield Risk("code-not-shown", paid[0].id, place, sponsor.code, "")
    for segment in paid:
        for sentence in segment.sentences:
            for start, other in _other_codes(sentence.text, sponsor, code):
                yield Risk("other-code", segment.id, sentence.place_of(start), other, sentence.text)
    for name, text, at in shown:
        yield from (Risk("other-code", name, at, other, text) for _, other in _other_codes(text, sponsor, code))


def _other_codes(text: str, sponsor: Sponsor, code: str) -> Iterator[tuple[int, str]]:
    """Words that look like a code, behind the word "code" or much like the code, and are another."""
    bare = _LINK.sub(_blank, text)
    whole = squeezed(bare)
    for one in _SPELLED.finditer(bare):
        letters = "".join(sign for sign in one[0] if sign.isalnum()).lower()
        if squeezed(one[0]) != code and not (code in whole and code.startswith(letters[:3])):
            yield one.start(), one[0]
    bare = _SPELLED.sub(_blank, bare)
    stem = re.sub(r"\d+", "", sponsor.code).lower()
    for word in re.finditer(r"\w+", bare):
        if not _CODE.fullmatch(word[0]):
            continue
        alike = (len(stem) > 2 and re.sub(r"\d+", "", word[0]).lower() == stem) or _is_near(word[0], sponsor.code)
        before = bare[max(0, word.start() - 40) : word.start()].lower().split()[-4:]
        if (alike or not _SAYS_CODE.isdisjoint(one.strip(".,:;") for one in before)) and not _is(bare, word, code):
            yield word.start(), word[0]


def _is_near(word: str, code: str) -> bool:
    """Whether a word is the code but for two signs in one place: a viewer types what is on screen."""
    one, other = word.lower(), code.lower()
    size = min(len(one), len(other))
    head = next((k for k in range(size) if one[k] != other[k]), size)
    tail = next((k for k in range(size - head) if one[-1 - k] != other[-1 - k]), size - head)
    return size > LEAST_CODE and max(len(one), len(other)) - head - tail <= TYPO


def _is(text: str, word: re.Match[str], code: str) -> bool:
    """Whether a word is the code, or the part of it before a space."""
    return squeezed(word[0]) in code or code in squeezed(text[word.start() : word.end() + 12])


def _blank(one: re.Match[str]) -> str:
    return " " * len(one[0])


def _links(sponsor: Sponsor, paid: Sequence[Segment], shown: Sequence[tuple[str, str, Place]]) -> Iterator[Risk]:
    """A link that leads elsewhere than the outline's."""
    ours = _address(sponsor.link)
    for segment in paid:
        for sentence in segment.sentences:
            for one in _LINK.finditer(sentence.text):
                if _differs(one[0], ours):
                    yield Risk("other-link", segment.id, sentence.place_of(one.start()), one[0], sentence.text)
    for name, text, place in shown:
        for one in _LINK.finditer(text):
            if _differs(one[0], ours):
                yield Risk("other-link", name, place, one[0], text)


def leads_to(text: str, link: str) -> bool:
    """Whether a text has the link, or its host alone, which leads there too."""
    return any(not _differs(one[0], _address(link)) for one in _LINK.finditer(text))


def _address(link: str) -> tuple[str, str]:
    """Host and path of a link, without what a viewer need not type."""
    bare = re.sub(r"^[a-z]+://", "", link.strip().lower()).removeprefix("www.").rstrip("./")
    host, _, path = bare.partition("/")
    return host, path


def _differs(link: str, ours: tuple[str, str]) -> bool:
    host, path = _address(link)
    return host != ours[0] or bool(path and path != ours[1])
