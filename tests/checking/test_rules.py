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
    modules = {one.name for one in pkgutil.iter_modules([str(Path(checking.__file__).parent)])} - {"rules", "placing"}
    assert {kind.maker.__module__.rpartition(".")[2] for kind in rules.kinds().values()} == modules | {"rules"}


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
