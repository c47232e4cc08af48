"""Prints how well kinds of sentence are told apart, writer by writer.

Run from the top of the project: `python -m tests.benchmarks.claims_by_writer FOLDER`.

FOLDER holds one `.jsonl` file a writer; each line is a labelled sentence: `{"ep", "pos", "text", "kind", "strength",
"flags": {...}, "numbers": [...]}`. Every sentence is judged as talk, with the one before it in the same `ep`.
"sure" is the first tier of claims: those that need a source or an opinion mark; the others only may be claims.
`--misses FILE` prints each sentence of one file whose kind is judged otherwise; with `--part KEY` whose strength,
numbers or flag is.
"""

import argparse
import json
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from scriptkit.computing.hearing.claims import Cues, Judgement, compile_cues, judge
from scriptkit.computing.hearing.wording import FLAGS
from scriptkit.reading.words import load

KINDS = ("claim", "opinion", "instruction", "question", "other")
Row = dict[str, Any]
Pair = tuple[Row, Judgement]


def read(file: Path) -> list[Row]:
    """The labelled sentences of one writer."""
    return [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines() if line.strip()]


def judged(rows: Sequence[Row], cues: Cues) -> list[Pair]:
    """Each sentence with its judgement."""
    pairs, episode, previous = [], None, ""
    for row in rows:
        if row.get("ep") != episode:
            episode, previous = row.get("ep"), ""
        pairs.append((row, judge(row["text"], previous, "talk", cues)))
        previous = row["text"]
    return pairs


def rates(answers: Sequence[tuple[bool, bool]]) -> str:
    """Precision, recall, F1 and the number of true cases as one short text, from (true, said) of each sentence."""
    hits = sum(true and said for true, said in answers)
    wanted = sum(true for true, _ in answers)
    given = sum(said for _, said in answers)
    precision = hits / given if given else 0.0
    recall = hits / wanted if wanted else 0.0
    f1 = 2 * precision * recall / (precision + recall) if hits else 0.0
    return f"precision {precision:.3f}  recall {recall:.3f}  F1 {f1:.3f}  n={wanted}"


def numbers_rate(pairs: Sequence[Pair]) -> str:
    """How many of the spoken values of the claims are found, and how many that are found are there."""
    hits = wanted = given = 0
    for row, got in pairs:
        if row["kind"] != "claim":
            continue
        left = list(got.numbers)
        given += len(left)
        for value in row["numbers"]:
            wanted += 1
            match = next((x for x in left if abs(x - value) < 0.01), None)
            if match is not None:
                left.remove(match)
                hits += 1
    return f"precision {hits / max(1, given):.3f}  recall {hits / max(1, wanted):.3f}  n={wanted}"


def report(name: str, pairs: Sequence[Pair]) -> None:
    """Prints the figures of one writer."""
    print(f"{name}: {len(pairs)} sentences")
    for kind in KINDS:
        print(f"  {kind:12s}", rates([(row["kind"] == kind, got.kind == kind) for row, got in pairs]))
        if kind == "claim":  # of these, what is an error and not only a note
            sure = [(row["kind"] == kind, got.kind == kind and got.sure) for row, got in pairs]
            print("    sure      ", rates(sure))
    found = [(row, got) for row, got in pairs if row["kind"] == got.kind == "claim"]
    right = sum(row["strength"] == got.strength for row, got in found)
    print(f"  strength     right for {right / max(1, len(found)):.3f} of the claims found")
    claims = [(row, got) for row, got in pairs if row["kind"] == "claim"]
    for grade in ("hedged", "absolute"):
        print(f"  {grade:12s}", rates([(row["strength"] == grade, got.strength == grade) for row, got in claims]))
    for flag in FLAGS:
        print(f"  {flag:12s}", rates([(bool(row["flags"].get(flag)), flag in got.flags) for row, got in pairs]))
    print(f"  {'numbers':12s}", numbers_rate(pairs))


def misses(pairs: Sequence[Pair], part: str) -> None:
    """Prints the sentences whose kind, strength, flag or numbers are judged otherwise than labelled."""
    for row, got in pairs:
        both = row["kind"] == got.kind == "claim"
        if part == "kind":
            wrong = row["kind"] != got.kind
        elif part == "strength":
            wrong = both and row["strength"] != got.strength
        elif part == "numbers":
            wrong = both and [round(x, 2) for x in sorted(row["numbers"])] != [round(x, 2) for x in sorted(got.numbers)]
        else:
            wrong = bool(row["flags"].get(part)) != (part in got.flags)
        if wrong:
            strengths = f"{row['strength']}>{got.strength}" if both else ""
            said = got.kind if got.sure else f"{got.kind}?"
            print(f"{row['kind']} > {said} {strengths} {row['numbers']} {got.numbers} {got.flags} {got.triggers}")
            print(f"    {row['text']}")


def main() -> None:
    """Reads the folder named on the command line and prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--misses", metavar="FILE", help="print what is judged otherwise in this file of the folder")
    parser.add_argument("--part", default="kind", help="kind, strength, numbers or a flag")
    options = parser.parse_args()
    cues = compile_cues(load())
    if options.misses:
        misses(judged(read(options.folder / options.misses), cues), options.part)
        return
    everything: list[Pair] = []
    seconds = 0.0
    for file in sorted(options.folder.glob("*.jsonl")):
        rows = read(file)
        start = time.process_time()
        pairs = judged(rows, cues)
        seconds += time.process_time() - start
        report(file.stem, pairs)
        everything += pairs
    if not everything:
        sys.exit(f"no .jsonl file in {options.folder}")
    report("all", everything)
    print(f"{len(everything) / seconds:,.0f} sentences a second")


if __name__ == "__main__":
    main()
