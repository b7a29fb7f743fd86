// Numbers of the sixth and seventh question as people read them.

import { NBSP, decimal, gap, short as figures, unitInUse } from "../figures.js";
import { has, say } from "../words.js";

/** @typedef {import("../kernel.js").Answer} Answer */

const MINUTE_S = 60;
const HOUR_S = 3600;
const DAY_S = 86400;

/** Three figures at most. @param {number} value */
export function short(value) {
  const size = Math.abs(value);
  if (size > 0 && size < 0.001) return figures(value, 2);
  return decimal(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 0.1 ? 2 : 3);
}

/** Three figures at most and no noughts at the end: for ticks and bars. @param {number} value */
export const bare = (value) => figures(value, 3);

const [UM_PER_MM, THIN_MM] = [1000, 0.1];

/** A gap that is thinner than paper, in um. @param {number} mm */
export const thin = (mm) => (unitInUse() === "mm" && mm > 0 && mm < THIN_MM ? `${short(mm * UM_PER_MM)}${NBSP}µm` : gap(mm));

/** @param {number} s */
export function time(s) {
  if (s < 0.1) return say("reach.time.now");
  if (s < MINUTE_S) return `${decimal(s, s < 10 ? 1 : 0)} s`;
  if (s < HOUR_S) return `${decimal(s / MINUTE_S, 1)} min`;
  return s < DAY_S ? `${decimal(s / HOUR_S, 1)} h` : say("reach.time.days", { days: decimal(s / DAY_S, 0) });
}

/** Nothing is nothing, a trace is a trace, all is all. @param {number} fraction */
export function share(fraction) {
  const per = 100 * fraction;
  if (per === 0) return say("reach.none");
  if (per < 1) return say("reach.trace");
  return per > 99.5 ? say("reach.all") : `${decimal(per, 0)} %`;
}

/**
 * @param {string} name
 * @param {unknown} value
 */
function written(name, value) {
  if (typeof value !== "number") return value;
  if (name.endsWith("_fraction")) return share(value);
  if (name.endsWith("_um")) return `${short(value)}${NBSP}µm`;
  if (name.endsWith("_mm3")) return `${short(value)}${NBSP}mm³`;
  if (name.endsWith("_mm3_per_s")) return say("reach.flow", { flow: short(value) });
  if (name.endsWith("_s")) return time(value);
  return name.endsWith("_ratio") ? decimal(value, 1) : value;
}

/** @param {Record<string, any>} numbers */
export const all = (numbers) => Object.fromEntries(Object.entries(numbers).map(([name, value]) => [name, written(name, value)]));

/**
 * The sentence of an answer, or nothing.
 * @param {Answer|undefined} answer
 */
export const sentence = (answer, kind = "answer") =>
  answer && has(`${kind}.${answer.id}`) ? say(`${kind}.${answer.id}`, all(answer.numbers)) : "";
