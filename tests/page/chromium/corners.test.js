// The chain at the ends of its limits: chosen, named, kept, taken back.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { focusOn, pictureMark } from "../support/inside.js";
import { standing } from "../support/standing.js";

describe("tightest, middle, loosest, in Chromium", () => {
  const hand = standing();
  const { open, undo, said } = hand;
  beforeEach(() => open("#v=1&on=ferry-trike&ask=give&how=turn&at=1"));

  /** @param {string} corner */
  const stand = async (corner) => {
    await hand.inside(focusOn, `[data-corner=${corner}]`);
    await hand.press("Enter");
  };
  const degrees = async () => Number.parseFloat(/([\d.]+)\u00b0/.exec(await said("answer"))[1]);

  test("the tightest turns less and the loosest more, within the range that is said, and each is named", async () => {
    const over = (await said("slope")).match(/[\d.]+(?=\u00b0)/g).map(Number);
    const middle = await degrees();
    await stand("tightest");
    const [tight, drawn] = [await degrees(), await hand.inside(pictureMark)];
    assert.match(await said("corner-ends"), /pin diameter at its largest.*bore of collar at its smallest/);
    await stand("loosest");
    assert.match(await said("corner-ends"), /pin diameter at its smallest.*bore of collar at its largest/);
    assert.ok(tight < middle && middle < await degrees());
    assert.deepEqual([tight, await degrees()], over);
    assert.notEqual((await hand.inside(pictureMark)).mark, drawn.mark);
  });

  test("a later question is asked of the chain that stands, and tells one end of its range", async () => {
    await open("#v=1&on=ferry-trike&ask=line");
    const { until } = hand;
    await until(() => document.querySelector("#over:not([hidden])"));
    const [multiple] = await hand.inside(() => [...document.querySelectorAll("#over b")].map((range) => range.textContent).filter((text) => text.includes("\u00d7")));
    const [tightest, loosest] = multiple.match(/\d+\.\d+/g);
    assert.ok(Number(tightest) > Number(loosest));
    for (const [corner, times] of [["tightest", tightest], ["loosest", loosest]]) {
      await stand(corner);
      await until((times) => document.querySelector("#answer").textContent.includes(` ${times} times`), times);
    }
  });

  test("a reload keeps it, undo takes it back", async () => {
    const middle = await degrees();
    await stand("loosest");
    const loose = await degrees();
    await hand.reload();
    assert.equal(await degrees(), loose);
    await undo();
    assert.equal(await degrees(), middle);
  });

  test("a chain without limits has no such switch", async () => {
    assert.equal(await hand.inside(() => document.querySelector("#corners").hidden), false);
    await open("#v=1&on=ferry-winch");
    assert.equal(await hand.inside(() => document.querySelector("#corners").hidden), true);
    assert.deepEqual(hand.complaints(), []);
  });
});
