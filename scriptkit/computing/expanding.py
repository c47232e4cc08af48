"""Jinja in spoken text: a small, safe part of it, bounded in time and output. The only module of its room that knows Jinja."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any, NamedTuple

from jinja2 import StrictUndefined, TemplateAssertionError, TemplateError, TemplateSyntaxError, UndefinedError, nodes
from jinja2.compiler import CodeGenerator
from jinja2.sandbox import SandboxedEnvironment

from scriptkit import codes
from scriptkit.computing import saying
from scriptkit.places import Text

MOST_STEPS = 20_000  # turns of loops in one text
MOST_OUTPUT = 400_000  # characters of one text

_FILTERS = (
    "join", "first", "last", "length", "count", "default", "d", "lower", "upper", "capitalize", "trim", "replace", "sort", "list", "unique",
    "round", "int", "float", "string", "abs", "reverse", "select", "reject",
)  # fmt: skip


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


def _refused(name: str) -> Callable[..., None]:
    def refuse(self: CodeGenerator, node: nodes.Node, frame: object) -> None:
        raise _Forbidden(name, node.lineno)

    return refuse


class _Generator(CodeGenerator):
    """Writes the code of a text: loops and joins through the environment, which bounds them; what spoken text cannot use is refused."""

    environment: _Environment

    def visit_For(self, node: nodes.For, frame: Any) -> None:  # noqa: N802 - the library's name
        """A loop takes its turns from `counted`."""
        # a node type of our own is not to be had; this one is made by extensions only, and there are none
        node.iter = nodes.MarkSafe(node.iter, lineno=node.lineno)
        super().visit_For(node, frame)

    def visit_MarkSafe(self, node: nodes.MarkSafe, frame: Any) -> None:  # noqa: N802
        """The iterable of a loop, counted."""
        self.write("environment.counted(")
        self.visit(node.expr, frame)
        self.write(")")

    def visit_Concat(self, node: nodes.Concat, frame: Any) -> None:  # noqa: N802
        """`~` joins through `joined`."""
        self.write("environment.joined((")
        for part in node.nodes:
            self.visit(part, frame)
            self.write(", ")
        self.write("))")

    def visit_Call(self, node: nodes.Call, frame: Any, **options: Any) -> None:  # noqa: N802
        """Only `pick` is called."""
        if not (isinstance(node.node, nodes.Name) and node.node.name == "pick"):
            raise _Forbidden("a call", node.lineno)
        super().visit_Call(node, frame, **options)

    visit_Macro = _refused("macro")  # noqa: N815
    visit_CallBlock = _refused("call")  # noqa: N815
    visit_FilterBlock = _refused("filter")  # noqa: N815
    visit_Include = _refused("include")  # noqa: N815
    visit_Import = _refused("import")  # noqa: N815
    visit_FromImport = _refused("from")  # noqa: N815
    visit_Extends = _refused("extends")  # noqa: N815
    visit_Block = _refused("block")  # noqa: N815
    visit_Pow = _refused("**")  # noqa: N815
    visit_Div = _refused("/")  # noqa: N815
    visit_AssignBlock = _refused("set without =")  # noqa: N815


class _Forbidden(Exception):
    """A tag that spoken text cannot use, and its line."""


class _Environment(SandboxedEnvironment):
    """Jinja for spoken text, which counts the turns of loops and bounds what sums and joins make."""

    code_generator_class = _Generator
    intercepted_binops = frozenset({"+", "*", "-", "//", "%"})
    steps = 0

    def counted(self, values: Iterable[Any]) -> Iterable[Any]:
        """The values, until there were too many turns."""
        for value in values:
            self.steps += 1
            if self.steps > MOST_STEPS:
                raise _TooMuch
            yield value

    def joined(self, parts: tuple[object, ...]) -> str:
        """The parts as one text, unless it grows too long."""
        if sum(len(part) for part in parts if isinstance(part, str)) > MOST_OUTPUT:
            raise _TooMuch
        return "".join(str(part) for part in parts)

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """Sums are for numbers of a size that a script can hold."""
        for side in (left, right):
            if not isinstance(side, (int, float)) or abs(side) > 1e12:
                raise TypeError(f"`{operator}` works on numbers; texts are joined with `~`")
        return super().call_binop(context, operator, left, right)


class Expander:
    """Renders the texts of one episode. Keeps one environment and compiled templates; holds no facts of its own."""

    def __init__(self) -> None:
        self._values: list[object] = []
        self._compiled: dict[str, tuple[Any, Trouble | None]] = {}
        self._pick: tuple[int, int] = (0, 0)
        env = _Environment(
            undefined=StrictUndefined, autoescape=False, finalize=self._finalize, cache_size=0, optimized=False
        )
        env.filters = {name: env.filters[name] for name in _FILTERS}
        env.filters.update(
            {"spoken": _kept(_spoken, "spoken"), "mid": _kept(saying.mid, "mid"), "a": _kept(saying.a, "a")}
        )
        env.globals = {"pick": self._picked}
        self._env = env

    def expand(self, template: str, names: Mapping[str, object], turn: int = 0) -> Expanded:
        """Render a text. `turn` is what `pick` goes by: the place in the running order."""
        if "{{" not in template and "{%" not in template and "{#" not in template:
            return Expanded(template, (), None)
        compiled, trouble = self._template(template)
        if trouble:
            return Expanded(_plain(template), (), trouble)
        self._values, self._env.steps, self._pick = [], 0, (turn, 0)
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
            trouble = Trouble(
                "name", str(error.message or ""), _line_of("".join(parts)), _first_quoted(str(error.message or ""))
            )
        except (
            TemplateError,
            TypeError,
            ValueError,
            LookupError,
            ArithmeticError,
            RecursionError,
            AttributeError,
            MemoryError,
        ) as error:
            trouble = Trouble("syntax", _plain_words(error), _line_of("".join(parts)), "")
        return Expanded("".join(parts) if not trouble else _plain(template), tuple(self._values), trouble)

    def _template(self, template: str) -> tuple[Any, Trouble | None]:
        if template not in self._compiled:
            self._compiled[template] = self._compile(template)
        return self._compiled[template]

    def _compile(self, template: str) -> tuple[Any, Trouble | None]:
        try:
            return self._env.from_string(template), None
        except _Forbidden as refused:
            what, line = refused.args
            return None, Trouble("forbidden", what, _line_of(_before(template, line)), what)
        except TemplateAssertionError as error:
            filter_name = _first_quoted(str(error.message or ""))
            return None, Trouble(
                "forbidden", f"the filter {filter_name}", _line_of(_before(template, error.lineno)), filter_name
            )
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

    def _picked(self, *options: object) -> object:
        """One of the options: the first pick of a text goes by its turn, the next ones by other strides, so that they do not march in step."""
        turn, count = self._pick
        self._pick = (turn, count + 1)
        return options[(turn + count * (1 + turn // max(1, len(options)))) % len(options)] if options else ""


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
    found = re.search(r"(?:attribute|named) '([^']{1,60})'", message) or re.search(
        r"'([^']{1,60})' is undefined", message
    )
    return found[1] if found else ""
