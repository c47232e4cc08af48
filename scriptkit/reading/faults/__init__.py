"""The findings of the reading room: each function is a kind, its docstring the explanation, its result the finding."""

from scriptkit.reading.faults.files import (
    evidence_format,
    file_too_large,
    missing_file,
    not_utf8,
    path_outside,
    source_defined_twice,
    unreadable_file,
)
from scriptkit.reading.faults.kinds import KINDS
from scriptkit.reading.faults.syntax import (
    endless_anchor,
    second_document,
    tab_indent,
    too_deep,
    unknown_tag,
    unreadable_character,
    yaml_syntax,
)
from scriptkit.reading.faults.texts import allow_without_reason, mark_out_of_place, not_spoken
from scriptkit.reading.faults.values import (
    bad_id,
    comma_in_brackets,
    key_twice,
    missing_value,
    no_outline,
    out_of_range,
    unknown_key,
    unknown_word,
    wrong_type,
)
from scriptkit.wording import near, quoted

__all__ = [
    "KINDS",
    "allow_without_reason",
    "bad_id",
    "comma_in_brackets",
    "endless_anchor",
    "evidence_format",
    "file_too_large",
    "key_twice",
    "mark_out_of_place",
    "missing_file",
    "missing_value",
    "near",
    "no_outline",
    "not_spoken",
    "not_utf8",
    "out_of_range",
    "path_outside",
    "quoted",
    "second_document",
    "source_defined_twice",
    "tab_indent",
    "too_deep",
    "unknown_key",
    "unknown_tag",
    "unknown_word",
    "unreadable_character",
    "unreadable_file",
    "wrong_type",
    "yaml_syntax",
]
