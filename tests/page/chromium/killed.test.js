// A worker that is ended without a word while a drive runs: the run goes on from where it is.

import assert from "node:assert/strict";
import { before, beforeEach, describe, test } from "node:test";
import { focusOn } from "../support/inside.js";
import { standing } from "../support/standing.js";

/** In the page, before anything runs: every worker that is started. */
const watched = () => {
  const all = { workers: [] };
  globalThis.Worker = class extends Worker {
    constructor(address) {
      super(address);
      all.workers.push(this);
    }
  };
  Object.assign(globalThis, { killed: all });
};
const place = () => Number(document.querySelector("#line-run .run-slider input").value);

describe("a worker that is ended in mid run, in Chromium", () => {
  const hand = standing();
  const { inside, until } = hand;
  before(() => hand.page.addInitScript(watched));
  beforeEach(async () => {
    await hand.open("#v=1&on=ferry-trike&ask=line");
    await inside(focusOn, "#line-run > summary");
    await inside(() => (document.querySelector("#line-run").open = true));
    await until(() => document.querySelector("#line-run .run-said")?.textContent && !document.querySelector("#line-run [data-busy]"));
    await inside(() => document.querySelector("#line-run .run-buttons button").click());
    await runsOn();
  });
  /** The joint comes a fifth of a pitch further than it is. */
  const runsOn = async () => {
    const start = await inside(place);
    await until((least) => Number(document.querySelector("#line-run .run-slider input").value) > least, start + 0.2);
  };
  const workers = () => inside(() => globalThis.killed.workers.length);
  const told = () => inside(() => document.querySelector("dialog.fault-box[open]") !== null);
  const state = () => inside(() => [location.hash, document.querySelector("#answer").textContent, document.querySelector("#undo").disabled]);

  test("one that ends without a word is replaced, and the run goes on from where it was", async () => {
    const [had, was] = [await workers(), await state()];
    const from = await inside(place);
    await inside(() => globalThis.killed.workers.at(-1).terminate());
    await until((count) => globalThis.killed.workers.length > count, had);
    assert.ok((await inside(place)) >= from, "it did not fall back");
    await runsOn();
    assert.deepEqual([await workers(), await told(), await state()], [had + 1, false, was]);
  });
});
