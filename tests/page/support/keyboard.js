// The written walks by keyboard, done in the page as they stand in the document.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { standing } from "./standing.js";
import { walkRow, walksOf } from "./walk.js";

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function keyboardSuite(engine, openHand) {
  describe(`docs/keyboard.md, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const walks = walksOf();

    for (const { name, fragment, rows } of walks) {
      test(name, async () => {
        assert.ok(rows.length >= 4, `${rows.length} rows`);
        await hand.open(fragment);
        for (const row of rows) assert.equal(await walkRow(hand, row), "");
      });
    }

    test("every question has its walk", async () => {
      await hand.open();
      const asked = await hand.inside(() => [...document.querySelectorAll(".question .asked")].map((each) => each.textContent));
      assert.deepEqual(asked.filter((question) => !walks.some(({ name }) => name === question)), []);
    });

    test("a row that does not happen is found", async () => {
      await hand.open("#v=1&on=ferry-winch&ask=give&how=turn&at=1");
      const row = { row: "planted", keys: [{ key: "Tab", times: 1 }], on: false, heard: ["nothing of the kind"], seen: [] };
      assert.match(await walkRow(hand, row, 5), /nothing of the kind/);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
