"""Jinja in spoken text: a small, safe part of it, bounded in time and output. The only module of its room that knows Jinja."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any, NamedTuple

from jinja2 import StrictUndefined, TemplateError, TemplateSyntaxError, UndefinedError, nodes
from jinja2.sandbox import SandboxedEnvironment
from jinja2.visitor import NodeTransformer

from scriptkit import codes
from scriptkit.computing import saying
from scriptkit.places import Text

MOST_STEPS = 20_000  # turns of loops in one text
MOST_OUTPUT = 400_000  # characters of one text

_FILTERS = frozenset(
    "spoken mid a join first last length count default d lower upper capitalize trim replace sort list unique round int float string abs reverse select reject".split()
)
_ALLOWED = (
    nodes.Template, nodes.Output, nodes.TemplateData, nodes.Name, nodes.Const, nodes.Getattr, nodes.Getitem, nodes.If, nodes.For, nodes.Assign,
    nodes.Compare, nodes.Operand, nodes.And, nodes.Or, nodes.Not, nodes.CondExpr, nodes.Concat, nodes.List, nodes.Tuple, nodes.Dict, nodes.Pair,
    nodes.Filter, nodes.Test, nodes.Keyword, nodes.Call, nodes.Add, nodes.Sub, nodes.Mul, nodes.FloorDiv, nodes.Mod, nodes.Neg, nodes.Slice,
)  # fmt: skip
_NAMES = {
    nodes.Macro: "macro", nodes.CallBlock: "call", nodes.FilterBlock: "filter", nodes.Include: "include", nodes.Import: "import",
    nodes.FromImport: "from", nodes.Extends: "extends", nodes.Block: "block", nodes.With: "with", nodes.Pow: "**", nodes.Div: "/",
}  # fmt: skip


class Fact(str):
    """A name or grade that a draft writes back as a Jinja tag: a `str` that prints as a code with its path."""

    __slots__ = ("path",)
    path: str

    def __new__(cls, value: str, path: str) -> Fact:
        """The fact `value`, found at `path`."""
        fact = super().__new__(cls, value)
        fact.path = path
        return fact

    def __str__(self) -> str:
        return codes.code(codes.TAG, self.path)


class Trouble(NamedTuple):
    """What is wrong with the Jinja of a text. `after` is the last code before it, `words` what it is about."""

    kind: str  # syntax, name, forbidden, bound
    message: str
    line: int
    words: str


class Expanded(NamedTuple):
    """The rendered text with its codes, the values that VALUE codes number, and what went wrong."""

    text: str
    values: tuple[object, ...]
    trouble: Trouble | None


class _TooMuch(Exception):
    """A text runs or grows without end."""


class _Bounds(NodeTransformer):
    """Rewrites loops and joins so that they are counted and cannot grow without end."""

    def visit_For(self, node: nodes.For) -> nodes.For:  # noqa: N802 - the library's name
        """A loop takes its turns from `counted`."""
        self.generic_visit(node)
        node.iter = nodes.Call(nodes.Name("counted__", "load"), [node.iter], [], None, None)
        return node

    def visit_Concat(self, node: nodes.Concat) -> nodes.Call:  # noqa: N802
        """`~` joins through `joined`."""
        self.generic_visit(node)
        return nodes.Call(nodes.Name("joined__", "load"), node.nodes, [], None, None)

    def visit_Add(self, node: nodes.Add) -> nodes.Call:  # noqa: N802
        """`+` adds through `added`."""
        self.generic_visit(node)
        return nodes.Call(nodes.Name("added__", "load"), [node.left, node.right], [], None, None)

    def visit_Mul(self, node: nodes.Mul) -> nodes.Call:  # noqa: N802
        """`*` multiplies numbers only."""
        self.generic_visit(node)
        return nodes.Call(nodes.Name("times__", "load"), [node.left, node.right], [], None, None)


class Expander:
    """Renders the texts of one episode. Keeps one environment and compiled templates; holds no facts of its own."""

    def __init__(self) -> None:
        self._values: list[object] = []
        self._steps = 0
        self._compiled: dict[str, tuple[Any, Trouble | None]] = {}
        self._pick: tuple[int, int] = (0, 0)
        env = SandboxedEnvironment(undefined=StrictUndefined, autoescape=False, finalize=self._finalize, cache_size=0)
        env.filters.update({"spoken": _kept(_spoken, "spoken"), "mid": _kept(saying.mid, "mid"), "a": _kept(saying.a, "a")})
        env.globals.clear()
        env.globals.update({"counted__": self._counted, "joined__": self._joined, "added__": _added, "times__": _times, "pick": self._picked})
        self._env = env

    def expand(self, template: str, names: Mapping[str, object], turn: int = 0) -> Expanded:
        """Render a text. `turn` is what `pick` goes by: the place in the running order."""
        if "{{" not in template and "{%" not in template and "{#" not in template:
            return Expanded(template, (), None)
        compiled, trouble = self._template(template)
        if trouble:
            return Expanded(_plain(template), (), trouble)
        self._values, self._steps, self._pick = [], 0, (turn, 0)
        parts: list[str] = []
        size = 0
        try:
            for part in compiled.generate(dict(names)):
                parts.append(part)
                size += len(part)
                if size > MOST_OUTPUT:
                    raise _TooMuch
        except _TooMuch:
            trouble = Trouble("bound", "it repeats or grows without end", _line_of("".join(parts)), "")
        except UndefinedError as error:
            trouble = Trouble("name", str(error.message or ""), _line_of("".join(parts)), _first_quoted(str(error.message or "")))
        except (TemplateError, TypeError, ValueError, LookupError, ArithmeticError, RecursionError, AttributeError, MemoryError) as error:
            trouble = Trouble("syntax", _plain_words(error), _line_of("".join(parts)), "")
        return Expanded("".join(parts) if not trouble else _plain(template), tuple(self._values), trouble)

    def _template(self, template: str) -> tuple[Any, Trouble | None]:
        if template not in self._compiled:
            self._compiled[template] = self._compile(template)
        return self._compiled[template]

    def _compile(self, template: str) -> tuple[Any, Trouble | None]:
        try:
            tree = self._env.parse(template)
            trouble = _forbidden(tree, template)
            if trouble:
                return None, trouble
            return self._env.from_string(_Bounds().visit(tree)), None
        except TemplateSyntaxError as error:
            return None, Trouble("syntax", _plain_words(error), _line_of(_before(template, error.lineno)), "")
        except (RecursionError, MemoryError, SyntaxError, ValueError, OverflowError):
            return None, Trouble("bound", "its tags are nested too deep", 0, "")

    def _finalize(self, value: object) -> object:
        if isinstance(value, Fact):
            return str(value)
        if isinstance(value, (dict, list, tuple)) and not hasattr(value, "_fields"):
            value = ", ".join(str(member) for member in value)
        if isinstance(value, float) and value == int(value):
            value = int(value)
        number = -1
        if isinstance(value, Text):
            self._values.append(value)
            number = len(self._values) - 1
        words = str(value)
        return codes.code(codes.VALUE, number) + (words if codes.TAG in words else codes.without(words))

    def _counted(self, values: Iterable[Any]) -> Iterable[Any]:
        for value in values:
            self._steps += 1
            if self._steps > MOST_STEPS:
                raise _TooMuch
            yield value

    def _joined(self, *parts: object) -> str:
        if sum(len(part) for part in parts if isinstance(part, str)) > MOST_OUTPUT:
            raise _TooMuch
        return "".join(str(part) for part in parts)

    def _picked(self, *options: object) -> object:
        """One of the options: the first pick of a text goes by its turn, the next ones by other strides, so that they do not march in step."""
        turn, count = self._pick
        self._pick = (turn, count + 1)
        return options[(turn + count * (1 + turn // max(1, len(options)))) % len(options)] if options else ""


def _added(left: Any, right: Any) -> Any:
    for side in (left, right):
        if not isinstance(side, (int, float)):
            raise TypeError("`+` adds numbers; texts are joined with `~`")
    return left + right


def _times(left: Any, right: Any) -> Any:
    for side in (left, right):
        if not isinstance(side, (int, float)) or abs(side) > 1e12:
            raise TypeError("`*` multiplies numbers")
    return left * right


def _spoken(value: object) -> str:
    if isinstance(value, (int, float)):
        return saying.number_spoken(value)
    words = str.__str__(value) if isinstance(value, str) else str(value)
    return saying.grade_spoken(words)


def _kept(function: Callable[[Any], str], name: str) -> Callable[[Any], Any]:
    """A filter that keeps what its value is: words of the outline stay at their place, a fact of a draft stays a tag."""

    def kept(value: Any) -> Any:
        if isinstance(value, Fact):
            return Fact(function(str.__str__(value)), f"{value.path}|{name}")
        made = function(value if name == "spoken" else str(value))
        return value.like(made) if isinstance(value, Text) else made

    return kept


def _forbidden(tree: nodes.Template, template: str) -> Trouble | None:
    for node in tree.find_all(nodes.Node):
        if isinstance(node, nodes.Call) and not (isinstance(node.node, nodes.Name) and node.node.name == "pick"):
            what = "a call"
        elif isinstance(node, (nodes.Filter, nodes.Test)) and isinstance(node, nodes.Filter) and node.name not in _FILTERS:
            what = f"the filter {node.name}"
        elif isinstance(node, nodes.Name) and (node.name.endswith("__")):
            what = f"the name {node.name}"
        elif not isinstance(node, _ALLOWED):
            what = _NAMES.get(type(node), type(node).__name__.lower())
        else:
            continue
        return Trouble("forbidden", what, _line_of(_before(template, node.lineno)), what.rsplit(" ", 1)[-1])
    return None


def _before(template: str, line: int) -> str:
    """The template up to the end of a line, with whatever codes tell where that is."""
    at = 0
    for _ in range(max(0, line)):
        at = template.find("\n", at) + 1
        if at == 0:
            return template
    return template[:at]


def _line_of(rendered: str) -> int:
    """The offset in the author's file of the last place code in a text."""
    found = rendered.rfind(codes.AT)
    return int(rendered[found + 1 : rendered.index(codes.END, found)]) if found >= 0 else 0


def _plain(template: str) -> str:
    """The text with its tags left out: what is spoken where they cannot be rendered."""
    return re.sub(r"\{\{[^{}]*\}\}|\{%[^{}]*%\}|\{#[^{}]*#\}", " ", template)


def _plain_words(error: BaseException) -> str:
    return " ".join(codes.without(str(error)).split())[:160] or "it does not follow the rules of its tags"


def _first_quoted(message: str) -> str:
    found = re.search(r"'([^']{1,60})'(?: is undefined|$)", message) or re.search(r"attribute '([^']{1,60})'", message)
    return found[1] if found else ""
