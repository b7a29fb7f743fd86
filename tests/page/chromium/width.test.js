// How narrow it can go: gaps kept and plates kept, by slider, number and keyboard, undone, reloaded, refused.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { picturesInWords, refusesEntered } from "../support/given.js";
import { focusOn, readingOf } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const FIELD = ".width-given input[inputmode=decimal]";
const SLIDER = ".width-given input[type=range]";
const SWELLING = ".width-fits .field:nth-child(2) input[inputmode=decimal]";

describe("width, in Chromium", () => {
  const hand = standing();
  const { open, put, undo, settled, said, value } = hand;
  beforeEach(() => open("#v=1&on=ferry-trike&ask=width"));

  const reading = (word) => hand.inside(readingOf, ".width-readings", words[word]);
  const set = (mm, field = FIELD) => put(field, mm);
  const keep = async (what) => {
    await hand.inside((found) => document.querySelector(`[data-keep="${found}"]`).click(), what);
    await settled();
  };

  test("with gaps kept plates bear more; with plates kept the side gap and the free offset go", async () => {
    const [gap, free, plates] = [await reading("width.read.gap"), await reading("width.read.free"), await reading("width.read.plates")];
    await set("0.15");
    assert.match(await said("answer"), /more stressed/);
    assert.ok(await reading("width.read.plates") > plates);
    assert.equal(await reading("width.read.gap"), gap);
    await keep("plates");
    assert.match(await said("answer"), /side gap/);
    assert.equal(await reading("width.read.plates"), plates);
    assert.ok(Math.abs(await reading("width.read.gap") - (gap - 0.15)) < 0.006);
    assert.ok(await reading("width.read.free") < 0.3 * free);
    assert.equal(await hand.inside(() => document.querySelector('[data-keep="plates"]').getAttribute("aria-pressed")), "true");
  });

  test("narrower than its gap it does not go together, and the overlap is drawn", async () => {
    await keep("plates");
    await set("0.4");
    assert.match(await said("answer"), /does not go together/);
    assert.equal(await hand.inside(() => document.querySelectorAll(".layer.overlap").length), 2);
  });

  test("keys move the slider and undo takes it back", async () => {
    const before = await said("answer");
    await hand.inside(focusOn, SLIDER);
    await hand.press("ArrowRight");
    await settled();
    assert.notEqual(await said("answer"), before);
    assert.ok(Number(await value(FIELD)) > 0);
    await undo();
    assert.equal(await said("answer"), before);
  });

  test("a head that swells too much jams the mouths of the bore", async () => {
    const left = await reading("width.read.left");
    await set("0.05", SWELLING);
    assert.ok(await reading("width.read.left") < 0 && left > 0);
    assert.ok(await hand.inside((stiff) => document.querySelector(".width-aside").textContent.includes(stiff), "The joint is stiff."));
  });

  test("what cannot be built is refused beside its field, and the last good chain stays", async () => {
    await refusesEntered(hand, ".width-given", ["8", "-1"]);
  });

  test("a reload keeps the width, and the pictures can be read", async () => {
    await set("0.2");
    const answer = await said("answer");
    await hand.reload();
    assert.equal(await said("answer"), answer);
    const lines = await picturesInWords(hand, ".width");
    assert.ok(lines.length >= 7 && lines.every((line) => line && !/[{}]|undefined|NaN/.test(line)), lines.join("\n"));
    assert.deepEqual(hand.complaints(), []);
  });
});
