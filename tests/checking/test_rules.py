"""Checks are found by being there, and allow-comments take findings out and are told when they allow nothing."""

from __future__ import annotations

import pkgutil
from pathlib import Path

from scriptkit import build, checking
from scriptkit.checking import rules
from scriptkit.findings import SEVERITIES, STAGES
from tests.scripts import Write, found, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang}}\n"
SHOWN = "[shot FS side: hang] "


def test_every_module_of_the_folder_adds_its_checks() -> None:
    folder = Path(checking.__file__).parent
    modules = {one.name for one in pkgutil.iter_modules([str(folder)])}
    with_checks = {name for name in modules if "\n@check(" in (folder / f"{name}.py").read_text(encoding="utf-8")}
    assert {kind.maker.__module__.rpartition(".")[2] for kind in rules.kinds().values()} == with_checks


def test_names_are_kebab_words_with_a_known_severity_and_stage() -> None:
    for name, kind in rules.kinds().items():
        assert name == kind.maker.__name__.replace("_", "-")
        assert kind.severity in SEVERITIES
        assert kind.stage in STAGES


def test_what_a_later_stage_demands_is_a_note_until_then(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": ONE, "segments/hang.md": SHOWN + "It builds strength."}))
    severities = {stage: [one.severity for one in build.check(facts, stage)] for stage in STAGES}
    assert severities == {"draft": ["note"], "record": ["error"], "publish": ["error"]}


def test_a_comment_in_a_paragraph_or_alone_before_it_allows(episode: Write) -> None:
    text = """
        [shot FS side: hang] It builds strength. <!-- allow: claim-without-source because it is a quote -->

        <!-- allow: claim-without-source because it is another -->

        It builds more
        strength. And it builds skin.

        It builds bone.
        """
    facts = worked_out(episode({"outline.yaml": ONE, "segments/hang.md": text}))
    assert [place for place, _ in found(facts, "claim-without-source")] == ["segments/hang.md:8:1"]
    assert found(facts, "allow-unused") == []


def test_a_comment_at_a_claims_line_allows_the_sentence_drafted_from_it(episode: Write) -> None:
    outline = """
        title: One
        exercises:
          hang:
            name: Bar hang
            claims:
              - say: Hanging builds strength. # allow: claim-without-source because it is a joke
              # allow: claim-without-source because it is one too
              - say: Hanging builds bone.
              - say: Hanging builds skin.
        """
    facts = worked_out(episode({"outline.yaml": outline}))
    assert [place for place, _ in found(facts, "claim-without-source")] == ["outline.yaml:9:14"]


def test_what_is_allowed_keeps_its_reason_and_whether_it_protects(episode: Write) -> None:
    outline = """
        title: One
        exercises:
          hang: {name: Bar hang, cautions: [maximal-load]} # allow: caution-not-spoken because it is shown
        """
    facts = worked_out(episode({"outline.yaml": outline, "segments/hang.md": SHOWN + "Hello. [aside]"}))
    (allowed,) = (one for one in build.check(facts, "record") if one.allowed)
    assert (allowed.name, allowed.allowed, allowed.protects) == ("caution-not-spoken", "it is shown", True)


def test_a_comment_that_allows_nothing_is_told(episode: Write) -> None:
    text = SHOWN + (
        "Hello. [aside]\n\n<!-- allow: claim-without-source because of that -->\n\n"
        "<!-- allow: nosuch because of this -->\n"
    )
    facts = worked_out(episode({"outline.yaml": ONE, "segments/hang.md": text}))
    assert found(facts, "allow-unused") == [
        (
            "segments/hang.md:3:1",
            (
                'The comment allows "claim-without-source", and there is no such finding on '
                "the line or paragraph it covers."
            ),
        ),
        ("segments/hang.md:5:1", 'The comment allows "nosuch", and there is no finding of that name.'),
    ]


def test_of_very_many_findings_of_a_kind_in_a_text_fifty_are_listed_and_the_rest_counted(episode: Write) -> None:
    text = "\n\n".join(["It builds strength."] * 60)
    told = found(worked_out(episode({"outline.yaml": ONE, "segments/hang.md": text})), "claim-without-source")
    assert len(told) == rules.MOST_IN_A_TEXT + 1
    assert told[-1][0] == "segments/hang.md:101:1"
    assert told[-1][1].startswith("And 10 more of this kind from here on: ")


def test_findings_that_are_allowed_do_not_count_and_no_comment_is_lost_behind_the_fiftieth(episode: Write) -> None:
    allowed = "It builds strength. <!-- allow: claim-without-source because it is a joke -->"
    text = "\n\n".join([allowed] * 20 + ["It builds strength."] * 60 + [allowed] * 20)
    facts = worked_out(episode({"outline.yaml": ONE, "segments/hang.md": text}))
    assert len(found(facts, "claim-without-source")) == rules.MOST_IN_A_TEXT + 1
    assert sum(bool(one.allowed) for one in build.check(facts, "record")) == 40
    assert found(facts, "allow-unused") == []
