"""Which links of an outline pay the presenter: as they say, by whom they name, or by how their address looks."""

from __future__ import annotations

from scriptkit.model import Episode
from scriptkit.model.publishing import Labelled

# names of what a shop counts its callers by
_SIGNS = frozenset(
    "aff affid aff_id affiliate affiliate_id coupon discount partner partnerid promo ref refid referral tag".split()
)


def labelled(episode: Episode) -> tuple[Labelled, ...]:
    """The links in the order of the outline."""
    if not episode.links:
        return ()
    from urllib.parse import parse_qsl  # only an episode with links needs it

    payers = [str(one.who) for one in episode.interests] + ([str(episode.sponsor.name)] if episode.sponsor else [])
    known = [who.casefold() for who in payers if who]
    made = []
    for link in episode.links:
        named = f"{link.what} {link.to}".casefold()
        query = link.to.partition("#")[0].partition("?")[2]
        sign = next((name for name, _ in parse_qsl(query, keep_blank_values=True) if name.lower() in _SIGNS), "")
        made.append(Labelled(link, bool(link.paid) or any(who in named for who in known), sign))
    return tuple(made)
