"""Prints whether weights learned from labelled sentences find claims better than the rules, writer by writer.

Run from the top of the project: `python -m tests.benchmarks.claims_by_weights FOLDER`.

FOLDER is that of `claims_by_writer`. Each writer is held out in turn: a logistic regression learns from the others,
with what the rules say of a sentence and which word lists it touches as features, and is measured on the one left out
beside the rules. The weights would be shipped as data if they won on every writer; so far they do not.
"""

import argparse
import math
from collections.abc import Iterable, Sequence
from pathlib import Path

from scriptkit.computing.hearing.claims import Cues, Judgement, compile_cues
from scriptkit.computing.hearing.clauses import SOUGHT, take_apart
from scriptkit.computing.hearing.kinds import SPEAKER, VIEWER, judge_clause
from scriptkit.reading.words import load
from tests.benchmarks.claims_by_writer import Row, judged, rates, read

Features = dict[str, float]
ROUNDS, RATE, DECAY = 400, 1.0, 3.0
LIMITS = (0.4, 0.5, 0.6)


def features(row: Row, got: Judgement, cues: Cues) -> Features:
    """What is known of a sentence: the rules' answer, what its clauses do, the lists it touches, who is in it."""
    speech = take_apart(row["text"], cues)
    names = [f"kind {got.kind}", f"sure {got.sure}"]
    before = ""
    for clause in speech.clauses:
        before = judge_clause(speech, clause, cues, before).kind
        names.append(f"clause {before}")
    names += [f"list {name}" for name in (*SOUGHT, "measures", "figures") if speech.found.get(name)]
    names += [f"topics {min(3, len(speech.found.get('topic-words', ())))}"]
    names += ["speaker"] * (not SPEAKER.isdisjoint(speech.words)) + ["viewer"] * (not VIEWER.isdisjoint(speech.words))
    length = {"length": min(len(speech.words), 30) / 15, "clauses": min(len(speech.clauses), 5) / 3}
    return {**dict.fromkeys(names, 1.0), **length}


def chance(weights: Features, bias: float, row: Features) -> float:
    """How likely a sentence is a claim."""
    total = bias + sum(weights.get(name, 0.0) * value for name, value in row.items())
    return 1 / (1 + math.exp(-max(-30.0, min(30.0, total))))


def learn(rows: Sequence[tuple[Features, bool]]) -> tuple[Features, float]:
    """Weights and bias by gradient descent; the same from the same rows."""
    weights: Features = {}
    bias = 0.0
    for _ in range(ROUNDS):
        slopes: Features = {}
        tilt = 0.0
        for row, claim in rows:
            error = chance(weights, bias, row) - claim
            tilt += error
            for name, value in row.items():
                slopes[name] = slopes.get(name, 0.0) + error * value
        for name, slope in slopes.items():
            old = weights.get(name, 0.0)
            weights[name] = old - RATE * (slope + DECAY * old) / len(rows)
        bias -= RATE * tilt / len(rows)
    return weights, bias


def compare(held: str, writers: dict[str, list[tuple[Features, bool, Judgement]]]) -> None:
    """Prints the rules' figures on one writer, and those of weights learned from the others."""
    rows = [(row, claim) for name, some in writers.items() if name != held for row, claim, _ in some]
    weights, bias = learn(rows)
    print(f"{held}\n  rules       ", rates([(claim, got.kind == "claim") for _, claim, got in writers[held]]))
    for limit in LIMITS:
        said = [(claim, chance(weights, bias, row) > limit) for row, claim, _ in writers[held]]
        print(f"  weights {limit:.1f} ", rates(said))


def told(files: Iterable[Path]) -> dict[str, list[tuple[Features, bool, Judgement]]]:
    """By writer: features, whether it is a claim, and the rules' judgement of each sentence."""
    cues = compile_cues(load())
    return {
        file.stem: [(features(row, got, cues), row["kind"] == "claim", got) for row, got in judged(read(file), cues)]
        for file in files
    }


def main() -> None:
    """Reads the folder named on the command line and prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    writers = told(sorted(parser.parse_args().folder.glob("*.jsonl")))
    for held in writers:
        compare(held, writers)


if __name__ == "__main__":
    main()
