// A chart in words: its key, and the same numbers as a table.

import { OF_A, at as valueAt } from "./chart-beside.js";
import { draw, make } from "./amend.js";

/** @typedef {import("./chart.js").Content} Content */

/** A table of lines has about so many rows; every bar has its own. */
const ROWS = 20;

/** @param {Content} content */
export function keyOf({ lines = [], bands = [], bars = [], ranges = [] }) {
  const sample = (/** @type {import("./amend.js").Wanted} */ drawn) =>
    draw("svg", { class: "graph sample", viewBox: "0 0 28 12", width: 28, height: 12, "aria-hidden": "true" }, drawn);
  const box = (/** @type {string} */ look) => draw("rect", { class: look, width: 28, height: 12 });
  const all = [
    ...[...lines].reverse().map(({ name, look }) => ({ name, drawn: draw("path", { class: `curve ${look}`, d: "M1 6H27" }) })),
    ...bands.map(({ name, look = "" }) => ({ name, drawn: box(`band ${look}`) })),
    ...bars.map(({ name, look = "main" }) => ({ name, drawn: box(`bar ${look}`) })),
    ...ranges.map(({ name, look }) => ({ name, drawn: box(`range ${look}`) })),
  ];
  return all.flatMap(({ name, drawn }) => (name ? [make("li", {}, sample(drawn), name)] : []));
}

/** @param {Content} content */
export function tableOf(content) {
  const [head, body] = (content.bars ?? []).length > 0 ? ofBars(content) : ofLines(content);
  const column = (/** @type {string} */ name) => make("th", { scope: "col" }, name);
  const row = (/** @type {string[]} */ texts) => make("tr", {}, ...texts.map((text, index) => (index ? make("td", {}, text) : make("th", { scope: "row" }, text))));
  return make("div", { class: "graph-table", tabindex: 0, role: "group", "aria-label": content.label },
    make("table", {}, make("thead", {}, make("tr", {}, ...head.map(column))), make("tbody", {}, ...body.map(row))));
}

/**
 * A row for each of some values of the lower axis, a column for each line; those of A come last, at the same values.
 * @param {Content} content
 * @returns {[string[], string[][]]}
 */
function ofLines({ x, y, lines = [], bands = [] }) {
  const edges = bands.flatMap(({ name, low, high }) => [{ name: `${name} (-)`, points: low }, { name: `${name} (+)`, points: high }]);
  const own = [...lines.filter(({ look }) => look !== OF_A), ...edges];
  const others = lines.filter(({ look }) => look === OF_A);
  const values = [...new Set(own.flatMap(({ points }) => points.map(([at]) => at)))].sort((a, b) => a - b);
  const every = Math.max(1, Math.ceil(values.length / ROWS));
  const cell = (/** @type {{points: import("./chart.js").At[]}} */ { points }, /** @type {number} */ at) => {
    const found = points.find(([value]) => value === at);
    return found ? y.write(found[1]) : "\u2013";
  };
  const reaches = (/** @type {import("./chart.js").At[]} */ points, /** @type {number} */ at) => at >= points[0][0] && at <= points[points.length - 1][0];
  const other = (/** @type {import("./chart.js").Line} */ { points }, /** @type {number} */ at) => (reaches(points, at) ? y.write(valueAt(points, at)) : "\u2013");
  const rows = values.filter((_, index) => index % every === 0)
    .map((at) => [x.write(at), ...own.map((each) => cell(each, at)), ...others.map((each) => other(each, at))]);
  return [[x.name, ...[...own, ...others].map(({ name }) => name)], rows];
}

/**
 * A row for each bar, a column for each set of them.
 * @param {Content} content
 * @returns {[string[], string[][]]}
 */
function ofBars({ x, y, bars = [] }) {
  const rows = bars[0].bars.map(({ from, to }, index) =>
    [`${x.write(from)} – ${x.write(to)}`, ...bars.map((each) => (each.bars[index] ? y.write(each.bars[index].height) : "\u2013"))]);
  return [[x.name, ...bars.map(({ name }) => name)], rows];
}
