// Lines that a hall sees: where letters are small, the drawing's lines are as many times wider as its edges need.

import { byId } from "../dom.js";
import { textPx } from "../stage.js";

/** What an edge has in the hall, px, and by itself, in the size of the drawing's letters. */
const [EDGE_PX, EDGE_EM] = [3, 0.11];

/**
 * Makes the lines of the drawing wide enough for a hall, or as wide as they were; the next painting shows it.
 * @param {boolean} hall
 */
export function widenLines(hall) {
  const pen = /** @type {any} */ (/** @type {HTMLCanvasElement} */ (byId("drawing")).getContext("2d"));
  delete pen.lineWidth;
  if (!hall) return;
  const own = /** @type {PropertyDescriptor} */ (Object.getOwnPropertyDescriptor(CanvasRenderingContext2D.prototype, "lineWidth"));
  Object.defineProperty(pen, "lineWidth", {
    configurable: true, get: () => own.get?.call(pen),
    set: (/** @type {number} */ width) => own.set?.call(pen, width * Math.max(1, EDGE_PX / (EDGE_EM * textPx()))),
  });
}
