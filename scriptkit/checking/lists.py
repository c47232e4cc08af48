"""Checks of saved lists of retractions and saved records: how old they are, and what they do not say."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.checking.sources import in_use
from scriptkit.model import Facts
from scriptkit.wording import listed, quoted

OLD_DAYS = 30


@check("warning", "publish")
def retraction_list_old(facts: Facts) -> Iterator[Found]:
    """A saved list of retractions ends more than 30 days before the episode comes out.

    Its date is that of its newest entry. What was retracted since is not in it.

    Rule: ours; a month is what a careful producer may let pass between looking and publishing.

    Bad:
        title: One
        publish: 2026-06-01
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    Good:
        title: One
        publish: 2026-03-20
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    """
    if not (facts.library.lists and len(facts.episode.publish) == 10):
        return
    from datetime import date  # only where there is such a list

    publish = date.fromisoformat(facts.episode.publish)
    for one in facts.library.lists:
        age = (publish - date.fromisoformat(one.as_of)).days if len(one.as_of) == 10 else 0
        if age > OLD_DAYS:
            yield (
                one.path.place(),
                f"The newest entry of {quoted(one.file)} is of {one.as_of}, {age} days before the episode comes out.",
                "Save it again, and check once more.",
            )


@check("note", "publish")
def retractions_not_looked_up(facts: Facts) -> Iterator[Found]:
    """No saved list of retractions is given, so nobody has looked whether a source was retracted.

    `retractions:` names a saved list (CSV), `crossref:` saved records (JSON), in the outline or in channel.yaml.
    Invented sources are not looked up.

    Rule: ours; of the authors in a survey who had cited retracted work, most had not known (Anesthesiology 137, 280).

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, doi: 10.1234/grip.22}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, doi: 10.1234/grip.22, invented: true}}
    """
    if facts.library.lists or facts.episode.retractions or facts.episode.crossref:
        return
    real = [one for one in in_use(facts) if not one.invented and (one.doi or one.pmid)]
    if real:
        yield (
            facts.episode.at.place,
            f"No saved list of retractions is given, so nobody has looked up {listed((one.id for one in real), 4)}.",
            "Save a list, and name it under `retractions:`.",
        )


@check("note")
def no_entry_found(facts: Facts) -> Iterator[Found]:
    """A saved list or record has no entry for the sources in use.

    That is all it says: on the day of its newest entry the file held nothing about them. It is no statement that the
    works are sound. Sources without DOI and PMID cannot be looked up and are named.

    Rule: ours; a list can show that a work was retracted, never that it was not.

    Bad:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    Good:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    """
    using = in_use(facts) if facts.library.lists else []
    for one in facts.library.lists:
        clear = [
            source
            for source in using
            if source.id in one.looked_up and all(notice.file != one.file for notice in source.notices)
        ]
        never = [source.id for source in using if not (source.doi or source.pmid)]
        if clear:
            when = f"as of {one.as_of}, its newest date" if one.as_of else "which holds no date"
            beside = f" Not looked up, for want of DOI and PMID: {listed(never, 6)}." if never else ""
            yield (
                one.path.place(),
                f"No entry for {listed((source.id for source in clear), 6)} in {quoted(one.file)}, {when}.{beside}",
                "Look again shortly before the episode comes out.",
            )
