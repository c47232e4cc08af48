"""The Jinja tags of a text: where each stands, which may not be there, and which lacks its other half."""

import re
from typing import NamedTuple

from scriptkit import codes
from scriptkit.model import SegmentText

MOST_TAGS = 4000  # in one text
LONGEST = 2000  # characters of one tag
DEEPEST = 12  # blocks in blocks

# A tag holds no code: it stands in one paragraph. Quoted words in it may hold its end.
_TAGS = {
    "{{": re.compile(r"\{\{(?=((?:\"[^\"\n\x00-\x08]*\"|'[^'\n\x00-\x08]*'|(?!\}\})[^\x00-\x08])*))\1\}\}"),
    "{%": re.compile(r"\{%(?=((?:\"[^\"\n\x00-\x08]*\"|'[^'\n\x00-\x08]*'|(?!%\})[^\x00-\x08])*))\1%\}"),
    "{#": re.compile(r"\{#(?=((?:(?!#\})[^\x00-\x08])*))\1#\}"),
}
_OPEN = re.compile(r"\{[{%#]")
_NAME = re.compile(r"\{%[-+]?\s*(\w*)")
_SET = re.compile(r"\{%[-+]?\s*set\s+([^\W\d]\w*)\s*=")
_POSITION = re.compile(f"([{codes.PARAGRAPH}{codes.AT}{codes.MARK}])(\\d+){codes.END}")
_NEUTRAL = {"if": "{% if false %}", "elif": "{% elif false %}", "for": "{% for _ in [] %}"}
_CLOSES = {"endif": "if", "endfor": "for"}


class Tag(NamedTuple):
    """One tag: where in the template it stands, as it is written, and the first word of a `{% %}`."""

    start: int
    text: str
    name: str


class Trouble(NamedTuple):
    """What is wrong with a tag. `kind`: syntax, name, forbidden or bound.

    `word` is what in the tag it is about; `known` are the names that could have stood there. `tag` is its number,
    from 0.
    """

    kind: str
    message: str
    tag: int
    word: str = ""
    known: tuple[str, ...] = ()


class Tagged(NamedTuple):
    """A template taken apart: `texts[n]` stands before `tags[n]`, the last text behind the last tag.

    `instead` is what Jinja gets for a tag; `extents` is the length of each loop in characters, by the number of its
    tag.
    """

    texts: tuple[str, ...]
    tags: tuple[Tag, ...]
    instead: dict[int, str]
    extents: dict[int, int]
    closing: str
    troubles: tuple[Trouble, ...]
    hopeless: bool


def neutral(tag: Tag) -> str:
    """What stands for a tag that cannot be used, so that the rest of the text is still read."""
    assigned = _SET.match(tag.text)
    return f'{{% set {assigned[1]} = "" %}}' if assigned else _NEUTRAL.get(tag.name, "")


def take_apart(template: str) -> Tagged:
    """Find the tags of a template and see that each may be there and has its other half."""
    texts, tags, open_ = _found(template)
    structure = _Structure(template, tags)
    for number, tag in enumerate(tags):
        structure.take(number, tag, lonely=number in open_)
    return structure.finished(texts)


def _found(template: str) -> tuple[list[str], list[Tag], set[int]]:
    """Texts, tags, and the numbers of those that are opened and never closed."""
    texts: list[str] = []
    tags: list[Tag] = []
    lonely: set[int] = set()
    done, dead = 0, {"{{": 0, "{%": 0, "{#": 0}
    for opening in _OPEN.finditer(template):
        start = opening.start()
        if start < done:
            continue
        found = _TAGS[opening[0]].match(template, start) if start >= dead[opening[0]] else None
        if found is None:
            # nothing closes it before the next code, and nothing closes the next one like it either
            if start >= dead[opening[0]]:
                code = codes.ANY.search(template, start)
                dead[opening[0]] = code.start() if code else len(template)
            lonely.add(len(tags))
        texts.append(template[done:start])
        text = found[0] if found else opening[0]
        name = _NAME.match(text)
        tags.append(Tag(start, text, name[1] if name and found else ""))
        done = start + len(text)
    texts.append(template[done:])
    return texts, tags, lonely


class _Structure:
    """Goes over the tags in order: which blocks are open, and what has to be put right."""

    def __init__(self, template: str, tags: list[Tag]) -> None:
        self.template, self.tags = template, tags
        self.open: list[int] = []
        self.instead: dict[int, str] = {}
        self.extents: dict[int, int] = {}
        self.troubles: list[Trouble] = []
        self.refused: set[str] = set()
        self.hopeless = False

    def take(self, number: int, tag: Tag, *, lonely: bool) -> None:
        """One tag."""
        if lonely:
            self.instead[number] = " " * len(tag.text)  # as long as it was, so that words keep their places
            self._trouble("syntax", f"`{tag.text}` is opened and not closed in its paragraph", number)
        elif len(tag.text) > LONGEST and not tag.text.startswith("{#"):
            self._left_out("bound", "it is longer than any tag should be", number)
        elif "\\" in tag.text and not tag.text.startswith("{#"):
            self._left_out("syntax", "a tag holds no backslash", number, "\\")
        elif tag.text.startswith("{%"):
            self._block(number, tag)
        elif tag.text.startswith("{{") and not tag.text.strip("{}-+ \n\t"):
            self._left_out("syntax", "it is empty", number)

    def _block(self, number: int, tag: Tag) -> None:
        name = tag.name
        if name in ("if", "for"):
            self.open.append(number)
            if len(self.open) > DEEPEST and not self.hopeless:
                self.hopeless = True
                self._trouble("bound", "its blocks are nested too deep", number)
        elif name in _CLOSES:
            self._close(number, _CLOSES[name])
        elif name in ("else", "elif"):
            top = self.tags[self.open[-1]].name if self.open else ""
            if not top or (name == "elif" and top != "if"):
                self._left_out("syntax", f"`{name}` stands in no `if`", number, name)
        elif name != "set" or "=" not in tag.text:
            self.instead[number] = ""
            if not (name.startswith("end") and name[3:] in self.refused):
                self.refused.add(name)
                what = "`set` without `=`" if name == "set" else f"`{name}`" if name else "such a tag"
                self._trouble("forbidden", what, number, name)

    def _close(self, number: int, what: str) -> None:
        if not any(self.tags[opened].name == what for opened in self.open):
            self._left_out("syntax", f"`end{what}` stands behind no `{what}`", number, f"end{what}")
            return
        missing = ""
        while self.tags[self.open[-1]].name != what:
            missing += self._unclosed()
        opened = self.open.pop()
        self.extents[opened] = self.tags[number].start - self.tags[opened].start
        if missing:
            self.instead[number] = missing + self.tags[number].text

    def _unclosed(self) -> str:
        """Close the innermost block that the text leaves open."""
        opened = self.open.pop()
        name = self.tags[opened].name
        self.extents[opened] = len(self.template) - self.tags[opened].start
        self._trouble("syntax", f"the `{name}` has no `end{name}`", opened, name)
        return f"{{% end{name} %}}"

    def _left_out(self, kind: str, message: str, number: int, word: str = "") -> None:
        tag = self.tags[number]
        if tag.name in ("if", "for"):
            self.open.append(number)
        self.instead[number] = neutral(tag)
        self._trouble(kind, message, number, word)

    def _trouble(self, kind: str, message: str, number: int, word: str = "") -> None:
        self.troubles.append(Trouble(kind, message, number, word))

    def finished(self, texts: list[str]) -> Tagged:
        """All that was found."""
        closing = ""
        while self.open:
            closing += self._unclosed()
        if len(self.tags) > MOST_TAGS:
            self.hopeless = True
            self._trouble("bound", f"there are more than {MOST_TAGS} tags", MOST_TAGS)
        troubles = sorted(self.troubles, key=lambda one: one.tag)
        return Tagged(
            tuple(texts), tuple(self.tags), self.instead, self.extents, closing, tuple(troubles), self.hopeless
        )


def origins(tagged: Tagged, text: SegmentText) -> tuple[int, ...]:
    """The offset in the author's file of each tag. Linear in the text."""
    found: list[int] = []
    source, starts = text.file.text, text.file.starts()
    position = 0
    for before, tag in zip(tagged.texts, tagged.tags, strict=False):
        for code in _POSITION.finditer(before):
            number = int(code[2])
            if code[1] == codes.PARAGRAPH:
                number = starts[text.paragraphs[number][0] - 1]
            position = max(position, number)
        first_line = tag.text.partition("\n")[0]
        there = source.find(first_line, position)
        position = there if there >= 0 else position
        found.append(position)
        position += len(first_line) if there >= 0 else 0
    return tuple(found)


def place_in(tagged: Tagged, trouble: Trouble, at: int, source: str) -> int:
    """The offset in the author's file of the word that a trouble is about; `at` is where its tag stands."""
    if not trouble.word or trouble.word not in tagged.tags[trouble.tag].text:
        return at
    return max(at, source.find(trouble.word, at))
