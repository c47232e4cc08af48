"""Finds cues that are no bare commands: a body part and where it goes, how to move, what "you" or "we" do next."""

from scriptkit.computing.hearing.clauses import Clause, Cues, Speech
from scriptkit.computing.hearing.verbs import AUXILIARIES, finite_verb

ALONE = frozenset(
    "stop rest breathe relax repeat hold pause switch reset rack rerack unrack swap squeeze lift lower push".split()
)
DETERMINERS = frozenset("the your both one a an our".split())
REQUIRED = frozenset("optional compulsory mandatory required".split())
TOWARDS = frozenset("to on in off under over against behind into above towards toward onto inside".split())
WHERE = frozenset("off on out in into at over from down up through around".split())
PLACES = frozenset(
    "floor ground landing way top bottom middle finish start wall box mat bar turn edge sky ceiling ears pockets "
    "sides".split()
)
SLOWER = frozenset(
    "slower faster higher lower deeper softer lighter wider taller quieter closer gentler easier".split()
)
WAITING = frozenset("that now please again this".split())
LIMBS = frozenset(
    (
        "hip hips arm arms chin chest ribs elbow elbows wrist wrists heel heels foot feet toes hand hands fingers "
        "thumb thumbs eyes head shoulder shoulders knee knees bell bar shins"
    ).split()
)
MOVING = frozenset(
    (
        "stay close relax turn go come point drop lift rise open lead follow travel face drive snap rotate sit track "
        "reach sink float kiss touch meet tuck hang"
    ).split()
)
THEMSELVES = frozenset("yourself yourselves ourselves".split())
NOT_DONE = frozenset("get have need lose keep see want know feel gain make use".split())


def cue(speech: Speech, clause: Clause, start: int, cues: Cues) -> int:
    """Where a cue that opens at word `start` ends, or 0: "ribs down", "quick off the floor", "you take the arm in"."""
    words = speech.words
    if words[start : start + 2] == ("you", "must"):
        return start + 2
    if clause.end - start == 1:
        return clause.end if words[start] in ALONE else 0
    if _is_posture(words, clause, start, cues) or _is_manner(words, clause, start, cues):
        return clause.end
    if _is_told(words, clause, start) or _is_withheld(speech, clause, start, cues):
        return clause.end
    return start + 2 if _is_shown(words, clause, start, cues) else 0


def _is_posture(words: tuple[str, ...], clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a short clause is a cue without a verb of its own ("ribs down", "elbows tucked")."""
    return (
        2 <= clause.end - start <= 4
        and words[start] in cues.lists["body"]
        and words[clause.end - 1] in cues.lists["postures"]
        and not any(word in AUXILIARIES for word in words[start : clause.end])
    )


def _is_manner(words: tuple[str, ...], clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a clause only says how to move ("quick off the floor", "chest to the bar", "slower than that")."""
    rest = words[start + 1 : clause.end]
    if rest[-1] in REQUIRED and len(rest) <= 3:
        return AUXILIARIES.isdisjoint(rest)
    if words[start] in cues.lists["body"] and rest[0] in TOWARDS and len(rest) <= 5:
        return (rest[-1] in PLACES or rest[-1] in cues.lists["body"]) and AUXILIARIES.isdisjoint(rest)
    if words[start] in SLOWER:
        return len(rest) <= 3 and (rest[0] in WAITING or (rest[0] == "than" and rest[-1] in WAITING))
    if words[start] not in cues.lists["postures"] or rest[0] not in WHERE or len(rest) > 5:
        return False
    return any(word in PLACES or word in cues.lists["body"] for word in rest)


def _is_shown(words: tuple[str, ...], clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a clause tells what "you" or "we" do with a part of the body or themselves ("you lower yourself")."""
    if words[start] not in ("you", "we") or clause.end - start < 3 or words[start + 1] in NOT_DONE:
        return False
    if words[start + 1] not in cues.lists["verbs"]:
        return False
    if words[start + 1] == "lower" and words[start + 2] in THEMSELVES:
        return True
    if words[start + 1] in cues.lists["effect-verbs"] - {"lower"} or clause.end - start < 4:
        return False
    return words[start + 2] in DETERMINERS and not cues.lists["body"].isdisjoint(words[start + 3 : start + 5])


def _is_told(words: tuple[str, ...], clause: Clause, start: int) -> bool:
    """Whether a short clause tells a movement as if it were seen ("hip closes", "elbows stay home")."""
    if words[start] not in LIMBS or clause.end - start > 5:
        return False
    base = words[start + 1].removesuffix("s")
    return base in MOVING or base.removesuffix("e") in MOVING


def _is_withheld(speech: Speech, clause: Clause, start: int, cues: Cues) -> bool:
    """Whether a clause allows nothing until something is done ("no running till it settles")."""
    words = speech.words
    until = next((i for i in range(start, clause.end) if words[i] in ("until", "till", "unless")), 0)
    if words[start] not in ("no", "nothing") or not until:
        return False
    return finite_verb(speech, Clause(start, until, ""), start, cues) is None
