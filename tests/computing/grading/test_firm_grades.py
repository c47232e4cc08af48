"""A grade that slightly other weights would change is not said as if nothing could move it."""

from __future__ import annotations

import pytest

from tests.ranked import kinds, says
from tests.scripts import Write

EDGE = (5, 3, 1, 1)  # 4.0: B+, and from 4.05 it would be an A
FIRM = (5, 5, 1, 1)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("I give it {{ grade | spoken | a }}. [opinion]", "flips"),
        ("For me it's a solid {{ grade | spoken }}. [opinion]", "solid-flips"),
        ("Without a doubt {{ grade | spoken | a }} from me. [opinion]", "solid-flips"),
        ("I give it {{ grade | spoken | a }}, because the set-up takes a minute. [opinion]", ""),
        ("I give it {{ grade | spoken | a }}: quick to set up and a bit wobbly. [opinion]", ""),
        ("I give it {{ grade | spoken | a }}, and it's a close call. [opinion]", ""),
        (
            "I give it {{ grade | spoken | a }}. [opinion] Count steadiness for more, and it could be an A. [opinion]",
            "",
        ),
    ],
)
def test_close_to_an_edge_it_wants_a_range_or_its_reason(episode: Write, text: str, kind: str) -> None:
    assert kinds(says(episode, text, EDGE)) == ([kind] if kind else [])


def test_a_firm_grade_may_be_said_as_firmly_as_one_likes(episode: Write) -> None:
    assert kinds(says(episode, "For me it's a solid {{ grade | spoken }}. [opinion]", FIRM)) == []
    assert kinds(says(episode, "I give it {{ grade | spoken | a }}. [opinion]", FIRM)) == []


def test_an_adjective_of_something_else_says_nothing_of_the_grade(episode: Write) -> None:
    text = "On a solid bar I give it {{ grade | spoken | a }}, since it's quick. [opinion]"
    assert kinds(says(episode, text, EDGE)) == []


def test_another_grade_that_is_near_may_be_said_beside_it_and_one_that_is_not_may_not(episode: Write) -> None:
    from tests.scripts import found

    near = "I give it {{ grade | spoken | a }}, and with other weights it might get an A. [opinion]"
    far = "I give it {{ grade | spoken | a }}, and with other weights it might get a D. [opinion]"
    assert found(says(episode, near, EDGE), "grade-spoken-otherwise") == []
    assert len(found(says(episode, far, EDGE), "grade-spoken-otherwise")) == 1


def test_a_draft_says_itself_that_it_is_close(episode: Write) -> None:
    from tests.ranked import outline
    from tests.scripts import segment, worked_out

    facts = worked_out(episode({"outline.yaml": outline(EDGE)}))
    spoken = " ".join(one.text for one in segment(facts).sentences)
    assert "it could be an A" in spoken or "could be an A" in spoken
    assert kinds(facts) == []
