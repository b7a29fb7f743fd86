// How often each value came: bars, those outside the demand in another dress, with the demand's limits.

import { amend, draw, make } from "../amend.js";
import { dress } from "../dom.js";
import { figure, unitInUse } from "../figures.js";
import { say } from "../words.js";
import { limitLines, Scale, ticks } from "./scale.js";

/** @typedef {import("./types.js").DemandView} DemandView */
/** @typedef {import("./types.js").Bar} Bar */

const [TOP, FOOT_ROOM] = [26, 30];
/** What stands in each drawing, as text: what stands already is not drawn again. @type {WeakMap<SVGElement, string>} */
const standing = new WeakMap();

/**
 * Fills a drawing with a histogram.
 * @param {SVGElement} picture
 * @param {DemandView} demand
 * @param {Bar[]} bars
 * @param {{width: number, height: number, scale?: Scale, name: string, most?: number, a?: Bar[]}} look `a` are the bars of the
 *   chain that is held, as an outline over them
 */
export function histogram(picture, demand, bars, { width, height, a = [], scale = Scale.ofBars(demand, [...bars, ...a], width), name, most }) {
  const wanted = JSON.stringify([demand, bars, width, height, a, scale, name, most, unitInUse()]);
  if (standing.get(picture) === wanted) return;
  standing.set(picture, wanted);
  const highest = most ?? Math.max(...[...bars, ...a].map(([, , count]) => count), 1);
  const foot = height - FOOT_ROOM;
  const inside = (/** @type {Bar} */ [low, high]) => (demand.at_least === null || high > demand.at_least) && (demand.at_most === null || low < demand.at_most);
  const drawn = bars.map((bar) => {
    const [x, to] = [scale.x(bar[0]), scale.x(bar[1])];
    const tall = (bar[2] / highest) * (foot - TOP);
    return draw("rect", { class: inside(bar) ? "bar good" : "bar fails", x: x + 0.5, y: foot - tall, width: Math.max(0.5, to - x - 1), height: tall });
  });
  const outline = a.map(([low, high, count]) => `V${foot - (count / highest) * (foot - TOP)}H${scale.x(high)}`).join("");
  const ghost = a.length > 0 ? [draw("path", { class: "of-a", d: `M${scale.x(a[0][0])} ${foot}${outline}V${foot}` })] : [];
  dress(picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": name });
  amend(picture, ...drawn, ...ghost, ...ticks(demand.quantity, scale, foot), ...limitLines(demand, scale, 2, foot));
}

/**
 * The bars of another draw as if it had drawn as many sets in bars as wide: so that both stand to one scale.
 * @param {Bar[]} bars
 * @param {Bar[]} like
 */
export function alike(bars, like) {
  const sets = (/** @type {Bar[]} */ all) => all.reduce((sum, [, , count]) => sum + count, 0);
  const width = (/** @type {Bar[]} */ all) => (all.length > 0 ? all[0][1] - all[0][0] : 0);
  const times = (sets(like) / sets(bars)) * (width(like) / width(bars));
  return Number.isFinite(times) ? bars.map(([low, high, count]) => /** @type {Bar} */ ([low, high, count * times])) : [];
}

/**
 * The bars as a table.
 * @param {DemandView} demand
 * @param {Bar[]} bars
 */
export function barTable({ quantity }, bars) {
  return make("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.table") }, make("table", { class: "fit-table" },
    make("thead", {}, make("tr", {}, ...["from", "to", "count"].map((each) => make("th", { scope: "col" }, say(`fit.bar.${each}`))))),
    make("tbody", {}, ...bars.map(([low, high, count]) => make("tr", {}, make("td", {}, figure(quantity, low)), make("td", {}, figure(quantity, high)), make("td", {}, String(count)))))));
}
