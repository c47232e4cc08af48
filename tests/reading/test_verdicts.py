"""What verdicts.yaml says is read; what is broken in it is told with its line, and the rest is read."""

from __future__ import annotations

from scriptkit import build, keys
from tests.scripts import Write

OUTLINE = "title: One\nexercises: {hang: {name: Bar hang}}\n"


def read(episode: Write, text: str | bytes) -> tuple[list[tuple[str, str]], list[tuple[str, int]]]:
    """Sentence and verdict of each entry that counts, and name and line of the findings in the file."""
    material = build.read(episode({"outline.yaml": OUTLINE, "verdicts.yaml": text}))
    found = [(one.name, one.place.line) for one in material.folders.findings if one.place.file == "verdicts.yaml"]
    return [(one.sentence, one.verdict) for one in material.verdicts], found


def test_a_verdict_has_the_key_of_its_sentence_and_all_that_was_written(episode: Write) -> None:
    text = """
        verdicts:
          - sentence: "It's  so."
            segment: hang
            verdict: Verified
            note: as it says
            page: 7-9
            initials: NO
            date: 2026-03-02
        """
    one = build.read(episode({"outline.yaml": OUTLINE, "verdicts.yaml": text})).verdicts[0]
    assert one[:8] == (keys.of("it’s so."), "It's  so.", "hang", "verified", "as it says", "7-9", "NO", "2026-03-02")
    assert one.at.of("verdict").line == 4


def test_a_broken_entry_is_told_and_the_others_are_read(episode: Write) -> None:
    text = """
        verdicts:
          - {sentence: One., verdict: verifed}
          - {sentence: Two., verdict: verified, dat: 2026-03-02}
          - {verdict: verified}
          - {sentence: Four.}
          - {sentence: Five., verdict: changed, date: 02/03/2026}
          - six
          - {sentence: Seven., verdict: no claim}
        """
    kept, found = read(episode, text)
    assert kept == [("Two.", "verified"), ("Five.", "changed")]
    assert found == [
        ("unknown-word", 2), ("unknown-key", 3), ("missing-value", 4), ("missing-value", 5), ("wrong-type", 6),
        ("wrong-type", 7), ("ruling-without-reason", 8),
    ]  # fmt: skip


def test_a_file_that_cannot_be_read_is_a_finding_and_no_verdict(episode: Write) -> None:
    assert read(episode, "verdicts: [")[1] == [("yaml-syntax", 1)]
    assert read(episode, b"verdicts: \xff")[1] == [("not-utf8", 1)]
    assert read(episode, "- a list\n")[1] == [("wrong-type", 1)]
    assert read(episode, "verdicts: {a: b}\n")[1] != []


def test_nothing_is_wrong_with_an_empty_file(episode: Write) -> None:
    for text in ("", "# nothing yet\n", "verdicts:\n"):
        assert read(episode, text) == ([], [])
