"""Messages on grades that are said too firmly say how many weightings keep them, or what uncertain ratings make."""

from __future__ import annotations

from tests.ranked import found, outline
from tests.scripts import Write, worked_out

SOLID = {"segments/hang.md": "For me it's a solid {{ grade | spoken }}. [opinion]"}


def test_a_solid_grade_near_an_edge_is_told_with_what_it_would_be(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline((5, 3, 1, 1)), **SOLID}))
    (message,) = [message for _, message in found(facts, "grade-too-firm")]
    assert "keep B+, most others make it A-" in message


def test_a_solid_grade_of_uncertain_ratings_is_told_with_their_range(episode: Write) -> None:
    unsure = outline((5, 5, 1, 1)).replace("steady: 5", "steady: {score: 5, range: [1, 5]}")
    facts = worked_out(episode({"outline.yaml": unsure, **SOLID}))
    assert [message for _, message in found(facts, "grade-too-firm")] == [
        '"For me it\'s a solid A plus." is too firm: its uncertain ratings could make it C to A+.'
    ]


def test_a_solid_grade_of_sure_ratings_far_from_an_edge_is_fine(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": outline((5, 5, 1, 1)), **SOLID})), "grade-too-firm") == []
