"""The least that checking an episode can cost: its YAML composed, its texts tokenised, their Jinja rendered.

`python tests/benchmarks/floor.py EPISODE` knows nothing of scriptkit, finds no fault and prints nothing. YAML goes
through CSafeLoader; every text of the episode and every stock segment that it uses is tokenised once and compiled once
(where it holds Jinja at all), and rendered for each segment that it speaks, with plain mappings in place of facts.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import yaml
from jinja2 import ChainableUndefined, Template
from jinja2.sandbox import SandboxedEnvironment
from markdown_it import MarkdownIt

STOCK = Path(__file__).resolve().parents[2] / "segments"


class Anything(ChainableUndefined):
    """Stands for every fact that only a real computation would know: no more than nothing, called or compared."""

    __slots__ = ()

    def _nothing(self, *_arguments: object, **_named: object) -> Any:
        return False

    def _zero(self, *_arguments: object, **_named: object) -> Any:
        return 0

    __int__ = _zero
    __call__ = __lt__ = __gt__ = __le__ = __ge__ = _nothing


def plain(node: yaml.Node | None) -> Any:
    """The mappings, lists and texts that composed YAML stands for."""
    if isinstance(node, yaml.MappingNode):
        return {key.value: plain(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [plain(value) for value in node.value]
    return node.value if node else None


def same(value: object, *_more: object, **_named: object) -> object:
    """A filter or function that gives back what it was given."""
    return value


def order(outline: dict[str, Any]) -> list[str]:
    """The ids of an episode's segments as they are spoken; every group goes by `group`."""
    if "order" in outline:
        return [item if isinstance(item, str) else item.get("segment", "group") for item in outline["order"]]
    parts = ["opening", "checklist", *outline["exercises"], "sponsor", "recap", "close"]
    return [part for part in parts if part in outline or part not in {"checklist", "sponsor"}]


def stand_ins(outline: dict[str, Any]) -> dict[str, Any]:
    """What a text may ask for, as far as the outline itself holds it."""
    count = len(outline["exercises"])
    exercises = [
        {**exercise, "id": name, "place": place, "count": count, "first": place == 1, "last": place == count}
        for place, (name, exercise) in enumerate(outline["exercises"].items(), 1)
    ]
    checklist = outline.get("checklist", {})
    low, high = checklist.get("scale", (0, 0))
    grades = sorted({exercise["grade"] for exercise in exercises if "grade" in exercise})
    return {
        **outline,
        "episode": {**outline, "count": count},
        "checklist": {**checklist, "criteria": list(checklist.get("criteria", {}).values()), "low": low, "high": high},
        "exercises": {exercise["id"]: exercise for exercise in exercises},
        "ranked": exercises,
        "by_grade": [{"grade": g, "exercises": [e for e in exercises if e.get("grade") == g]} for g in grades],
        "pick": same,
    }


def main(episode: Path) -> None:
    """Do the work, once."""
    outline: dict[str, Any] = {}
    for path in sorted(episode.glob("*.yaml")):
        outline |= plain(yaml.compose(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader))
    exercises = outline["exercises"]
    environment = SandboxedEnvironment(undefined=Anything)
    environment.filters |= {"spoken": same, "mid": same, "a": same}
    facts = stand_ins(outline)
    markdown = MarkdownIt("commonmark")
    ready: dict[Path, Template | None] = {}
    for name in order(outline):
        own = episode / "segments" / f"{name}.md"
        path = own if own.is_file() else STOCK / ("verdict.md" if name in exercises else f"{name}.md")
        if path not in ready:
            text = path.read_text(encoding="utf-8")
            markdown.parse(text)
            ready[path] = environment.from_string(text) if "{{" in text or "{%" in text else None
        if template := ready[path]:
            template.render(facts, exercise=facts["exercises"].get(name))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
