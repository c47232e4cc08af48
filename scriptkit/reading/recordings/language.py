"""What the recogniser is to expect: a model of three words in a row, made of the script and of common words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from math import log10

KEPT = 0.9  # how likely the script goes on as written; the rest is for what was said otherwise
COMMON = 0.1  # share of common words among single ones: what is not of the script becomes these
START, END = "<s>", "</s>"
_NEVER = -99.0

Counts = Counter[tuple[str, ...]]


def arpa(lines: Sequence[Sequence[str]], common: Mapping[str, float]) -> str:
    """The model as ARPA text. `lines` are the words of the script's sentences in order, `common` has words' shares."""
    text = [START, *(word for line in lines for word in line), END]
    singles = Counter(text[1:])
    whole = sum(singles.values())
    one: dict[tuple[str, ...], float] = {(word,): (1 - COMMON) * count / whole for word, count in singles.items()}
    for word, share in common.items():
        one[word,] = one.get((word,), 0.0) + COMMON * share
    one[START,] = 0.0
    two = _following(text, 2)
    three = _following(text, 3)
    parts = [
        f"\\data\\\nngram 1={len(one)}\nngram 2={len(two)}\nngram 3={len(three)}\n",
        _section(1, one, _backed(two, one)),
        _section(2, two, _backed(three, two)),
        _section(3, three, None),
        "\\end\\\n",
    ]
    return "\n".join(parts)


def _following(text: Sequence[str], length: int) -> dict[tuple[str, ...], float]:
    """How likely the last of so many words in a row comes behind the others."""
    runs: Counts = Counter(tuple(text[at : at + length]) for at in range(len(text) - length + 1))
    befores: Counts = Counter()
    for run, count in runs.items():
        befores[run[:-1]] += count
    return {run: KEPT * count / befores[run[:-1]] for run, count in runs.items()}


def _backed(
    longer: Mapping[tuple[str, ...], float], shorter: Mapping[tuple[str, ...], float]
) -> dict[tuple[str, ...], float]:
    """By what the shorter runs count where the longer one is not of the script."""
    own: dict[tuple[str, ...], float] = {}
    known: dict[tuple[str, ...], float] = {}
    for run, share in longer.items():
        own[run[:-1]] = own.get(run[:-1], 0.0) + share
        known[run[:-1]] = known.get(run[:-1], 0.0) + shorter.get(run[1:], 0.0)
    return {before: (1 - own[before]) / max(1e-6, 1 - known[before]) for before in own}


def _section(length: int, runs: Mapping[tuple[str, ...], float], backed: Mapping[tuple[str, ...], float] | None) -> str:
    lines = [f"\\{length}-grams:"]
    for run, share in sorted(runs.items()):
        behind = "" if backed is None else f" {_log(backed.get(run, 1.0)):.4f}"
        lines.append(f"{_log(share):.4f} {' '.join(run)}{behind}")
    return "\n".join([*lines, ""])


def _log(share: float) -> float:
    return log10(share) if share > 0 else _NEVER
