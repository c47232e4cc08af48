"""The part of Jinja that spoken text can use, bounded in time and size. The only module here that knows Jinja."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

import jinja2
from jinja2 import (
    StrictUndefined,
    Template,
    TemplateAssertionError,
    TemplateError,
    TemplateSyntaxError,
    UndefinedError,
    pass_context,
)
from jinja2 import nodes as syntax
from jinja2.compiler import CodeGenerator
from jinja2.runtime import LoopContext
from jinja2.sandbox import SandboxedEnvironment

from scriptkit.computing.writing.printing import PlainError, as_words

MOST_STEPS = 100_000  # of about a hundred characters of template each
MOST_TEXT = 20_000  # characters of one value
LARGEST = 1e12  # number in a sum
RELEASE = str(vars(jinja2).get("__version__", ""))  # of Jinja

# What rendering may raise: all of it is a fault of the text.
FAULTS = (
    TemplateError,
    TypeError,
    ValueError,
    LookupError,
    ArithmeticError,
    AttributeError,
    RecursionError,
    MemoryError,
)
UNCOMPILABLE = (RecursionError, MemoryError, SyntaxError, ValueError, OverflowError)
__all__ = [
    "FAULTS", "RELEASE", "UNCOMPILABLE", "Environment", "ForbiddenError", "MissingError", "Template",
    "TemplateAssertionError", "TemplateSyntaxError", "TooMuchError",
]  # fmt: skip

_KEPT = tuple("length count default d lower upper capitalize trim int float string abs".split())
_LOOP = frozenset("index index0 revindex revindex0 first last length depth depth0 previtem nextitem".split())


class TooMuchError(Exception):
    """A text runs or grows without end."""


class ForbiddenError(Exception):
    """A tag that spoken text cannot use, and its line."""


class MissingError(UndefinedError):
    """A name that is not there, and those that are."""

    def __init__(self, message: str, name: str, known: tuple[str, ...]) -> None:
        super().__init__(message)
        self.name, self.known = name, known


class Missing(StrictUndefined):
    """A value that is not there: whatever is done with it raises MissingError."""

    __slots__ = ()

    def __init__(self, hint: str | None = None, obj: Any = None, name: str | None = None, exc: Any = None) -> None:  # noqa: ARG002 - the library's
        known = tuple(str(key) for key in obj) if isinstance(obj, Mapping) else ()
        wanted = str(name)
        super().__init__(hint, obj, name, lambda message=None: MissingError(message or "", wanted, known))  # type: ignore[arg-type]


def _refused(name: str) -> Callable[..., None]:
    def refuse(_self: CodeGenerator, node: syntax.Node, _frame: object = None) -> None:
        raise ForbiddenError(name, node.lineno)

    return refuse


class _Generator(CodeGenerator):
    """Writes the code of a text: loops, joins and lists through the environment, which bounds them."""

    environment: Environment

    def visit_For(self, node: syntax.For, frame: Any) -> None:  # noqa: N802 - the library's name
        """A loop takes its turns from `counted`, each at the price of the loop's length."""
        # a node type of our own is not to be had; this one is made by extensions only, and there are none
        node.iter = syntax.MarkSafe(node.iter, lineno=node.lineno)
        super().visit_For(node, frame)

    def visit_MarkSafe(self, node: syntax.MarkSafe, frame: Any) -> None:  # noqa: N802 - the library's name
        """The iterable of a loop, counted."""
        self.write("environment.counted(")
        self.visit(node.expr, frame)
        self.write(f", {1 + self.environment.extents.get(node.lineno, 0) // 100})")

    def visit_Concat(self, node: syntax.Concat, frame: Any) -> None:  # noqa: N802 - the library's name
        """`~` joins through `joined`."""
        self._through("joined", node.nodes, frame)

    def visit_List(self, node: syntax.List, frame: Any) -> None:  # noqa: N802 - the library's name
        """A list, which holds no lists."""
        self._through("listed", node.items, frame)

    def visit_Tuple(self, node: syntax.Tuple, frame: Any) -> None:  # noqa: N802 - the library's name
        """A tuple, which is a list here; names to be filled in stay what they are."""
        if node.ctx == "store":
            super().visit_Tuple(node, frame)
            return
        self._through("listed", node.items, frame)

    def visit_Dict(self, node: syntax.Dict, frame: Any) -> None:  # noqa: N802 - the library's name
        """A mapping, which holds texts and numbers."""
        self.write("environment.mapped((")
        for pair in node.items:
            self.visit(pair.key, frame)
            self.write(", ")
            self.visit(pair.value, frame)
            self.write(", ")
        self.write("))")

    def visit_Call(  # noqa: N802 - the library's name
        self,
        node: syntax.Call,
        frame: Any,
        forward_caller: bool = False,  # noqa: FBT001, FBT002 - the library's
    ) -> None:
        """Only `pick` is called."""
        if not (isinstance(node.node, syntax.Name) and node.node.name == "pick"):
            raise ForbiddenError("a call such as `name(...)`", node.lineno)
        super().visit_Call(node, frame, forward_caller=forward_caller)

    def _through(self, method: str, parts: Sequence[syntax.Node], frame: Any) -> None:
        self.write(f"environment.{method}((")
        for part in parts:
            self.visit(part, frame)
            self.write(", ")
        self.write("))")

    visit_Pow = _refused("`**`")  # noqa: N815 - the library's name
    visit_Div = _refused("`/`")  # noqa: N815 - the library's name
    visit_AssignBlock = _refused("`set` without `=`")  # noqa: N815 - the library's name


class Environment(SandboxedEnvironment):
    """Jinja for spoken text. `extents` are the lengths of the loops of the text that is being compiled, by line."""

    code_generator_class = _Generator
    intercepted_binops = frozenset({"+", "*", "-", "/", "//", "%", "**"})

    def __init__(self, finalize: Callable[[object], object], pick: Callable[..., object]) -> None:
        # with a context to pass, the library cannot work anything out while it compiles, where nothing is counted
        finalized = pass_context(lambda _context, value: finalize(value))
        super().__init__(undefined=Missing, autoescape=False, finalize=finalized, cache_size=0, optimized=False)
        self.steps = 0
        self.extents: dict[int, int] = {}
        self.filters = {name: self._counting(self.filters[name]) for name in _KEPT}
        bounded = {"join": self._join, "replace": self._replace, "sort": self._sorted, "unique": self._unique}
        self.filters.update({**bounded, "list": self._listed, "reverse": self._reversed, "round": _rounded})
        self.filters.update({"first": self._first, "last": self._last})
        self.globals = {"pick": pick}

    def spend(self, steps: int) -> None:
        """Count work; too much of it ends the rendering."""
        self.steps += steps
        if self.steps > MOST_STEPS:
            raise TooMuchError

    def counted(self, values: Iterable[Any], price: int) -> Iterable[Any]:
        """The values, until there were too many turns."""
        if isinstance(values, (int, float)) or values is None:
            raise PlainError("there is nothing to go through one by one")
        for value in values:
            self.spend(price)
            yield value

    def joined(self, parts: tuple[object, ...]) -> str:
        """The parts as one text, unless it grows too long."""
        self._small(sum(len(part) for part in parts if isinstance(part, str)))
        return "".join(as_words(part) for part in parts)

    def listed(self, members: tuple[object, ...]) -> list[object]:
        """A list of plain things."""
        self.spend(len(members) // 50)
        if any(isinstance(member, (list, tuple)) for member in members):
            raise PlainError("a list holds no lists")
        return list(members)

    def mapped(self, pairs: tuple[object, ...]) -> dict[object, object]:
        """A mapping of plain things, from keys and values in turn."""
        self.spend(len(pairs) // 50)
        if any(isinstance(member, (list, tuple, dict)) for member in pairs):
            raise PlainError("a mapping holds texts and numbers only")
        return dict(zip(pairs[::2], pairs[1::2], strict=True))

    def getattr(self, obj: Any, attribute: str) -> Any:
        """A key of a mapping, or one of the names that a loop has; nothing else has attributes here."""
        if isinstance(obj, dict):
            return obj[attribute] if attribute in obj else self.undefined(obj=obj, name=attribute)
        if isinstance(obj, LoopContext) and attribute in _LOOP:
            return getattr(obj, attribute)
        if isinstance(obj, Missing):
            str(obj)  # raises
        return self.undefined(obj=obj, name=attribute)

    def getitem(self, obj: Any, argument: Any) -> Any:
        """A member of a mapping, list or text."""
        if isinstance(obj, (dict, list, tuple, str)):
            try:
                return obj[argument]
            except (TypeError, LookupError, ValueError):
                pass
        return self.undefined(obj=obj, name=argument if isinstance(argument, str) else str(argument)[:40])

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """Sums are for numbers of a size that a script can hold."""
        for side in (left, right):
            if not isinstance(side, (int, float)):
                raise PlainError(f"`{operator}` works on numbers; texts are joined with `~`")
            if abs(side) > LARGEST:
                raise TooMuchError
        if operator in ("//", "%") and not right:
            raise PlainError("it divides by nought")
        return super().call_binop(context, operator, left, right)

    def _small(self, size: int) -> None:
        self.spend(size // 1000)
        if size > MOST_TEXT:
            raise TooMuchError

    def _counting(self, function: Callable[..., Any]) -> Callable[..., Any]:
        """A filter that counts as work what it is given."""

        def counting(value: Any, *options: Any, **named: Any) -> Any:
            if isinstance(value, str) and len(value) > 1000:
                self.spend(len(value) // 1000)
            return function(value, *options, **named)

        return counting

    def _members(self, values: Any, attribute: str | None = None) -> list[Any]:
        if not isinstance(values, (list, tuple, dict, str)):
            if hasattr(values, "_undefined_name"):
                str(values)  # raises
            raise PlainError("there is nothing to go through one by one")
        members = list(values)
        self.spend(len(members) // 50)
        return members if attribute is None else [self.getattr(member, attribute) for member in members]

    def _join(self, values: Any, d: object = "", attribute: str | None = None) -> str:
        members, between = [as_words(member) for member in self._members(values, attribute)], as_words(d)
        self._small(sum(map(len, members)) + len(between) * len(members))
        return between.join(members)

    def _replace(self, value: Any, old: object, new: object, count: int = -1) -> str:
        text, was, now = as_words(value), as_words(old), as_words(new)
        self._small(len(text) + text.count(was) * max(0, len(now) - len(was)))
        return text.replace(was, now, count)

    def _sorted(
        self,
        values: Any,
        reverse: bool = False,  # noqa: FBT001, FBT002 - as the library has it
        case_sensitive: bool = False,  # noqa: FBT001, FBT002 - as the library has it
        attribute: str | None = None,
    ) -> list[Any]:
        def key(member: Any) -> Any:
            value = member if attribute is None else self.getattr(member, attribute)
            return value.lower() if isinstance(value, str) and not case_sensitive else value

        return sorted(self._members(values), key=key, reverse=bool(reverse))

    def _unique(self, values: Any) -> list[Any]:
        return list(dict.fromkeys(self._members(values)))

    def _first(self, values: Any) -> Any:
        members = values if isinstance(values, str) else self._members(values)
        return members[0] if members else self.undefined(name="first")

    def _last(self, values: Any) -> Any:
        members = values if isinstance(values, str) else self._members(values)
        return members[-1] if members else self.undefined(name="last")

    def _listed(self, values: Any) -> list[Any]:
        return self._members(values)

    def _reversed(self, values: Any) -> Any:
        return values[::-1] if isinstance(values, str) else self._members(values)[::-1]


def _rounded(value: Any, precision: Any = 0) -> Any:
    if not isinstance(value, (int, float)) or not isinstance(precision, int) or not 0 <= precision <= 9:
        raise PlainError("`round` works on numbers, to nine places at most")
    return round(value, precision) if precision else int(value + 0.5) if value >= 0 else -int(0.5 - value)
