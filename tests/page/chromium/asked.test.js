// Every question can be asked of the first screen's chain, and gives an answer of its own.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { answered, opened, textOf } from "../support/inside.js";
import { startPage } from "../support/server.js";
import { words } from "../support/words.js";

const ASKED = ["give", "touch", "line", "fit", "wear", "reach", "surface", "width"];

describe("the questions, in Chromium", () => {
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
  const ask = async (id) => {
    await hand.inside((text) => {
      const buttons = [...document.querySelectorAll("#questions li:not([hidden]) button")];
      buttons.find((each) => each.querySelector(".asked").textContent === text).click();
    }, words[`ask.${id}`]);
    await hand.inside(answered);
  };

  test("all eight are asked one after the other of the chain a visitor finds, and each answers", async () => {
    await hand.goTo("about:blank");
    await hand.goTo(page.address);
    await hand.inside(opened);
    const answers = new Map();
    for (const id of ASKED) {
      await ask(id);
      assert.equal(await hand.inside(() => document.body.dataset.ask), id);
      answers.set(id, await hand.inside(textOf, "#answer"));
      assert.notEqual(answers.get(id), "", id);
      assert.equal(await hand.inside(() => document.documentElement.scrollWidth <= innerWidth), true, `${id} fits the window`);
    }
    assert.equal(new Set(answers.values()).size, ASKED.length, [...answers.values()].join("\n"));
    await hand.reload();
    await hand.inside(opened);
    await hand.inside(answered);
    assert.equal(await hand.inside(() => document.body.dataset.ask), "width");
    await ask("fit");
    assert.equal(await hand.inside(textOf, "#answer"), answers.get("fit"));
    assert.deepEqual(hand.complaints(), []);
  });
});
