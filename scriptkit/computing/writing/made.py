"""Stock texts whose code was made before: Jinja has no work with them but to run it."""

from __future__ import annotations

from types import FunctionType

from scriptkit import stock
from scriptkit.computing.writing.expanding import RELEASE, Environment, Template
from scriptkit.model import SegmentText


def template(text: SegmentText, environment: Environment) -> Template | None:
    """The code that was made of a stock text; None where it was made of another text or by another Jinja."""
    module = stock.made(text.id)
    if module is None or text.template != module.TEMPLATE or _series(module.JINJA) != _series(RELEASE):
        return None
    # the code finds its environment among its globals, and there is one environment for each episode
    named = {**vars(module), "environment": environment}
    named["root"] = FunctionType(module.root.__code__, named, "root", module.root.__defaults__)
    return Template.from_module_dict(environment, named, environment.make_globals(None))


def _series(release: str) -> str:
    """The releases of a library that run each other's code: 3.1 of 3.1.6."""
    return release.rpartition(".")[0]
