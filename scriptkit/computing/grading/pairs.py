"""Finds words by which one exercise is said to rank before another: "beats", "comes out ahead of", "loses to"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from scriptkit.computing.grading.naming import Named

_RANKS = r"(?:is|are|was|comes?|came|ranks?|stands?|sits?|finish(?:es|ed)?|scores?|lands?|ends? up)(?: \w+){0,2}?"


@lru_cache(maxsize=1)
def _before() -> re.Pattern[str]:
    return re.compile(
        rf"\b(?:beats?|edges? out|outranks?|outscores?|outperforms?|wins? (?:\w+ )?against|"
        rf"{_RANKS} (?:out )?(?:ahead of|above)|"
        r"(?:is|are) (?:an? )?(?:\w+ )?better(?: pick| choice| option| exercise)? than)\b",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _behind() -> re.Pattern[str]:
    return re.compile(
        rf"\b(?:loses? to|is beaten by|{_RANKS} (?:\w+,? )?(?:behind|below)|(?:is|comes?) (?:a \w+ )?second to)\b",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _other_matters() -> re.Pattern[str]:
    """Words that make it another statement: denied, on a condition, in one respect, of what somebody did or thought."""
    return re.compile(
        r"\b(?:not|never|neither|nor|hardly)\b|\bno\b(?! (?:doubt|question|contest))|n['’]t\b|"
        r"\b(?:if|when|unless|used to|alone|only|alphabet|your|yours|somebody|someone|others|anyone|on paper|"
        r"in one (?:study|trial)|for (?!me\b|us\b)\w+)\b",
        re.IGNORECASE,
    )


def find(text: str, found: Sequence[Named], own: str) -> tuple[str, str, re.Match[str]] | None:
    """Which exercise is put before which, and the words that do; `own` is whose segment it is."""
    for pattern, forward in ((_before(), True), (_behind(), False)):
        match = pattern.search(text)
        if not match or _other_matters().search(text):
            continue
        first = [one.exercise for one in found if one.end <= match.start()]
        second = [one.exercise for one in found if one.start >= match.end()]
        subject = first[-1] if first else own
        if subject and second and subject != second[0]:
            return (subject, second[0], match) if forward else (second[0], subject, match)
    return None
