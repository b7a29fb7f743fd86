// How smooth is smooth: the zoom, the particle, two faces; by slider, number and keyboard, reloaded, refused.

import assert from "node:assert/strict";
import { after, before, beforeEach, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { answered, fieldState, focusOn, opened, textOf, twoFrames } from "../support/inside.js";
import { startPage } from "../support/server.js";

const [ZOOM, RATIO, PARTICLE] = ["#surface-zoom", "#surface-ratio", "#surface-particle_um"];

describe("how smooth is smooth, in Chromium", () => {
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
  beforeEach(async () => {
    await hand.goTo("about:blank");
    await hand.goTo(`${page.address}#v=1&on=dusty-trike&ask=surface`);
    await hand.inside(opened);
    await hand.inside(answered);
  });
  const said = (id) => hand.inside(textOf, `#${id}`);
  const put = async (field, text) => {
    await hand.inside(focusOn, field);
    await hand.type(text);
    await hand.inside(answered);
  };

  test("small dust sits in the face and large grit rides on it", async () => {
    assert.match(await said("answer"), /0\.60 µm sits below the peaks along \d+ %/);
    await put(PARTICLE, "8");
    assert.match(await said("answer"), /rides on the peaks/);
    await hand.inside(() => document.querySelector("#undo").click());
    await hand.inside(answered);
    assert.match(await said("answer"), /sits below/);
  });

  test("the zoom goes from millimetres to micrometres, and its bar says so", async () => {
    const bar = () => hand.inside(textOf, ".zoom-bar text");
    assert.match(await bar(), / mm$/);
    const pieces = await hand.inside(() => document.querySelectorAll(".zoom .metal").length);
    await put(ZOOM, "100");
    await hand.inside(twoFrames);
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
    await hand.inside(answered);
    assert.ok(await share() > before + 20);
  });

  test("what cannot be is refused beside its field, and the last answer stays", async () => {
    const before = await said("answer");
    for (const [field, text] of [["#surface-rz_um", "0"], ["#surface-correlation_um", "-3"], [PARTICLE, "0"], ["#surface-seed", "1.5"], [ZOOM, "120"], [RATIO, "-1"]]) {
      await put(field, text);
      const state = await hand.inside(fieldState, field);
      assert.ok(state.fault && state.invalid === "true" && state.described, `${field}: ${JSON.stringify(state)}`);
      assert.equal(await said("answer"), before);
    }
  });

  test("a reload keeps the particle, tables and working are there, a narrow screen has no sideways scroll", async () => {
    await put(PARTICLE, "1.2");
    await hand.reload();
    await hand.inside(opened);
    await hand.inside(answered);
    assert.equal(Number(await hand.inside((found) => document.querySelector(found).value, PARTICLE)), 1.2);
    await hand.inside(() => document.querySelectorAll(".surface > details").forEach((each) => each.setAttribute("open", "")));
    for (let i = 0; i < 3; i++) await hand.inside(twoFrames);
    assert.match(await hand.inside(textOf, ".surface .formula"), /Rq/);
    assert.ok(await hand.inside(() => document.querySelectorAll(".surface .graph-table td").length) > 50);
    await hand.page.setViewportSize({ width: 320, height: 800 });
    await hand.inside(twoFrames);
    assert.ok(await hand.inside(() => document.documentElement.scrollWidth <= 320));
    await hand.page.setViewportSize({ width: 1280, height: 900 });
    assert.deepEqual(hand.complaints(), []);
  });
});
