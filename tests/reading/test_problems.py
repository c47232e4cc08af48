"""What an author sees of broken files: the whole text of `check`, held against tests/golden/problems/."""

from __future__ import annotations

import pytest

from tests.running import run

OUTLINES: dict[str, dict[str, str | bytes]] = {
    "keys": {
        "outline.yaml": """
            titel: Three ways to train your grip
            title: Three ways to train your grip
            pace: fast
            evidence: [evidense.yaml]
            exercises:
              bar hang: {name: Bar hang}
              plate-pinch:
                name: Plate pinch
                grade: B
                grade: A
                shots: [{size: CX, plane: side, of: the plate}]
            sponsor: {code: GRIP10}
            """,
        "evidence.yaml": "sources: {}\n",
    },
    "syntax": {
        "outline.yaml": """
            title: Grip: three ways
            exercises: {hang: {name: Bar hang}}
            """,
    },
    "tabs": {"outline.yaml": b"title: Grip\nexercises:\n\thang:\n\t\tname: Bar hang\n"},
    "encoding": {"outline.yaml": "title: Trois façons\n".encode("latin-1")},
    "empty": {"outline.yaml": ""},
    "missing": {"notes.md": "Nothing here.\n"},
    "spoken": {
        "outline.yaml": """
            title: Grip
            exercises:
              hang:
                name: Bar hang
                shots: [{size: FS, plane: side, of: bar hang}]
            """,
        "segments/hang.md": """
            # The hang [shot CU side: hands]

            I like the `bar hang`. [opinion] [form mora-2022]

            | bar | plate |
            | --- | ----- |
            | 9   | 7     |

            I like it a lot. [opinion <!-- allow: bracket-not-closed -->
            """,
    },
}


@pytest.mark.parametrize("name", OUTLINES)
def test_what_check_prints(episode, golden, name: str) -> None:
    done = run("check", episode(OUTLINES[name]), "--stage", "draft")
    golden(f"problems/{name}.txt", done.out)
    assert done.err == ""


@pytest.mark.parametrize(
    ("name", "status"),
    [("keys", 1), ("syntax", 2), ("tabs", 1), ("encoding", 2), ("empty", 2), ("missing", 2), ("spoken", 1)],
)
def test_how_check_ends(episode, name: str, status: int) -> None:
    assert run("check", episode(OUTLINES[name]), "--stage", "draft").status == status
