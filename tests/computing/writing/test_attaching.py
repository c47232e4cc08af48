"""A mark belongs to the sentence it stands in or right behind; alone in a paragraph it covers the one before."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, segment, sentence, timed, with_hang, words


@pytest.mark.parametrize(
    "text",
    [
        "It grows [from mora-2022] here. Then more.",
        "It grows here. [from mora-2022] Then more.",
        "It grows here.[from mora-2022]\nThen more.",
        "It grows here.\n[from mora-2022] Then more.",
        "It grows\nhere [from\nmora-2022]. Then more.",
        "*It grows* here. [from mora-2022] Then more.",
        "> It grows\n> here. [from mora-2022]\n> Then more.",
        "[from mora-2022] It grows here. Then more.",
    ],
)
def test_a_mark_inside_a_sentence_or_right_behind_it_is_that_sentences(episode: Write, text: str) -> None:
    facts = with_hang(episode, text)
    assert words(facts) == ["It grows here.", "Then more."]
    assert [[link.id for link in one.links] for one in segment(facts).sentences] == [["mora-2022"], []]


def test_a_mark_behind_the_second_sentence_leaves_the_first_alone(episode: Write) -> None:
    facts = with_hang(episode, "First one. Second one. [opinion]\n\nThird one. [aside]")
    assert [(one.opinion, one.aside) for one in segment(facts).sentences] == [
        (False, False),
        (True, False),
        (False, True),
    ]


@pytest.mark.parametrize("mark", ["from mora-2022", "opinion", "aside", "sponsor says"])
def test_alone_it_covers_the_whole_paragraph_before_and_no_other(episode: Write, mark: str) -> None:
    facts = with_hang(episode, f"First one.\n\nSecond one. Third one.\n\n[shot CU: hand]\n\n[{mark}]\n\nFourth one.")
    marked = [bool(one.links or one.opinion or one.aside or one.sponsor_says) for one in segment(facts).sentences]
    assert marked == [False, True, True, False]


@pytest.mark.parametrize("mark", ["caution heel", "override"])
def test_alone_a_caution_or_a_reason_is_the_sentence_before(episode: Write, mark: str) -> None:
    facts = with_hang(episode, f"First one. Second one.\n\n[{mark}]")
    assert [bool(one.cautions or one.override) for one in segment(facts).sentences] == [False, True]


def test_with_nothing_before_it_to_cover_a_mark_is_told(episode: Write) -> None:
    facts = with_hang(episode, "[from mora-2022]\n\nFirst one. [aside]")
    assert [place for place, _ in found(facts, "not-a-mark")] == ["segments/hang.md:1:1"]


def test_pictures_and_pauses_alone_stand_where_they_are(episode: Write) -> None:
    facts = with_hang(episode, "First one.\n\n[hold 3s: a rep]\n\nSecond one.")
    first, second = timed(facts).sentences
    assert second.start == pytest.approx(first.end + 3)
    assert timed(facts).silent == 3


def test_optional_is_of_the_paragraph(episode: Write) -> None:
    facts = with_hang(episode, "[optional 2] First one. Second one.\n\nThird one.\n\nFourth one.\n\n[optional 1]")
    assert [one.optional for one in segment(facts).paragraphs] == [2, None, 1]


def test_a_sentence_stands_where_its_first_word_does(episode: Write) -> None:
    text = """
        # Not spoken

        One here. *Two*
        there.

        - Three is
          long. Four
          too.
          1. Five

        > Six and
        > so on. "Seven," he said.
        """
    facts = with_hang(episode, text)
    places = {one.text.split()[0]: (one.place.line, one.place.column) for one in segment(facts).sentences}
    assert places == {
        "One": (3, 1),
        "Two": (3, 12),
        "Three": (6, 3),
        "Four": (7, 9),
        "Five": (9, 6),
        "Six": (11, 3),
        '"Seven,"': (12, 10),
    }


def test_a_drafted_sentence_stands_where_its_words_were_written(episode: Write) -> None:
    outline = """
        title: One
        exercises:
          hang:
            name: Bar hang
            claims:
              - say: >
                  I like the bar.
                  And I like to hang.
        """
    facts = with_hang(episode, "", outline)
    (episode({}) / "segments" / "hang.md").unlink()
    from tests.scripts import worked_out

    facts = worked_out(episode({}))
    assert sentence(facts, "And I like").place[1:] == (8, 11)
