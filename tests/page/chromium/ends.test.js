// The ends of dimension lines in the hand: by pointer, by finger and by keys.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { centreOf, focusOn, textOf, twoFrames } from "../support/inside.js";
import { serving } from "../support/standing.js";
import { words } from "../support/words.js";

const END = "#grips .end:not([hidden])";
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe("the ends of dimension lines, in Chromium", () => {
  const page = serving();

  /** @type {(wishes: object, work: Parameters<typeof visit>[2], on?: string) => Promise<void>} */
  const come = (wishes, work, on = "ferry-winch") => visit(`${page.address}#v=1&on=${on}&ask=give&how=turn&at=1`, wishes, work);
  const sideGap = (hand) => hand.inside((label) => {
    const found = [...document.querySelectorAll("#gaps label")].find((each) => each.textContent === label);
    return Number(/** @type {HTMLInputElement} */ (document.getElementById(found.getAttribute("for"))).value);
  }, words["gap.side_gap_mm"]);
  const hash = (hand) => hand.inside(() => location.hash);

  test("an end pulled out opens the gap, pulled in it closes it and no further, and one undo takes it back", () =>
    come({}, async (hand) => {
      const [start, address] = [await sideGap(hand), await hash(hand)];
      const from = await hand.inside(centreOf, END);
      await hand.drag([from, { x: from.x, y: from.y - 4 }, { x: from.x, y: from.y - 12 }]);
      const wider = await sideGap(hand);
      assert.ok(wider > start + 0.01, `${start} to ${wider}`);
      await hand.inside(() => /** @type {HTMLElement} */ (document.querySelector("#undo")).click());
      await hand.inside(twoFrames);
      assert.deepEqual([await sideGap(hand), await hash(hand)], [start, address]);
      const again = await hand.inside(centreOf, END);
      await hand.drag([again, { x: again.x, y: again.y + 40 }, { x: again.x, y: again.y + 400 }]);
      const closed = await sideGap(hand);
      assert.ok(closed >= 0 && closed < start, `${closed}`);
      assert.deepEqual(hand.complaints(), []);
    }));

  test("a gap that makes no chain is refused on the drawing, and the last good one stays", () =>
    come({}, async (hand) => {
      const from = await hand.inside(centreOf, END);
      await hand.page.mouse.move(from.x, from.y);
      await hand.page.mouse.down();
      await hand.page.mouse.move(from.x, from.y - 10);
      await hand.inside(twoFrames);
      const good = await sideGap(hand);
      await hand.page.mouse.move(from.x, from.y - 200000);
      await hand.inside(twoFrames);
      assert.match(await hand.inside(textOf, ".sheet-fault:not([hidden])"), /\w/);
      assert.equal(await sideGap(hand), good);
      await hand.page.mouse.up();
      await hand.inside(twoFrames);
      assert.equal(await sideGap(hand), good);
    }));

  test("arrow keys on an end move the gap in steps, down to nothing", () =>
    come({}, async (hand) => {
      const start = await sideGap(hand);
      const says = () => hand.inside((end) => document.querySelector(end).getAttribute("aria-valuetext"), END);
      const told = await says();
      await hand.inside(focusOn, END);
      await hand.press("ArrowUp");
      assert.ok((await sideGap(hand)) > start);
      assert.notEqual(await says(), told);
      await hand.press("Home");
      assert.equal(await sideGap(hand), 0);
      assert.match(await hand.inside(textOf, "#answer"), /plates/, "without a side gap the plates stop it");
      await hand.press("ArrowUp");
      assert.ok((await sideGap(hand)) > 0, "the end is still in the hand");
    }));

  test("a finger finds an end of 44 px and pulls the gap by it", () =>
    come(PHONE, async (hand) => {
      const size = await hand.inside((end) => document.querySelector(end).getBoundingClientRect().width, END);
      assert.ok(size >= 44, `${size} px`);
      const [start, from] = [await sideGap(hand), await hand.inside(centreOf, END)];
      const session = await hand.context.newCDPSession(hand.page);
      const touch = (type, points) => session.send("Input.dispatchTouchEvent", { type, touchPoints: points });
      await touch("touchStart", [from]);
      for (const up of [3, 6, 9]) {
        await touch("touchMove", [{ x: from.x, y: from.y - up }]);
        await hand.inside(twoFrames);
      }
      await touch("touchEnd", []);
      await hand.inside(twoFrames);
      assert.ok((await sideGap(hand)) > start + 0.005);
    }, "ferry-trike"));
});
