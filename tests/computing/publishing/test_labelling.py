"""Links that pay the presenter are known as such."""

from __future__ import annotations

import pytest

from scriptkit.computing.publishing.labelling import labelled, same_address
from scriptkit.model import Episode, Interest, PublicLink, Sponsor

PAID = Episode(
    sponsor=Sponsor(name="Quennick Socks", link="https://socks.example/hill"),
    interests=(Interest("The Grip Shop", "half of it is mine"), Interest(), Interest("--")),
)


@pytest.mark.parametrize(
    ("link", "paid", "sign"),
    [
        (PublicLink("https://example.org", "My plan"), False, ""),
        (PublicLink("https://example.org", "A bar", "affiliate"), True, ""),
        (PublicLink("https://example.org", "Bars at the grip shop"), True, ""),
        (PublicLink("https://example.org/quennick socks"), True, ""),
        (PublicLink("https://example.org/quennick-socks"), True, ""),
        (PublicLink("https://QuennickSocks.example"), True, ""),
        (PublicLink("https://socks.example/mat", "The mat"), True, ""),
        (PublicLink("www.Socks.example?colour=grey", "The mat"), True, ""),
        (PublicLink("https://notsocks.example/mat", "A mat"), False, ""),
        (PublicLink("https://example.org/socks.example", "A mat"), False, ""),
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


def test_a_link_is_judged_without_a_sponsor_too() -> None:
    bare = Episode(sponsor=Sponsor(name="Quennick Socks"), links=(PublicLink("", "Nothing"),))
    assert [one.paid for one in labelled(bare)] == [False]


@pytest.mark.parametrize(
    ("other", "same"),
    [
        ("socks.example/hill", True),
        ("http://www.Socks.example/hill/", True),
        ("https://socks.example/Hill", False),
        ("https://socks.example/hill?page=2", False),
        ("https://socks.example", False),
    ],
)
def test_one_page_may_be_written_in_several_ways(other: str, same: bool) -> None:
    assert same_address("https://socks.example/hill", other) is same


@pytest.mark.parametrize(
    ("link", "paid"),
    [
        (PublicLink("https://example.org/search", "The studies I read"), False),
        (PublicLink("https://example.org", "A sale at Arc"), True),
        (PublicLink("https://arc.example/shop"), True),
        (PublicLink("https://example.org", "A plan"), False),
    ],
)
def test_a_name_is_named_by_whole_words(link: PublicLink, paid: bool) -> None:
    shares = Episode(links=(link,), interests=(Interest("Arc", "shares"), Interest("A", "shares")))
    assert labelled(shares)[0].paid is paid
