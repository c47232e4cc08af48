"""Findings about saved lists of retractions and saved records of works."""

from __future__ import annotations

from scriptkit.reading.faults.kinds import Said, fault
from scriptkit.wording import quoted


@fault("error")
def list_not_read(missing: str, found: str) -> Said:
    """A saved list of retractions has none of the columns that it is read by.

    It is a CSV file whose first line names its columns. At least these four are needed: RetractionNature,
    RetractionDate, OriginalPaperDOI and OriginalPaperPubMedID.

    Bad:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        paper,date
        Six weeks of timed hangs,3/1/2026
    Good:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    """
    return (
        f"This list of retractions is not read: it has no column {missing}.",
        f"Its first line has to name the columns; it begins {quoted(found)}. Save the list again as CSV.",
    )


@fault("warning")
def list_columns(missing: str) -> Said:
    """A saved list of retractions lacks a column of which something is shown.

    Such a list has twenty, from "Record ID" to "Notes". Beside the four that are needed, the number of an entry, the
    DOI of its notice and its reason are shown. A list of the four alone is read as it is meant.

    Bad:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        Title,RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Another paper,Retraction,3/1/2026 0:00,10.5555/other.1,0
    Good:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/1/2026 0:00,10.5555/other.1,0
    """
    return f"This list of retractions has no column {missing}; it is read without.", "Save the whole list again."


@fault("warning")
def list_row(why: str) -> Said:
    """A row of a saved list of retractions, or a saved record, cannot be read as it should.

    What can be read of it counts. Dates are month/day/year, as in 3/15/2026.

    Bad:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,15/3/2026 0:00,10.5555/other.1,0
    Good:
        title: One
        retractions: retractions.csv
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, doi: 10.5555/grip.22, invented: true}}
        --- retractions.csv
        RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID
        Retraction,3/15/2026 0:00,10.5555/other.1,0
    """
    return f"A row here cannot be read as it should: {why}.", "Save the list again; correct the row by hand if need be."
