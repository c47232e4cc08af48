"""Checks of words that may hurt a viewer. They are no medical advice; licensed practice and local rules come first."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import risks
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted

EMERGENCY = "Stop at once, and call your local emergency number."
DEFERRAL = "Ask a licensed clinician before you do any of this."
THEIRS = "If that is you, ask a licensed clinician who can examine you."
STOP_SIGNS = "Add `high-intensity` to the exercise's `cautions:` and say its line once in the episode."
FOR_A_CLINICIAN = "that is for a licensed clinician who can examine you"


@check("error", "record", protects=True)
def emergency_not_answered(facts: Facts) -> Iterator[Found]:
    """A sign of an emergency is spoken of, and its segment does not send for emergency help.

    Chest pain, fainting, sudden weakness: a viewer who has it now must hear to stop and to get emergency help, by the
    local number. "See a doctor" is not enough for these. A viewer's question counts as well. This is no medical advice.

    Rule: ours, after common first-aid teaching; the list of signs is in scriptkit/words and is not complete.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you get chest pain, take a longer rest.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you get chest pain, stop, and call your local emergency number.
    """
    for risk in risks(facts, "emergency"):
        yield (
            risk.place,
            f"{quoted(risk.words)} can be an emergency, and this segment does not say to stop and get emergency help.",
            f"Say in the same segment: {quoted(EMERGENCY)}",
        )


@check("error", "record", protects=True)
def red_flag_not_deferred(facts: Facts) -> Iterator[Found]:
    """A sign or condition that belongs to a clinician is spoken of, and its segment does not defer to one.

    It is about signs that a viewer may have: an operation, a pregnancy, numbness, dizziness, a heart condition. Your
    own story and what a study reports of its people do not count. This is no medical advice.

    Rule: ours, after common teaching on when to refer (scope of practice); the list is in scriptkit/words.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you have had surgery, keep the first hangs short.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you have had surgery, ask a licensed clinician before you hang.
    """
    for risk in risks(facts, "clinician"):
        yield (
            risk.place,
            f"{quoted(risk.words)} is for a licensed clinician, and this segment sends nobody to one.",
            f"Say in the same segment: {quoted(DEFERRAL)}",
        )


@check("error", "record", protects=True)
def advice_beside_red_flag(facts: Facts) -> Iterator[Found]:
    """Exercise is advised to somebody with a sign of illness or a diagnosis.

    "If you have this, do that" is treatment, and nobody can give it to a viewer who was not examined. It counts in the
    same sentence and in the next one of the paragraph. A licence does not change it. What to say there answers the
    sign as well, so it is told once. This is no medical advice.

    Rule: scope of practice as published by trainers' associations, no treatment and no prescription; the form is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you have a herniated disc, do short hangs.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        If you have a herniated disc, ask a licensed clinician which of these you may do.
    """
    for risk in risks(facts, "advice", "advice-in-emergency"):
        instead = EMERGENCY if risk.kind == "advice-in-emergency" else THEIRS
        yield (
            risk.place,
            f"{quoted(risk.words)} and {quoted(risk.hint)} together are advice to a patient.",
            f"Leave the exercise out of it, and say there: {quoted(instead)}",
        )


@check("error", "record", protects=True)
def cure_promised(facts: Facts) -> Iterator[Found]:
    """Words promise to cure, to mend or to protect a body.

    Cures, heals, fixes your back, treats, prevents injury, bulletproof, realign, detox, safe for everyone, no risk, no
    more pills, ten kilos in a week: no exercise earns them, and no licence turns them into something a viewer may rely
    on. Title, promises and cards count as well; a question, a denial and what others are said to believe do not.

    Rule: scope of practice as published by trainers' associations; the list of words is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think it fixes your shoulders. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think it suits my shoulders. [opinion]
    """
    for risk in risks(facts, "cure"):
        instead = f"{quoted(risk.hint)}; or" if risk.hint else "what was measured, as"
        yield (
            risk.place,
            f"{quoted(risk.words)} promises more than exercise can: {quoted(risk.sentence)}.",
            (f'Say {instead} "in [SOURCE], people with … reported …"; what to do about an illness, {FOR_A_CLINICIAN}.'),
        )


@check("warning", "record", protects=True)
def clinical_wording(facts: Facts) -> Iterator[Found]:
    """Words sound like a diagnosis, or make people fear for their bodies.

    Corrective, dysfunction, imbalance, "that's tendinitis"; wrecks your knees, bone on bone. Whoever says them, a
    viewer hears a finding about their own body. So are a dose of a powder or a pill, a diet in figures, and heaviest
    lifts for the young. Frightening words stand with a source only. A licence does not change this warning.

    Rule: ours, after scope of practice and what is known of words that raise expectations of pain.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I use it as a corrective drill. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I use it as practice. [opinion]
    """
    for risk in risks(facts, "clinical"):
        yield (
            risk.place,
            f"{quoted(risk.words)} is for a clinician to say, or makes people afraid: {quoted(risk.sentence)}.",
            f"Say {quoted(risk.hint)} instead." if risk.hint else "Say what a viewer sees or feels.",
        )


@check("warning", "record", protects=True)
def stop_signs_not_said(facts: Facts) -> Iterator[Found]:
    """The episode asks for hard efforts, and nobody says by which signs to stop.

    Hard are commands such as "to failure" or "all out". Once in the episode is enough: chest pain, fainting, no
    breath; stop, and get help. The caution `high-intensity` has such a line. This is no medical advice.

    Rule: ours, after common teaching on warning signs in exercise.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Take every set to failure.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Take every set to failure. If your chest hurts or you faint, stop, and call your local emergency number.
    """
    for risk in risks(facts, "hard-effort"):
        yield (
            risk.place,
            f"{quoted(risk.words)} asks for a hard effort, and nobody says by which signs to stop.",
            STOP_SIGNS,
        )


@check("note", "record", protects=True)
def stop_signs_worth_saying(facts: Facts) -> Iterator[Found]:
    """An exercise is tagged as hard, and nobody says by which signs to stop.

    The tags are maximal-load, breath-hold, plyometric, ballistic and high-intensity. Each has a caution of its own,
    and where the text calls for no hard effort that may be enough: so this is a note. This is no medical advice.

    Rule: ours, after common teaching on warning signs in exercise.

    Bad:
        title: One
        exercises: {lift: {name: Box squat, cautions: [maximal-load]}}
        --- segments/lift.md
        {{ cautions['maximal-load'].line }}
    Good:
        title: One
        exercises: {lift: {name: Box squat, cautions: [maximal-load]}}
        --- segments/lift.md
        {{ cautions['maximal-load'].line }}

        If your chest hurts or you faint, stop, and call your local emergency number.
    """
    for risk in risks(facts, "hard-tag"):
        yield (
            risk.place,
            f"{quoted(risk.sentence)} is tagged {quoted(risk.words)}, and nobody says by which signs to stop.",
            STOP_SIGNS,
        )
