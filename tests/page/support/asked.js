// Every question on a scenario that has what it asks about, and what each is held to for those who see or move otherwise.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { broken, BUT_CONTRAST } from "./rules.js";
import { standing } from "./standing.js";

/** @type {Record<string, string>} */
export const ASKED = {
  give: "ferry-winch", touch: "tired-trike", line: "ferry-winch", fit: "ferry-thousand",
  wear: "tired-trike", reach: "oiled-winch", surface: "dusty-trike", width: "ferry-trike",
};

/** @param {string} id a question */
export const fragmentOf = (id) => `#v=1&on=${ASKED[id]}&ask=${id}`;

/** In the page: what stands out over the right edge of a window that should hold it, everything unfolded. */
const outside = () => {
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth <= clientWidth) return [];
  const wide = [...document.querySelectorAll("body *")].filter((each) => each.getBoundingClientRect().right > clientWidth + 0.5);
  return [`${scrollWidth} px wanted, ${clientWidth} px there`, ...wide.slice(0, 6).map((each) => `${each.tagName} ${each.id} ${each.getAttribute("class")}`)];
};

/** In the page: what is folded is opened, whereupon some of it is asked for. */
const unfold = () => document.querySelectorAll("details").forEach((each) => (each.open = true));
/** In the page: every picture has come with its name. */
const named = () => [...document.querySelectorAll("main svg[role=img]")].every((each) => !each.checkVisibility() || each.hasAttribute("aria-label"));

/**
 * No question needs a sideways scroll in windows of these sizes.
 * @param {string} name
 * @param {(wishes: object) => Promise<any>} openHand
 * @param {import("./hand.js").Size[]} sizes
 */
export function fitsSuite(name, openHand, sizes) {
  describe(name, () => {
    const hand = standing({}, openHand);
    for (const id of Object.keys(ASKED)) {
      test(`${id} needs no sideways scroll`, async () => {
        await hand.open(fragmentOf(id));
        for (const size of sizes) {
          await hand.resize(size);
          await hand.settled();
          assert.deepEqual(await hand.inside(outside), [], JSON.stringify(size));
        }
      });
    }
  });
}

/**
 * No question breaks an accessibility rule; contrast, which no engine changes, is looked at in Chromium and by `bits`.
 * @param {string} name
 * @param {(wishes: object) => Promise<any>} openHand
 * @param {object} [wishes]
 */
export function rulesSuite(name, openHand, wishes = {}) {
  describe(name, () => {
    /** @type {any} */
    let real;
    const hand = standing(wishes, async (asked) => (real = await openHand(asked)));
    before(() => hand.open());
    for (const id of Object.keys(ASKED)) {
      test(`no accessibility rule is broken under ${id}`, async () => {
        await hand.go(fragmentOf(id));
        await hand.inside(unfold);
        await hand.until(named);
        assert.deepEqual(await broken(real, BUT_CONTRAST), []);
      });
    }

    test("the rules are awake: a planted fault is found", async () => {
      await hand.inside(() => document.querySelector("main").append(document.createElement("input")));
      assert.match((await broken(real)).join("\n"), /^label:/m);
    });
  });
}
