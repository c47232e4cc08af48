"""What is missing for each stage: what the checks ask for by then, and what nobody has done yet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from scriptkit import keys
from scriptkit.findings import STAGES, Finding
from scriptkit.model import Facts
from scriptkit.rendering.rows import Row

TITLES = {"draft": "The draft", "record": "The recording", "publish": "Publication"}
SHOWN = 3  # messages of a stage; the list of all findings has the rest


def stages(facts: Facts, found: Sequence[Finding], stage: str, tally: Mapping[str, Any]) -> list[Row]:
    """A row a stage. `open` counts the findings that have to be settled by then; a plain note has not.

    `stage` is the one the findings stand at: what a later one asks for is a note until then, and counts.
    """
    reached = STAGES.index(stage)
    made = []
    for number, name in enumerate(STAGES):
        own = [one for one in found if one.stage == name and not one.allowed]
        due = [one for one in own if one.severity != "note" or number > reached]
        todo = list(_TO_DO[number](facts, tally))
        made.append(
            {
                "stage": name,
                "title": TITLES[name],
                "open": len(due),
                "first": [one.message for one in due[:SHOWN]],
                "todo": todo,
                "ready": not due and not todo,
            }
        )
    return made


def _draft(facts: Facts, _tally: Mapping[str, Any]) -> Iterator[str]:
    drafted = sum(segment.drafted and segment.kind == "verdict" for segment in facts.segments)
    if drafted:
        yield f"{_many(drafted, 'exercise is', 'exercises are')} still in the words of the first draft"
    ungraded = sum(not facts.grades[name].grade for name in facts.episode.exercises if name in facts.grades)
    if ungraded:
        yield f"{_many(ungraded, 'exercise has', 'exercises have')} no grade"


def _record(facts: Facts, tally: Mapping[str, Any]) -> Iterator[str]:
    if tally["left"]:
        yield f"{_many(tally['left'], 'claim has', 'claims have')} no verdict of a fact-checker"
    sponsor = facts.episode.sponsor
    if (
        sponsor
        and facts.sponsor_hash
        and not (sponsor.approved and keys.is_key(str(sponsor.approved.hash), facts.sponsor_hash))
    ):
        yield "the sponsor has not approved this text"
    loose = sum(one.start is None for one in facts.shots)
    if loose:
        yield f"{_many(loose, 'shot has', 'shots have')} no place in the script"


def _publish(facts: Facts, _tally: Mapping[str, Any]) -> Iterator[str]:
    if facts.clocked is None:
        yield "the recording is not held against the script: times are those of the plan"
    elif facts.clocked.stale or facts.clocked.absent:
        yield "the recording is not of this text in every segment"
    if not facts.episode.publish:
        yield "the outline has no day of publication"


_TO_DO = (_draft, _record, _publish)


def _many(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"
