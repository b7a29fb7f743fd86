// How smooth is smooth: the zoom, the particle, two faces; by slider, number and keyboard, reloaded, refused.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { refusesEach, standsNarrow } from "../support/given.js";
import { textOf } from "../support/inside.js";
import { standing } from "../support/standing.js";

const [ZOOM, RATIO, PARTICLE] = ["#surface-zoom", "#surface-ratio", "#surface-particle_um"];

describe("how smooth is smooth, in Chromium", () => {
  const hand = standing();
  const { open, put, undo, settled, said, value } = hand;
  beforeEach(() => open("#v=1&on=dusty-trike&ask=surface"));

  test("small dust sits in the face and large grit rides on it", async () => {
    assert.match(await said("answer"), /0\.60 µm sits below the peaks along \d+ %/);
    await put(PARTICLE, "8");
    assert.match(await said("answer"), /rides on the peaks/);
    await undo();
    assert.match(await said("answer"), /sits below/);
  });

  test("the zoom goes from millimetres to micrometres, and its bar says so", async () => {
    const bar = () => hand.inside(textOf, ".zoom-bar text");
    assert.match(await bar(), / mm$/);
    const pieces = await hand.inside(() => document.querySelectorAll(".zoom .metal").length);
    await put(ZOOM, "100");
    assert.match(await bar(), / µm$/);
    const near = await hand.inside(() => document.querySelectorAll(".zoom .metal").length);
    assert.ok(near < pieces);
    const circle = await hand.inside(() => Number(document.querySelector(".zoom .particle").getAttribute("r")));
    assert.ok(circle > 10, `the particle is ${circle} px`);
  });

  test("faces brought together by keys overlap more", async () => {
    const share = async () => Number(/, (\d+) % of the length/.exec(await said("slope"))?.[1] ?? 0);
    await put(RATIO, "2");
    const before = await share();
    await hand.inside(() => document.querySelector("#surface-ratio").closest(".field").querySelector("[type=range]").focus());
    await hand.press("Home");
    await settled();
    assert.ok(await share() > before + 20);
  });

  test("what cannot be is refused beside its field, and the last answer stays", async () => {
    await refusesEach(hand, [["#surface-rz_um", "0"], ["#surface-correlation_um", "-3"], [PARTICLE, "0"], ["#surface-seed", "1.5"], [ZOOM, "120"], [RATIO, "-1"]]);
  });

  test("a reload keeps the particle, tables and working are there, a narrow screen has no sideways scroll", async () => {
    await put(PARTICLE, "1.2");
    await put(ZOOM, "62.5");
    await put(RATIO, "2.3");
    await hand.reload();
    const kept = await Promise.all([PARTICLE, ZOOM, RATIO].map(value));
    assert.deepEqual(kept.map(Number), [1.2, 62.5, 2.3]);
    await hand.inside(() => document.querySelectorAll(".surface > details").forEach((each) => each.setAttribute("open", "")));
    await settled();
    assert.match(await hand.inside(textOf, ".surface .formula"), /Rq/);
    assert.ok(await hand.inside(() => document.querySelectorAll(".surface .graph-table td").length) > 50);
    await standsNarrow(hand);
    assert.deepEqual(hand.complaints(), []);
  });
});
