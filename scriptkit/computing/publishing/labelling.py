"""Which links pay the presenter: as they say, by whom they name or lead to, or by how their address looks."""

from __future__ import annotations

import re

from scriptkit.model import Episode
from scriptkit.model.publishing import Labelled

# names of what a shop counts its callers by
_SIGNS = frozenset(
    "aff affid aff_id affiliate affiliate_id coupon discount partner partnerid promo ref refid referral tag".split()
)

LEAST_NAME = 3  # letters; a shorter name is a part of too many addresses


def labelled(episode: Episode) -> tuple[Labelled, ...]:
    """The links in the order of the outline."""
    if not episode.links:
        return ()
    from urllib.parse import parse_qsl  # only an episode with links needs it

    sponsor = episode.sponsor
    payers = [str(one.who) for one in episode.interests] + ([str(sponsor.name)] if sponsor else [])
    known = [name for who in payers if len(name := bare(who)) >= LEAST_NAME]
    theirs = host(sponsor.link) if sponsor else ""
    made = []
    for link in episode.links:
        named = _runs(f"{link.what} {link.to}", max(map(len, known), default=0))
        paid = bool(link.paid or (theirs and host(link.to) == theirs) or not named.isdisjoint(known))
        query = link.to.partition("#")[0].partition("?")[2]
        sign = next((name for name, _ in parse_qsl(query, keep_blank_values=True) if name.lower() in _SIGNS), "")
        made.append(Labelled(link, paid, sign))
    return tuple(made)


def host(link: str) -> str:
    """The host of an address, in small letters and without `www.`; it may be written without its scheme."""
    return _parted(link)[0]


def same_address(one: str, other: str) -> bool:
    """Whether two addresses lead to one page: the scheme, `www.` and a slash at the end make no other one."""
    return _parted(one) == _parted(other)


def _parted(link: str) -> tuple[str, str]:
    written = re.sub(r"^(?:\w+:)?//", "", "".join(link.split()))
    found = re.match(r"[^/?#]*", written)
    named = found[0] if found else ""
    return named.rpartition("@")[2].casefold().removeprefix("www."), written[len(named) :].rstrip("/")


def _runs(text: str, most: int) -> set[str]:
    """Words in a row put together, up to so many letters: "Arc" is named by "Arc sale" and not by "search"."""
    words = re.findall(r"[^\W_]+", text.casefold())
    made = set()
    for first in range(len(words)):
        run = ""
        for word in words[first:]:
            run += word
            if len(run) > most:
                break
            made.add(run)
    return made


def bare(name: str) -> str:
    """A name as it is compared: letters and digits alone, so that a hyphen or a space makes no other one."""
    return "".join(sign for sign in name.casefold() if sign.isalnum())
