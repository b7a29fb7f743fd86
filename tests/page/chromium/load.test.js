// A load on the next outer link: forces in the list, in words and on the drawing.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { focusOn, opened, pictureMark, textOf, twoFrames } from "../support/inside.js";
import { startPage } from "../support/server.js";

const LOAD = "#v=1&on=ferry-trike&ask=touch&how=load&at=1";

describe("a load on the link, in Chromium", () => {
  /** @type {Awaited<ReturnType<typeof startPage>>} */
  let page;
  before(async () => (page = await startPage()));
  after(() => page?.stop());

  /** @type {(work: Parameters<typeof visit>[2]) => Promise<void>} */
  const come = (work) => visit(page.address + LOAD, {}, work);
  /** Newtons at the ends of the rows. */
  const rows = (hand) => hand.inside(() =>
    [...document.querySelectorAll("#touching .size")].map((each) => Number.parseFloat(each.textContent || "0")));
  const type = async (hand, field, value) => {
    await hand.inside(focusOn, field);
    await hand.type(value);
  };

  test("the rows carry newtons that add up to the pull, and the drawing changes with the load", () =>
    come(async (hand) => {
      await type(hand, "#load-tension_n", "400");
      const [forces, drawn] = [await rows(hand), await hand.inside(pictureMark)];
      assert.equal(forces.reduce((sum, force) => sum + force, 0), 800, "twice the pull: in at one pin, out at the other");
      await type(hand, "#load-side_n", "40");
      assert.notEqual((await hand.inside(pictureMark)).mark, drawn.mark);
      assert.match(await hand.inside(textOf, "#surprise"), /400 N left, 400 N right/);
      await hand.page.waitForFunction(() => /400 N/.test(document.querySelector("#twin").textContent));
      await hand.inside(() => /** @type {HTMLElement} */ (document.querySelector("#undo")).click());
      await hand.inside(twoFrames);
      assert.deepEqual(await rows(hand), forces, "one undo takes the side force back");
      assert.deepEqual(hand.complaints(), []);
    }));

  test("springy plates are another answer, and a reload keeps load and springs", () =>
    come(async (hand) => {
      await type(hand, "#load-moment_n_mm", "600");
      const rigid = await rows(hand);
      await hand.inside(() => /** @type {HTMLElement} */ (document.querySelectorAll(".load .choice")[1]).click());
      await hand.inside(twoFrames);
      const springy = await rows(hand);
      assert.notDeepEqual(springy, rigid);
      await hand.reload();
      await hand.inside(opened);
      assert.deepEqual(await rows(hand), springy);
    }));

  test("a load that is no number or too large is refused beside its field, and the last one stays", () =>
    come(async (hand) => {
      const before = await rows(hand);
      for (const wrong of ["e", "1e99", "-5"]) {
        await type(hand, "#load-tension_n", wrong);
        assert.match(await hand.inside(textOf, "#load-tension_n-fault:not([hidden])"), /\w/, `"${wrong}"`);
        assert.deepEqual(await rows(hand), before);
      }
    }));
});
