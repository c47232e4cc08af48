"""How long a register of two thousand sources takes to read, in each format; prints seconds of CPU.

Run: python -m tests.benchmarks.register_sizes
"""

from __future__ import annotations

import json
import os
import platform
import tempfile
import time
from pathlib import Path
from statistics import median

from scriptkit import build

MANY = 2000
RUNS = 5
ABSTRACT = "We measured many things in many made-up runners over ten weeks. " * 15
YAML = """  made-up-{0}:
    title: "Made-up study {0}: heel raises off a ledge and on the floor"
    authors: [Orre B, Lind P]
    year: 2021
    journal: Made-up Journal of Calves
    doi: 10.5555/calf.2021.{0}
    status: published
    design: randomised trial
    comparison: within-person
    timeframe: longitudinal
    population: trained runners
    training: trained
    n: 38
    n_units: 76
    duration_weeks: 10
    funding: none declared
    invented: true
    findings:
      growth:
        outcome: muscle growth
        measure: ultrasound thickness
        site: inner head of the calf
        result: 1.6 mm against 1.0 mm
        values: {{ledge: 1.6 mm, floor: 1.0 mm}}
        effect: 0.41
        ci: [0.06, 0.76]
        baseline: 19.4 mm
        absolute: 0.6 mm
        certainty: moderate
        quote: Thickness rose by 1.6 mm in the ledge leg and by 1.0 mm in the floor leg.
        page: 7
"""
BIB = """@article{{made-up-{0},
  title = {{{{Made-up}} study {0}: heel raises off a ledge}},
  author = {{{{\\"O}}stby, Bo-Per and Lind, P. and van Moor, Tam}},
  journal = {{Made-up Journal of Calves}},
  year = 2021, month = mar, volume = {{12}}, number = {{3}}, pages = {{100--110}},
  doi = {{10.5555/calf.2021.{0}}},
  url = {{https://example.org/{0}}},
  keywords = {{calf, growth}},
  abstract = {{{1}}},
}}

"""
RIS = """TY  - JOUR
ID  - made-up-{0}
AU  - Orre, Bo-Per
AU  - Lind, P.
TI  - Made-up study {0}: heel raises off a ledge
T2  - Made-up Journal of Calves
PY  - 2021/03/02
VL  - 12
SP  - 100
EP  - 110
DO  - 10.5555/calf.2021.{0}
UR  - https://example.org/{0}
KW  - calf
KW  - growth
AB  - {1}
ER  -

"""


def csl_item(number: int) -> dict[str, object]:
    """One record of CSL-JSON."""
    return {
        "id": f"made-up-{number}",
        "type": "article-journal",
        "title": f"Made-up study {number}: heel raises off a ledge",
        "author": [{"family": "Östby", "given": "Bo-Per"}, {"family": "Lind", "given": "P."}],
        "container-title": "Made-up Journal of Calves",
        "volume": "12",
        "page": "100-110",
        "DOI": f"10.5555/calf.2021.{number}",
        "URL": f"https://example.org/{number}",
        "issued": {"date-parts": [[2021, 3, 2]]},
        "accessed": {"date-parts": [[2026, 1, 5]]},
        "abstract": ABSTRACT,
    }


def registers() -> dict[str, str]:
    """The text of a register in each format, by file name."""
    return {
        "evidence.yaml": "sources:\n" + "".join(YAML.format(number) for number in range(MANY)),
        "library.bib": "".join(BIB.format(number, ABSTRACT) for number in range(MANY)),
        "export.ris": "".join(RIS.format(number, ABSTRACT) for number in range(MANY)),
        "csl.json": json.dumps([csl_item(number) for number in range(MANY)], indent=1),
    }


def measure(folder: Path) -> tuple[float, float]:
    """Median seconds to read the episode, and to work it out and check it as well."""
    reading, whole = [], []
    for _ in range(RUNS):
        start = time.process_time()
        material = build.read(folder)
        reading.append(time.process_time() - start)
        build.check(build.work_out(material), "publish")
        whole.append(time.process_time() - start)
        if len(material.register) != MANY:
            raise SystemExit(f"{len(material.register)} sources were read, not {MANY}")
    return median(reading), median(whole)


def main() -> None:
    """Measure each format and print the table."""
    print(f"CPU in s, median of {RUNS}; {MANY} sources; Python {platform.python_version()}, {os.cpu_count()} cores")
    print(f"{'register':<16}{'MB':>6}{'read':>8}{'check':>8}")
    for name, text in registers().items():
        with tempfile.TemporaryDirectory() as made:
            folder = Path(made)
            claim = "{say: In one trial of 38 runners the calf grew., source: made-up-7}"
            outline = f"title: One\nevidence: {name}\nexercises: {{hang: {{name: Bar hang, claims: [{claim}]}}}}\n"
            (folder / "outline.yaml").write_text(outline, encoding="utf-8")
            (folder / name).write_text(text, encoding="utf-8")
            read, whole = measure(folder)
            print(f"{name:<16}{len(text) / 1e6:>6.1f}{read:>8.2f}{whole:>8.2f}", flush=True)


if __name__ == "__main__":
    main()
