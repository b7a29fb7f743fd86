// What is said of an arrangement of wheels and of its pairs.

import { decimal, gap } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").Arrangement} Arrangement */
/** @typedef {import("./types.js").PairView} PairView */

/** Whether a drive has this pair. @param {Record<string, any>} drive @param {PairView} pair */
export const isOf = (drive, pair) => drive.driver_teeth === pair.front_teeth && drive.driven_teeth === pair.back_teeth && drive.offset_mm === pair.offset_mm;

/** @param {PairView} pair */
export const times = ({ friction_multiple }, word = "line.times") => (friction_multiple === null ? "–" : say(word, { times: decimal(friction_multiple, 2) }));

/** The multiple of a pair in its cell. @param {PairView} pair */
export const multiple = (pair) => (pair.free ? say("line.gears.free") : times(pair, "line.gears.times"));

/** What a pair costs, in its cell. @param {PairView} pair */
export const loss = ({ loss_w }) => (loss_w === null ? "–" : say("line.gears.watts", { watts: decimal(loss_w, 2) }));

/** A pair as its cell tells it. @param {PairView|null} pair */
export const inShort = (pair) => (pair ? `${multiple(pair)}, ${loss(pair)}` : say("line.gears.none"));

/** @param {PairView} pair */
export const inWords = (pair) => say(pair.free ? "line.gears.pair.free" : "line.gears.pair", {
  front: pair.front_teeth, back: pair.back_teeth, aside_mm: Math.abs(pair.offset_mm), times: times(pair),
  watts: pair.loss_w === null ? "–" : decimal(pair.loss_w, 2), straight: decimal(pair.straight_w, 2),
});

/** The range that is used, how much of it is free, and the pair that costs most. @param {Arrangement} told */
export function summary({ pairs, range_mm, of_w }) {
  const all = pairs.filter((pair) => pair !== null);
  const more = (/** @type {PairView} */ pair) => (pair.loss_w ?? pair.straight_w) - pair.straight_w;
  const worst = [...all].sort((one, other) => more(other) - more(one))[0];
  if (!worst) return say("line.gears.nothing");
  const crooked = worst.free ? "" : ` ${say("line.gears.worst", { front: worst.front_teeth, back: worst.back_teeth, aside_mm: Math.abs(worst.offset_mm), times: times(worst), watts: decimal(worst.loss_w ?? 0, 2), straight: decimal(worst.straight_w, 2), of_w: decimal(of_w, 0) })}`;
  const guides = worst.guide_w > 0 ? ` ${say("line.gears.guides", { watts: decimal(worst.guide_w, 2) })}` : "";
  const locked = all.filter(({ missing }) => missing === "locked").length;
  const beyond = all.filter(({ missing }) => missing !== null).length - locked;
  const without = (beyond > 0 ? ` ${say("line.gears.beyond", { count: beyond })}` : "") + (locked > 0 ? ` ${say("line.gears.locked", { count: locked })}` : "");
  return say("line.gears.range", { low: gap(range_mm[0]), high: gap(range_mm[1]), free_mm: Math.min(...all.map(({ free_mm }) => free_mm)), free: all.filter(({ free }) => free).length, count: all.length }) + crooked + without + guides;
}
