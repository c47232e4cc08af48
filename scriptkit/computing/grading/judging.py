"""All that a script says of grades and places, held against the grades; draws only where somebody claims firmness."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import chain
from typing import NamedTuple

from scriptkit.computing.grading import firm_grades, firm_words, overriding, scale, usage
from scriptkit.model import (
    Card,
    Episode,
    Graded,
    GradeDoubt,
    Ranking,
    RatingsAgain,
    SecondRating,
    Segment,
    SpokenGrade,
)


class Script(NamedTuple):
    """What is looked at: the segments, the cards, and the grades said in both."""

    segments: Sequence[Segment]
    cards: Sequence[Card]
    spoken_grades: tuple[SpokenGrade, ...]


class Judged(NamedTuple):
    """What is doubtful, how firm the grades are (None unless asked for or claimed), and what a second rating makes."""

    grade_doubts: tuple[GradeDoubt, ...]
    ranking: Ranking | None
    again: SecondRating | None


def judge(
    episode: Episode,
    graded: Mapping[str, Graded],
    script: Script,
    words: Mapping[str, Sequence[str]],
    again: RatingsAgain | None,
    *,
    drawn: bool,
) -> Judged:
    """Everything that follows from the grades; `drawn` asks for how firm they are."""
    if not any(one.grade or one.score_low is not None for one in graded.values()):
        return Judged((), None, None)
    heard = tuple(firm_words.passages(episode, script.segments, script.cards))
    scored = any(one.score is not None for one in graded.values())
    firm = firm_words.find(heard, episode, script.segments, words) if scored else ()
    ranking, second = None, None
    doubts: list[Iterable[GradeDoubt]] = [usage.find(heard, episode, graded, words)]
    if scale.is_in_order(episode):
        little = frozenset(words.get("little-words", ()))
        doubts += [
            overriding.find(episode, graded, script.segments, little),
            overriding.dominated(episode, graded, scale.of(episode)),
            firm_grades.find(script.spoken_grades, graded, script.segments, words),
        ]
    claimed = any(one.kind != "tied" and (one.kind != "depends" or "depend" in one.words.lower()) for one in firm)
    if drawn or claimed:
        from scriptkit.computing.grading import holding  # only who asks or claims needs the draws
        from scriptkit.computing.grading import ranking as drawing

        ranking = drawing.rank(episode, graded)
        doubts.append(holding.find(firm, ranking, graded))
    if again:
        from scriptkit.computing.grading import again as second_rating  # only an episode that has one needs it

        second = second_rating.compare(episode, graded, again)
    told = dict.fromkeys(chain.from_iterable(doubts))  # a promise is heard twice, in the outline and in the opening
    return Judged(tuple(told), ranking, second)
