// How a number is written in a field and read from it.

import { fieldOf, gap, mmOf, unitInUse } from "./figures.js";
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

/** @param {string} text */
export const numberOf = (text) => (text.trim() === "" ? NaN : Number(text));

/**
 * A length if its name ends like one, otherwise a plain number with this word for its unit.
 * @param {string} name
 * @param {string} word
 * @returns {Way}
 */
export const wayOf = (name, word) => (name.endsWith("_mm") ? LENGTH : { text: String, read: numberOf, unit: () => say(word) });

/**
 * Puts what a field says, or refuses it.
 * @template {number|null} T
 * @param {HTMLInputElement} input
 * @param {T} value
 * @param {(value: T) => Fault[]} put
 */
export const typed = (input, value, put) =>
  (Number.isNaN(value) ? [{ path: "", value: input.value, rule: "not_a_number", numbers: {} }] : put(value));
