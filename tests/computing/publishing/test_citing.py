"""References in three styles, written by hand: author cut-offs, identifiers, states of a work, what is missing."""

from __future__ import annotations

import pytest

from scriptkit.computing.publishing.citing import authors, cite, cite_shortly, references, spoken_sources
from scriptkit.computing.publishing.pasting import Paste
from scriptkit.model import Source
from tests.scripts import GRIP, Write, with_hang

STYLES = ("vancouver", "ama", "apa")
ARTICLE = Source(
    id="orre", title="Does a ledge matter?", authors=("Orre B", "Lind PQ"), year="2021", journal="Made-up Calves",
    doi="10.5555/calf.1",
)  # fmt: skip
MARKS = {
    "retracted": "[RETRACTED]",
    "concern": "[Expression of concern]",
    "corrected": "[Corrected]",
    "preprint": "[Preprint, not peer reviewed]",
}
BOOK = Source(
    id="dyke", kind="book", title="Grip", authors=("van Dyke K",), year="2019", publisher="Made-up Press",
    isbn="9783161484100",
)  # fmt: skip
PAGE = Source(
    id="tally", kind="page", title="A count of bars", authors=("Made-up Council",), year="2026",
    url="https://example.org/tally", accessed="2026-03-02",
)  # fmt: skip


def cited(source: Source) -> list[str]:
    return [cite(source, style, Paste()) for style in STYLES]


def crowd(many: int) -> Source:
    return Source(id="crowd", title="Many", authors=tuple(f"Name{n} A" for n in range(1, many + 1)), year="2020")


def test_an_article() -> None:
    assert cited(ARTICLE) == [
        "Orre B, Lind PQ. Does a ledge matter? Made-up Calves. 2021. https://doi.org/10.5555/calf.1",
        "Orre B, Lind PQ. Does a ledge matter? Made-up Calves. 2021. https://doi.org/10.5555/calf.1",
        "Orre, B., & Lind, P. Q. (2021). Does a ledge matter? Made-up Calves. https://doi.org/10.5555/calf.1",
    ]


def test_a_book() -> None:
    assert cited(BOOK) == [
        "van Dyke K. Grip. Made-up Press; 2019. ISBN: 9783161484100.",
        "van Dyke K. Grip. Made-up Press; 2019. ISBN: 9783161484100.",
        "van Dyke, K. (2019). Grip. Made-up Press. ISBN: 9783161484100.",
    ]


def test_a_page() -> None:
    assert cited(PAGE) == [
        "Made-up Council. A count of bars [Internet]. 2026. [cited 2026-03-02]. Available from: https://example.org/tally",
        "Made-up Council. A count of bars. 2026. Accessed March 2, 2026. https://example.org/tally",
        "Made-up Council. (2026). A count of bars. Retrieved March 2, 2026, from https://example.org/tally",
    ]


@pytest.mark.parametrize(
    ("style", "most", "more"),
    [
        ("vancouver", "Name5 A, Name6 A. Many", "Name5 A, Name6 A, et al. Many"),
        ("ama", "Name5 A, Name6 A. Many", "Name1 A, Name2 A, Name3 A, et al. Many"),
    ],
)
def test_from_seven_authors_on_a_list_is_cut(style: str, most: str, more: str) -> None:
    six, seven = (cite(crowd(many), style, Paste()) for many in (6, 7))
    assert most in six
    assert more in seven
    assert "Name4" not in seven if style == "ama" else "Name7" not in seven


def test_apa_names_twenty_authors_and_of_more_the_first_nineteen_and_the_last() -> None:
    twenty, more = (cite(crowd(many), "apa", Paste()) for many in (20, 22))
    assert twenty.startswith("Name1, A., Name2, A., ")
    assert "Name19, A., & Name20, A. (2020). Many." in twenty
    assert "Name19, A., . . . Name22, A. (2020). Many." in more
    assert "Name20" not in more


@pytest.mark.parametrize("style", STYLES)
def test_what_a_reader_has_to_know_of_a_work_stands_behind_its_title(style: str) -> None:
    for status, mark in MARKS.items():
        assert f"matter? {mark}. Made" in cite(ARTICLE._replace(status=status), style, Paste())
        assert cite_shortly(ARTICLE._replace(status=status), Paste()).endswith(f" {mark}")
    assert "matter? Made" in cite(ARTICLE._replace(status="published"), style, Paste())
    assert "[RETRACTED] [Invented example]" in cite(ARTICLE._replace(status="retracted", invented=True), style, Paste())


def test_what_is_missing_leaves_no_trace() -> None:
    assert cited(Source(id="bare")) == ["bare.", "bare.", "bare. (n.d.)."]
    assert cited(Source(id="x", title="Timed hangs", year="2022", pmid="123")) == [
        "Timed hangs. 2022. PMID: 123.",
        "Timed hangs. 2022. PMID: 123.",
        "Timed hangs. (2022). PMID: 123.",
    ]


def test_the_first_author_alone() -> None:
    told = [cite(ARTICLE, style, Paste(), first_author=True) for style in STYLES]
    assert [one.partition("Does")[0] for one in told] == [
        "Orre B, et al. ",
        "Orre B, et al. ",
        "Orre, B., et al. (2021). ",
    ]
    assert cite(BOOK, "apa", Paste(), first_author=True) == cite(BOOK, "apa", Paste())


def test_the_short_form_finds_the_work() -> None:
    assert [cite_shortly(one, Paste()) for one in (ARTICLE, BOOK, PAGE, crowd(1), Source(id="x", title="Hangs"))] == [
        "Orre et al. 2021, Made-up Calves, https://doi.org/10.5555/calf.1",
        "van Dyke 2019, Made-up Press, ISBN: 9783161484100",
        "Made-up Council 2026, https://example.org/tally",
        "Name1 2020, Many",
        "Hangs",
    ]


def test_a_doi_of_old_form_holds_no_bracket() -> None:
    old = ARTICLE._replace(doi="10.1002/(SICI)1097<1::AID-X>3.0")
    assert all("10.1002/(SICI)1097%3C1::AID-X%3E3.0" in one for one in cited(old))


@pytest.mark.parametrize(
    ("written", "family", "initials"),
    [
        ("Orre B", "Orre", "B"),
        ("van der Berg-Moor J-P", "van der Berg-Moor", "JP"),
        ("Orre, B. C.", "Orre", "BC"),
        ("Orre B. C.", "Orre", "BC"),
        ("Lind P Q", "Lind", "PQ"),
        ("Made-up Council", "Made-up Council", ""),
        ("WHO", "WHO", ""),
        ("Ministry of Hangs, North", "Ministry of Hangs, North", ""),
        ("Ёлкина А", "Ёлкина", "А"),
    ],
)
def test_authors_are_taken_apart(written: str, family: str, initials: str) -> None:
    assert authors(Source(authors=(written, " "))) == ((family, initials),)


def test_sources_come_in_the_order_of_speech_each_once(episode: Write) -> None:
    text = "One. [from lind-2019] Two. [from mora-2022 hang, lind-2019] Three. [from nobody]"
    facts = with_hang(episode, text, GRIP)
    assert spoken_sources(facts.segments, facts.register) == ("lind-2019", "mora-2022")
    assert [one.line for one in references(("lind-2019",), facts.register, "vancouver", Paste())] == [
        "1. Timed hangs again [Invented example]. 2019."
    ]
