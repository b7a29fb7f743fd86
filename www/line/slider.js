// A slider with its name above it.

import { dress, make } from "../dom.js";
import { say } from "../words.js";

/**
 * A slider with its name.
 * @param {string} word
 * @param {(value: number) => void} slid
 */
export function slider(word, slid) {
  const input = make("input", { type: "range", "aria-label": say(word), oninput: () => slid(Number(input.value)) });
  const element = make("label", { class: "run-slider" }, make("span", {}, say(word)), input);
  const put = (/** @type {number} */ value, /** @type {object} */ limits, /** @type {string} */ text) => {
    dress(input, { ...limits, "aria-valuetext": text });
    if (Number(input.value) !== value) input.value = String(value);
  };
  return { input, element, put };
}
