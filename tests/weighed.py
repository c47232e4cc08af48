"""Sentences with sources behind them, weighed: what the tests of evidence ask for."""

from __future__ import annotations

from scriptkit.model import Doubt, Facts, Weight
from tests.scripts import Write, found, worked_out

HEAD = "title: One\nexercises: {hang: {name: Bar hang}, row: {name: Ring row}}\n"


def study(name: str, what: str, **findings: str) -> str:
    """One source of a register, invented; `findings` by id."""
    every = ", ".join(f"{key}: {{{value}}}" for key, value in findings.items())
    return f"  {name}: {{title: {name}, invented: true, {what}, findings: {{{every}}}}}\n"


TRIAL = study(
    "mora",
    "design: randomised trial, comparison: between-group, n: 60, duration_weeks: 10",
    grip="outcome: grip strength, effect: 0.4, ci: [0.1, 0.7]",
    size="outcome: muscle growth, measure: ultrasound thickness, effect: 0.3, ci: [0.05, 0.55]",
)


def told(episode: Write, text: str, sources: str, head: str = HEAD) -> Facts:
    """An episode whose exercise `hang` has this text, with a register."""
    return worked_out(episode({"outline.yaml": f"{head}sources:\n{sources}", "segments/hang.md": text}))


def weight(episode: Write, text: str, sources: str, head: str = HEAD) -> Weight:
    """The weight of the first sentence of `hang`."""
    one = told(episode, text, sources, head).weights["hang"][0]
    assert one is not None
    return one


def doubts(episode: Write, text: str, sources: str, head: str = HEAD) -> list[Doubt]:
    """All doubts about the sentences of `hang`."""
    every = told(episode, text, sources, head).weights["hang"]
    return [doubt for one in every if one is not None for doubt in one.doubts]


def kinds(episode: Write, text: str, sources: str, head: str = HEAD) -> list[str]:
    """The kinds of doubts about the sentences of `hang`."""
    return [doubt.kind for doubt in doubts(episode, text, sources, head)]


def places(episode: Write, name: str, text: str, sources: str, head: str = HEAD) -> list[str]:
    """Where findings of one name stand."""
    return [place for place, _ in found(told(episode, text, sources, head), name)]
