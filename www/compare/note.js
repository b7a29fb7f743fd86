// A's words under a picture, where they are not those of the chain that is drawn.

import { make } from "../amend.js";
import { say } from "../words.js";

/**
 * @param {string} now what is said of the present chain
 * @param {string|undefined} a the same of the one that is held
 */
export const noteOfA = (now, a) => (a && a !== now ? [make("p", { class: "of-a-note" }, make("b", { class: "letter" }, say("compare.a")), " ", a)] : []);

/**
 * The same for some pictures, by name.
 * @template S
 * @param {(state: S) => Record<string, string>} told what is said under each
 * @param {S} now
 * @param {S|null} a
 * @returns {Record<string, import("../amend.js").Wanted[]|undefined>} nothing under those that need none
 */
export function notesOfA(told, now, a) {
  if (!a) return {};
  const others = told(a);
  return Object.fromEntries(Object.entries(told(now)).map(([name, text]) => [name, noteOfA(text, others[name])]));
}

/**
 * A's value under the present one in a cell, where it is another.
 * @param {string} now
 * @param {string|undefined} a
 */
export const cellOfA = (now, a) => (a && a !== now ? [make("span", { class: "of-a-cell" }, say("compare.of.a", { value: a }))] : []);

/**
 * A row of a list of values, A's under the present one.
 * @param {string} name
 * @param {string} now
 * @param {string|undefined} a
 */
export const rowOfA = (name, now, a) => [make("dt", {}, name), make("dd", {}, now, ...cellOfA(now, a))];

/**
 * Readings, each a name and its value, with A's under it where that is another.
 * @param {[string, string][]} now
 * @param {[string, string][]} [a]
 */
export const readingsWithA = (now, a = []) =>
  now.map(([name, value], index) => make("div", {}, make("dt", {}, name), make("dd", {}, value, ...cellOfA(value, a[index]?.[1]))));
