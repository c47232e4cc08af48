"""The prompter in a real browser: its keys and buttons, by hand, with a glass, without JavaScript, on paper."""

from __future__ import annotations

import time
from pathlib import Path
from typing import Any

import pytest

from scriptkit import build
from scriptkit.rendering import outputs
from scriptkit.shipped import shipped
from tests.browsing import ALT, ARROW, CONTROL, META, SHEETS, SHIFT, TAB, press, printed, show
from tests.rendering.test_pages import HOSTILE
from tests.scripts import worked_out

pytestmark = pytest.mark.browser
UP, DOWN, LEFT, RIGHT = ARROW.values()
NAMES = ["Start", "Line back", "Line on", "Mirror", "Slower", "Faster", "Smaller", "Larger"]
SILENT = "title: One\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
Pages = dict[str, Path]


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Pages:
    """The prompter of the sample, of a hostile outline, and of one without a word."""
    place = tmp_path_factory.mktemp("pages")
    sources = {"sample": shipped("sample_episode")}
    for name, outline in {"hostile": HOSTILE["outline.yaml"], "empty": SILENT}.items():
        sources[name] = place / name
        (sources[name] / "segments").mkdir(parents=True)
        (sources[name] / "outline.yaml").write_text(outline, encoding="utf-8")
    (sources["empty"] / "segments" / "hang.md").write_text("[shot CU side: hands on the bar]\n", encoding="utf-8")
    made = {}
    for name, source in sources.items():
        asked = outputs.Asked(build.as_built(worked_out(source)), [], "record", name)
        made[name] = place / f"{name}.html"
        made[name].write_bytes(outputs.render(asked)["prompter.html"])
    return made


def state(browser: Any) -> dict[str, Any]:
    """What the page shows: whether it runs, its clock, its speed, the size and the way of its letters, its place."""
    made: dict[str, Any] = browser.execute_script("""
        const text = document.querySelector('#text'), style = getComputedStyle(text);
        const mark = document.querySelector('.mark').getBoundingClientRect().top;
        const above = (one) => one.getBoundingClientRect().top <= mark + 1;
        const past = [...document.querySelectorAll('.said')].filter(above);
        return {
            run: document.querySelector('#run').innerText, time: document.querySelector('#time').innerText,
            speed: document.querySelector('#speed').innerText, size: parseFloat(style.fontSize),
            turned: style.transform, pressed: document.querySelector('#mirror').ariaPressed,
            scroll: scrollY, at: past.length && past.at(-1).innerText,
        };
    """)
    return made


def button(browser: Any, name: str) -> Any:
    return next(one for one in browser.find_elements("css selector", "button") if one.text == name)


def changed(browser: Any, *keys: str, by: str = "") -> dict[str, tuple[Any, Any]]:
    """What a key or a button changes, as it was and as it is."""
    before = state(browser)
    if by:
        button(browser, by).click()
    else:
        press(browser, *keys)
    after = state(browser)
    return {name: (before[name], after[name]) for name in before if before[name] != after[name]}


@pytest.mark.parametrize(
    ("keys", "name", "what"),
    [
        ([" "], "Start", "run"),
        ([DOWN], "Line on", "scroll"),
        ([UP], "Line back", "scroll"),
        ([RIGHT], "Faster", "speed"),
        ([LEFT], "Slower", "speed"),
        ([SHIFT, UP], "Larger", "size"),
        ([SHIFT, DOWN], "Smaller", "size"),
        ([SHIFT, RIGHT], "Mirror", "turned"),
        ([SHIFT, LEFT], "Mirror", "turned"),
    ],
)
def test_each_key_does_what_its_button_does(browser: Any, pages: Pages, keys: list[str], name: str, what: str) -> None:
    made = []
    for asked in ({"keys": keys}, {"by": name}):
        show(browser, pages["sample"], 390)
        press(browser, *[DOWN] * 6)
        made.append(changed(browser, *asked.get("keys", []), by=str(asked.get("by", ""))))
    moving = {"scroll", "time", "at"} if what == "run" else set()
    assert what in made[0]
    assert made[0][what] == made[1][what]
    assert made[0].keys() - moving == made[1].keys() - moving


def test_a_line_on_and_a_line_back_and_the_speed_is_told_in_percent_and_words(browser: Any, pages: Pages) -> None:
    show(browser, pages["sample"], 390)
    first = changed(browser, DOWN)
    press(browser, DOWN, DOWN)
    there = state(browser)
    assert changed(browser, DOWN)["scroll"][1] > there["scroll"] > first["scroll"][1]
    assert changed(browser, UP)["scroll"][1] == there["scroll"]
    was, now = changed(browser, RIGHT)["speed"]
    percent, words = zip(
        *(map(float, one.replace(" words a minute", "").split(" %, ")) for one in (was, now)), strict=True
    )
    assert percent == (100, 105)
    assert words[1] == pytest.approx(1.05 * words[0], abs=1)
    press(browser, *[LEFT] * 20)
    assert state(browser)["speed"].startswith("70 %")


@pytest.mark.parametrize("held", [CONTROL, ALT, META], ids=["control", "alt", "meta"])
def test_keys_of_the_browser_are_left_to_it(browser: Any, pages: Pages, held: str) -> None:
    show(browser, pages["sample"], 1280)
    browser.execute_script("addEventListener('keydown', (one) => { window.taken = one.defaultPrevented; })")
    for key in (RIGHT, " "):
        press(browser, held, key)
        assert browser.execute_script("return taken") is False
    assert state(browser)["speed"].startswith("100 %")


def test_the_tab_key_comes_to_every_button_and_space_presses_the_one_that_has_the_focus(
    browser: Any, pages: Pages
) -> None:
    show(browser, pages["sample"], 1280)
    names: list[str] = []
    while names[-1:] != ["Larger"]:
        press(browser, TAB)
        names.append(browser.switch_to.active_element.text)
        assert len(names) < 20
    assert names[0] == "Skip to the content"
    assert names[-8:] == NAMES
    assert changed(browser, " ").keys() == {"size"}


def test_space_starts_and_pauses_and_the_clock_stands_while_it_is_paused(browser: Any, pages: Pages) -> None:
    show(browser, pages["sample"], 1280)
    press(browser, " ")
    assert state(browser)["run"] == "Pause"
    time.sleep(1.2)
    press(browser, " ")
    there = state(browser)
    assert (there["run"], there["time"][:4]) == ("Start", "0:01")
    time.sleep(0.3)
    assert state(browser) == there


@pytest.mark.parametrize("motion", ["", "reduce"], ids=["gliding", "by steps"])
def test_another_size_or_another_window_keeps_the_place(browser: Any, pages: Pages, motion: str) -> None:
    show(browser, pages["sample"], 390, motion=motion)
    press(browser, *[DOWN] * 40)
    there = state(browser)
    press(browser, SHIFT, UP, UP, UP)
    larger = state(browser)
    assert larger["size"] > 1.25 * there["size"]
    size = {"width": 844, "height": 390, "deviceScaleFactor": 1, "mobile": True}
    browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", size)
    turned = state(browser)
    assert there["at"] == larger["at"] == turned["at"] != 0
    assert there["time"] == larger["time"] == turned["time"]


def test_the_clock_follows_whoever_moves_the_page_by_hand(browser: Any, pages: Pages) -> None:
    show(browser, pages["sample"], 1280)
    press(browser, " ")
    browser.execute_script("document.querySelectorAll('h2')[5].scrollIntoView()")
    time.sleep(0.5)
    there = state(browser)
    heading = browser.execute_script("return document.querySelectorAll('h2')[5].innerText").split()[-1]
    minutes, seconds = (int(part) for part in there["time"].split(" of ")[0].split(":"))
    begins = [int(part) for part in heading.split(":")]
    assert 0 <= (minutes - begins[0]) * 60 + seconds - begins[1] < 15
    time.sleep(1.5)  # a pause may be at the mark
    assert state(browser)["scroll"] > there["scroll"]  # and it goes on from there


def test_a_finger_on_the_text_moves_it_and_holds_it_until_it_is_lifted(browser: Any, pages: Pages) -> None:
    def touch(kind: str, *heights: int) -> None:
        points = [{"x": 200, "y": height} for height in heights]
        browser.execute_cdp_cmd("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    show(browser, pages["sample"], 390)
    press(browser, " ")
    before = state(browser)
    touch("touchStart", 600)
    for height in range(590, 290, -10):
        touch("touchMove", height)
    time.sleep(0.6)
    held = state(browser)
    time.sleep(0.6)
    assert state(browser) == held
    assert held["scroll"] - before["scroll"] > 200
    touch("touchEnd")
    time.sleep(1.5)
    assert state(browser)["scroll"] > held["scroll"]


def test_nothing_is_kept_and_no_foreign_script_runs(browser: Any, pages: Pages) -> None:
    show(browser, pages["sample"], 1280)
    press(browser, SHIFT, UP, RIGHT)
    press(browser, " ")
    press(browser, RIGHT, " ")
    kept = "return [localStorage.length, sessionStorage.length, document.cookie, location.href, history.length]"
    before = browser.execute_script(kept)
    assert before[:3] == [0, 0, ""]
    assert before[3] == pages["sample"].as_uri()
    assert browser.execute_script("return performance.getEntriesByType('resource')") == []
    browser.execute_script(
        "document.body.append(Object.assign(document.createElement('script'), {text: 'window.ran = 1'}))"
    )
    assert browser.execute_script("return window.ran") is None
    browser.refresh()
    assert state(browser) == state(browser) | {"run": "Start", "turned": "none", "pressed": "false"}
    assert state(browser)["speed"].startswith("100 %")


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("name", ["sample", "hostile"])
def test_the_largest_letters_in_a_glass_fit_and_buttons_fit_a_thumb(
    browser: Any, pages: Pages, width: int, name: str
) -> None:
    show(browser, pages[name], width)
    press(browser, SHIFT, RIGHT, *[UP] * 30)
    assert state(browser)["turned"] == "matrix(-1, 0, 0, 1, 0, 0)"
    assert browser.execute_script("return document.documentElement.scrollWidth") <= width
    sizes = [one.size for one in browser.find_elements("css selector", "button")]
    assert min(min(one.values()) for one in sizes) >= 44
    assert [one.accessible_name for one in browser.find_elements("css selector", "button")] == NAMES


def test_words_of_other_scripts_run_their_own_way(browser: Any, pages: Pages) -> None:
    show(browser, pages["hostile"], 390)
    assert "رفع الكعب" in browser.find_element("css selector", "h1").text
    ways = browser.execute_script("return [...document.querySelectorAll('.said')].map((one) => one.dir)")
    assert set(ways) == {"auto"}


def test_without_a_word_to_read_it_says_so_and_has_no_buttons(browser: Any, pages: Pages) -> None:
    browser.get_log("browser")
    show(browser, pages["empty"], 390)
    assert "There is nothing to read aloud yet." in browser.find_element("css selector", "main").text
    assert browser.find_elements("css selector", "button, .mark") == []
    assert browser.get_log("browser") == []


def test_without_javascript_the_whole_text_is_there_and_no_dead_button(browser: Any, pages: Pages) -> None:
    browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        show(browser, pages["sample"], 390)
        assert "stands below" in browser.find_element("css selector", "noscript").text
        assert [one for one in browser.find_elements("css selector", "button, .mark, kbd") if one.is_displayed()] == []
        assert all(one.is_displayed() for one in browser.find_elements("css selector", ".said, .wait"))
    finally:
        browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


@pytest.mark.parametrize("sheet", SHEETS)
def test_on_paper_the_whole_text_stands_in_black_and_no_line_is_cut(browser: Any, pages: Pages, sheet: str) -> None:
    show(browser, pages["sample"], 1280, media="print")
    assert browser.find_element("id", "text").value_of_css_property("font-size") == "20px"  # 15 points
    assert not browser.find_element("id", "run").is_displayed()
    press(browser, SHIFT, RIGHT)
    blocks = browser.execute_script("""
        const blocks = [...document.querySelectorAll('.said, .wait')];
        const made = (name) => ({ href: 'http://row.example/' + name, text: '*' });
        const link = (name) => Object.assign(document.createElement('a'), made(name));
        blocks.forEach((one, number) => { one.prepend(link(number + '/first')); one.append(link(number + '/last')); });
        return blocks.length;
    """)
    found: dict[str, set[int]] = {}
    for number, links in enumerate(printed(browser, sheet)):
        for link in links:
            found.setdefault(link.split("/")[0], set()).add(number)
    assert len(found) == blocks > 100
    assert [on for on in found.values() if len(on) > 1] == []
