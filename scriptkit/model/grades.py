"""Grades, what they stand on, how firm they are, and what would change them. Shares are 0 to 1."""

from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.model.base import EMPTY, NOWHERE, Spot
from scriptkit.places import Place


class Part(NamedTuple):
    """What one criterion adds to a score: `points` are the rating times the criterion's share of all weights."""

    criterion: str
    rating: float | None
    low: float  # how low and high the rating may be; the whole scale where it is missing
    high: float
    share: float
    points: float | None
    below_floor: bool = False


class Graded(NamedTuple):
    """A grade and what it stands on, on the checklist's scale. `grade` is what is said: the given, else the earned.

    `firmness` is the share of weightings around the author's (see `computing/grading/chance.py`) under which the earned
    grade stays as it is, `band_firmness` that under which it keeps its band, whatever its sign; `otherwise` is the band
    that it would mostly have instead, "" where there is none.
    """

    id: str
    score: float | None
    score_low: float | None
    score_high: float | None
    earned: str | None
    given: str | None
    grade: str
    capped: tuple[str, ...] = ()  # criteria whose floor caps the grade
    missing: tuple[str, ...] = ()  # criteria without a rating
    parts: tuple[Part, ...] = ()
    earned_low: str | None = None  # the worst and the best grade that its ratings could earn
    earned_high: str | None = None
    firmness: float | None = None
    band_firmness: float | None = None
    otherwise: str = ""
    spread: float | None = None  # standard deviation of the score under those weightings
    neighbour: str = ""  # the grade, sign and all, that it would mostly have instead
    placed: float | None = None  # the score it is placed by: below a floor it stays under the grade above the cap
    agrees: bool = True  # the given grade is one that the ratings earn, or there is nothing to hold it against


class Tip(NamedTuple):
    """A change that makes another grade: a rating or a weight goes to `at`; `under` it where `at` itself keeps it."""

    at: float
    grade: str
    under: bool = False


class Tips(NamedTuple):
    """What one criterion could do to a grade: by other ratings, and other shares of all weights."""

    criterion: str
    rating_up: Tip | None
    rating_down: Tip | None
    weight_up: Tip | None  # to more weight, which may make the grade better or worse
    weight_down: Tip | None
    first_low: float | None  # between these shares the exercise comes first; None where there are none
    first_high: float | None


class Swap(NamedTuple):
    """The smallest change that brings two exercises level: of a `weight`, or of the `rating` of `whose`."""

    kind: str
    criterion: str
    was: float
    to: float
    whose: str = ""


class Standing(NamedTuple):
    """How firm one exercise's place and grade are. None where its ratings are not complete.

    `first_...` are shares of first place: under all weightings, under those around the author's, and under those with
    the uncertain ratings drawn as well; `first_in_group` is under all weightings among its own group. `kept_...` are
    shares that keep the earned grade.
    """

    id: str
    first_all: float | None = None
    first_near: float | None = None
    first_ratings: float | None = None
    first_in_group: float | None = None
    kept_all: float | None = None
    kept_ratings: float | None = None
    rank: int | None = None  # from 1, by score
    tied: tuple[str, ...] = ()  # exercises whose scores are nearer than a step on the lightest criterion
    rival: str = ""
    gap: float = 0.0  # its score less that of the rival
    swaps: tuple[Swap, ...] = ()
    tips: tuple[Tips, ...] = ()
    group: str = ""


class Ranking(NamedTuple):
    """How firm the grades and the order of an episode are; `error` is that of a drawn share, at 95 percent."""

    draws: int
    seed: int
    error: float
    standings: Mapping[str, Standing]
    first: tuple[str, ...]  # those with the highest score
    verdict: str  # clear, ahead or depends: how firmly the first place may be said; tied, or open where it is neither
    uncertain: bool  # some rating has a range
    unsettled: tuple[str, ...] = ()  # too few weightings around the author's keep their grade in its band
    wavering: tuple[str, ...] = ()  # the same of the sign alone
    open: tuple[str, ...] = ()  # not rated whole yet, and could come first once they are


class GradeDoubt(NamedTuple):
    """Words of script, title or card, or entries of the outline, that the grades do not bear out.

    `kind` is what is doubtful, `exercise` whom it is about, `other` whom it is held against, `has` the figure.
    """

    kind: str
    place: Place
    words: str
    exercise: str = ""
    other: str = ""
    has: str = ""


class RatedAgain(NamedTuple):
    """One rating of the second rater, and the written answer to a large gap."""

    score: float | None = None
    answer: str = ""
    at: Spot = NOWHERE


class RatingsAgain(NamedTuple):
    """What ratings-again.yaml holds: by whom, on which day, and ratings by exercise and criterion."""

    by: str = ""
    on: str = ""
    ratings: Mapping[str, Mapping[str, RatedAgain]] = EMPTY  # type: ignore[assignment]
    at: Spot = NOWHERE


class Rerating(NamedTuple):
    """A rating of the second rater beside the first, and how many steps they are apart."""

    exercise: str
    criterion: str
    first: float
    again: float
    apart: float
    answer: str
    place: Place


class SecondRating(NamedTuple):
    """A second rating held against the first: who and when, every pair, and the grades that come out otherwise.

    `unknown` are ratings of something that the outline does not rate: exercise, criterion ("" where the exercise is the
    unknown one) and where that stands; `off` are those off the scale.
    """

    by: str
    on: str
    pairs: tuple[Rerating, ...]
    exact: float | None  # share of pairs that are the same
    largest: float | None  # gap, in steps
    changed: tuple[tuple[str, str, str], ...]  # exercise, grade by the first ratings, grade by the second
    unrated: int  # ratings of the first that the second does not give
    unknown: tuple[tuple[str, str, Place], ...] = ()
    off: tuple[tuple[str, str, float, Place], ...] = ()
