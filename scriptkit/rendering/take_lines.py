"""Writes takes.yaml: a line for each episode, the latest last."""

from __future__ import annotations

import json
from collections.abc import Sequence

from scriptkit.model.kept_takes import KeptTake

HEAD = """\
# The paces of takes, measured by `scriptkit take`. The median of the last three is the pace of a channel without one:
# of `letters` a second between pauses, or of `pace` in words a minute where one of the three has no `letters`.
"""


def written(takes: Sequence[KeptTake]) -> bytes:
    """The whole file."""
    lines = [f"  - {{episode: {json.dumps(str(one.episode), ensure_ascii=False)}{_figures(one)}}}" for one in takes]
    return (HEAD + ("\n".join(["takes:", *lines]) if lines else "takes: []") + "\n").encode()


def _figures(one: KeptTake) -> str:
    known = (("pace", one.pace), ("letters", one.letters), ("words", one.words), ("seconds", one.seconds))
    return "".join(f", {name}: {value:g}" for name, value in known if value is not None)
