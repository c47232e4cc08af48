"""What spoken text sees of an episode: plain mappings with the names that segments use."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from typing import Any

from scriptkit.computing.grading import scale, scores
from scriptkit.computing.writing.printing import Fact
from scriptkit.model import (
    Caution,
    Checklist,
    Claim,
    Criterion,
    Episode,
    Exercise,
    Graded,
    Link,
    Rating,
    Source,
    Sponsor,
    Step,
)

_TELLS_STUDY = re.compile(
    r"\b(stud(y|ies)|trials?|review|meta-analys[ie]s|survey|experiments?|paper|researchers?|data sheet|measured)\b",
    re.IGNORECASE,
)
View = dict[str, Any]
_EDGE = 1e-9  # an exact edge counts, whatever floats make of it


class Views:
    """The views of one episode. With `drafting`, names and grades are facts that print themselves back as tags."""

    def __init__(
        self,
        episode: Episode,
        register: Mapping[str, Source],
        cautions: Mapping[str, Caution],
        graded: Mapping[str, Graded],
        spoken_order: Sequence[str],
        *,
        drafting: bool = False,
    ) -> None:
        self.episode, self.register, self.cautions, self.graded, self.drafting = (
            episode,
            register,
            cautions,
            graded,
            drafting,
        )
        self.order = [name for name in spoken_order if name in episode.exercises]
        self.places = {name: number for number, name in enumerate(self.order)}
        self.exercises = {name: self._short(name) for name in self.order}
        self.groups: dict[str, list[View]] = {}
        for name in self.order:
            self.groups.setdefault(str(episode.exercises[name].group), []).append(self.exercises[name])
        self.names = self._names()

    def turn(self, name: str) -> int:
        """What `pick` goes by in a segment: the place of its exercise in the running order, from 0."""
        return self.places.get(name, len(self.order))

    def _fact(self, value: str, path: str) -> str:
        return Fact(value, path) if self.drafting and value else value

    def _short(self, name: str) -> View:
        exercise = self.episode.exercises[name]
        path = f"exercises['{name}']"
        return {
            "id": name,
            "name": self._fact(exercise.name, f"{path}.name"),
            "group": exercise.group,
            "grade": self._fact(_grade(exercise, self.graded[name]), f"{path}.grade"),
            "place": self.places[name] + 1,
        }

    def _names(self) -> View:
        episode, sponsor, checklist = self.episode, self.episode.sponsor, self.episode.checklist
        ranked = scale.by_grade({name: self.graded[name] for name in self.order}, scale.scale_words(episode))
        return {
            "episode": {
                "title": episode.title,
                "question": episode.question,
                "audience": episode.audience,
                "count": len(self.order),
                "channel": episode.name,
            },
            "exercises": self.exercises,
            "ranked": [self.exercises[name] for name in ranked],
            "by_grade": self._by_grade(ranked),
            "sponsor": None if sponsor is None else self._sponsor(sponsor),
            "promises": dict(episode.promises),
            "cautions": {name: {"id": name, "line": one.line} for name, one in self.cautions.items()},
            "terms": {str(name): {"gloss": term.gloss, "say": term.say} for name, term in episode.terms.items()},
            "checklist": None if checklist is None else _checklist(checklist),
            "grade": "",
        }

    def _by_grade(self, ranked: list[str]) -> list[View]:
        groups: list[View] = []
        for name in ranked:
            grade = self.graded[name].grade
            if not grade:
                continue
            if not groups or groups[-1]["value"] != grade:
                groups.append({"value": grade, "grade": self.exercises[name]["grade"], "exercises": []})
            groups[-1]["exercises"].append(self.exercises[name])
        return groups

    def _sponsor(self, sponsor: Sponsor) -> View:
        return {
            "name": sponsor.name,
            "disclosure": sponsor.disclosure,
            "code": sponsor.code,
            "link": sponsor.link,
            "must_say": list(sponsor.must_say),
            "claims": [self._claim(claim) for claim in sponsor.claims],
        }

    def of_exercise(self, name: str, said: Collection[str]) -> View:
        """The names in an exercise's own segment. `said` are ids of cautions that earlier segments have spoken."""
        exercise, graded = self.episode.exercises[name], self.graded[name]
        place = self.places.get(name, 0) + 1
        grade = self._fact(_grade(exercise, graded), "exercise.grade")
        checklist = self.episode.checklist
        ratings = _ratings(exercise, checklist) if checklist else []
        view = {
            "id": name,
            "name": self._fact(exercise.name, "exercise.name"),
            "group": exercise.group,
            "grade": grade,
            "place": place,
            "count": len(self.order),
            "first": place == 1,
            "last": place == len(self.order),
            "ratings": ratings,
            "strong": _extremes(ratings, best=True),
            "weak": _extremes(ratings, best=False),
            "claims": [self._claim(claim) for claim in exercise.claims],
            "cautions_due": [
                {"id": tag, "line": self.cautions[tag].line}
                for tag in dict.fromkeys(exercise.cautions)
                if tag in self.cautions and tag not in said
            ],
            "override": exercise.override,
            "override_due": bool(exercise.override) and not (graded.given and graded.earned and graded.agrees),
            "close": graded.otherwise if graded.agrees and scores.is_close(graded) else "",
            "shots": list(exercise.shots),
            "use": {"share": exercise.use.share} if exercise.use else None,
        }
        return {**self.names, "exercise": view, "grade": grade}

    def of_group(self, step: Step) -> View:
        """The names in a group's segment."""
        return {**self.names, "group": {"name": step.group, "exercises": self.groups.get(str(step.group), [])}}

    def _claim(self, claim: Claim) -> View:
        return {
            "say": claim.say,
            "sources": _links(claim.source),
            "opinion": claim.opinion,
            "sponsor_wording": claim.sponsor_wording,
            "tells_study": bool(_TELLS_STUDY.search(claim.say)),
            "studies": [self._study(link) for link in claim.source if link.id in self.register],
        }

    def _study(self, link: Link) -> View:
        source = self.register[link.id]
        return {
            "id": link.id,
            "title": source.title,
            "year": source.year,
            "design": source.design,
            "n": source.n,
            "population": source.population,
            "duration_weeks": source.duration_weeks,
            "stance": link.stance,
            "status": source.status,
        }


def _grade(exercise: Exercise, graded: Graded) -> str:
    """The grade that is said, with its place in the outline where it was given there."""
    return exercise.grade or graded.grade


def _anchor(anchors: Mapping[str, str], score: float) -> str:
    """The anchor nearest to a rating; nothing where none is within half a step of it."""
    best: tuple[float, str] | None = None
    for key, text in anchors.items():
        try:
            distance = abs(float(key) - score)
        except ValueError:
            continue
        if best is None or distance < best[0]:
            best = (distance, text)
    return best[1] if best and best[0] <= 0.5 else ""


def _links(links: tuple[Link, ...]) -> str:
    """Links as a mark writes them."""
    parts = []
    for link in links:
        stance = "" if link.stance == "supports" else str(link.stance)
        parts.append(" ".join(part for part in (str(link.id), str(link.finding), stance) if part))
    return ", ".join(parts)


def _checklist(checklist: Checklist) -> View:
    shares = scores.shares(checklist)
    return {
        "id": checklist.id,
        "low": min(checklist.scale),
        "high": max(checklist.scale),
        "criteria": [
            {
                "id": str(name),
                "ask": one.ask,
                "weight": round(100 * shares.get(str(name), 0.0)),
                "anchors": dict(one.anchors),
            }
            for name, one in checklist.criteria.items()
        ],
    }


def _ratings(exercise: Exercise, checklist: Checklist) -> list[View]:
    return [
        _rating(checklist, checklist.criteria[name], rating, rating.score)
        for name, rating in exercise.ratings.items()
        if name in checklist.criteria and rating.score is not None
    ]


def _rating(checklist: Checklist, criterion: Criterion, rating: Rating, score: float) -> View:
    return {
        "id": str(criterion.id),
        "ask": criterion.ask,
        "score": score,
        "low": min(checklist.scale),
        "high": max(checklist.scale),
        "anchor": _anchor(criterion.anchors, score),
        "sources": _links(tuple(link for link in rating.source if link.id != "opinion")),
        "opinion": any(link.id == "opinion" for link in rating.source),
        "weight": scores.weight(criterion),
    }


def _extremes(ratings: list[View], *, best: bool) -> list[View]:
    """The ratings in the top fifth, or in the bottom two fifths, of the scale; the weightiest two."""
    found: list[tuple[float, int, View]] = []
    for rating in ratings:
        share = (rating["score"] - rating["low"]) / ((rating["high"] - rating["low"]) or 1.0)
        if share >= 0.8 - _EDGE if best else share <= 0.4 + _EDGE:
            found.append((-rating["weight"], len(found), rating))
    return [rating for _, _, rating in sorted(found, key=lambda one: one[:2])[:2]]
