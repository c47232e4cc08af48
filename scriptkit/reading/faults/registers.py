"""Findings about evidence registers: formats, broken entries, ids, and saved lists of retractions."""

from __future__ import annotations

from scriptkit.reading.faults.kinds import Said, fault
from scriptkit.wording import quoted


@fault("error")
def evidence_format(name: str) -> Said:
    """An evidence register is in a format that is not read.

    Registers are YAML (.yaml), BibTeX (.bib), RIS (.ris) or CSL-JSON (.json); the end of the name tells which.
    Reference managers export the last three.

    Bad:
        title: One
        evidence: [library.docx]
        exercises: {hang: {name: Bar hang}}
        --- library.docx
        A list of studies
    Good:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs}, year = 2022}
    """
    return (
        f"The register {quoted(name)} is not read: its name has to end in .yaml, .bib, .ris or .json.",
        "Export it as BibTeX, RIS or CSL-JSON, or write its sources into a YAML register.",
    )


@fault("error")
def source_defined_twice(name: str, first: str) -> Said:
    """A source stands in two registers of the same kind, or twice in one, under one id.

    What the first says of it counts, so that no study is replaced in silence; the second only adds what the first does
    not say. The outline comes first, then the registers in the order in which `evidence:` names them. An entry of a
    reference manager's export and one of a YAML register under the same id are one source: the YAML register says what
    the export cannot hold, and wins where both say something.

    Bad:
        title: One
        evidence: [evidence.yaml]
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Six weeks of timed hangs, invented: true}}
        --- evidence.yaml
        sources: {mora-2022: {title: Hangs again, invented: true}}
    Good:
        title: One
        evidence: [evidence.yaml, library.bib]
        exercises: {hang: {name: Bar hang}}
        --- evidence.yaml
        sources: {mora-2022: {n: 38, invented: true}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs}, year = 2022}
    """
    return (
        f"The source {quoted(name)} is defined a second time; what the one in {first} says counts.",
        "Delete one, or give it another id.",
    )


@fault("error")
def broken_entry(name: str, why: str) -> Said:
    """An entry of a BibTeX or RIS file does not follow the rules of its format.

    What can be read of it is kept, and the reading goes on with the next entry.

    Bad:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs, year = 2022}
    Good:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs}, year = 2022}
    """
    return f"The entry {quoted(name)} is broken: {why}.", "Correct it here, or export the file again."


@fault("error")
def json_syntax(why: str) -> Said:
    """A JSON file does not follow the rules of JSON.

    What can be read of the entry is kept, and the reading goes on with the next one.

    Bad:
        title: One
        evidence: [library.json]
        exercises: {hang: {name: Bar hang}}
        --- library.json
        [{"id": "mora-2022" "title": "Six weeks of timed hangs"}]
    Good:
        title: One
        evidence: [library.json]
        exercises: {hang: {name: Bar hang}}
        --- library.json
        [{"id": "mora-2022", "title": "Six weeks of timed hangs"}]
    """
    return f"This does not follow the rules of JSON: {why}.", "Correct it here, or export the file again."


@fault("warning")
def no_entries(name: str) -> Said:
    """A register that a reference manager exported holds no entry.

    It may be empty, or its name may end otherwise than its format wants.

    Bad:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        % nothing exported yet
    Good:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs}, year = 2022}
    """
    return (
        f"No entry was found in {quoted(name)}.",
        "Export it again; the end of its name tells its format: .bib BibTeX, .ris RIS, .json CSL-JSON.",
    )


@fault("note")
def id_changed(given: str, made: str) -> Said:
    """The key of an entry cannot be an id, so one was made of it.

    Ids are letters, digits, `-` and `_`, 64 at most. Accents are taken off, everything else becomes a hyphen; the same
    file always gives the same ids.

    Bad:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora:2022, title = {Six weeks of timed hangs}, year = 2022}
    Good:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{mora-2022, title = {Six weeks of timed hangs}, year = 2022}
    """
    return (
        f"The key {quoted(given)} cannot be an id; here the source is called {quoted(made)}.",
        f"Link to it as `{made}`.",
    )


@fault("note")
def id_made(title: str, made: str) -> Said:
    """An entry has no key, so its id was made of the first author's name and the year.

    Bad:
        title: One
        evidence: [export.ris]
        exercises: {hang: {name: Bar hang}}
        --- export.ris
        TY  - JOUR
        AU  - Mora, Q.
        TI  - Six weeks of timed hangs
        PY  - 2022
        ER  -
    Good:
        title: One
        evidence: [export.ris]
        exercises: {hang: {name: Bar hang}}
        --- export.ris
        TY  - JOUR
        ID  - mora-2022
        AU  - Mora, Q.
        TI  - Six weeks of timed hangs
        PY  - 2022
        ER  -
    """
    return (
        f"The entry {quoted(title)} has no key; here the source is called {quoted(made)}.",
        f"Link to it as `{made}`.",
    )


@fault("note")
def more_like_these(name: str, count: str) -> Said:
    """A register holds many findings of one kind; the first are listed, the rest are counted.

    Bad:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{a:1} @article{a:2} @article{a:3} @article{a:4} @article{a:5} @article{a:6} @article{a:7}
        @article{a:8} @article{a:9} @article{a:10} @article{a:11}
    Good:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{a-1} @article{a-2} @article{a-3} @article{a-4} @article{a-5} @article{a-6} @article{a-7}
        @article{a-8} @article{a-9} @article{a-10} @article{a-11}
    """
    return (
        f'"{name}" is found {"once" if count == "1" else f"{count} times"} more in this file, from here on.',
        "Mend the first ones; they often have one cause.",
    )


@fault("warning")
def orcid_wrong(given: str, why: str) -> Said:
    """The ORCID of an author is not one: its form or its check digit is wrong.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, invented: true, authors: [{family: Mora, orcid: 0000-0001-2345-6780}]}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, invented: true, authors: [{family: Mora, orcid: 0000-0001-2345-6789}]}}
    """
    return f"The ORCID {quoted(given)} {why}.", "Copy it again from the author's page."
