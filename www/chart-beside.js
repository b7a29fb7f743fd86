// A chart with the lines of another one of its kind: thin and broken, where they do not lie on its own.

import { say } from "./words.js";

/** @typedef {import("./chart.js").Content} Content */
/** @typedef {import("./chart.js").Line} Line */
/** @typedef {import("./chart.js").At} At */

/** The look of a line of A's. */
export const OF_A = "of-a";
/** Lines are the same that are nowhere farther apart than this share of the upright axis, and end as near on the lower. */
const [NEAR, ENDS] = [0.002, 0.02];

/**
 * @param {Content} content
 * @param {Content|null} other the same of the chain that is held as A
 * @param {string[]} [looks] which of its lines
 * @returns {Content}
 */
export function beside(content, other, looks = ["main"]) {
  if (!other) return content;
  const [from, to] = [Math.min(content.y.from, other.y.from), Math.max(content.y.to, other.y.to)];
  const lines = (other.lines ?? []).filter(({ look, points }) => looks.includes(look) && points.length > 1);
  const own = (/** @type {string} */ look) => (content.lines ?? []).find((line) => line.look === look);
  const apart = lines.filter((line) => !same(line, own(line.look), NEAR * (to - from)));
  if (apart.length === 0) return content;
  const ghosts = apart.map(({ name, points }) => ({ name: say("compare.line", { name }), look: OF_A, points }));
  return { ...content, y: { ...content.y, from, to }, lines: [...ghosts, ...(content.lines ?? [])] };
}

/** @param {Line} line @param {Line|undefined} own @param {number} near */
function same({ points }, own, near) {
  if (!own || own.points.length < 2) return false;
  const ends = (/** @type {At[]} */ all) => [all[0][0], all[all.length - 1][0]];
  const [from, to] = ends(own.points);
  const alike = ends(points).every((end, at) => Math.abs(end - [from, to][at]) <= ENDS * (to - from));
  return alike && points.every(([x, y]) => Math.abs(y - at(own.points, x)) <= near);
}

/**
 * The value of a line at a place between two of its points; that of its nearer end beyond them.
 * @param {At[]} points
 * @param {number} x
 */
export function at(points, x) {
  const next = points.findIndex(([each]) => each >= x);
  if (next <= 0) return points[next < 0 ? points.length - 1 : 0][1];
  const [[from, low], [to, high]] = [points[next - 1], points[next]];
  return low + ((x - from) / (to - from)) * (high - low);
}
