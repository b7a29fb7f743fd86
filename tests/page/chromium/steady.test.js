// Many drags leave nothing behind: what the page's scripts hold is the same after more of them.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { answered } from "../support/inside.js";
import { standing } from "../support/standing.js";

/** So many drags fill what is kept on purpose, undo above all (its depth is 200), before anything is weighed. */
const FILLING = 220;
const WEIGHED = 50;
/** So many times, of which the middle counts: a browser compiles and clears away when it likes. */
const TIMES = 3;
/** What a drag may leave, bytes: a browser goes on compiling what runs often, 1,700 at first and 10 after a thousand drags. */
const MOST = 2500;
/** A leak of so many numbers for a drag, 4,800 bytes, must be found. */
const LEAK = 600;

/**
 * In the page: takes hold, pulls to and fro and lets go, four times a frame, by the events that a pointer makes.
 * @param {string} selector
 * @param {number} drags
 * @param {number} leak numbers that are kept of each drag
 */
const dragged = async (selector, drags, leak) => {
  const held = /** @type {HTMLElement} */ (document.querySelector(selector));
  held.setPointerCapture = () => {}; // no browser captures a pointer that is not there
  const box = held.getBoundingClientRect();
  const send = (/** @type {string} */ kind, /** @type {number} */ dx) => held.dispatchEvent(new PointerEvent(kind, {
    bubbles: true, button: 0, pointerId: 1, pointerType: "mouse", clientX: box.x + box.width / 2 + dx, clientY: box.y + box.height / 2 + dx / 2,
  }));
  const slide = (/** @type {number} */ share) => {
    const { min, max } = /** @type {HTMLInputElement} */ (held);
    /** @type {HTMLInputElement} */ (held).value = String(Number(min) + share * (Number(max) - Number(min)));
    held.dispatchEvent(new Event("input", { bubbles: true }));
  };
  for (let turn = 0; turn < drags; turn++) {
    const part = (turn % 9) / 9;
    if (held.matches("input")) {
      slide(part);
      held.dispatchEvent(new Event("change", { bubbles: true }));
    } else {
      for (const [kind, dx] of /** @type {[string, number][]} */ ([["pointerdown", 0], ["pointermove", 20 * part], ["pointermove", -30 * part - 5], ["pointerup", 0]])) send(kind, dx);
    }
    if (leak > 0) (globalThis.leaked ??= []).push(new Array(leak).fill(turn + 0.5));
    await (turn % 4 === 3 ? new Promise((next) => requestAnimationFrame(next)) : null);
  }
};

describe("memory over many drags, in Chromium", () => {
  const hand = standing();
  /** Bytes that scripts hold once what nobody needs is gone, for each drag more. */
  const left = async (selector, leak = 0) => {
    const session = await hand.page.context().newCDPSession(hand.page);
    const used = async () => {
      await hand.inside(answered);
      await session.send("HeapProfiler.collectGarbage");
      return (await session.send("Runtime.getHeapUsage")).usedSize;
    };
    const each = [];
    for (let [time, before] = [0, await used()]; time < TIMES; time++) {
      await hand.inside(dragged, selector, WEIGHED, leak);
      const now = await used();
      each.push((now - before) / WEIGHED);
      before = now;
    }
    return each.sort((a, b) => a - b)[(TIMES - 1) / 2];
  };

  for (const [what, fragment, selector] of [
    ["the free link", "#v=1&on=ferry-winch&ask=give", "#grips .grip:not([hidden])"],
    ["how much narrower it is", "#v=1&on=ferry-trike&ask=width", ".own input[type=range]"],
  ]) {
    test(`${what}: a drag leaves less than ${MOST} bytes`, async (t) => {
      await hand.open(fragment);
      await hand.inside(dragged, selector, FILLING, 0);
      const each = await left(selector);
      t.diagnostic(`${each.toFixed(0)} bytes a drag`);
      assert.ok(each < MOST, `${each}`);
      assert.notEqual(await hand.hash(), fragment, "it was dragged");
    });
  }

  test("a list that is kept of every drag is found", async () => {
    assert.ok((await left(".own input[type=range]", LEAK)) > MOST);
  });

  test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
});
