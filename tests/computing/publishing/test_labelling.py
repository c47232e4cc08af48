"""Links that pay the presenter are known as such."""

from __future__ import annotations

import pytest

from scriptkit.computing.publishing.labelling import labelled
from scriptkit.model import Episode, Interest, PublicLink, Sponsor

PAID = Episode(
    sponsor=Sponsor(name="Quennick Socks"), interests=(Interest("The Grip Shop", "half of it is mine"), Interest())
)


@pytest.mark.parametrize(
    ("link", "paid", "sign"),
    [
        (PublicLink("https://example.org", "My plan"), False, ""),
        (PublicLink("https://example.org", "A bar", "affiliate"), True, ""),
        (PublicLink("https://example.org", "Bars at the grip shop"), True, ""),
        (PublicLink("https://example.org/quennick socks"), True, ""),
        (PublicLink("https://example.org/?a=1&REF=me", "A bar"), False, "REF"),
        (PublicLink("https://example.org/?aff"), False, "aff"),
        (PublicLink("https://example.org/ref=me#?tag=x"), False, ""),
        (PublicLink("https://example.org/page#ref=x"), False, ""),
    ],
)
def test_a_link_is_paid_by_what_it_says_or_names_and_looks_so_by_its_address(
    link: PublicLink, paid: bool, sign: str
) -> None:
    assert labelled(PAID._replace(links=(link,))) == ((link, paid, sign),)
