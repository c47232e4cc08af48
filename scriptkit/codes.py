"""The codes that carry places through Jinja: control characters, which no author's text can hold.

PARAGRAPH n END        paragraph n of the file begins
AT offset END          the text that follows stands at this offset of the file
VALUE n END            the text that follows is value n of this rendering (-1: it has no place of its own)
MARK offset END raw CLOSE   a mark; `raw` is what stands between its brackets
TAG path END           (drafting) a fact that is written back as a Jinja tag
"""

import re

PARAGRAPH, END, AT, MARK, CLOSE, VALUE, TAG = "\x01", "\x02", "\x03", "\x04", "\x05", "\x06", "\x0e"

ANY = re.compile("[\x00-\x08\x0b-\x1f\x7f]")


def code(kind: str, number: int | str) -> str:
    """A code with its number."""
    return f"{kind}{number}{END}"


def without(text: str) -> str:
    """A text without control characters, so that no value can pass for a code."""
    return ANY.sub("", text) if ANY.search(text) else text
