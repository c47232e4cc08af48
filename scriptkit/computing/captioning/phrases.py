"""Where a line or a caption may end: how much it hurts to break between two words."""

import re
from collections.abc import Sequence
from functools import lru_cache

# what a break costs; only their order and rough distance matter
NEVER = 1000
SENTENCE, CLAUSE, JOINING, LINKING, PLAIN, CLOSE, CLINGING = 0, 2, 6, 10, 30, 45, 80

DETERMINERS = frozenset(
    "a an the my your his her its our their this that these those every each some any no another".split()
)
_BE_HAVE_DO = "am is are was were be been being have has had do does did"
AUXILIARIES = frozenset(f"{_BE_HAVE_DO} will would shall should can could may might must cannot".split())
SHORTENED = ("n't", "'m", "'re", "'ve", "'ll", "'d")
SUBJECTS = frozenset("i he she we they".split())
SUBJECTS_OR_OBJECTS = frozenset("you it".split())
NAMED_IS = frozenset("it that this there here what who where how he she let".split())  # "that's", but not "the calf's"
ADVERBS = frozenset("not never always only also just still really probably ever even now then all both often".split())
CONJUNCTIONS = frozenset(
    (
        "and or but nor so yet because although though if when while unless until since than before after once where "
        "whereas whether as"
    ).split()
)
RELATIVES = frozenset("which who whom whose what how why".split())
PREPOSITIONS = frozenset(
    (
        "of in on at by for from with without into onto over under above below between through during against about "
        "across behind beside around along within beyond past per like off to"
    ).split()
)
NUMBERS = frozenset(
    (
        "two three four five six seven eight nine ten eleven twelve twenty thirty forty fifty sixty seventy eighty "
        "ninety hundred thousand million half first second third last"
    ).split()
)
BEFORE_OF = frozenset("out because instead ahead most some one two three four five none all each half part".split())
_FUNCTION = AUXILIARIES | CONJUNCTIONS | RELATIVES | PREPOSITIONS | DETERMINERS | SUBJECTS | SUBJECTS_OR_OBJECTS
_CLAUSE_END = re.compile(r"[,;:!?…—–][\"'”’)\]]*$|[)\]]$")


def cost(words: Sequence[str], at: int) -> int:
    """What a break before `words[at]` costs; `words` are those of one piece, with their signs."""
    before, after = words[at - 1], words[at]
    earlier = words[at - 2] if at > 1 else ""
    if not _bare(after) and after[0] not in "([{\"“‘'¿¡":
        return NEVER  # a dash or a picture stays with the word before it
    if _CLAUSE_END.search(before) or before in {"-", "--"}:
        return CLAUSE
    if _bound(_bare(earlier), _bare(before), opens=not earlier or bool(_CLAUSE_END.search(earlier))):
        return NEVER
    return max(_by_word(before, after), _in_noun(words, at))


def _bound(earlier: str, before: str, *, opens: bool) -> bool:
    """Whether a word cannot be parted from the next one: article, auxiliary, subject, "to", "not"."""
    if before in DETERMINERS or before in SUBJECTS or before in {"to", "not", "never"} or _auxiliary(before):
        return True
    if before in SUBJECTS_OR_OBJECTS:
        return opens or earlier in CONJUNCTIONS or earlier in RELATIVES or earlier == "that" or _auxiliary(earlier)
    return _auxiliary(earlier) and not opens and (before in ADVERBS or before.endswith("ly"))


def _auxiliary(word: str) -> bool:
    """Whether a word is an auxiliary, or ends in a shortened one."""
    return word in AUXILIARIES or word.endswith(SHORTENED) or (word[-2:] == "'s" and word[:-2] in NAMED_IS)


def _by_word(before: str, after: str) -> int:
    """The cost between two words that may be parted."""
    first, second = _bare(before), _bare(after)
    if first in PREPOSITIONS or first in CONJUNCTIONS or first in RELATIVES or _counts(first):
        return CLINGING
    if before[:1].isupper() and after[:1].isupper() and second != "i":
        return CLINGING  # a name
    if first in ADVERBS or "-" in first or (second == "of" and first in BEFORE_OF):
        return CLOSE
    if second in CONJUNCTIONS:
        return JOINING
    return LINKING if second in PREPOSITIONS or second.removesuffix("'s") in RELATIVES or second == "that's" else PLAIN


def _in_noun(words: Sequence[str], at: int) -> int:
    """The cost of a break that may part a noun from the words before it; where the noun ends nobody knows."""
    if _leads_on(words[at]):
        return 0
    earlier = [_bare(word) for word in words[max(0, at - 3) : at - 1]]
    if earlier and earlier[-1] in DETERMINERS:
        return CLINGING  # "the big / muscle"
    open_still = len(earlier) > 1 and not _leads_on(words[at - 2]) and not _CLAUSE_END.search(words[at - 2])
    if (open_still and earlier[0] in DETERMINERS) or (earlier and earlier[-1] in PREPOSITIONS):
        return CLOSE  # "the big calf / muscle", "for hill / runners"
    return 0


def _leads_on(word: str) -> bool:
    """Whether a word cannot belong to the noun before it."""
    return _bare(word) in _FUNCTION or _auxiliary(_bare(word))


def _counts(word: str) -> bool:
    return word in NUMBERS or word[:1].isdigit()


@lru_cache(maxsize=4096)
def _bare(word: str) -> str:
    """A word in small letters, without the signs around it."""
    return re.sub(r"^\W+|\W+$", "", word.replace("’", "'").lower())
