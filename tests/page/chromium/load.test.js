// A load on the next outer link: forces in the list, in words and on the drawing.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { pictureMark, textOf, twoFrames } from "../support/inside.js";
import { standing } from "../support/standing.js";

describe("a load on the link, in Chromium", () => {
  const hand = standing();
  const { open, put, undo, until, said } = hand;
  beforeEach(async () => {
    await open("#v=1&on=ferry-trike&ask=touch&how=load&at=1");
    await until(() => document.querySelector("#load-tension_n") !== null); // fetched when a load is first shown
  });

  /** Newtons at the ends of the rows. */
  const rows = () => hand.inside(() =>
    [...document.querySelectorAll("#touching .size")].map((each) => Number.parseFloat(each.textContent || "0")));

  test("the rows carry newtons that add up to the pull, and the drawing changes with the load", async () => {
    await put("#load-tension_n", "400");
    const [forces, drawn] = [await rows(), await hand.inside(pictureMark)];
    assert.equal(forces.reduce((sum, force) => sum + force, 0), 800, "twice the pull: in at one pin, out at the other");
    await put("#load-side_n", "40");
    assert.notEqual((await hand.inside(pictureMark)).mark, drawn.mark);
    assert.match(await said("surprise"), /400 N left, 400 N right/);
    await until(() => /400\sN/.test(document.querySelector("#twin").textContent));
    await undo();
    assert.deepEqual(await rows(), forces, "one undo takes the side force back");
    assert.deepEqual(hand.complaints(), []);
  });

  test("springy plates are another answer, and a reload keeps load and springs", async () => {
    await put("#load-moment_n_mm", "600");
    const rigid = await rows();
    await hand.inside(() => /** @type {HTMLElement} */ (document.querySelectorAll(".load .choice")[1]).click());
    await hand.inside(twoFrames);
    const springy = await rows();
    assert.notDeepEqual(springy, rigid);
    await hand.reload();
    assert.deepEqual(await rows(), springy);
  });

  test("a load that is no number or too large is refused beside its field, and the last one stays", async () => {
    const before = await rows();
    for (const wrong of ["e", "1e99", "-5"]) {
      await put("#load-tension_n", wrong);
      assert.match(await hand.inside(textOf, "#load-tension_n-fault:not([hidden])"), /\w/, `"${wrong}"`);
      assert.deepEqual(await rows(), before);
    }
  });

  test("how it is worked out is told of a load as of every movement", async () => {
    for (const on of ["ferry-winch", "ferry-trike"]) {
      for (const [ask, how] of [["touch", "load"], ["touch", "bend"], ["touch", "turn"], ["touch", "aside"], ["touch", "twist"], ["give", "lean"]]) {
        await open(`#v=1&on=${on}&ask=${ask}&how=${how}&at=1`);
        await hand.inside(() => { /** @type {HTMLDetailsElement} */ (document.getElementById("work-fold")).open = true; });
        await until(() => document.querySelector("#work .formula") !== null);
        const told = await hand.inside(textOf, "#work");
        assert.ok(told.length > 200 && !/\b(work|letter|value)\.[a-z]/.test(told), `${on}, ${how}: ${told}`);
      }
    }
    assert.deepEqual(hand.complaints(), []);
  });
});
