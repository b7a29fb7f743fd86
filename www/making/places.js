// The numbers that a sentence can hold: every one that the kernel has worked out for a step, by its path.

import { figure } from "../figures.js";
import { kindOf } from "../lesson/shelf.js";
import { has, say } from "../words.js";

/** Longer lists are courses and counts; their first items stand for them. */
const MOST_ITEMS = 3;
const PLACE = /\{([^{}]*)\}/g;

/**
 * @param {any} value
 * @param {string} path
 * @returns {[string, number][]}
 */
function numbersIn(value, path) {
  if (typeof value === "number") return [[path, value]];
  if (value === null || typeof value !== "object") return [];
  const entries = Object.entries(value).slice(0, Array.isArray(value) ? MOST_ITEMS : undefined);
  return entries.flatMap(([key, each]) => numbersIn(each, path ? `${path}.${key}` : key));
}

/** @param {string} path */
function nameOf(path) {
  const [part, ...keys] = path.split(".");
  const [name, rest] = [keys.at(-1) ?? part, keys.slice(0, -1)];
  const word = [`value.${name}`, `size.${name}`].find(has);
  const read = word ? say(word) : name.replace(/_(mm|rad|n|fraction|um)$/, "").replaceAll("_", " ");
  return [...rest.map((key) => key.replaceAll("_", " ")), read].join(", ");
}

/**
 * The numbers of a step by the part of the report they stand in, each with its name and its present value.
 * @param {Record<string, any>} numbers
 * @returns {{part: string, places: {path: string, text: string}[]}[]}
 */
export function placesOf(numbers) {
  return Object.entries(numbers).flatMap(([part, value]) => {
    const places = numbersIn(value, part).map(([path, number]) => ({ path, text: `${nameOf(path)}: ${figure(kindOf(path), number)}` }));
    return places.length > 0 && typeof value === "object" ? [{ part: has(`making.part.${part}`) ? say(`making.part.${part}`) : part, places }] : [];
  });
}

/**
 * The first place of a text that holds no number of the step; null when each does.
 * @param {string} text
 * @param {Record<string, any>} numbers
 */
export function unknownPlace(text, numbers) {
  for (const [, path] of text.matchAll(PLACE)) {
    const value = path.split(".").reduce((/** @type {any} */ place, key) => (Object.hasOwn(place ?? {}, key) ? place[key] : undefined), numbers);
    if (typeof value !== "number" && typeof value !== "string") return path;
  }
  return null;
}

/**
 * Whether a brace stands alone.
 * @param {string} text
 */
export const hasOpenBrace = (text) => /[{}]/.test(text.replace(PLACE, ""));

/**
 * Whether a text has a number that was typed by hand.
 * @param {string} text
 */
export const hasOwnNumber = (text) => /\d/.test(text.replace(PLACE, ""));
