"""Identifiers of works: how one is written plainly, and what is wrong with one."""

from __future__ import annotations

import re
from collections.abc import Callable
from urllib.parse import unquote

LONGEST = 2000  # characters; longer ones are left as they are: no identifier has a tenth of it
KINDS = ("doi", "pmid", "pmcid", "isbn")
NAMES = {"doi": "DOI", "pmid": "PMID", "pmcid": "PMCID", "isbn": "ISBN", "orcid": "ORCID"}
EXAMPLES = "10.5555/"  # the prefix under which examples are made up

_DOI_START = r"10\.[0-9]{4,9}(?:\.[0-9]+)*/"
_DASHES = str.maketrans(dict.fromkeys("‐‑‒–—−", "-"))


def clean(kind: str, given: str) -> str:
    """An identifier without the address, label or stray sign around it; as it was where it cannot be told."""
    given = given.strip()
    return _CLEANERS[kind](given) if given and len(given) <= LONGEST else given


def trouble(kind: str, value: str) -> str:
    """What is wrong with a cleaned identifier, in words that follow "this"; nothing where it is right."""
    return _TROUBLES[kind](value)


def same(kind: str, value: str) -> str:
    """What an identifier is compared by: DOIs without case, both lengths of an ISBN as one; "" where it is wrong."""
    if kind == "isbn":
        return _long_isbn(value) if not _isbn_trouble(value) else ""
    return value.lower() if value and not _TROUBLES[kind](value) else ""


def _doi(given: str) -> str:
    start = re.search(_DOI_START, given)
    if start is None and "%2f" in given.lower():
        given = unquote(given)
        start = re.search(_DOI_START, given)
    if start is None:
        return given
    before, value = given[: start.start()], given[start.start() :]
    if "://" in before or "doi.org" in before.lower():
        value = unquote(re.split(r"[?#]", value, maxsplit=1)[0])
    value = value.strip()
    while value and (value[-1] in ".,;:\"'" or (value[-1] in ")]>}" and _is_unbalanced(value))):
        value = value[:-1].rstrip()
    return value


def _is_unbalanced(value: str) -> bool:
    opened = {")": "(", "]": "[", ">": "<", "}": "{"}[value[-1]]
    return value.count(opened) < value.count(value[-1])


def _doi_trouble(value: str) -> str:
    if re.fullmatch(_DOI_START + r"[-._;()/:A-Za-z0-9]+", value) or re.fullmatch(r"10\.1002/\S+", value):
        return ""
    strange = re.sub(r"[-._;()/:A-Za-z0-9]", "", value)
    if re.match(_DOI_START, value) and strange:
        return f"holds {_shown(strange[0])}, which hardly any DOI does"
    return "does not have the form of a DOI, such as 10.5555/calf.2021.7"


def _shown(sign: str) -> str:
    return "a space" if sign.isspace() else f'"{sign}"'


def _pmid(given: str) -> str:
    found = re.fullmatch(r"(?i)(?:pm\s?id|pubmed)?[\s:#]*(?:https?://\S{1,100}/)?([0-9]{1,20})[\s/.,;]*", given)
    return found[1] if found else given


def _pmid_trouble(value: str) -> str:
    if re.fullmatch(r"[1-9][0-9]{0,7}", value):
        return ""
    if re.fullmatch(r"(?i)pmc[0-9.]+", value):
        return "is a PMCID; it belongs under `pmcid`"
    return "is not a PMID: one to eight digits, the first no 0"


def _pmcid(given: str) -> str:
    found = re.fullmatch(r"(?i)(?:pmcid)?[\s:#]*(?:https?://\S{1,100}/)?(pmc[0-9.]*[0-9])[\s/.,;]*", given)
    return found[1].upper() if found else given


def _pmcid_trouble(value: str) -> str:
    if re.fullmatch(r"PMC[0-9]{4,9}(?:\.[0-9]+)?", value):
        return ""
    if re.fullmatch(r"[1-9][0-9]{0,7}", value):
        return f"may be a PMID, which belongs under `pmid`; a PMCID starts with PMC, such as PMC{value}"
    return "is not a PMCID: PMC and four to nine digits"


def _isbn(given: str) -> str:
    plain = re.sub(r"(?i)isbn(?:-?1[03])?:?", " ", given[:200].translate(_DASHES))
    found = re.search(r"(?<![0-9])(?:97[89][- ]?(?:[0-9][- ]?){9}[0-9]|(?:[0-9][- ]?){9}[0-9Xx])(?![0-9Xx])", plain)
    return re.sub(r"[- ]", "", found[0]).upper() if found else given


def _isbn_trouble(value: str) -> str:
    if re.fullmatch(r"[0-9]{9}[0-9X]", value):
        total = sum(weight * _digit(sign) for weight, sign in zip(range(10, 0, -1), value, strict=True))
        return "" if total % 11 == 0 else "has a digit that is wrong: its check digit does not fit"
    if re.fullmatch(r"97[89][0-9]{10}", value):
        return "" if _thirteen(value) % 10 == 0 else "has a digit that is wrong: its check digit does not fit"
    return "is not an ISBN: 10 digits, or 13 that start with 978 or 979"


def _digit(sign: str) -> int:
    return 10 if sign == "X" else int(sign)


def _thirteen(digits: str) -> int:
    return sum(int(sign) * (3 if number % 2 else 1) for number, sign in enumerate(digits))


def _long_isbn(value: str) -> str:
    if len(value) == 13:
        return value
    start = "978" + value[:9]
    return f"{start}{-_thirteen(start) % 10}"


def _orcid(given: str) -> str:
    found = re.fullmatch(
        r"(?i)(?:orcid)?[\s:]*(?:https?://)?(?:[a-z.]{1,30}/)?((?:[0-9]{4}-?){3}[0-9]{3}[0-9x])[\s/.,;]*",
        given.translate(_DASHES),
    )
    if not found:
        return given
    digits = found[1].replace("-", "").upper()
    return "-".join(digits[at : at + 4] for at in range(0, 16, 4))


def _orcid_trouble(value: str) -> str:
    if not re.fullmatch(r"(?:[0-9]{4}-){3}[0-9]{3}[0-9X]", value):
        return "is not an ORCID: four groups of four digits"
    total = 0
    for sign in value.replace("-", "")[:-1]:
        total = (total + int(sign)) * 2
    return (
        "" if (12 - total % 11) % 11 == _digit(value[-1]) else "has a digit that is wrong: its check digit does not fit"
    )


_CLEANERS: dict[str, Callable[[str], str]] = {
    "doi": _doi, "pmid": _pmid, "pmcid": _pmcid, "isbn": _isbn, "orcid": _orcid,
}  # fmt: skip
_TROUBLES: dict[str, Callable[[str], str]] = {
    "doi": _doi_trouble, "pmid": _pmid_trouble, "pmcid": _pmcid_trouble, "isbn": _isbn_trouble, "orcid": _orcid_trouble,
}  # fmt: skip
