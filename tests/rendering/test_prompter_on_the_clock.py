"""The prompter in a real browser, timed: the right line at the right second, gliding, and by steps at another speed."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent
from typing import Any, NamedTuple

import pytest

from scriptkit.model import Facts
from scriptkit.rendering import outputs
from tests.browsing import ARROW, press, show
from tests.scripts import worked_out

pytestmark = pytest.mark.browser
OUTLINE = "title: One\npace: 230\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
TEXT = """
    Take hold of the bar with both hands, and let your shoulders settle before you begin. [aside]
    Breathe out. [aside]

    [hold 2s: one slow hang]

    Now pull your elbows down towards your ribs, slowly. [aside]
    Stay there for [pause 1s] a moment. [aside]
"""


@pytest.fixture(scope="module")
def timed(tmp_path_factory: pytest.TempPathFactory) -> Facts:
    """A script of eleven seconds."""
    folder = tmp_path_factory.mktemp("timed")
    (folder / "segments").mkdir()
    (folder / "outline.yaml").write_text(OUTLINE, encoding="utf-8")
    (folder / "segments" / "hang.md").write_text(dedent(TEXT), encoding="utf-8")
    return worked_out(folder)


@pytest.fixture(scope="module")
def page(timed: Facts, tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("page") / "prompter.html"
    made.write_bytes(outputs.render(outputs.Asked(timed, [], "record", "timed"))["prompter.html"])
    return made


# Each frame, once the page has moved: when it is, which block and which line of it is at the mark, where the page is.
# The clock runs from the key that starts it. `shares` has, for each block, the letters before each of its lines.
WATCH = """
const mark = document.querySelector('.mark').getBoundingClientRect().top;
const blocks = [...document.querySelectorAll('.said, .wait')];
const lettersBefore = (block) => {
  const node = block.firstChild, range = document.createRange(), found = [];
  let bottom = -Infinity;
  for (let at = 0; at < node.length; at += 1) {
    range.setStart(node, at);
    range.setEnd(node, at + 1);
    const box = range.getBoundingClientRect();
    if (box.width && box.top >= bottom - 2) {
      found.push(at / node.length);
      bottom = box.bottom;
    }
  }
  return found;
};
const shares = blocks.map((block) => block.matches('.said') ? lettersBefore(block) : [0]);
window.seen = { shares, samples: [], done: false };
let late = arguments[0];
addEventListener('keydown', () => {
  const start = performance.now();
  const look = () => {
    const ms = performance.now() - start;
    const at = Math.max(0, blocks.findLastIndex((block) => block.getBoundingClientRect().top <= mark + 0.6));
    const box = blocks[at].getBoundingClientRect(), lines = shares[at].length;
    const line = Math.max(0, Math.min(lines - 1, Math.floor((mark + 0.6 - box.top) / (box.height / lines))));
    seen.samples.push({ seconds: ms / 1000, at, line, y: scrollY, told: blocks[at].innerText });
    while (late && ms > 6000 && performance.now() - start < 6700);
    if (ms > 6700) late = false;
    seen.done = document.querySelector('#run').textContent === 'Start';
    if (!seen.done) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}, { once: true });
"""


class Block(NamedTuple):
    """What has to be at the mark from `start` on; its letters take `voice` seconds."""

    start: float
    voice: float


def expected(facts: Facts) -> list[Block]:
    """The blocks of the script of eleven seconds, from its timeline."""
    (segment,) = facts.timeline.segments
    first, second, third, fourth = segment.sentences
    hold, pause = (one.start for one in segment.marks if one.mark.name in {"hold", "pause"})
    whole = [Block(one.start, one.spoken - one.closing) for one in (first, second, third)]
    after = pause + 1.0
    cut = [
        Block(fourth.start, pause - fourth.start),
        Block(pause, 1.0),
        Block(after, fourth.end - fourth.closing - after),
    ]
    return [*whole[:2], Block(hold, 2.0), whole[2], *cut]


def real(second: float, blocks: list[Block], rate: float) -> float:
    """Seconds from the start at another speed: waits last as long as they are written."""
    waited = sum(min(max(second - one.start, 0.0), one.voice) for one in (blocks[2], blocks[5]))
    return (second - waited) / rate + waited


def misses(seen: dict[str, Any], blocks: list[Block], total: float, rate: float) -> list[tuple[float, float]]:
    """By how many seconds the line at the mark is not the one that the clock has then, and when."""
    made = []
    ends = [one.start for one in blocks[1:]] + [total]
    for one in seen["samples"]:
        block, shares = blocks[one["at"]], seen["shares"][one["at"]]
        begins = block.start + block.voice * shares[one["line"]]
        last = one["line"] == len(shares) - 1
        ends_at = ends[one["at"]] if last else block.start + block.voice * shares[one["line"] + 1]
        low, high = (real(second, blocks, rate) for second in (begins, ends_at))
        made.append((max(0.0, low - one["seconds"], one["seconds"] - high), one["seconds"]))
    return made


def watched(browser: Any, *, late: bool = False) -> dict[str, Any]:
    """Start the page by a key, and watch it to its end."""
    from selenium.webdriver.support.ui import WebDriverWait

    browser.execute_script(WATCH, late)
    press(browser, " ")
    WebDriverWait(browser, 25, 0.25).until(lambda driver: driver.execute_script("return seen.done"))
    made: dict[str, Any] = browser.execute_script("return seen")
    return made


def assert_in_time(found: list[tuple[float, float]]) -> None:
    """Demand the right line within 3 % of the time since the start; in the first three seconds within 0.09 s."""
    assert len(found) > 200
    assert [(miss, at) for miss, at in found if miss > 0.03 * max(at, 3.0)] == []


def test_the_line_at_the_mark_is_the_one_of_the_clock_even_after_a_frame_that_came_late(
    browser: Any, page: Path, timed: Facts
) -> None:
    show(browser, page, 390)
    seen = watched(browser, late=True)
    blocks = expected(timed)
    assert_in_time(misses(seen, blocks, timed.timeline.total, 1.0))
    assert {one["at"] for one in seen["samples"]} == set(range(len(blocks)))
    assert len({one["y"] for one in seen["samples"]}) > 100  # it glides
    assert seen["samples"][-1]["seconds"] == pytest.approx(timed.timeline.total, rel=0.03)
    hold = [one for one in seen["samples"] if one["at"] == 2]
    still = [one["y"] for one in hold if 0.5 < one["seconds"] - hold[0]["seconds"] < 1.4]
    assert len(still) > 20
    assert max(still) - min(still) <= 1
    counted = dict.fromkeys(one["told"].split()[-1] for one in hold)
    assert list(counted)[-2:] == ["2", "1"]


def test_with_less_motion_it_stands_on_each_line_and_holds_keep_their_seconds_at_any_speed(
    browser: Any, page: Path, timed: Facts
) -> None:
    show(browser, page, 1280, motion="reduce")
    press(browser, *[ARROW["right"]] * 12)
    assert browser.find_element("id", "speed").text.startswith("150 %")
    seen = watched(browser)
    assert_in_time(misses(seen, expected(timed), timed.timeline.total, 1.5))
    lines = sum(len(shares) for shares in seen["shares"])
    assert len({one["y"] for one in seen["samples"]}) == lines
    hold = [one["seconds"] for one in seen["samples"] if one["at"] == 2]
    assert hold[-1] - hold[0] == pytest.approx(2.0, abs=0.06)
