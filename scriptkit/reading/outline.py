"""The fields that an author may write into outline.yaml and channel.yaml, and reading them into an Episode."""

from __future__ import annotations

from typing import Any

from scriptkit import model
from scriptkit.model import Spot
from scriptkit.model.publishing import STYLES
from scriptkit.reading.day import DAY
from scriptkit.reading.filming import CARDS, SHOT
from scriptkit.reading.nodes import Node
from scriptkit.reading.registers import SOURCE
from scriptkit.reading.shapes import MISSING, Field, Listed, Mapped, Reader, Record
from scriptkit.reading.values import (
    Choice,
    Day,
    Flag,
    Grade,
    Grades,
    Ident,
    Length,
    Number,
    Path,
    Seconds,
    Share,
    Weight,
    Words,
)

RATES = ("23.976", "24", "25", "29.97", "29.97df", "30", "50", "59.94", "59.94df", "60")
CERTAINTIES = ("high", "moderate", "low", "very low")

LINK = Record(
    model.Link,
    {
        "id": Field(Ident(), "id of a source in the register", needed=True),
        "finding": Field(Ident(), "which of its findings"),
        "stance": Field(Choice("stance", model.STANCES), "does the source support the claim"),
    },
    short="id",
)
CLAIM = Record(
    model.Claim,
    {
        "say": Field(Words(), "the sentence, as it is spoken", needed=True),
        "source": Field(Listed(LINK), "what it rests on"),
        "opinion": Field(Flag(), "it is the presenter's opinion, and sounds like it"),
        "sponsor_wording": Field(Flag(), "the sponsor's own words"),
        "backing": Field(Listed(Ident()), "sources that back a sponsor's statement"),
        "certainty": Field(Choice("certainty", CERTAINTIES), "the author's own judgement of how certain it is"),
        "reason": Field(Words(), "why the author's certainty is higher than the tool's"),
    },
    short="say",
)
RATING = Record(
    model.Rating,
    {
        "score": Field(Number(-1e6, 1e6), "the rating on the checklist's scale"),
        "range": Field(Listed(Number(-1e6, 1e6), 2), "lowest and highest it could be"),
        "source": Field(Listed(LINK), "what it rests on; `opinion` owns it"),
    },
    short="score",
)
EXERCISE = Record(
    model.Exercise,
    {
        "name": Field(Words(), "the name as it is spoken", needed=True),
        "say": Field(Words(), "how the name is pronounced"),
        "group": Field(Words(), "the group it belongs to"),
        "grade": Field(Grade(), "the grade; left out, the one its ratings earn"),
        "ratings": Field(Mapped(RATING), "a rating for each criterion of the checklist"),
        "override": Field(Words(), "why the grade is not what the ratings earn; it must be spoken"),
        "use": Field(
            Record(
                model.Use,
                {
                    "share": Field(Share(), "how many do it, 0 to 1"),
                    "source": Field(Listed(LINK), "who counted"),
                    "seen": Field(Day(), "when they counted"),
                },
            ),
            "how common it is",
        ),
        "cautions": Field(Listed(Ident()), "cautions that have to be spoken"),
        "claims": Field(Listed(CLAIM), "what is said about it"),
        "shots": Field(Listed(SHOT), "what it needs on film"),
    },
    short="name",
    named="id",
)
CRITERION = Record(
    model.Criterion,
    {
        "ask": Field(Words(), "the question a rating answers", needed=True),
        "weight": Field(Weight(), "how much it counts, in any unit"),
        "anchors": Field(Mapped(Words(), ids=False), "what a rating means, at least at both ends and the middle"),
        "floor": Field(Number(-1e6, 1e6), "a rating below it caps the grade"),
    },
    short="ask",
    named="id",
)
CHECKLIST = Record(
    model.Checklist,
    {
        "id": Field(Ident(), "its name, so that episodes can be compared"),
        "scale": Field(Listed(Number(-1e6, 1e6), 2), "lowest and highest rating"),
        "cap": Field(Grade(), "the best grade an exercise with a rating below a floor can get"),
        "signs": Field(Flag(), "whether grades carry plus and minus"),
        "criteria": Field(Mapped(CRITERION), "the questions", needed=True),
    },
)
SPONSOR = Record(
    model.Sponsor,
    {
        "name": Field(Words(), "who pays", needed=True),
        "segment": Field(Ident(), "id of its segment; sponsor if left out"),
        "disclosure": Field(Words(), "the sentence that says it is paid for"),
        "code": Field(Words(), "discount code"),
        "link": Field(Words(), "address of the offer, spoken and shown"),
        "valid": Field(Listed(Day(), 2), "first and last day of the offer"),
        "must_say": Field(Listed(Words()), "points that have to be spoken"),
        "never_say": Field(Listed(Words()), "words that may not be spoken in the passage"),
        "length": Field(
            Record(model.Length, {"least": Field(Seconds(), "at least"), "most": Field(Seconds(), "at most")}),
            "how long the passage may be",
        ),
        "window": Field(
            Record(model.Window, {"after": Field(Length(), "not before"), "before": Field(Length(), "not after")}),
            "where in the episode the passage may stand",
        ),
        "approved": Field(
            Record(
                model.Approval,
                {
                    "hash": Field(Words(), "of the approved text, from sponsor.html"),
                    "by": Field(Words(), "who approved it"),
                    "on": Field(Day(), "when"),
                },
            ),
            "the sponsor's approval",
        ),
        "claims": Field(Listed(CLAIM), "what is said about the product, each with its source"),
    },
)
STEP = Record(
    model.Step,
    {
        "segment": Field(Ident(), "id of an exercise or a segment"),
        "group": Field(Words(), "name of a group that begins here, in place of a segment"),
        "optional": Field(Number(1, 9, whole=True), "may be cut; 1 goes first"),
        "target": Field(Seconds(), "how long it should be"),
        "kind": Field(Choice("kind of segment", model.KINDS), "what kind of segment it is"),
        "title": Field(Words(), "what it is called on the pages and in the chapters"),
        "shots": Field(Listed(SHOT), "what it needs on film"),
    },
    short="segment",
)
RUNTIME = Record(
    model.Runtime,
    {
        "target": Field(Seconds(), "the runtime to keep"),
        "tolerance": Field(Length(), "how far it may be off; 5% if left out"),
    },
    short="target",
)
INTEREST = Record(
    model.Interest,
    {"who": Field(Words(), "from or with whom", needed=True), "what": Field(Words(), "what kind of interest")},
    short="who",
)
TERM = Record(
    model.Term, {"gloss": Field(Words(), "what it means"), "say": Field(Words(), "how it is said")}, short="gloss"
)
CAUTION = Record(
    model.Caution, {"line": Field(Words(), "the caution as it is spoken", needed=True)}, short="line", named="id"
)
ERRATUM = Record(
    model.Erratum,
    {
        "was": Field(Words(), "what was wrong", needed=True),
        "now": Field(Words(), "what is right", needed=True),
        "why": Field(Words(), "why"),
        "where": Field(Ident(), "in which segment"),
        "since": Field(Day(), "since when it is known"),
    },
)
PUBLIC_LINK = Record(
    model.PublicLink,
    {
        "to": Field(Words(), "the address", needed=True),
        "what": Field(Words(), "what is there"),
        "paid": Field(Words(), "how the presenter earns from it, such as affiliate"),
    },
    short="to",
)
REFERENCE_LIST = Record(
    model.ReferenceList,
    {
        "style": Field(Choice("reference style", STYLES), "how references are written; vancouver if left out"),
        "page": Field(Words(), "address of a page with the whole list"),
    },
    short="style",
)
_PACE = Number(60, 400)

FIELDS = {
    "title": Field(Words(), "the title of the episode", needed=True),
    "question": Field(Words(), "the question the episode answers"),
    "answer": Field(Words(), "the answer in one sentence, for the description"),
    "audience": Field(Words(), "for whom"),
    "markets": Field(Listed(Words()), "whose published guidance on disclosure is asked for: US, UK"),
    "publish": Field(Day(), "the day of publication; dates are judged against it"),
    "runtime": Field(RUNTIME, "the runtime to keep"),
    "pace": Field(_PACE, "words a minute as read aloud, ordinary pauses included"),
    "paces": Field(Mapped(_PACE), "pace by kind of segment"),
    "evidence": Field(Listed(Path()), "evidence registers"),
    "promises": Field(Mapped(Words()), "what is promised to the viewer, by id"),
    "checklist": Field(CHECKLIST, "what a grade stands on"),
    "grades": Field(Grades(Number(-1e6, 1e6), ids=False), "grades, best first, with the lowest score that earns each"),
    "exercises": Field(Mapped(EXERCISE), "the exercises, by id", needed=True),
    "sponsor": Field(SPONSOR, "who pays, and what was agreed"),
    "interests": Field(Listed(INTEREST), "what the presenter earns from, or owns"),
    "terms": Field(Mapped(TERM, ids=False), "trade words"),
    "cautions": Field(Mapped(CAUTION), "lines that keep a viewer from harm, by id"),
    "rate": Field(Choice("frame rate", RATES), "frames a second"),
    "start_timecode": Field(Words(), "timecode of the first frame of the cut; 01:00:00:00 if left out"),
    "coverage": Field(Listed(Choice("part of a coverage", model.COVERAGE)), "what each movement must be filmed from"),
    "cards": Field(CARDS, "words on screen"),
    "retractions": Field(Listed(Path()), "saved lists of retractions"),
    "crossref": Field(Listed(Path()), "saved records of works"),
    "errata": Field(Listed(ERRATUM), "what was wrong in the published episode"),
    "references": Field(REFERENCE_LIST, "the list of references"),
    "links": Field(Listed(PUBLIC_LINK), "addresses for the description"),
    "credits": Field(Listed(Words()), "who else made it"),
    "order": Field(Listed(STEP), "the running order"),
    "day": Field(DAY, "the day of the shoot"),
    "sources": Field(Mapped(SOURCE), "the evidence register, where it is not in a file of its own"),
}
OUTLINE = Record(model.Episode, FIELDS)
CHANNEL = Record(
    model.Episode,
    {
        "name": Field(Words(), "the name of the channel"),
        **{name: field for name, field in FIELDS.items() if name not in ("title", "exercises", "order", "promises")},
    },
)


def read(top: Node, reader: Reader, shape: Record = OUTLINE) -> model.Episode:
    """The episode that a tree describes; whatever is wrong with it is noted in the reader."""
    episode = shape.read(top, reader, "outline")
    return model.Episode() if episode is MISSING else episode


def join(outline: model.Episode, channel: model.Episode) -> model.Episode:
    """The outline with what only the channel gives: mappings joined key by key, everything else replaced."""
    joined: model.Episode = _join(outline, channel)
    # what is missing from the outline is missing there, not in the channel
    return joined._replace(at=Spot(outline.at.place, joined.at.keys))


def _join(ours: Any, theirs: Any) -> Any:
    if hasattr(ours, "_fields") and type(ours) is type(theirs):
        values = {}
        for name in ours._fields:
            if name == "at" or name not in theirs.at.keys:
                continue
            mine = getattr(ours, name)
            values[name] = _join(mine, getattr(theirs, name)) if name in ours.at.keys else getattr(theirs, name)
        return ours._replace(**values, at=Spot(ours.at.place, {**theirs.at.keys, **ours.at.keys}))
    if hasattr(ours, "keys") and hasattr(theirs, "keys"):
        both = {**theirs, **ours}
        return {
            key: _join(ours[key], theirs[key]) if key in ours and key in theirs else value
            for key, value in both.items()
        }
    return ours
