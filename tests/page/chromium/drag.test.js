// What a drag changes on the page, in counts: of what stands only that is written which has become another.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { changesSoFar, countChanges } from "../support/changes.js";
import { HELD, drag, place } from "../support/drags.js";
import { answered } from "../support/inside.js";
import { standing } from "../support/standing.js";

const MOVES = 40;
const FRAME_MS = 1000 / 60;
/**
 * The most of each for a move, some twice as many as there are: elements made, and nodes put in (a text that is written is one);
 * calls of the kernel on the page's own thread. Where the stage is not seen nothing of it is painted or listed.
 */
const MOST = { made: 6, added: 12, calls: 8 };
/** A chain that is posed or worn anew is asked how it stands; the lists of what touches are told with it. */
const MORE = /** @type {Record<string, Partial<typeof MOST>>} */ ({
  give: { added: 20, calls: 24 }, touch: { added: 45, calls: 24 }, wear: { calls: 20 },
});

describe("a drag keeps what stands, in Chromium", () => {
  const visitor = standing({ viewport: { width: 1280, height: 800 } });

  for (const [ask, [chain, selector]] of Object.entries(HELD)) {
    test(`of the question ${ask}`, async () => {
      await visitor.open(`#v=1&on=${chain}&ask=${ask}`);
      await drag(visitor.page, await place(visitor, selector), MOVES, FRAME_MS); // what is seen for the first time is made
      await visitor.inside(answered);
      await visitor.inside(countChanges);
      await drag(visitor.page, await place(visitor, selector), MOVES, FRAME_MS);
      await visitor.inside(answered);
      const counts = await visitor.inside(changesSoFar);
      assert.ok(counts.attributes + counts.texts + counts.added > MOVES / 2, `the hand moved nothing: ${JSON.stringify(counts)}`);
      for (const [what, most] of Object.entries({ ...MOST, ...MORE[ask] })) {
        assert.ok(counts[what] <= most * MOVES, `${what}: ${counts[what]} in ${MOVES} moves, at most ${most * MOVES}`);
      }
    });
  }
});

describe("what stands is amended, in Chromium", () => {
  const visitor = standing({});

  test("an element stays while it is of its kind, and holds what is wanted and nothing else", async () => {
    await visitor.open("");
    const told = await visitor.inside(async () => {
      const { amend, draw, make } = await import(new URL("amend.js", location.href).href);
      const list = document.createElement("ul");
      list.append("what was there before goes");
      /** @type {string[]} */
      const heard = [];
      const item = (/** @type {string} */ text, /** @type {object} */ more = {}) => make("li", { class: "item", ...more }, make("button", { onclick: () => heard.push(text) }, text));
      amend(list, item("one", { hidden: true }), item("two"), item("three"), "end");
      const [first, second] = [...list.children];
      const [shown, button] = [[list.outerHTML], /** @type {HTMLElement} */ (first.firstChild)];
      amend(list, item("first", { title: "new" }), draw("svg", { width: 2 }), item("three"));
      shown.push(list.outerHTML);
      button.click();
      const own = document.createElement("li");
      amend(list, own, item("last"));
      const kept = own.parentNode === list;
      amend(list, item("again"), own);
      shown.push(list.outerHTML);
      amend(list);
      return { shown, heard, kept, same: button.isConnected === false && first === list.children[0], stayed: first.contains(button), gone: !second.isConnected, drawn: shown[1], left: list.childNodes.length };
    });
    const item = (text, more = "") => `<li class="item"${more}><button>${text}</button></li>`;
    assert.equal(told.shown[0], `<ul>${item("one", ' hidden=""')}${item("two")}${item("three")}end</ul>`);
    assert.equal(told.shown[1], `<ul>${item("first", ' title="new"')}<svg width="2"></svg>${item("three")}</ul>`);
    assert.equal(told.shown[2], `<ul>${item("again")}<li></li></ul>`);
    assert.deepEqual([told.heard, told.stayed, told.gone, told.kept, told.left], [["first"], true, true, true, 0]);
  });
});
