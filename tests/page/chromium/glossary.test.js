// The trade's words: each lights what it means, on the drawing or in its question; by keyboard, heard, on a phone, in German.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { focusOn, textOf } from "../support/inside.js";
import { broken } from "../support/rules.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
/** Where each word leads, and what is lit there. */
const LEADS = {
  yaw: ["give", "turn", "#touching .row[aria-pressed=true]"], articulation: ["touch", "bend", ".found .row[aria-pressed=true]"],
  play: ["give", "turn", "#room-section.glossed"], bush: ["give", "turn", ".found .row[aria-pressed=true]"], bushingless: ["give", "turn", ".construction.glossed"],
  elevation: ["give", "turn", "canvas.glow"], hatching: ["give", "turn", "canvas.glow"], dashdot: ["give", "turn", "canvas.glow"],
  compliance: ["touch", "load", ".load .choices.glossed"], chainline: ["line", "turn", ".crooked-plan.glossed"], multiple: ["line", "turn", ".crooked-readings.glossed"],
  limits: ["fit", "turn", ".fit-demand.glossed"], bins: ["fit", "turn", "[data-look=sorted].glossed"],
};
/** In the page: how many dots glow, and how far down the first and the last of them are, as shares of the drawing. */
const glowing = () => {
  const canvas = document.querySelector("canvas.glow");
  const { width, height } = canvas;
  const { data } = canvas.getContext("2d").getImageData(0, 0, width, height);
  const lit = Array.from({ length: width * height }, (_, at) => at).filter((at) => data[4 * at + 3] > 128);
  return { count: lit.length, from: Math.floor(lit[0] / width) / height, to: Math.floor(lit.at(-1) / width) / height };
};

/** @param {ReturnType<typeof standing>} hand */
function acts(hand) {
  const choose = (id) => hand.click(`.glossary [data-word-of="${id}"]`);
  return {
    choose,
    async show(fragment = "") {
      await hand.open(fragment);
      await hand.click("#glossary");
      await hand.until(() => document.querySelector(".glossary:not([hidden])"));
    },
    async lights(id) {
      await choose(id);
      await hand.until((wanted) => document.querySelector(".glossary-told").textContent === wanted, words[`glossary.${id}.lit`]);
    },
  };
}

describe("the trade's words, in Chromium", () => {
  const hand = standing();
  const { show, choose, lights } = acts(hand);

  test("each word leads to where it lives and lights it there", async () => {
    for (const [id, [ask, how, lit]] of Object.entries(LEADS)) {
      if (["yaw", "bush"].includes(id)) await show();
      await lights(id);
      assert.match(await hand.hash(), new RegExp(`ask=${ask}&`), id);
      if (ask === "give" || ask === "touch") assert.match(await hand.hash(), new RegExp(`how=${how}&`), id);
      const seen = await hand.inside((found) => [...document.querySelectorAll(found)].filter((each) => each.checkVisibility()).length, lit);
      assert.equal(seen, 1, `${id}: ${lit}`);
      assert.equal(await hand.inside(() => document.querySelectorAll(".glossed, canvas.glow").length <= 1), true, `${id} alone`);
    }
    assert.deepEqual(hand.complaints(), []);
  });

  test("lines of the drawing glow where they are, each kind its own", async () => {
    await show();
    await lights("hatching");
    const hatched = await hand.inside(glowing);
    await lights("dashdot");
    const axes = await hand.inside(glowing);
    await lights("elevation");
    const side = await hand.inside(glowing);
    assert.ok(hatched.count > 2 * axes.count && axes.count > 100, JSON.stringify([hatched, axes]));
    assert.ok(side.from > 0.5 && side.to < 1 && side.count > 500, `the lower half: ${JSON.stringify(side)}`);
  });

  test("a keyboard walks it and Escape puts the light out", async () => {
    await show();
    assert.equal(await hand.inside(() => document.activeElement?.getAttribute("data-word-of")), "yaw");
    for (const key of ["ArrowDown", "ArrowDown", "Enter"]) await hand.press(key);
    await hand.until(() => document.querySelector("#room-section.glossed"));
    assert.deepEqual(await hand.inside(() => [document.activeElement?.getAttribute("data-word-of"), document.activeElement?.getAttribute("aria-pressed")]), ["play", "true"]);
    await hand.press("Escape");
    assert.deepEqual(await hand.inside(() => [document.querySelectorAll(".glossed").length, document.querySelector(".glossary").hidden, document.activeElement?.id]), [0, true, "glossary"]);
    await hand.inside(focusOn, "#glossary");
    await hand.press("Enter");
    await lights("yaw");
    await choose("yaw");
    assert.equal(await hand.inside(() => document.querySelectorAll("[data-word-of][aria-pressed=true]").length), 0, "again puts it out");
    assert.deepEqual(await broken(hand), []);
  });

  test("a chain that has no such thing says so", async () => {
    await show("#v=1&on=stiff-link&ask=give");
    for (const id of ["yaw", "limits"]) {
      await choose(id);
      await hand.until((wanted) => document.querySelector(".glossary-told").textContent === wanted, words["glossary.cannot"]);
    }
  });

  test("in German the words are German, the trade's in brackets", async () => {
    await hand.goTo(`${hand.address}?lang=de`);
    await hand.arrived();
    await hand.click("#glossary");
    await hand.until(() => document.querySelector(".glossary:not([hidden])"));
    assert.equal(await hand.inside(textOf, '[data-word-of="hatching"]'), "Schnittlinien (Schraffur)");
    await choose("hatching");
    await hand.until(() => /^Hell: die schrägen Linien/.test(document.querySelector(".glossary-told").textContent));
  });
});

describe("the trade's words on a phone, in Chromium", () => {
  const hand = standing(PHONE);
  const { show, lights } = acts(hand);

  test("what is lit stands above the words, and nothing sticks out", async () => {
    await show();
    for (const [id, place] of [["yaw", "#sheet"], ["play", "#room-section"], ["limits", ".fit-demand"], ["bushingless", ".construction"]]) {
      await lights(id);
      const [top, foot] = await hand.inside((found) => [document.querySelector(found).getBoundingClientRect().top, document.querySelector(".glossary").getBoundingClientRect().top], place);
      assert.ok(top >= 0 && top < foot - 40, `${id}: ${top} above ${foot}`);
    }
    await lights("elevation");
    const [from, head, high, foot] = [(await hand.inside(glowing)).from, ...(await hand.inside(() => {
      const { top, height } = document.querySelector("canvas.glow").getBoundingClientRect();
      return [top, height, document.querySelector(".glossary").getBoundingClientRect().top];
    }))];
    assert.ok(head + from * high >= 0 && head + from * high < foot - 40, `the section from the side: ${head} ${from} ${foot}`);
    assert.ok(await hand.inside(() => document.documentElement.scrollWidth <= innerWidth));
    const small = await hand.inside(() => [...document.querySelectorAll(".glossary button")].filter((each) => each.getBoundingClientRect().height < 44).length);
    assert.equal(small, 0);
  });
});
