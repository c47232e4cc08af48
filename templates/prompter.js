"use strict";
// Moves the text so that what the clock says stands at the mark. Seconds are those of the script, unless called real.
(() => {
  const byId = (id) => document.getElementById(id);
  const [text, mark, speed, time] = ["text", "mark", "speed", "time"].map(byId);
  const blocks = [...text.querySelectorAll("[data-from]")];
  if (!blocks.length) return;
  const total = Number(text.dataset.total);
  const waits = blocks.filter((block) => block.classList.contains("wait")).map((block) => ({ block, ...spanOf(block) }));
  const stepped = matchMedia("(prefers-reduced-motion: reduce)");
  const SLOWEST = 70, FASTEST = 150, SPEED_STEP = 5; // percent
  const SMALLEST = 50, LARGEST = 250, SIZE_STEP = 10; // percent
  const HAND_RESTS = 300; // milliseconds without a movement by hand, after which the clock moves the text again

  // What is on the clock: pure functions.

  function spanOf(block) {
    return { from: Number(block.dataset.from), to: Number(block.dataset.to) };
  }

  function within(value, low, high) {
    return Math.min(high, Math.max(low, value));
  }

  /** Real seconds from the start to `at`: speech goes by the speed, a hold or pause takes what is written. */
  function realSeconds(at, rate) {
    const waited = waits.reduce((sum, { from, to }) => sum + within(at - from, 0, to - from), 0);
    return (at - waited) / rate + waited;
  }

  /** The second of the script that is reached after so many real ones. */
  function reached(real, rate) {
    let at = 0;
    for (const { from, to } of waits) {
      const speech = (from - at) / rate;
      if (real < speech) break;
      if (real < speech + to - from) return from + real - speech;
      real -= speech + to - from;
      at = to;
    }
    return Math.min(total, at + real * rate);
  }

  /** The other coordinate of a point on a line through points that never go back. */
  function along(points, value, by, wanted) {
    const after = points.findIndex((point) => point[by] >= value);
    if (after < 0) return points.at(-1)[wanted];
    if (after === 0) return points[0][wanted];
    const [one, two] = [points[after - 1], points[after]];
    return one[wanted] + (two[wanted] - one[wanted]) * (value - one[by]) / (two[by] - one[by]);
  }

  function asClock(seconds) {
    const whole = Math.round(seconds);
    const two = (number) => String(number).padStart(2, "0");
    const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
    return (hours ? `${hours}:${two(minutes)}` : `${minutes}`) + `:${two(whole % 60)}`;
  }

  // Where it stands on the page.

  /** The lines of a block as they are wrapped. Each has a share of its time by its width. */
  function linesOf(block) {
    const { from, to } = spanOf(block);
    const box = block.getBoundingClientRect();
    const top = box.top + scrollY;
    if (block.classList.contains("wait")) return [{ wait: true, from, to, top, bottom: top + box.height }];
    const high = parseFloat(getComputedStyle(block).lineHeight);
    const widths = Array(Math.max(1, Math.round(box.height / high))).fill(0);
    const range = document.createRange();
    range.selectNodeContents(block);
    for (const one of range.getClientRects()) {
      widths[within(Math.floor((one.top + one.height / 2 - box.top) / high), 0, widths.length - 1)] += one.width;
    }
    const all = widths.reduce((sum, width) => sum + width, 0) || 1;
    const second = (width) => from + (to - from) * width / all;
    let before = 0;
    return widths.map((width, number) => {
      const line = { from: second(before), to: second(before + width), top: top + number * high };
      before += width;
      return { ...line, bottom: line.top + high };
    });
  }

  /** A line passes the mark from its top to its bottom while it is said; a wait stands still with its middle there. */
  function pointsOf(line) {
    if (!line.wait) return [{ at: line.from, y: line.top }, { at: line.to, y: line.bottom }];
    const moving = Math.min(0.5, (line.to - line.from) / 4), middle = (line.top + line.bottom) / 2;
    return [
      { at: line.from, y: line.top }, { at: line.from + moving, y: middle }, { at: line.to - moving, y: middle },
    ];
  }

  let lines = [], points = [], measured = "";

  function shape() {
    return [innerWidth, innerHeight, document.documentElement.scrollHeight].join();
  }

  function measure() {
    const timed = blocks.flatMap(linesOf);
    lines = timed.filter((line) => line.to > line.from); // a recording has no time for what was not said in it
    if (!lines.length) lines = timed;
    points = lines.flatMap(pointsOf);
    measured = shape();
  }

  function lineAt(second) {
    return Math.max(0, lines.findLastIndex((line) => line.from <= second + 0.001));
  }

  /** Where the text has to stand. With reduced motion it stands still on each line, and goes on by whole lines. */
  function wantedScroll(second) {
    const line = lines[lineAt(second)];
    const y = stepped.matches ? (line.top + line.bottom) / 2 : along(points, second, "at", "y");
    return y - mark.getBoundingClientRect().top;
  }

  function secondOfScroll() {
    const y = scrollY + mark.getBoundingClientRect().top;
    if (!stepped.matches) return along(points, y, "y", "at");
    return lines[Math.max(0, lines.findLastIndex((line) => line.top <= y))].from;
  }

  // What is going on.

  let percent = 100, size = 100;
  let anchor = 0, since = null; // the second of the script, and when it was that second; null while it is paused
  let handUntil = 0, touched = false; // until then, or while a finger is on the text, the clock follows the hand
  let own = scrollY; // where the page was put last by the clock
  let reading = false; // false while somebody looks at what stands above the text
  let frame = 0, lock = null;

  function now() {
    const rate = percent / 100;
    return since === null ? anchor : reached(realSeconds(anchor, rate) + (performance.now() - since) / 1000, rate);
  }

  function go(second) {
    anchor = within(second, 0, total);
    since = since === null ? null : performance.now();
  }

  function put() {
    scrollTo({ top: wantedScroll(now()), behavior: "instant" });
    own = scrollY;
    reading = true;
  }

  function tell() {
    const at = now(), rate = percent / 100;
    say(time, `${asClock(at)} of ${asClock(total)}, ${asClock(realSeconds(total, rate) - realSeconds(at, rate))} left`);
    say(speed, `${percent} %, ${Math.round(Number(text.dataset.pace) * rate)} words a minute`);
    for (const { block, from, to } of waits) {
      const on = since !== null && from <= at && at < to;
      block.classList.toggle("on", on);
      if (on) say(block.querySelector(".left"), String(Math.ceil(to - at)));
    }
  }

  /** A text that is the same again is not written again, so that nothing is read out twice. */
  function say(where, words) {
    if (where.textContent !== words) where.textContent = words;
  }

  function tick() {
    if (since === null) return;
    const at = now();
    if (at >= total) run(false);
    if (heldByHand()) follow();
    else put();
    tell();
    if (since !== null) frame = requestAnimationFrame(tick);
  }

  function run(on) {
    anchor = on && now() >= total ? 0 : now();
    since = on ? performance.now() : null;
    byId("run").textContent = on ? "Pause" : "Start";
    keepAwake(on);
    tell();
    cancelAnimationFrame(frame);
    if (on) frame = requestAnimationFrame(tick);
  }

  /** A telephone must not go dark in the middle of a sentence; where it may not be asked, it goes by its settings. */
  async function keepAwake(on) {
    await lock?.release();
    lock = on && navigator.wakeLock ? await navigator.wakeLock.request("screen").catch(() => null) : null;
    if (lock && since === null) await lock.release();
  }

  /** Measure anew, and have the same second at the mark. */
  function layOut() {
    measure();
    if (reading) put();
  }

  function toLine(number) {
    go(lines[within(number, 0, lines.length - 1)].from);
    handUntil = 0;
    put();
    tell();
  }

  function changeSpeed(by) {
    go(now());
    percent = within(percent + by, SLOWEST, FASTEST);
    tell();
  }

  function changeSize(by) {
    go(now());
    size = within(size + by, SMALLEST, LARGEST);
    text.style.setProperty("--size", size / 100);
    layOut();
  }

  function mirror() {
    byId("mirror").setAttribute("aria-pressed", text.classList.toggle("mirrored"));
  }

  const actions = {
    run: () => run(since === null),
    back: () => toLine(lineAt(now()) - 1),
    on: () => toLine(lineAt(now()) + 1),
    slower: () => changeSpeed(-SPEED_STEP),
    faster: () => changeSpeed(SPEED_STEP),
    smaller: () => changeSize(-SIZE_STEP),
    larger: () => changeSize(SIZE_STEP),
    mirror,
  };
  const keys = {
    " ": "run", ArrowUp: "back", ArrowDown: "on", ArrowLeft: "slower", ArrowRight: "faster",
    "Shift+ArrowUp": "larger", "Shift+ArrowDown": "smaller", "Shift+ArrowLeft": "mirror", "Shift+ArrowRight": "mirror",
  };

  // Whoever moves the page by hand, by whatever means, moves the clock.

  function byHand() {
    handUntil = performance.now() + HAND_RESTS;
  }

  /** A finger on the text holds it; on a button it does not. */
  function onTouch(event) {
    touched = [...event.touches].some((one) => !one.target.closest(".bar"));
    if (touched || !event.target.closest(".bar")) byHand();
  }

  function heldByHand() {
    return touched || performance.now() < handUntil || Math.abs(scrollY - own) >= 2;
  }

  function follow() {
    if (scrollY !== own) byHand();
    own = scrollY;
    reading = own > wantedScroll(0) - 1;
    go(secondOfScroll());
  }

  function onScroll() {
    if (shape() !== measured) return layOut();
    if (!heldByHand()) return;
    follow();
    tell();
  }

  function onKey(event) {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing || event.defaultPrevented) return;
    const name = (event.shiftKey ? "Shift+" : "") + event.key;
    if (!(name in keys)) return;
    if (event.key === " " && event.target.closest("button")) return; // Space presses the button that has the focus
    if (event.shiftKey && !getSelection().isCollapsed) return; // Shift and an arrow change a selection
    event.preventDefault();
    if (!event.repeat || !["run", "mirror"].includes(keys[name])) actions[keys[name]]();
  }

  history.scrollRestoration = "manual";
  for (const one of document.querySelectorAll("[data-live]")) one.hidden = false;
  for (const [name, act] of Object.entries(actions)) byId(name).addEventListener("click", act);
  addEventListener("keydown", onKey);
  addEventListener("wheel", byHand, { passive: true });
  for (const name of ["touchstart", "touchend", "touchcancel"]) addEventListener(name, onTouch, { passive: true });
  addEventListener("scroll", onScroll, { passive: true });
  addEventListener("resize", layOut);
  document.addEventListener("visibilitychange", () => keepAwake(since !== null && !document.hidden));
  stepped.addEventListener("change", layOut);
  measure();
  tell();
})();
