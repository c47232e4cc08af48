"""Words of a sentence know where they were written, and a segment gives its sentences in order."""

from __future__ import annotations

from scriptkit.model import Paragraph, Segment, Sentence, Spot
from scriptkit.places import Place, SourceFile, Text

HOME = Place("outline.yaml", 7, 3)


def test_a_word_of_the_authors_file_stands_on_its_line_there() -> None:
    file = SourceFile("segments/hang.md", "# Hang\n\nI like it.\n")
    sentence = Sentence("I like it.", HOME, pieces=((0, None, 8), (2, None, 10), (7, None, 15)), origin=file, home=HOME)
    assert sentence.place_of(2) == Place("segments/hang.md", 3, 3)
    assert sentence.place_of(8) == Place("segments/hang.md", 3, 9)


def test_a_word_that_came_from_the_outline_stands_there() -> None:
    file = SourceFile("outline.yaml", "title: One\nsay: I like it.\n")
    words = Text("I like it.", file, 16, 26)
    sentence = Sentence("So: I like it.", HOME, pieces=((0, None, -1), (4, words, 0)), home=HOME)
    assert sentence.place_of(6) == Place("outline.yaml", 2, 8)


def test_a_word_of_stock_text_stands_at_the_exercise() -> None:
    assert Sentence("Next up.", HOME, pieces=((0, None, -1),), home=HOME).place_of(3) == HOME


def test_a_sentence_without_pieces_stands_at_the_exercise() -> None:
    assert Sentence("Next up.", HOME, home=HOME).place_of(0) == HOME


def test_a_segment_gives_the_sentences_of_all_its_paragraphs() -> None:
    one, two, three = (Sentence(words, HOME) for words in ("One.", "Two.", "Three."))
    paragraphs = (Paragraph((one, two)), Paragraph(()), Paragraph((three,)))
    segment = Segment("hang", "verdict", "Bar hang", "hang", paragraphs, False, "", Spot(HOME))
    assert segment.sentences == (one, two, three)
