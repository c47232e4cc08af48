"""The register of checks: `@check` takes one in, `run` puts facts to all of them, allow-comments take findings out."""

from __future__ import annotations

import importlib
import pkgutil
from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator

from scriptkit.findings import Finding, Kind, kind_name
from scriptkit.model import Allow, Facts
from scriptkit.places import Place

KINDS: dict[str, Kind] = {}
MOST_IN_A_TEXT = 50  # findings of one kind that are listed from one segment's text
MOST_ELSEWHERE = 1000  # and from the outline or a register, which hold a whole episode
Found = tuple[Place, str, str]  # place, message, help


def check(
    severity: str, stage: str = "draft", *, protects: bool = False
) -> Callable[[Callable[[Facts], Iterator[Found]]], Callable[[Facts], Iterator[Found]]]:
    """Take a function into the register.

    Its name in kebab case is the name of the finding, its docstring the explanation; it gives place, message and help
    of each finding.
    """

    def keep(function: Callable[[Facts], Iterator[Found]]) -> Callable[[Facts], Iterator[Found]]:
        kind = Kind(kind_name(function), severity, stage, protects, function)
        if KINDS.setdefault(kind.name, kind) is not kind:
            raise ValueError(f"two checks are called {kind.name}")
        return function

    return keep


def kinds() -> dict[str, Kind]:
    """All checks of this folder, by name: a new module is found by being there."""
    package = importlib.import_module(__package__ or "scriptkit.checking")
    for module in sorted(found.name for found in pkgutil.iter_modules(package.__path__)):
        importlib.import_module(f"{package.__name__}.{module}")
    return KINDS


def run(facts: Facts, known: Iterable[str]) -> list[Finding]:
    """Put the facts to all checks. `known` are the names of kinds from outside this room, for allow-comments.

    What an allow-comment covers is kept, with its reason, as a note that is `allowed`. Of the others, so many of a
    kind are listed in each file, and the rest counted in one more: nobody reads a hundred thousand lines.
    """
    texts = set(facts.texts.values())
    allows = _Allows(facts.allows)
    kept: list[Finding] = []
    counts: dict[tuple[str, str], int] = {}
    first_left: dict[tuple[str, str], Finding] = {}
    for finding in map(allows.look, _all(facts)):
        key = (finding.place.file, finding.name)
        count = counts.get(key, 0)
        if finding.allowed or count < (MOST_IN_A_TEXT if key[0] in texts else MOST_ELSEWHERE):
            kept.append(finding)
        else:
            first_left.setdefault(key, finding)
        counts[key] = count + (not finding.allowed)
    kept += [_more(one, counts[key], key[0] in texts) for key, one in first_left.items()]
    return kept + allows.unused({*known, *KINDS})


def _all(facts: Facts) -> Iterator[Finding]:
    """The reader's findings and those of all checks."""
    yield from facts.found
    for kind in kinds().values():
        for place, message, help_ in kind.maker(facts):
            yield Finding(kind.name, kind.severity, kind.stage, place, message, help_, "", kind.protects)


def _more(first: Finding, count: int, in_text: bool) -> Finding:  # noqa: FBT001 - two cases of one sentence
    """One finding for all those of a kind in a file that are not listed."""
    left = count - (MOST_IN_A_TEXT if in_text else MOST_ELSEWHERE)
    message = f"And {left:,} more of this kind from here on: {first.message}"
    return first._replace(message=message, help="Mend those that are listed; then the next ones are.")


class _Allows:
    """The allow-comments of an episode, and which of them were of use."""

    def __init__(self, allows: Iterable[Allow]) -> None:
        self.spans: dict[tuple[str, str], dict[tuple[int, int], list[Allow]]] = {}
        for allow in allows:
            group = self.spans.setdefault((allow.place.file, allow.name), {})
            group.setdefault((allow.first, allow.last), []).append(allow)
        # lines and paragraphs do not overlap, so the last span that starts before a finding is the one to look at
        self.starts = {key: sorted(group) for key, group in self.spans.items()}
        self.used: set[tuple[str, str, tuple[int, int]]] = set()

    def look(self, finding: Finding) -> Finding:
        """The finding, with the reason where a comment covers it."""
        key = (finding.place.file, finding.name)
        ordered = self.starts.get(key, [])
        number = bisect_right(ordered, finding.place.line, key=lambda span: span[0]) - 1
        if number < 0 or finding.place.line > ordered[number][1]:
            return finding
        self.used.add((*key, ordered[number]))
        return finding._replace(allowed=self.spans[key][ordered[number]][0].reason)

    def unused(self, known: set[str]) -> list[Finding]:
        """A finding for each comment that covers nothing."""
        left: list[Finding] = []
        for key, group in self.spans.items():
            left += [_unused(one, known) for span in group if (*key, span) not in self.used for one in group[span]]
        return left


def _unused(allow: Allow, known: set[str]) -> Finding:
    kind = KINDS["allow-unused"]
    if allow.name in known:
        message = f'The comment allows "{allow.name}", and there is no such finding on the line or paragraph it covers.'
    else:
        message = f'The comment allows "{allow.name}", and there is no finding of that name.'
    return Finding(
        kind.name,
        kind.severity,
        kind.stage,
        allow.place,
        message,
        "Delete the comment, or move it to where the finding is.",
    )


@check("warning")
def allow_unused(_facts: Facts) -> Iterator[Found]:
    """An allow-comment allows nothing.

    It may have done its work, or stand on the wrong line: in YAML it covers its own line, or the next one if it
    stands alone;
    in spoken text its paragraph, or the next one. Left in place it would hide a finding that comes later.

    Rule: ours; an exception that is not needed any more would hide the next finding.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}} # allow: unknown-key because I like it
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    # found by `run`, which alone knows what was allowed
    return iter(())
