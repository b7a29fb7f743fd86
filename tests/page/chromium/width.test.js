// How narrow it can go: gaps kept and plates kept, by slider, number and keyboard, undone, reloaded, refused.

import assert from "node:assert/strict";
import { after, before, beforeEach, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { answered, focusOn, opened, textOf, twoFrames } from "../support/inside.js";
import { startPage } from "../support/server.js";
import { words } from "../support/words.js";

const FIELD = ".width-given input[type=number]";
const SLIDER = ".width-given input[type=range]";
const SWELLING = ".width-fits .field:nth-child(2) input[type=number]";

describe("width, in Chromium", () => {
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
  const open = async (fragment) => {
    await hand.goTo("about:blank");
    await hand.goTo(page.address + fragment);
    await hand.inside(opened);
    await hand.inside(answered);
    await hand.inside(twoFrames);
  };
  beforeEach(() => open("#v=1&on=ferry-trike&ask=width"));

  const said = (id) => hand.inside(textOf, `#${id}`);
  const value = (selector) => hand.inside((found) => document.querySelector(found).value, selector);
  const reading = (word) => hand.inside((name) => {
    const term = [...document.querySelectorAll(".width-readings dt")].find((each) => each.textContent === name);
    return Number.parseFloat(term.nextElementSibling.textContent.replace("\u2212", "-"));
  }, words[word]);
  const set = async (mm, field = FIELD) => {
    await hand.inside(focusOn, field);
    await hand.type(mm);
    await hand.inside(answered);
    await hand.inside(twoFrames);
  };
  const keep = async (what) => {
    await hand.inside((found) => document.querySelector(`[data-keep="${found}"]`).click(), what);
    await hand.inside(answered);
    await hand.inside(twoFrames);
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
    await hand.inside(answered);
    assert.notEqual(await said("answer"), before);
    assert.ok(Number(await value(FIELD)) > 0);
    await hand.inside(() => document.querySelector("#undo").click());
    await hand.inside(answered);
    assert.equal(await said("answer"), before);
  });

  test("a head that swells too much jams the mouths of the bore", async () => {
    const left = await reading("width.read.left");
    await set("0.05", SWELLING);
    assert.ok(await reading("width.read.left") < 0 && left > 0);
    assert.ok(await hand.inside((stiff) => document.querySelector(".width-aside").textContent.includes(stiff), "The joint is stiff."));
  });

  test("what cannot be built is refused beside its field, and the last good chain stays", async () => {
    const answer = await said("answer");
    for (const wrong of ["8", "-1"]) {
      await hand.inside(focusOn, FIELD);
      await hand.inside(() => document.activeElement.select());
      await hand.page.keyboard.type(wrong);
      await hand.press("Enter");
      assert.notEqual(await hand.inside(() => document.querySelector(".width-given .fault").textContent), "", wrong);
      assert.equal(await said("answer"), answer);
    }
  });

  test("a reload keeps the width, and the pictures can be read", async () => {
    await set("0.2");
    const answer = await said("answer");
    await hand.reload();
    await hand.inside(opened);
    await hand.inside(answered);
    assert.equal(await said("answer"), answer);
    await hand.inside(() => document.querySelectorAll(".width details").forEach((each) => each.setAttribute("open", "")));
    await hand.inside(twoFrames);
    await hand.inside(twoFrames);
    const lines = await hand.inside(() => [...document.querySelectorAll(".width .fold ul li")].map((each) => each.textContent));
    assert.ok(lines.length >= 7 && lines.every((line) => line && !/[{}]|undefined|NaN/.test(line)), lines.join("\n"));
    assert.deepEqual(hand.complaints(), []);
  });
});
