// What can get in: by slider, number and keyboard, undone, reloaded, refused, on a narrow screen.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { refusesEach, standsNarrow } from "../support/given.js";
import { textOf } from "../support/inside.js";
import { standing } from "../support/standing.js";

const [BRISTLE, GRIT, FLEX] = ["#reach-bristle_mm", "#reach-particle_mm", "#reach-flex"];

describe("what can get in, in Chromium", () => {
  const hand = standing();
  const { open, put, undo, settled, said, value } = hand;
  beforeEach(() => open("#v=1&on=oiled-winch&ask=reach"));
  const stripes = (by) => hand.inside((found) => document.querySelectorAll(`.stripe.by-${found}`).length, by);
  const cell = (row, column) => hand.inside((r, c) => document.querySelectorAll(".reach-list tbody tr")[r].children[c].textContent, row, column);

  test("a bristle cleans the side gap and none of the face between pin and bore", async () => {
    assert.match(await said("answer"), /0\.15 mm cleans the side gap/);
    assert.equal(await cell(1, 3), "nothing");
    assert.ok(await stripes("bristle") >= 8);
  });

  test("thicker bristles reach the rim alone, larger grit less, and undo brings them back", async () => {
    const before = await said("answer");
    await put(BRISTLE, "0.3");
    assert.match(await said("answer"), /nothing in here|the rim/);
    await put(GRIT, "0.03");
    assert.equal(await cell(1, 4), "nothing");
    assert.ok(await stripes("oil") > 0);
    for (let i = 0; i < 2; i++) {
      await undo();
    }
    assert.equal(await said("answer"), before);
  });

  test("flexing the joint by keys changes the picture, with the slider's value in words", async () => {
    const drawn = () => hand.inside(() => [...document.querySelectorAll(".metal")].map((each) => each.getAttribute("d")).join());
    const straight = await drawn();
    await hand.inside(() => document.querySelector("#reach-flex").closest(".field").querySelector("[type=range]").focus());
    for (let i = 0; i < 6; i++) await hand.press("ArrowRight");
    await settled();
    assert.notEqual(await drawn(), straight);
    assert.notEqual(await value(FLEX), "0");
  });

  test("what cannot be is refused beside its field, and the last answer stays", async () => {
    await refusesEach(hand, [[BRISTLE, "-1"], [GRIT, "0"], ["#reach-viscosity_pa_s", "0"], [FLEX, "140"], ["#reach-pressure_pa", "-5"]]);
  });

  test("a reload keeps what was set", async () => {
    await put(GRIT, "0.05");
    await put(FLEX, "-35");
    await hand.reload();
    assert.deepEqual([Number(await value(GRIT)), Number(await value(FLEX))], [0.05, -35]);
    await undo();
    assert.equal(Number(await value(FLEX)), 0);
  });

  test("the picture has words, the working its formula, and a narrow screen no sideways scroll", async () => {
    await hand.inside(() => document.querySelectorAll(".reach > details").forEach((each) => each.setAttribute("open", "")));
    await settled();
    assert.ok(await hand.inside(() => document.querySelectorAll(".reach details li").length) >= 9);
    assert.match(await hand.inside(textOf, ".reach-work .formula"), /h³/);
    await standsNarrow(hand);
    assert.deepEqual(hand.complaints(), []);
  });

  test("a chain that does not go together says so", async () => {
    await open("#v=1&on=stiff-link&ask=reach");
    assert.match(await said("answer"), /does not go together/);
  });
});
