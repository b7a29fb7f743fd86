// The chain at the ends of its limits: chosen, named, kept, taken back.

import assert from "node:assert/strict";
import { after, before, beforeEach, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { focusOn, opened, pictureMark, textOf, twoFrames } from "../support/inside.js";
import { startPage } from "../support/server.js";

describe("tightest, middle, loosest, in Chromium", () => {
  /** @type {Awaited<ReturnType<typeof openChromium>>} */
  let hand;
  /** @type {Awaited<ReturnType<typeof startPage>>} */
  let page;
  before(async () => {
    page = await startPage();
    hand = await openChromium();
  });
  after(async () => {
    await hand?.close();
    await page?.stop();
  });
  const open = async (fragment) => {
    await hand.goTo("about:blank");
    await hand.goTo(page.address + fragment);
    await hand.inside(opened);
  };
  beforeEach(() => open("#v=1&on=ferry-trike&ask=give&how=turn&at=1"));

  /** @param {string} corner */
  const stand = async (corner) => {
    await hand.inside(focusOn, `[data-corner=${corner}]`);
    await hand.press("Enter");
  };
  const degrees = async () => Number.parseFloat(/([\d.]+)\u00b0/.exec(await hand.inside(textOf, "#answer"))[1]);

  test("the tightest turns less and the loosest more, within the range that is said, and each is named", async () => {
    const over = (await hand.inside(textOf, "#slope")).match(/[\d.]+(?=\u00b0)/g).map(Number);
    const middle = await degrees();
    await stand("tightest");
    const [tight, drawn] = [await degrees(), await hand.inside(pictureMark)];
    assert.match(await hand.inside(textOf, "#corner-ends"), /pin diameter at its largest.*bore of collar at its smallest/);
    await stand("loosest");
    assert.match(await hand.inside(textOf, "#corner-ends"), /pin diameter at its smallest.*bore of collar at its largest/);
    assert.ok(tight < middle && middle < await degrees());
    assert.deepEqual([tight, await degrees()], over);
    assert.notEqual((await hand.inside(pictureMark)).mark, drawn.mark);
  });

  test("a reload keeps it, undo takes it back", async () => {
    const middle = await degrees();
    await stand("loosest");
    const loose = await degrees();
    await hand.reload();
    await hand.inside(opened);
    assert.equal(await degrees(), loose);
    await hand.inside(() => document.querySelector("#undo").click());
    await hand.inside(twoFrames);
    assert.equal(await degrees(), middle);
  });

  test("a chain without limits has no such switch", async () => {
    assert.equal(await hand.inside(() => document.querySelector("#corners").hidden), false);
    await open("#v=1&on=ferry-winch");
    assert.equal(await hand.inside(() => document.querySelector("#corners").hidden), true);
    assert.deepEqual(hand.complaints(), []);
  });
});
