"""No text whatever makes the tool fall over, and each is read in little time."""

from __future__ import annotations

import time

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scriptkit.computing.writing.filling import Expander
from scriptkit.computing.writing.paragraphs import raw_paragraphs
from scriptkit.places import SourceFile
from scriptkit.reading import spoken

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
NAMES = {
    "exercise": {"name": "Bar hang", "ratings": [{"ask": "Why?", "score": 3}]},
    "exercises": {"hang": {"name": "Bar hang"}},
    "grade": "A-",
    "sponsor": None,
}
SIGNS = """
    {{ }} {% %} {# #} {{- -}} {%- -%} if else elif endif for endfor set in is not and or == < = ( ) [ ] { } ' " | . , :
    ~ + - * // / % ** exercise exercises grade sponsor loop name ratings score nosuch __class__ raw endraw macro include
    block recursive true none 1 0 99999999999 'a' pick( spoken mid a join first last length replace('a','b') sort list
    unique round int string default('x') attr('y') [aside] [from {{ [shot > # text
    """.split()
WHOLE = [
    "{{ exercise.name }}",
    "{% for a in exercises %}",
    "{% endfor %}",
    "{% if grade %}",
    "{% endif %}",
    "{% set x = 1 %}",
]
BITS = st.sampled_from([*SIGNS, *WHOLE, "\\", "\n", "\n\n", "\u2028", "é"])
TEXT = st.lists(BITS, max_size=25).map(" ".join) | st.lists(BITS, max_size=25).map("".join)


@QUICK
@given(TEXT)
def test_any_text_is_read_without_a_fall_and_in_time(text: str) -> None:
    file = SourceFile("segments/hang.md", text)
    read = spoken.read("hang", "episode", file, [], [])
    started = time.process_time()
    filled = Expander().expand(read, NAMES)
    made = raw_paragraphs(filled, is_stock=False)
    assert time.process_time() - started < 3
    assert all(0 <= at <= len(text) for _, at in filled.troubles)
    assert all("\x00" not in one.text and one.text == " ".join(one.text.split()) for one in made)
    assert all(at <= len(text) for one in made for _, _, at in one.pieces)
