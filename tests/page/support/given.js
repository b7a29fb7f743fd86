// What the questions that are given numbers in fields are all held to.

import assert from "node:assert/strict";
import { fieldState, focusOn, textOf } from "./inside.js";

/** @typedef {ReturnType<typeof import("./standing.js").standing>} Stand */

/**
 * Each text is refused beside its field, whose fault is tied to it, and the last answer stays.
 * @param {Stand} hand
 * @param {[string, string][]} wrongs field and text
 */
export async function refusesEach({ put, inside, said }, wrongs) {
  const before = await said("answer");
  for (const [field, text] of wrongs) {
    await put(field, text);
    const state = await inside(fieldState, field);
    assert.ok(state.fault && state.invalid === "true" && state.described, `${field}: ${JSON.stringify(state)}`);
    assert.equal(await said("answer"), before);
  }
}

/**
 * Each text entered in the one field of a part is refused in it, and the last answer stays.
 * @param {Stand} hand
 * @param {string} part
 * @param {string[]} wrongs
 */
export async function refusesEntered({ page, press, inside, said }, part, wrongs) {
  const answer = await said("answer");
  for (const wrong of wrongs) {
    await inside(focusOn, `${part} input[inputmode=decimal]`);
    await inside(() => /** @type {HTMLInputElement} */ (document.activeElement).select());
    await page.keyboard.type(wrong);
    await press("Enter");
    assert.notEqual(await inside(textOf, `${part} .fault`), "", wrong);
    assert.equal(await said("answer"), answer);
  }
}

/**
 * What the pictures of a part say in words, unfolded.
 * @param {Stand} hand
 * @param {string} part
 * @returns {Promise<string[]>}
 */
export async function picturesInWords({ inside, settled }, part) {
  await inside((found) => document.querySelectorAll(`${found} details`).forEach((each) => each.setAttribute("open", "")), part);
  await settled();
  return inside((found) => [...document.querySelectorAll(`${found} .fold ul li`)].map((each) => each.textContent), part);
}

/**
 * A narrow window needs no sideways scroll.
 * @param {Stand} hand
 */
export async function standsNarrow({ page, inside, settled }) {
  await page.setViewportSize({ width: 320, height: 800 });
  await settled();
  assert.ok(await inside(() => document.documentElement.scrollWidth <= 320));
  await page.setViewportSize({ width: 1280, height: 900 });
}
