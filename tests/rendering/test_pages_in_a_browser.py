"""The pages in a real browser: on a telephone, on a desk, in the dark, on paper, with the keyboard alone."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.browsing import SHEETS, printed, show
from tests.rendering.test_pages import PAGES

pytestmark = pytest.mark.browser
EVERY_PAGE = pytest.mark.parametrize("page", PAGES)
CONTRAST = """
const numbers = (text) => text.match(/[\\d.]+/g).map(Number);
const linear = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
const shares = [0.2126, 0.7152, 0.0722];
const light = (rgb) => shares.reduce((sum, share, i) => sum + share * linear(numbers(rgb)[i] / 255), 0);
const ground = (one) => {
  const own = one ? getComputedStyle(one).backgroundColor : 'rgb(255, 255, 255)';
  return own === 'rgba(0, 0, 0, 0)' ? ground(one.parentElement) : own;
};
const ratio = (one) => {
  const ink = getComputedStyle(one)[one.closest('svg') ? 'fill' : 'color'];
  const [brighter, darker] = [light(ink), light(ground(one))].sort((a, b) => b - a);
  return (brighter + 0.05) / (darker + 0.05);
};
return [...document.querySelectorAll('body *')]
  .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()))
  .filter((one) => !one.closest('style, desc, title'))
  .map((one) => [ratio(one), one.textContent.trim().slice(0, 40)]);
"""


@EVERY_PAGE
@pytest.mark.parametrize("width", [320, 390, 1280])
@pytest.mark.parametrize("name", ["sample", "hostile"])
def test_nobody_has_to_scroll_sideways(
    browser: Any, folders: dict[str, Path], page: str, width: int, name: str
) -> None:
    show(browser, folders[name] / page, width)
    assert browser.execute_script("return document.documentElement.scrollWidth") <= width


@EVERY_PAGE
def test_a_page_loads_nothing_and_complains_of_nothing(browser: Any, folders: dict[str, Path], page: str) -> None:
    browser.get_log("browser")
    show(browser, folders["hostile"] / page, 390)
    assert browser.execute_script("return performance.getEntriesByType('resource').map((one) => one.name)") == []
    assert browser.get_log("browser") == []


@EVERY_PAGE
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", ["sample", "hostile"])
def test_every_word_stands_out_from_its_ground(
    browser: Any, folders: dict[str, Path], page: str, scheme: str, name: str
) -> None:
    show(browser, folders[name] / page, 1280, scheme=scheme)
    seen = browser.execute_script(CONTRAST)
    assert len(seen) > 5
    assert [one for one in seen if one[0] < 4.5] == []


def places(browser: Any, row: str) -> dict[str, dict[str, float]]:
    """Where the three cells of a row of the script stand."""
    cells = (browser.find_element("css selector", f"{row} td.{name}") for name in ("at", "seen", "heard"))
    boxes = [browser.execute_script("return arguments[0].getBoundingClientRect().toJSON()", cell) for cell in cells]
    return dict(zip(("at", "seen", "heard"), boxes, strict=True))


def test_on_a_desk_clock_picture_and_sound_stand_side_by_side(browser: Any, folders: dict[str, Path]) -> None:
    show(browser, folders["sample"] / "script.html", 1280)
    cells = places(browser, "tr.row")
    assert cells["at"]["right"] <= cells["seen"]["left"] < cells["seen"]["right"] <= cells["heard"]["left"]
    assert cells["at"]["top"] == cells["seen"]["top"] == cells["heard"]["top"]


def test_on_a_telephone_the_sound_stands_below_the_picture_and_the_clock_beside_both(
    browser: Any, folders: dict[str, Path]
) -> None:
    show(browser, folders["sample"] / "script.html", 390)
    cells = places(browser, "tr.row")
    assert cells["heard"]["top"] >= cells["seen"]["bottom"]
    assert cells["at"]["right"] <= min(cells["seen"]["left"], cells["heard"]["left"])
    assert cells["at"]["top"] == cells["seen"]["top"]
    clock = browser.find_element("css selector", ".at .start")
    assert float(clock.value_of_css_property("font-size").removesuffix("px")) >= 16


@EVERY_PAGE
def test_the_first_key_press_shows_the_way_past_the_head(browser: Any, folders: dict[str, Path], page: str) -> None:
    show(browser, folders["sample"] / page, 1280)
    browser.switch_to.active_element.send_keys("\ue004")  # the Tab key
    focused = browser.switch_to.active_element
    assert focused.get_dom_attribute("href") == "#main"
    assert focused.location["y"] >= 0
    assert focused.value_of_css_property("outline-style") == "solid"


def test_on_a_telephone_no_name_of_a_file_breaks(browser: Any, folders: dict[str, Path]) -> None:
    show(browser, folders["sample"] / "index.html", 390)
    lines = "return [...document.querySelectorAll('.files dt a')].map((one) => one.getClientRects().length)"
    assert set(browser.execute_script(lines)) == {1}


def test_the_ledger_shows_claims_alone_until_somebody_asks_for_more(browser: Any, folders: dict[str, Path]) -> None:
    show(browser, folders["sample"] / "claims.html", 1280)
    seen = "return [...document.querySelectorAll('.ledger .row')].filter((one) => one.offsetHeight).length"
    counts = []
    for name in ("show-claims", "show-both", "show-all"):
        browser.execute_script(f"document.getElementById('{name}').click()")
        counts.append(browser.execute_script(seen))
    claims = "return document.querySelectorAll('.ledger .row.is-claim').length"
    assert counts == sorted(set(counts))
    assert counts[0] == browser.execute_script(claims)


@pytest.mark.parametrize("page", ["script.html", "shots.html", "shoot.html", "claims.html"])
def test_on_paper_heads_come_again_in_black_and_there_is_no_navigation(
    browser: Any, folders: dict[str, Path], page: str
) -> None:
    show(browser, folders["sample"] / page, 700, media="print", scheme="dark")

    def styles(selector: str, name: str) -> set[str]:
        return {one.value_of_css_property(name) for one in browser.find_elements("css selector", selector)}

    assert styles("thead", "display") == {"table-header-group"}
    assert styles("nav", "display") == {"none"}
    assert styles("h1", "color") == {"rgba(0, 0, 0, 1)"}


def test_the_ledger_shows_claims_or_what_is_open_or_every_sentence(browser: Any, folders: dict[str, Path]) -> None:
    show(browser, folders["hostile"] / "claims.html", 390)

    def seen(choice: str) -> int:
        browser.find_element("id", f"show-{choice}").click()
        return sum(one.is_displayed() for one in browser.find_elements("css selector", "tr.row"))

    every, claims, open_ones = seen("all"), seen("claims"), seen("open")
    assert every > claims >= open_ones > 0
    heads = [one for one in browser.find_elements("css selector", "tbody h2") if one.is_displayed()]
    assert 0 < len(heads) <= open_ones


MARK_ROWS = """
const made = (name) => ({href: 'http://row.example/' + name, textContent: '*'});
const link = (name) => Object.assign(document.createElement('a'), made(name));
const rows = [...document.querySelectorAll('table tr:has(td, h2)')].filter((row) => row.offsetHeight);
rows.forEach((row, number) => {
  row.firstElementChild.prepend(link(number + '/first'));
  const cells = [...row.children].sort((a, b) => a.textContent.length - b.textContent.length);
  cells.at(-1).append(link(number + '/last'));
  const next = row.querySelector('h2') && rows[number + 1];
  if (next) next.firstElementChild.prepend(link(number + '/next'));
});
return rows.length;
"""


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("page", ["script.html", "shots.html", "shoot.html", "claims.html"])
def test_no_row_is_cut_by_the_end_of_a_sheet_and_no_head_left_behind(
    browser: Any, folders: dict[str, Path], page: str, sheet: str
) -> None:
    """A link is put at the first and last word of each row; a PDF tells on which sheet a link stands."""
    show(browser, folders["sample"] / page, 1280)
    rows = browser.execute_script(MARK_ROWS)
    sheets = printed(browser, sheet)
    found: dict[str, set[int]] = {}
    for number, links in enumerate(sheets):
        for link in links:
            found.setdefault(link.split("/")[0], set()).add(number)
    assert len(sheets) > 3
    assert len(found) == rows
    assert {row: on for row, on in found.items() if len(on) > 1} == {}
