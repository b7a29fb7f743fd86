// The crooked line, the same in two engines: its answer, what it refuses, my gears.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { focusOn, textOf, until } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

const OFFSET = "drive-offset_mm";
const GEARS = "#line-gears";
const A = '[data-which="a"]';
/** What is no number, and numbers that no offset can be. */
const REFUSED = ["many", " ", "1e999", "NaN", "99999999"];

/** Waits until my gears show what they were asked. */
const worked = until((part) => !document.querySelector(`${part} [data-busy]`), 5);

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 */
export function crookedSuite(engine, openHand) {
  describe(`the crooked line in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { put, said } = hand;
    before(() => hand.open("#v=1&on=ferry-trike&ask=line"));
    const times = () => hand.inside(() => Number.parseFloat(document.querySelector(".crooked-readings dd").textContent));

    test("the answer is free within the free range and costs more beyond it", async () => {
      await put(`#${OFFSET}`, "2");
      assert.match(await said("answer"), /runs free/);
      const free = await times();
      await put(`#${OFFSET}`, "20,0");
      assert.match(await said("answer"), /times as hard/);
      assert.ok(await times() > free + 0.5);
      assert.ok(await hand.inside(() => document.querySelectorAll(".crooked-plan .joint.hard").length > 1));
    });

    test("what cannot be is refused beside its field by name, and the last good drive stays", async () => {
      const answer = await said("answer");
      for (const text of REFUSED) {
        await put(`#${OFFSET}`, text);
        const fault = await said(`${OFFSET}-fault`);
        assert.ok(fault.startsWith(words["drive.offset_mm"]), `${text}: ${fault}`);
        assert.equal(await said("answer"), answer, text);
      }
      await put("#drive-driver_teeth", "-4");
      assert.match(await said("drive-driver_teeth-fault"), /−4; 5 is the least/);
      assert.equal(await said("answer"), answer);
    });

    test("each pair of my gears has its multiple and its watts, and fewer wheels are fewer pairs", async () => {
      await hand.inside((part) => { document.querySelector(part).open = true; }, GEARS);
      await hand.inside(worked, GEARS);
      const pairs = () => hand.inside((a) => [...document.querySelectorAll(`${a} .pair`)].map((each) => each.textContent), A);
      const first = await pairs();
      assert.equal(first.length, 11);
      assert.ok(first.some((text) => /free/.test(text)) && first.some((text) => /[2-9]\.\d\d ×/.test(text)), first.join(" "));
      await hand.inside(focusOn, "#gears-a-back");
      await hand.type("32 22 11");
      await hand.inside(worked, GEARS);
      assert.equal((await pairs()).length, 3);
      assert.match(await hand.inside(textOf, `${A} .gears-summary`), /of 3 pairs/);
      assert.deepEqual(hand.complaints(), []);
    });
  });
}
