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
    await until(() => document.querySelector("#over:not([aria-busy]) b"));
    const [multiple] = await hand.inside(() => [...document.querySelectorAll("#over b")].map((range) => range.textContent).filter((text) => text.includes("\u00d7")));
    const [tightest, loosest] = multiple.match(/\d+\.\d+/g);
    assert.ok(Number(tightest) > Number(loosest));
    for (const [corner, times] of [["tightest", tightest], ["loosest", loosest]]) {
      await stand(corner);
      await until((times) => document.querySelector("#answer").textContent.includes(` ${times} times`), times);
    }
  });

  test("both ends of a range have one unit, in which neither is nothing", async () => {
    const told = await hand.inside(async () => {
      const { writtenRange } = await import(new URL("compare/figures.js", location.href).href);
      const ranges = [[0.009, 0.028], [0.002, 0.4], [0.009, 0.4], [0.05, 0.09], [0.002, 0.004], [-0.003, 0.02], [null, 0.4]];
      return ranges.map(([one, other]) => writtenRange("side_gap_mm", one, other).join(" … "));
    });
    assert.deepEqual(told, ["9 µm … 28 µm", "0.002 mm … 0.400 mm", "0.009 mm … 0.400 mm", "0.05 mm … 0.09 mm", "2 µm … 4 µm", "−3 µm … 20 µm", "– … 0.40 mm"]);
  });

  test("what the limits leave open has its room before it is known, and nothing moves when it comes", async () => {
    await open("#v=1&on=ferry-trike&ask=width");
    await hand.until(() => document.querySelector("#over:not([aria-busy]) b"));
    const top = () => hand.inside(() => document.querySelector(".own").getBoundingClientRect().top + scrollY);
    const known = await top();
    await hand.inside(() => document.querySelector("#questions li:nth-child(3) button").click());
    await hand.until(() => document.querySelector("#over[aria-busy]:empty"));
    assert.notEqual(await hand.inside(() => document.querySelector("#over").getBoundingClientRect().height), 0);
    await hand.until(() => document.querySelector("#over:not([aria-busy]) b"));
    await hand.inside(() => document.querySelector("#questions li:nth-child(8) button").click());
    await hand.until(() => document.querySelector("#over[aria-busy]:empty") && document.querySelector(".own.width:not(.none, .waiting)"));
    assert.equal(await top(), known);
    await hand.until(() => document.querySelector("#over:not([aria-busy]) b"));
    assert.equal(await top(), known);
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
