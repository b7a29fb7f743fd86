// How a number is written in a field and read from it.

import { make } from "./dom.js";
import { fieldOf, gap, mmOf, numberOf, typedOf, unitInUse } from "./figures.js";
import { say } from "./words.js";

/** @typedef {import("./kernel.js").Fault} Fault */
/**
 * How a number is read and written.
 * @typedef {object} Way
 * @property {(value: number) => string} text as the field holds it
 * @property {(text: string) => number} read what the field says; NaN when it is no number
 * @property {() => string} unit
 * @property {(value: number) => string} [said] as a slider says it; its text and unit otherwise
 */

/** @type {Way} */
export const LENGTH = { text: fieldOf, read: mmOf, unit: () => say(unitInUse() === "in" ? "unit.inch" : "unit.mm"), said: gap };

/**
 * A length if its name ends like one, otherwise a plain number with this word for its unit.
 * @param {string} name
 * @param {string} word
 * @returns {Way}
 */
export const wayOf = (name, word) => (name.endsWith("_mm") ? LENGTH : { text: typedOf, read: numberOf, unit: () => say(word) });

/** How far an arrow key goes where a field does not say it. */
const [STEP, DECIMALS] = [1, 6];

/**
 * A field for a number: a text, since a browser writes numbers in its own language, not in the page's. The arrow keys go
 * by its `data-step`.
 * @param {Record<string, any>} attributes
 */
export function numberField(attributes) {
  const input = make("input", { type: "text", inputmode: "decimal", autocomplete: "off", ...attributes });
  input.addEventListener("keydown", (event) => {
    const [by, value] = [{ ArrowUp: 1, ArrowDown: -1 }[event.key], numberOf(input.value)];
    if (!by || Number.isNaN(value)) return;
    event.preventDefault();
    input.value = typedOf(Number((value + by * (Number(input.dataset.step) || STEP)).toFixed(DECIMALS)));
    input.dispatchEvent(new Event("change", { bubbles: true }));
  });
  return input;
}

/**
 * The fault of a text that is no number, or one beyond all numbers; it is told as it was typed.
 * @param {string} path
 * @param {string} text
 * @param {number} value
 * @returns {Fault}
 */
export const unread = (path, text, value) =>
  ({ path, value: text.trim() || "nothing", rule: Number.isNaN(value) ? "not_a_number" : "finite", numbers: {} });

/**
 * Puts what a field says, or refuses it.
 * @template {number|null} T
 * @param {HTMLInputElement} input
 * @param {T} value
 * @param {(value: T) => Fault[]} put
 */
export const typed = (input, value, put) =>
  (value === null || Number.isFinite(value) ? put(value) : [unread(input.labels?.[0]?.textContent ?? "", input.value, value)]);
