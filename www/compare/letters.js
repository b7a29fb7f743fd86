// Where the letters of a drawing stand, so that no line is laid over them: the kernel writes them on a canvas that listens.

import { make } from "../dom.js";
import { theme } from "../theme.js";

/** A place on a drawing, in its pixels. @typedef {{x: number, y: number, width: number, height: number}} Place */

/** What has no letters. */
const WITHOUT = ["ground", "metal", "section", "centre", "grips"];
/** What stays free around letters, px. */
const FREE_PX = 2;

const pen = /** @type {CanvasRenderingContext2D} */ (make("canvas", { width: 1, height: 1 }).getContext("2d"));
/** @type {Place[]} */
let heard = [];
pen.fillText = (text, x, y) => {
  const { actualBoundingBoxLeft: left, actualBoundingBoxRight: right, actualBoundingBoxAscent: up, actualBoundingBoxDescent: down } = pen.measureText(text);
  heard.push({ x: x - left - FREE_PX, y: y - up - FREE_PX, width: left + right + 2 * FREE_PX, height: up + down + 2 * FREE_PX });
};

/**
 * The places of all letters on a bench's drawing.
 * @param {import("../kernel.js").BenchLike} bench
 * @param {string|null} [lit]
 */
export function lettersOf(bench, lit = null) {
  heard = [];
  bench.paint(pen, theme(), { lit, hide: WITHOUT });
  return heard;
}

/** @param {Place} one @param {Place} other */
export const meet = (one, other) =>
  one.x < other.x + other.width && other.x < one.x + one.width && one.y < other.y + other.height && other.y < one.y + one.height;
