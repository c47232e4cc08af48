"""The findings of the reading room: each function is a kind, its docstring the explanation, its result the finding."""

from scriptkit.reading.faults.files import (
    file_too_large,
    missing_file,
    not_utf8,
    path_outside,
    unreadable_file,
)
from scriptkit.reading.faults.kinds import KINDS
from scriptkit.reading.faults.notices import list_columns, list_not_read, list_row
from scriptkit.reading.faults.registers import (
    broken_entry,
    evidence_format,
    id_changed,
    id_made,
    json_syntax,
    more_like_these,
    no_entries,
    orcid_wrong,
    source_defined_twice,
)
from scriptkit.reading.faults.syntax import (
    endless_anchor,
    second_document,
    tab_indent,
    too_deep,
    unknown_tag,
    unreadable_character,
    yaml_syntax,
)
from scriptkit.reading.faults.texts import allow_without_reason, mark_out_of_place, not_spoken, ruling_without_reason
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
    "broken_entry",
    "comma_in_brackets",
    "endless_anchor",
    "evidence_format",
    "file_too_large",
    "id_changed",
    "id_made",
    "json_syntax",
    "key_twice",
    "list_columns",
    "list_not_read",
    "list_row",
    "mark_out_of_place",
    "missing_file",
    "missing_value",
    "more_like_these",
    "near",
    "no_entries",
    "no_outline",
    "not_spoken",
    "not_utf8",
    "orcid_wrong",
    "out_of_range",
    "path_outside",
    "quoted",
    "ruling_without_reason",
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
