"""Texts with their tags filled in: each tag that cannot be used is told and left out, and the rest is still read."""

import re
from collections.abc import Iterator, Mapping
from math import isfinite
from types import TracebackType
from typing import Any, NamedTuple

from scriptkit import codes
from scriptkit.computing.writing import direct, expanding, made, tags
from scriptkit.computing.writing.printing import FILTERS, Fact, PlainError, printable, without_codes
from scriptkit.computing.writing.tags import Tagged, Trouble
from scriptkit.model import SegmentText
from scriptkit.places import Text

MOST_OUTPUT = 400_000  # characters of one text
MOST_REPAIRS = 12  # tags that are found out one by one
_SPACE = "\x0b"  # a line break of the text, while each tag has a line of its own

_ANY_FAULT = (
    *expanding.FAULTS,
    *expanding.UNCOMPILABLE,
    expanding.ForbiddenError,
    expanding.TemplateSyntaxError,
    expanding.TooMuchError,
    PlainError,
)
_GOT = re.compile(r"got '([^']{1,40})'")
_NAMED = re.compile(r"(filter|test) named '([^']{1,60})'")


class Expanded(NamedTuple):
    """The rendered text with its codes, the values that VALUE codes number, and what went wrong.

    A trouble comes with the offset in the author's file of the words it is about.
    """

    text: str
    values: tuple[object, ...]
    troubles: tuple[tuple[Trouble, int], ...]


class _Plan(NamedTuple):
    """A text made ready for Jinja: what stands for each tag, the compiled whole (None: hopeless), troubles so far."""

    tagged: Tagged
    at: tuple[int, ...]
    instead: dict[int, str]
    compiled: Any
    troubles: tuple[Trouble, ...]
    only_names: bool

    def extents(self) -> dict[int, int]:
        """The lengths of the loops, by the lines that they have in what Jinja gets."""
        return {number + 2: size for number, size in self.tagged.extents.items()}


class Expander:
    """Fills the texts of one episode. Keeps compiled texts; holds no facts of its own."""

    def __init__(self) -> None:
        self._values: list[object] = []
        self._plans: dict[tuple[bool, str, str], _Plan] = {}
        self._made: dict[str, Any] = {}
        self._pick: tuple[int, int] = (0, 0)
        self._env = expanding.Environment(self._finalize, self._picked)
        self._env.filters.update(FILTERS)

    def expand(self, text: SegmentText, names: Mapping[str, object], turn: int = 0) -> Expanded:
        """Render a text. `turn` is what `pick` goes by: the place in the running order."""
        template = text.template
        if "{{" not in template and "{%" not in template and "{#" not in template:
            return Expanded(template, (), ())
        if text.origin == "stock" and (rendered := self._as_made(text, names, turn)) is not None:
            return Expanded(rendered, tuple(self._values), ())
        key = (text.origin == "stock", text.file.name, template)
        plan = self._plans.get(key)
        if plan is None:
            plan = self._plans[key] = self._planned(text)
        self._values, self._env.steps, self._pick = [], 0, (turn, 0)
        rendered = self._put_in(plan, names) if plan.only_names else None
        if rendered is None and plan.compiled is None and not plan.tagged.hopeless:
            plan = self._plans[key] = self._compiled(plan)
        while plan.compiled is not None and rendered is None:
            self._values, self._env.steps, self._pick = [], 0, (turn, 0)
            rendered, trouble = self._rendered(plan.compiled, names)
            if trouble:
                plan = self._repaired(plan, trouble)
        if rendered is None:
            rendered, self._values = "".join(plan.tagged.texts), []
        source = "" if text.origin == "stock" else text.file.text
        at = plan.at or tags.origins(plan.tagged, text) if plan.troubles and source else ()
        placed = [(one, tags.place_in(plan.tagged, one, at[one.tag], source) if at else 0) for one in plan.troubles]
        return Expanded(rendered, tuple(self._values), tuple(placed))

    def _as_made(self, text: SegmentText, names: Mapping[str, object], turn: int) -> str | None:
        """A stock text, rendered by the code that was made of it before; None where there is none, or it fails."""
        if text.id not in self._made:
            self._made[text.id] = made.template(text, self._env)
        compiled = self._made[text.id]
        self._values, self._env.steps, self._pick = [], 0, (turn, 0)
        return self._rendered(compiled, names)[0] if compiled else None

    def code(self, text: SegmentText) -> str:
        """The code that Jinja makes of a text, to be kept: it finds its environment among its globals."""
        plan = self._planned(text)
        self._env.extents = plan.extents()
        return self._env.compile(_source(plan), raw=True, defer_init=True)

    def _planned(self, text: SegmentText) -> _Plan:
        tagged = tags.take_apart(text.template)
        at = () if text.origin == "stock" else tags.origins(tagged, text)
        names_alone = all(
            one.text.startswith("{{") and not (one.text.startswith("{{-") or one.text.endswith("-}}"))
            for one in tagged.tags
        )
        only_names = names_alone and not tagged.instead and not tagged.troubles
        return _Plan(tagged, at, dict(tagged.instead), None, tagged.troubles, only_names)

    def _put_in(self, plan: _Plan, names: Mapping[str, object]) -> str | None:
        """A text that only puts names in, without compiling it.

        None where anything is wrong with one of them, or it is more than a name: the whole text is compiled then.
        """
        parts: list[str] = []
        for before, written in _pieces(plan):
            parts.append(before)
            if written:
                try:
                    value = direct.value(written, names, self._env)
                    if value is None:
                        return None
                    parts.append(str(self._finalize(value)))
                except _ANY_FAULT:
                    return None
        text = "".join(parts)
        return text.replace("\n", "") if len(text) <= MOST_OUTPUT else None

    def _compiled(self, plan: _Plan) -> _Plan:
        """The plan with its text compiled; each tag that Jinja refuses is told and left out."""
        self._env.extents = plan.extents()
        while True:
            try:
                compiled = self._env.from_string(_source(plan))
            except expanding.ForbiddenError as refused:
                trouble = Trouble("forbidden", str(refused.args[0]), refused.args[1] - 2)
            except expanding.TemplateAssertionError as error:
                named = _NAMED.search(error.message or "")
                what = f"the {named[1]} `{named[2]}`" if named else "this"
                known = tuple(sorted(self._env.filters)) if named and named[1] == "filter" else ()
                trouble = Trouble("forbidden", what, error.lineno - 2, named[2] if named else "", known)
            except expanding.TemplateSyntaxError as error:
                got = _GOT.search(error.message or "")
                word = got[1] if got and got[1].isidentifier() else ""
                trouble = Trouble("syntax", "it does not follow the rules of tags", error.lineno - 2, word)
            except expanding.UNCOMPILABLE:
                longest = max(range(len(plan.tagged.tags)), key=lambda number: len(plan.tagged.tags[number].text))
                trouble = Trouble("bound", "it is nested too deep", longest)
            else:
                return plan._replace(compiled=compiled)
            repaired = _without(plan, trouble)
            if repaired is None:
                return plan._replace(compiled=None, troubles=_more(plan, trouble))
            plan = repaired

    def _repaired(self, plan: _Plan, trouble: Trouble) -> _Plan:
        repaired = _without(plan, trouble)
        if repaired is None:
            return plan._replace(compiled=None, troubles=_more(plan, trouble))
        return self._compiled(repaired)

    def _rendered(self, compiled: Any, names: Mapping[str, object]) -> tuple[str | None, Trouble | None]:
        """The rendered text, or what went wrong first."""
        parts: list[str] = []
        size = 0
        pieces = compiled.root_render_func(compiled.new_context(dict(names)))
        try:
            for part in pieces:
                parts.append(part)
                size += len(part)
                if size > MOST_OUTPUT:
                    return None, Trouble("bound", _ENDLESS, _tag_of(compiled, pieces.gi_frame.f_lineno))
        except (*expanding.FAULTS, expanding.TooMuchError, PlainError) as error:
            return None, _told(error, _tag_of(compiled, _line_of(error.__traceback__, pieces.gi_code)), names)
        return "".join(parts).replace("\n", ""), None

    def _finalize(self, value: object) -> object:
        if isinstance(value, Fact):
            return str(value)
        number = -1
        if isinstance(value, Text):
            self._values.append(value)
            number = len(self._values) - 1
        elif isinstance(value, (int, float)) and not isinstance(value, bool) and isfinite(value):
            value = int(value) if abs(value) < expanding.LARGEST and value == int(value) else value
        elif not isinstance(value, str):
            value = printable(value)
        return codes.code(codes.VALUE, number) + without_codes(str(value))

    def _picked(self, *options: object) -> object:
        """One of the options: the first pick of a text goes by its turn, the next ones by other strides."""
        turn, count = self._pick
        self._pick = (turn, count + 1)
        return options[(turn + count * (1 + turn // max(1, len(options)))) % len(options)] if options else ""


_ENDLESS = "it repeats or grows without end"


def _source(plan: _Plan) -> str:
    """What Jinja gets: the text with each tag on a line of its own, so that a line number is a tag's number."""
    pieces = list(_pieces(plan))
    tagged = [part for text, written in pieces[:-1] for part in (text, "\n", written)]
    return "".join((*tagged, pieces[-1][0], plan.tagged.closing))


def _pieces(plan: _Plan) -> Iterator[tuple[str, str]]:
    """Each stretch of text with the tag behind it as Jinja gets it; the last stretch has none."""
    for number, (before, tag) in enumerate(zip(plan.tagged.texts, plan.tagged.tags, strict=False)):
        text = before.replace("\n", _SPACE)
        written = plan.instead.get(number)
        if written is None:
            written = tag.text.replace("\n", " ")
            if plan.at and written.startswith("{{"):
                # what the tag gives stands, in an author's file, where the tag stands
                place = codes.code(codes.AT, plan.at[number])
                text = text.rstrip() + place if written.startswith("{{-") else text + place
        yield text, written
    yield plan.tagged.texts[-1].replace("\n", _SPACE), ""


def _without(plan: _Plan, trouble: Trouble) -> _Plan | None:
    """The plan with the tag of a trouble left out; None where that would not help."""
    number = trouble.tag
    if not 0 <= number < len(plan.tagged.tags) or len(plan.troubles) >= MOST_REPAIRS:
        return None
    tag = plan.tagged.tags[number]
    instead = tags.neutral(tag)
    if number in plan.instead and plan.instead[number] != tag.text and plan.instead[number] in (instead, ""):
        return None
    return plan._replace(instead={**plan.instead, number: instead}, troubles=_more(plan, trouble))


def _more(plan: _Plan, trouble: Trouble) -> tuple[Trouble, ...]:
    """The troubles with one more, on a tag that is there."""
    number = min(max(0, trouble.tag), len(plan.tagged.tags) - 1)
    return (*plan.troubles, trouble._replace(tag=number))


def _told(error: BaseException, tag: int, names: Mapping[str, object]) -> Trouble:
    """What went wrong, in words for a person who is no programmer."""
    if isinstance(error, expanding.TooMuchError):
        return Trouble("bound", _ENDLESS, tag)
    if isinstance(error, PlainError):
        return Trouble("syntax", str(error), tag)
    if isinstance(error, expanding.MissingError):
        known = error.known or (tuple(names) if error.name not in names else ())
        return Trouble("name", "", tag, error.name, known)
    if isinstance(error, (RecursionError, MemoryError)):
        return Trouble("bound", "it is nested too deep", tag)
    return Trouble("syntax", "it asks for something that cannot be done with these things", tag)


def _line_of(trace: TracebackType | None, code: object) -> int:
    """The line of the rendering code that an error came through."""
    line = 0
    while trace is not None:
        if trace.tb_frame.f_code is code:
            line = trace.tb_lineno
        trace = trace.tb_next
    return line


def _tag_of(compiled: Any, line: int) -> int:
    return int(compiled.get_corresponding_lineno(line)) - 2
