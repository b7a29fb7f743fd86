// Every question can be asked of the first screen's chain, and gives an answer of its own.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const ASKED = ["give", "touch", "line", "fit", "wear", "reach", "surface", "width"];

describe("the questions, in Chromium", () => {
  const hand = standing();
  const { open, settled, said } = hand;
  const ask = async (id) => {
    await hand.inside((text) => {
      const buttons = [...document.querySelectorAll("#questions li:not([hidden]) button")];
      buttons.find((each) => each.querySelector(".asked").textContent === text).click();
    }, words[`ask.${id}`]);
    await settled();
  };

  test("all eight are asked one after the other of the chain a visitor finds, and each answers", async () => {
    await open();
    const answers = new Map();
    for (const id of ASKED) {
      await ask(id);
      assert.equal(await hand.inside(() => document.body.dataset.ask), id);
      answers.set(id, await said("answer"));
      assert.notEqual(answers.get(id), "", id);
      assert.equal(await hand.inside(() => document.documentElement.scrollWidth <= innerWidth), true, `${id} fits the window`);
    }
    assert.equal(new Set(answers.values()).size, ASKED.length, [...answers.values()].join("\n"));
    await hand.reload();
    assert.equal(await hand.inside(() => document.body.dataset.ask), "width");
    await ask("fit");
    assert.equal(await said("answer"), answers.get("fit"));
    assert.deepEqual(hand.complaints(), []);
  });
});
