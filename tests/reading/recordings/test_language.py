"""The model of the script is one that adds up: what follows any two words is as likely as everything."""

from __future__ import annotations

from scriptkit.reading.recordings import language

LINES = [["put", "the", "heel", "down"], ["lift", "the", "heel"], ["put", "it", "down"]]
COMMON = {"the": 0.6, "cat": 0.4}


def sections() -> list[dict[tuple[str, ...], tuple[float, float]]]:
    """The runs of each length with their shares and how they are backed."""
    made: list[dict[tuple[str, ...], tuple[float, float]]] = []
    for part in language.arpa(LINES, COMMON).split("-grams:\n")[1:]:
        rows = {}
        for line in part.split("\n\n")[0].splitlines():
            share, *words = line.split()
            backed = 1.0
            if len(made) < 2:
                backed = 10 ** float(words.pop())
            rows[tuple(words)] = (10 ** float(share), backed)
        made.append(rows)
    return made


def likely(words: tuple[str, ...], runs: list[dict[tuple[str, ...], tuple[float, float]]]) -> float:
    """How likely the last of some words is behind the others, as readers of such models work it out."""
    known = runs[len(words) - 1].get(words)
    if known or len(words) == 1:
        return known[0] if known else 0.0
    before = runs[len(words) - 2].get(words[:-1])
    return (before[1] if before else 1.0) * likely(words[1:], runs)


def test_what_follows_adds_up_to_all() -> None:
    runs = sections()
    words = [word for (word,) in runs[0]]
    for before in ((), ("put",), ("the", "heel"), ("cat",), ("cat", "put")):
        assert abs(sum(likely((*before, word), runs) for word in words) - 1) < 0.01, before


def test_the_script_is_likelier_than_other_words_and_goes_on_in_the_next_line() -> None:
    runs = sections()
    assert likely(("put", "the", "heel"), runs) > 0.8
    assert likely(("heel", "down", "lift"), runs) > 0.8
    assert 0 < likely(("put", "the", "cat"), runs) < 0.05


def test_the_head_counts_what_follows() -> None:
    head = language.arpa(LINES, COMMON).splitlines()[1:4]
    assert head == [f"ngram {at}={len(runs)}" for at, runs in enumerate(sections(), 1)]
