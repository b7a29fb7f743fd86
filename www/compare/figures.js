// The figures of a question, of the present chain and of A: asked of the kernel, and how they are written.

import { withSections } from "../answered.js";
import { NBSP, decimal, degreesOf, figure, mmOfInch, short, unitInUse } from "../figures.js";
import { has, say } from "../words.js";

/** @typedef {import("../kernel.js").Scenario} Scenario */
/** One figure of both chains; its change is the present one's less A's. @typedef {{key: string, a: number|null, b: number|null, change: number|null, way: "more"|"less"|"same"|"none"}} Pair */

const [THREE, TWO, PER_CENT, THOUSAND] = [3, 2, 100, 1000];
/** A range of gaps that ends below this can be told in micrometres. */
const SMALL_MM = 0.1;
/** As many sets as the question's own quick look draws, so that sentence and figures are of the same chains. */
const SETS = 20000;
/** What a question is asked of, besides the chain. */
const SECTIONS = /** @type {Record<string, string[]>} */ ({
  give: ["limits"], touch: ["limits"], line: ["limits", "drive", "load"], fit: ["drive", "load", "limits", "demands", "matching", "cost", "sampling"],
  wear: ["limits", "drive", "load", "wear"], reach: ["limits", "reach"], surface: ["limits", "surface"], width: ["limits", "drive", "load", "width"],
});

/**
 * What the kernel's figures of a question are about.
 * @param {Scenario} scenario
 * @param {string} ask
 */
export function askedOf(scenario, ask) {
  const from = /** @type {Record<string, any>} */ ({ reach: {}, surface: {}, ...scenario });
  if (ask === "fit") from.sampling = { ...from.sampling, sets: SETS };
  return withSections(from, SECTIONS[ask]);
}

/** @param {string} key */
const isShare = (key) => /_fraction(_|$)/.test(key);

/**
 * A figure with its unit.
 * @param {string} key
 * @param {number|null} value
 */
export function written(key, value) {
  if (value === null) return "–";
  if (key.endsWith("_mpa") || key.endsWith("_n")) return say(`unit.${key.split("_").pop()}.of`, { value: decimal(value, 0) });
  const unit = /(_s|_um|_mm3_per_cycle|_units)$/.exec(key)?.[1];
  if (unit) return say(`unit${unit.replace("_", ".")}.of`, { value: short(value, THREE) });
  if (key.endsWith("_multiple")) return say("unit.multiple.of", { value: short(value, THREE) });
  if (isShare(key)) return `${short(PER_CENT * value, THREE)} %`;
  return figure(key, value);
}

/**
 * Both ends of a range, in one unit: where each by itself has another, the finer while both are small in it, else the
 * coarser, fine enough for the smaller end to be more than nothing.
 * @param {string} key
 * @param {number|null} one
 * @param {number|null} other
 * @returns {string[]}
 */
export function writtenRange(key, one, other) {
  const usual = [written(key, one), written(key, other)];
  const [unit, last] = usual.map((text) => text.split(NBSP)[1]);
  if (one === null || other === null || unit === last || !/_mm(_per_m)?$/.test(key)) return usual;
  const inches = unitInUse() === "in";
  const ends = [one, other].map((mm) => (inches ? mm / mmOfInch(1) : mm));
  const small = !inches && ends.every((end) => Math.abs(end) < SMALL_MM);
  const all = small ? ends.map((end) => end * THOUSAND) : ends;
  const shows = (/** @type {number} */ decimals) => all.every((end) => end === 0 || Math.abs(end) * 10 ** decimals >= 1);
  const decimals = small ? 0 : [TWO, THREE, THREE + 1].find(shows) ?? THREE + 1;
  return all.map((end) => `${decimal(end, decimals)}${NBSP}${small ? "µm" : inches ? "in" : "mm"}`);
}

/**
 * The size of a change; one that its figure is too coarse for keeps a figure or two.
 * @param {Pair} pair
 */
export function changeOf({ key, change }) {
  const size = Math.abs(change ?? 0);
  if (isShare(key)) return say("compare.points", { value: short(PER_CENT * size, TWO) });
  const text = written(key, size);
  if (/[1-9]/.test(text) || size === 0) return text;
  if (key.endsWith("_rad")) return `${short(degreesOf(size), 1)}°`;
  const unit = `unit.${key.split("_").pop()}.of`;
  return has(unit) ? say(unit, { value: short(size, 1) }) : short(size, 1);
}

/** What a figure is called. @param {string} key */
export const called = (key) => say(has(`figure.${key}`) ? `figure.${key}` : key);

const SIGNS = { more: "▲", less: "▼", same: "=", none: "" };

/** An arrow for the eye. @param {Pair} pair */
export const signOf = ({ way }) => SIGNS[way];

/** The change in words. @param {Pair} pair */
export const inWords = (pair) => say(`compare.way.${pair.way}`, { change: changeOf(pair) });
