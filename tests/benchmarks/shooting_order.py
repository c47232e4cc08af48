"""How good and how quick shooting orders are: gap to the optimum on random days, and the time of many shots.

The optimum is that of the dynamic programming that the product uses for few spots, run here on more of them. The last
table holds what the day of so many shots costs in CPU beside the rest of a whole build.

Run: python -m tests.benchmarks.shooting_order
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from itertools import pairwise
from pathlib import Path
from statistics import mean

from scriptkit import build
from scriptkit.computing.shooting import day, exactly, nearly
from scriptkit.computing.shooting.stations import Price, Station
from scriptkit.rendering import outputs

PRICE = Price(place=900, side=480, framing=240, kit=300, people=180)
CASES = 40
PLANES = ("side", "front", "45", "back", "top")
SHOT = (
    "{{size: {size}, plane: {plane}, form: {form}, of: view {view}, reps: 3, place: {place}, kit: [{kit}], people:"
    " [{who}], load: {load}, priority: {priority}}}"
)


def spots(chance: random.Random, count: int) -> list[Station]:
    """So many different spots, with what they share drawn by lot."""
    made: dict[Station, None] = {}
    while len(made) < count:
        kit = frozenset(f"kit {one}" for one in range(3) if chance.random() < 0.4)
        people = (frozenset([f"person {chance.randrange(3)}"]), "")
        made[Station(False, f"place {chance.randrange(4)}", chance.choice(PLANES[:3]), kit, people, "")] = None
    return list(made)


def gap(chance: random.Random, count: int) -> tuple[float, float]:
    """How much more the good order has to change than the best one, as a share; and the CPU seconds of the good one."""
    held = spots(chance, count)
    asked = nearly.pricing(held, PRICE)
    prices = [[int(asked(one, other)) for other in range(count)] for one in range(count)]
    start = time.process_time()
    good = nearly.good(held, PRICE, [0] * count)
    spent = time.process_time() - start
    best = exactly.best(prices, [0] * count)
    whole = [sum(prices[one][other] for one, other in pairwise(order)) for order in (good, best)]
    return whole[0] / whole[1] - 1, spent


def outline(exercises: int, each: int, hours: str = "") -> str:
    """An outline with so many exercises and so many shots of each, over three people, forty places and fifty things."""
    chance = random.Random(11)  # noqa: S311 - nothing secret
    lines = ["title: A very long day in the gym", f"day: {{breaks: [45m], mbps: 100{hours}}}", "exercises:"]
    for number in range(exercises):
        place, kit, who = f"place {chance.randrange(40)}", f"kit {chance.randrange(50)}", f"P{chance.randrange(3)}"
        shots = [
            SHOT.format(
                size=chance.choice(("FS", "MS", "CU")),
                plane=chance.choice(PLANES),
                form="fault" if view % 4 == 3 else "correct",
                view=view,
                place=place,
                kit=kit if chance.random() < 0.8 else "step",
                who=who,
                load="empty" if view % 4 == 3 else chance.choice(("60 kg", "light")),
                priority=chance.choice(("must", "should", "nice")),
            )
            for view in range(each)
        ]
        lines.append(f"  e{number}: {{name: Gym lift {number}, shots: [{', '.join(shots)}]}}")
    return "\n".join(lines) + "\n"


def costs(text: str) -> tuple[int, int, float, float]:
    """Shots, spots, and the CPU seconds of their day and of everything else that a build works out and renders."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "outline.yaml").write_text(text, encoding="utf-8")
        start = time.process_time()
        facts = build.as_built(build.work_out(build.read(Path(folder))))
        outputs.render(outputs.Asked(facts, build.check(facts, "record"), "record", "long"))
        whole = time.process_time() - start
    start = time.process_time()
    made = day.plan(facts.shots, facts.episode)
    spent = time.process_time() - start
    return len(facts.shots), made.changes.every, spent, whole


def main() -> None:
    """Print both tables."""
    print(f"Python {sys.version.split()[0]}; exact up to {exactly.MOST} spots")
    print(f"{'spots':>6} {'found the optimum':>18} {'mean gap':>9} {'largest':>8} {'CPU ms':>7}")
    for count in (8, 10, 12, 14, 15):
        chance = random.Random(count)  # noqa: S311 - nothing secret
        found = [gap(chance, count) for _ in range(CASES)]
        gaps = [one for one, _ in found]
        hit = sum(one == 0 for one in gaps) / CASES
        print(f"{count:>6} {hit:>18.0%} {mean(gaps):>9.2%} {max(gaps):>8.2%} {1000 * max(s for _, s in found):>7.0f}")
    print(f"{'shots':>6} {'hours':>6} {'changes':>8} {'day s':>6} {'all s':>6} {'share':>6}")
    for hours in ("", ", hours: 40h", ", hours: 8h"):
        shots, changes, spent, whole = costs(outline(200, 8, hours))
        told = hours.removeprefix(", hours: ") or "none"
        print(f"{shots:>6} {told:>6} {changes:>8} {spent:>6.2f} {whole:>6.2f} {spent / whole:>6.0%}")


if __name__ == "__main__":
    main()
