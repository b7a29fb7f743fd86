// What a crooked line costs: by pointer and keyboard, undone, reloaded, refused.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { crookedSuite } from "../support/crooked.js";
import { openChromium } from "../support/hand.js";
import { centreOf, focusOn, twoFrames } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const SLIDER = ".crooked-track input";
const FIELD = "#drive-offset_mm";
const QUESTIONS = "#questions li:not([hidden]) button";

crookedSuite("Chromium", openChromium);

describe("the crooked line, in Chromium", () => {
  const hand = standing();
  const { open, put, click, undo, settled, said, value, hash } = hand;
  beforeEach(() => open("#v=1&on=ferry-trike&ask=line"));

  const setOffset = (mm) => put(FIELD, mm);

  test("a chain that states no drive is asked with an example, which is said and kept; one that does not go together is not", async () => {
    const asked = () => hand.inside((found) => [...document.querySelectorAll(found)].map((each) => each.textContent), QUESTIONS);
    const example = () => hand.inside((text) => [...document.querySelectorAll(".crooked-given .hint")].some((each) => each.textContent === text && each.checkVisibility()), words["line.begun"]);
    assert.equal(await example(), false, "this one states its own");
    await open("#v=1&on=size-40-bushed&ask=line");
    assert.equal(await hand.inside(() => document.body.dataset.ask), "line");
    assert.equal(await example(), true);
    await setOffset("9");
    const [answer, address] = [await said("answer"), await hash()];
    assert.match(answer, /^At 9\.00 mm/);
    await hand.reload();
    assert.deepEqual([await said("answer"), await hash(), await example()], [answer, address, true]);
    await open("#v=1&on=stiff-link&ask=line");
    assert.ok(!(await asked()).some((each) => each.includes(words["ask.line"])));
    assert.equal(await hand.inside(() => document.body.dataset.ask), "give");
  });

  test("keys move the slider, the plan and the sentence, and undo takes it back", async () => {
    const [before, drawn] = [await said("answer"), await hand.inside(() => document.querySelector(".crooked-plan").innerHTML)];
    await hand.inside(focusOn, SLIDER);
    await hand.press("ArrowRight");
    await settled();
    assert.notEqual(await said("answer"), before);
    assert.notEqual(await hand.inside(() => document.querySelector(".crooked-plan").innerHTML), drawn);
    assert.match(await hand.inside((found) => document.querySelector(found).getAttribute("aria-valuetext"), SLIDER), /mm/);
    await undo();
    assert.equal(await said("answer"), before);
  });

  test("a press on the chart takes the offset there", async () => {
    const before = await value(FIELD);
    await hand.drag([await hand.inside(centreOf, "figure > .graph")]);
    await settled();
    assert.notEqual(await value(FIELD), before);
    assert.match(await hash(), /drive\.offset_mm=/);
  });

  test("keys on the chart go by the steps of the slider and keep the focus, and its table says the same", async () => {
    const MARKER = ".graph-marker[role=slider]";
    const step = Number(await hand.inside((found) => document.querySelector(found).step, SLIDER));
    const before = Number(await value(FIELD));
    await hand.inside(focusOn, MARKER);
    await hand.press("ArrowRight");
    await settled();
    assert.equal(Number(await value(FIELD)), before + step);
    assert.ok(await hand.inside((found) => document.activeElement === document.querySelector(found), MARKER));
    assert.match(await hand.inside((found) => document.querySelector(found).getAttribute("aria-valuetext"), MARKER), /mm/);
    await hand.inside(() => document.querySelector(".crooked > .graph-fold").setAttribute("open", ""));
    await hand.inside(twoFrames);
    const cells = await hand.inside(() => [...document.querySelectorAll(".crooked > .graph-fold td")].filter((each) => /^\d/.test(each.textContent)).length);
    assert.ok(cells > 10, `${cells} numbers`);
  });

  test("a reload keeps the drive", async () => {
    await setOffset("12");
    const answer = await said("answer");
    await hand.reload();
    assert.deepEqual([await said("answer"), Number(await value(FIELD))], [answer, 12]);
  });

  test("newtons in place of power keep the pull", async () => {
    await click('[data-by="force"]');
    await settled();
    assert.equal(await hand.inside(() => document.querySelector("#drive-tight_n").closest(".field").hidden), false);
    assert.equal(Number(await value("#drive-tight_n")), 249);
    assert.deepEqual(hand.complaints(), []);
  });
});
