"""TeX to words: accents, signs, dashes and quotes; identifiers keep what is theirs."""

from __future__ import annotations

import pytest

from scriptkit.reading.latex import verbatim, words


@pytest.mark.parametrize(
    ("tex", "plain"),
    [
        (r"M{\"u}ller and M\"{u}ller and M{\"{u}}ller", "Müller and Müller and Müller"),
        (r"Ren\'e, \c{c}a, \c c, \v{S}, \.{I}, \r a, \H{o}", "René, ça, ç, Š, İ, å, ő"),
        (r"{\'\i}, \'{\i}, {\aa}, \o, \ss{} and {\L}odz", "í, í, å, ø, ß and Łodz"),
        ("{Effects of {Ledge} Height}", "Effects of Ledge Height"),
        (r"Cork \& Sons, 5\,\% of \$ 3", "Cork & Sons, 5 % of $ 3"),
        ("10--12 weeks --- and ``more''", "10–12 weeks — and “more”"),
        (r"$\beta$ and 5 \textpm 2 $\pm$ 1, \emph{all} of it", "β and 5 2 ± 1, all of it"),
        ("two\n   lines~here", "two lines here"),
        ("plain", "plain"),
        ("a \\", "a \\"),
    ],
)
def test_tex_is_read_as_words(tex: str, plain: str) -> None:
    assert words(tex) == plain


def test_an_address_keeps_its_signs() -> None:
    assert verbatim(r"{https://example.org/a\_b~c\%20--d}") == "https://example.org/a_b~c%20--d"
