"""What is cut from an episode is what trying every way on its own files would cut; and what must stay stays."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import chain, combinations
from pathlib import Path
from random import Random

import pytest

from scriptkit import build, shortening
from scriptkit.computing.fitting import choosing
from scriptkit.model import Facts
from scriptkit.model.fitting import Fit

Writer = Callable[[Mapping[str, str | bytes]], Path]
WORDS = "hang row push pull slow strong arm grip bar ring step heel calm long short bend hold turn lift drop".split()

OUTLINE = """\
title: Ways to train your grip
pace: 150
promises: {swap: which one to drop}
cautions: {elbow: {line: "If the elbow hurts, ask a licensed clinician first."}}
terms: {grip tape: {gloss: a strip of cloth for the bar}}
exercises:
  hang: {name: Bar hang, grade: A-}
  row: {name: Ring row, grade: B}
  curl: {name: Rope curl, grade: C}
sources:
  mora-2022: {title: Timed hangs, year: 2022, design: randomised trial, n: 38, invented: true}
  lind-2019: {title: Timed hangs again, year: 2019, design: cohort, n: 60, invented: true}
order:
"""
ORDER = """\
  - opening
  - hang
  - {segment: row, optional: 2}
  - segment: curl  # the last
    optional: 1
  - recap
"""


def fitted(folder: Path, wanted: float, pace: float | None = None) -> tuple[Fit, Facts]:
    material = build.read(folder)
    facts = build.work_out(material, pace)
    return shortening.shorten(material, facts, wanted, pace).fit, facts


def cut(fit: Fit) -> list[tuple[str, int]]:
    return [(one.segment, one.lines[0] if one.lines else 0) for one in fit.cuts]


def kept(fit: Fit) -> dict[str, str]:
    return {one.words: one.keeps for one in fit.kept}


Part = tuple[str, int | None]  # a paragraph and its number, None where it has to stay


class Small:
    """A small episode as its parts, so that it can be written without some of them by other means than ours."""

    def __init__(self, random: Random) -> None:
        ids = ["opening", "hang", "row", "curl", "recap"]
        self.texts: dict[str, list[Part]] = {}
        for name in ids[:4] if random.random() < 0.5 else random.sample(ids, 4):
            firm = random.randint(0, 2)
            parts: list[Part] = [(self._words(random), None) for _ in range(firm)]
            parts += [(self._words(random), random.randint(1, 3)) for _ in range(random.randint(0 if firm else 1, 2))]
            random.shuffle(parts)
            self.texts[name] = parts
        self.ids = ids
        self.optional = {name: random.randint(1, 3) for name in random.sample(ids[1:], random.randint(0, 3))}

    @staticmethod
    def _words(random: Random) -> str:
        sentences = (" ".join(random.choices(WORDS, k=random.randint(3, 12))) for _ in range(random.randint(1, 3)))
        return " ".join(f"I like {one}. [opinion]" for one in sentences)

    def passages(self) -> list[tuple[str, int]]:
        """Segments as (id, -1), paragraphs as (id, number in the text)."""
        paragraphs = [(name, at) for name, parts in self.texts.items() for at, part in enumerate(parts) if part[1]]
        return [(name, -1) for name in self.optional] + paragraphs

    def number(self, passage: tuple[str, int]) -> int:
        name, at = passage
        return self.optional[name] if at < 0 else self.texts[name][at][1] or 0

    def files(self, gone: frozenset[tuple[str, int]] = frozenset()) -> dict[str, str | bytes]:
        entries = [
            f"  - {{segment: {name}, optional: {self.optional[name]}}}\n" if name in self.optional else f"  - {name}\n"
            for name in self.ids
            if (name, -1) not in gone
        ]
        made: dict[str, str | bytes] = {"outline.yaml": OUTLINE + "".join(entries)}
        for name, parts in self.texts.items():
            kept_parts = [part for at, part in enumerate(parts) if (name, at) not in gone]
            text = "\n\n".join(words + (f" [optional {number}]" if number else "") for words, number in kept_parts)
            made[f"segments/{name}.md"] = text + "\n"
        return made

    def sets(self) -> Iterator[frozenset[tuple[str, int]]]:
        every = self.passages()
        for chosen in chain.from_iterable(combinations(every, size) for size in range(len(every) + 1)):
            inside = any(at >= 0 and (name, -1) in chosen for name, at in chosen)
            silent = any(
                all((name, at) in chosen for at in range(len(parts)))
                for name, parts in self.texts.items()
                if (name, -1) not in chosen
            )
            if not inside and not silent:
                yield frozenset(chosen)

    def rank(self, gone: frozenset[tuple[str, int]]) -> list[int]:
        return [sum(self.number(one) == number for one in gone) for number in (3, 2, 1)]


def errors(folder: Path) -> int:
    return sum(one.severity == "error" for one in build.check(build.work_out(build.read(folder)), "draft"))


@pytest.mark.parametrize("seed", [0, 1, 2, 3, 102, 153])  # in the last two, drafted text follows two cuts together
def test_the_fit_is_the_one_that_writing_every_shorter_episode_finds(seed: int, episode: Writer) -> None:
    random = Random(seed)  # noqa: S311 - nothing secret
    small = Small(random)
    while not 2 <= len(small.passages()) <= 6:
        small = Small(random)
    folder = episode(small.files())
    totals = {}
    for number, gone in enumerate(small.sets()):
        written = folder.with_name(f"{folder.name}-{number}")
        for name, text in small.files(gone).items():
            (written / name).parent.mkdir(parents=True, exist_ok=True)
            (written / name).write_text(str(text), encoding="utf-8")
        totals[gone] = build.work_out(build.read(written)).timeline.total
    before, least = totals[frozenset()], min(totals.values())
    for share in (0.05, 0.5, 0.9, 0.999, 1.2):
        wanted = before - share * (before - least)
        fit, _ = fitted(folder, wanted)
        lines = {name: _lines(parts) for name, parts in small.texts.items()}
        chosen = frozenset((name, lines[name].index(line) if line else -1) for name, line in cut(fit))
        fits = [gone for gone, total in totals.items() if total <= wanted + 0.0005]
        assert fit.reached == bool(fits)
        assert fit.after == pytest.approx(totals[chosen], abs=1e-6)
        if fits:
            best = min((small.rank(gone), -totals[gone]) for gone in fits)
            assert small.rank(chosen) == best[0]
            assert -totals[chosen] == pytest.approx(best[1], abs=1e-6)
        else:
            assert fit.after == pytest.approx(least, abs=1e-6)


def _lines(parts: list[Part]) -> list[int]:
    return [1 + 2 * number for number in range(len(parts))]


@pytest.mark.parametrize("seed", [102, 153])
def test_where_not_every_way_is_tried_what_is_told_still_fits(
    seed: int, episode: Writer, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(choosing, "MOST_TIMED", 1)
    monkeypatch.setattr(choosing, "FEW", 0)
    random = Random(seed)  # noqa: S311 - nothing secret
    small = Small(random)
    while not 2 <= len(small.passages()) <= 6:
        small = Small(random)
    folder = episode(small.files())
    least, before = (fitted(folder, wanted)[0].after for wanted in (1.0, 600.0))
    for share in (0.3, 0.5, 0.7, 0.9):
        wanted = before - share * (before - least)
        fit, _ = fitted(folder, wanted)
        assert fit.reached
        assert not fit.exact
        assert fit.after <= wanted + choosing.SLACK


FILES = {
    "outline.yaml": OUTLINE + ORDER,
    "segments/hang.md": "I like the bar. [opinion]\n\nI like chalk a lot. [optional 1]\n\n[opinion]\n\n"
    "I like it dry. [opinion]\n",
}


def test_what_fits_is_left_alone(episode: Writer) -> None:
    fit, facts = fitted(episode(FILES), 600.0)
    assert fit == Fit(600.0, facts.timeline.total, facts.timeline.total)


def test_a_time_told_in_thousandths_fits_itself(episode: Writer) -> None:
    folder = episode(FILES)
    _, facts = fitted(folder, 600.0)
    assert fitted(folder, round(facts.timeline.total, 3))[0].cuts == ()


def test_what_is_not_enough_is_told_with_the_pace_it_would_take(episode: Writer) -> None:
    folder = episode(FILES)
    fit, facts = fitted(folder, 20.0)
    assert not fit.reached
    assert fit.pace
    assert len(fit.cuts) == 3
    files = shortening.shorten(build.read(folder), facts, 20.0, None).files
    short = episode(files)
    assert build.work_out(build.read(short)).timeline.total == pytest.approx(fit.after)
    assert build.work_out(build.read(short), fit.pace).timeline.total <= 20.0005
    assert build.work_out(build.read(short), fit.pace - 1).timeline.total > 20.0005
    assert fitted(folder, 0.5)[0].pace is None


def test_a_pace_of_the_command_line_counts(episode: Writer) -> None:
    folder = episode(FILES)
    slow, fast = (build.work_out(build.read(folder), pace).timeline.total for pace in (120, 180))
    assert fitted(folder, (slow + fast) / 2, 180)[0].cuts == ()
    assert fitted(folder, (slow + fast) / 2, 120)[0].cuts


def test_an_order_that_cannot_be_taken_apart_is_told(episode: Writer) -> None:
    elsewhere = OUTLINE.replace("order:", "kept: &kept {segment: row, optional: 1}\norder:")
    fit, _ = fitted(episode({"outline.yaml": elsewhere + "  - opening\n  - *kept\n  - hang\n"}), 1.0)
    assert "`order:`" in kept(fit)["Ring row"]
    repeated = OUTLINE + "  - opening\n  - &kept {segment: row, optional: 1}\n  - hang\n  - *kept\n"
    fit, _ = fitted(episode({"outline.yaml": repeated}), 1.0)
    assert "`check` would find" in kept(fit)["Ring row"]


def test_a_drafted_recap_follows_and_the_last_segment_stays(episode: Writer) -> None:
    order = "  - {segment: row, optional: 1}\n  - {segment: curl, optional: 1}\n"
    folder = episode({"outline.yaml": OUTLINE + order})
    fit, _ = fitted(folder, 1.0)
    assert len(fit.cuts) == 1
    with_recap = episode({"outline.yaml": OUTLINE + ORDER})
    fit, facts = fitted(with_recap, 1.0)
    own = {one.id: one.total for one in facts.timeline.segments}
    assert {one.segment for one in fit.cuts} == {"row", "curl"}
    assert all(one.saves != pytest.approx(own[one.segment]) for one in fit.cuts)
