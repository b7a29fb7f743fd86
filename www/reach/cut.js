// The joint cut through its pin: metal, and along each hidden wall what reaches it, by colour, stroke and number.

import { amend, draw } from "../amend.js";
import { draw as drawn, dress } from "../dom.js";
import { say } from "../words.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").At} At */
/** @typedef {import("./types.js").EnterState} EnterState */
/** @typedef {import("./types.js").WallLine} WallLine */
/** @typedef {(at: At) => At} Place */

const LEAST_WIDTH = 280;
/** A picture is never larger than this, so that it stays on one screen with its answer. */
const [MOST_WIDTH, MOST_HEIGHT] = [760, 560];
/** A stripe lies so many px off its wall, a number so many inside the metal. */
const [OFF, INSIDE, DISC] = [3, 15, 9];
/** Where along its wall a number may stand, the best first; how many radii apart two stand at least. */
const [ALONG, CLEAR] = [[0.5, 0.85, 0.15], 2.3];
/** Section lines by body: slope and distance, px. */
const HATCH = /** @type {Record<string, [number, number]>} */ ({ held: [45, 9], inner: [-45, 7], "inner-near": [-30, 7], "first-roller": [60, 5] });
/** The gaps in the order of their numbers. */
export const GAPS = ["side-gap", "pin-bore", "roller-side", "roller-barrel", "collar-slot"];

/** @param {string} face such as first.pin-bore.far */
export const gapOf = (face) => face.split(".")[1];
/** @param {string} face */
export const endOf = (face) => face.split(".")[2] ?? "";

/** @param {At[][]} loops @param {Place} place */
export const outline = (loops, place) => loops.map((loop) => `M${loop.map((at) => place(at).map((px) => px.toFixed(2)).join(" ")).join("L")}Z`).join("");

/** Section lines to be used once in a drawing. @param {string} name */
export const hatches = (name) => draw("defs", {}, ...Object.entries(HATCH).map(([body, [slope, apart]]) =>
  draw("pattern", { id: `${name}-${body}`, width: apart, height: apart, patternUnits: "userSpaceOnUse", patternTransform: `rotate(${slope})` },
    draw("rect", { width: apart, height: apart, class: `metal-fill ${body}` }), draw("path", { d: `M0 0V${apart}`, class: `metal-line ${body}` }))));

/** @param {import("./types.js").Metal} metal @param {Place} place @param {string} name */
export const metal = ({ body, loops }, place, name) =>
  draw("path", { d: outline(loops, place), class: `metal ${body}`, fill: HATCH[body] ? `url(#${name}-${body})` : null, "fill-rule": "evenodd" });

export class Cut {
  picture = drawn("svg", { class: "reach-cut", role: "img" });

  /** @param {EnterState} state */
  show({ view, share }) {
    const box = this.picture.parentElement;
    const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, widthOf(box) - 16));
    const [half_x, half_y] = view.half_mm;
    const scale = Math.min(width / (2 * half_x), MOST_HEIGHT / (2 * half_y));
    const height = Math.round(2 * half_y * scale) + 24;
    /** @type {Place} */
    const place = ([x, y]) => [width / 2 + scale * x, height / 2 - scale * y];
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, width, height, "aria-label": say("reach.picture", { share: Math.round(100 * share) }) });
    amend(this.picture,
      hatches("reach"), ...view.pieces.map((piece) => metal(piece, place, "reach")),
      ...view.walls.flatMap((wall) => stripes(wall, place)), ...names(view, place), ...numbers(view.walls, place));
  }
}

/**
 * What reaches a wall, the farthest first: all of it the liquid, part of it the grain, part of that the bristle.
 * @param {WallLine} wall
 * @param {Place} place
 */
function stripes({ ends, air, bristle, particle, liquid }, place) {
  const [from, to] = ends.map(place);
  const at = (/** @type {number} */ share) => [0, 1].map((i) => from[i] + share * (to[i] - from[i]) + (i ? -OFF : OFF) * air[i]);
  const line = (/** @type {[number, number]} */ span, /** @type {string} */ by) =>
    draw("path", { class: `stripe by-${by}`, d: `M${span.map((share) => at(share).map((px) => px.toFixed(2)).join(" ")).join("L")}` });
  const without = bare(bare([[0, 1]], particle), bristle);
  return [
    ...without.map((span) => line(span, liquid ? "oil" : "none")),
    ...bare(particle, bristle).map((span) => line(span, "grain")), ...bristle.map((span) => line(span, "bristle")),
  ];
}

/**
 * What is left of some spans without others.
 * @param {[number, number][]} spans
 * @param {[number, number][]} taken
 * @returns {[number, number][]}
 */
function bare(spans, taken) {
  return taken.reduce((/** @type {[number, number][]} */ left, [from, to]) => left.flatMap(([a, b]) => {
    /** @type {[number, number][]} */
    const parts = [[a, Math.min(b, from)], [Math.max(a, to), b]];
    return parts.filter(([low, high]) => high > low);
  }), spans);
}

/** The number of each gap, on the metal beside it and clear of the others; on the left where there is room. @param {WallLine[]} walls @param {Place} place */
function numbers(walls, place) {
  /** @type {At[]} */
  const taken = [];
  const room = (/** @type {At} */ [px, py]) => Math.min(...taken.map(([x, y]) => Math.hypot(x - px, y - py)));
  return GAPS.flatMap((gap, i) => {
    const own = walls.filter(({ face }) => gapOf(face) === gap && endOf(face) !== "near").reverse();
    const spots = [...own.filter(isLeft), ...own.filter((wall) => !isLeft(wall))].flatMap((wall) => besides(wall, place));
    if (spots.length === 0) return [];
    const [x, y] = spots.find((spot) => room(spot) > CLEAR * DISC) ?? spots.reduce((best, spot) => (room(spot) > room(best) ? spot : best));
    taken.push([x, y]);
    return [draw("circle", { class: "disc", cx: x, cy: y, r: DISC }), draw("text", { class: "disc-number", x, y: y + 4, "text-anchor": "middle" }, String(i + 1))];
  });
}

/** @param {WallLine} wall */
const isLeft = ({ ends }) => ends[0][0] < 0;

/** Where a wall's number may stand, the best first. @param {WallLine} wall @param {Place} place @returns {At[]} */
function besides({ ends, air }, place) {
  const [a, b] = ends.map(place);
  return ALONG.map((share) => /** @type {At} */ ([0, 1].map((k) => a[k] + share * (b[k] - a[k]) + (k ? INSIDE : -INSIDE) * air[k])));
}

/** @param {import("./types.js").EnterView} view @param {Place} place */
function names({ half_mm: [half_x, half_y], walls }, place) {
  /** The level of the near wall of a gap whose air lies on one side. */
  const level = (/** @type {string} */ gap, /** @type {number} */ air) => {
    const { ends } = walls.find(({ face, air: [, y] }) => gapOf(face) === gap && endOf(face) === "near" && y * air > 0) ?? walls[0];
    return (ends[0][1] + ends[1][1]) / 2;
  };
  const roller = walls.filter(({ face, ends }) => gapOf(face) === "roller-side" && ends[0][0] > 0).at(-1) ?? walls[0];
  const places = /** @type {[string, At][]} */ ([
    ["reach.part.pin", [0, 0]], ["reach.part.outer", [-0.72 * half_x, (level("side-gap", 1) - 0.9 * half_y) / 2]],
    ["reach.part.inner", [0.68 * half_x, (level("roller-side", 1) + level("side-gap", -1)) / 2]],
    ["reach.part.roller", [(roller.ends[0][0] + roller.ends[1][0]) / 2, 0]],
  ]);
  return places.map(([word, at]) => {
    const [x, y] = place(at);
    return draw("text", { class: "part-name", x, y: y + 4, "text-anchor": "middle" }, say(word));
  });
}
