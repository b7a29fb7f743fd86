// The chain's line of every pair of wheels, seen from above: free ones thin, crooked ones heavy.

import { dress, draw } from "../dom.js";
import { say } from "../words.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").Arrangement} Arrangement */
/** @typedef {import("./types.js").PairView} PairView */

const HEIGHT = 250;
const EDGE = { side: 46, top: 34, bottom: 16 };
/** A pair is drawn as crooked from this multiple on. */
const MARKED = 1.05;
/** A's line stands so far beside the present one, px: the wheels are the same, so it would lie on it. */
const BESIDE = 4;

export class Fan {
  /** @type {Map<string, SVGElement>} */
  lines = new Map();

  /** @param {string} name */
  constructor(name) {
    this.name = name;
    this.picture = draw("svg", { class: "gears-fan", role: "img" });
  }

  /**
   * Whether A's line stands beside any.
   * @param {Arrangement} told
   * @param {Arrangement|null} [a] the same wheels under the chain that is held
   */
  show(told, a = null) {
    const width = Math.max(260, Math.round(widthOf(this.picture.parentElement)));
    const all = [...told.front_mm, ...told.back_mm];
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const per_mm = (HEIGHT - EDGE.top - EDGE.bottom) / Math.max(1, high - low);
    const y = (/** @type {number} */ mm) => HEIGHT - EDGE.bottom - (mm - low) * per_mm;
    const [left, right] = [EDGE.side, width - EDGE.side];
    const pairs = told.pairs.flatMap((pair, index) => (pair ? [{ pair, other: a?.pairs[index] ?? null, front: told.front_mm[Math.floor(index / told.back_mm.length)], back: told.back_mm[index % told.back_mm.length] }] : []));
    dress(this.picture, { viewBox: `0 0 ${width} ${HEIGHT}`, height: HEIGHT, "aria-label": say("line.gears.fan", { name: this.name, count: pairs.length }) });
    this.lines = new Map(pairs.map(({ pair, front, back }) => [key(pair), draw("path", { class: `pair-line ${look(pair)}`, "stroke-width": weight(pair), d: `M${left} ${y(front)}L${right} ${y(back)}` })]));
    const apart = pairs.filter(({ pair, other }) => other && look(other) !== look(pair));
    const crooked = (/** @type {SVGElement} */ line) => Number(line.classList.contains("crooked"));
    this.picture.replaceChildren(
      ...[...this.lines.values()].sort((one, other) => crooked(one) - crooked(other)),
      ...apart.map(({ front, back }) => draw("path", { class: "of-a", d: `M${left} ${y(front) - BESIDE}L${right} ${y(back) - BESIDE}` })),
      ...this.wheels(pairs.map(({ pair, front }) => ({ teeth: pair.front_teeth, mm: front })), left, y, "end", -8),
      ...this.wheels(pairs.map(({ pair, back }) => ({ teeth: pair.back_teeth, mm: back })), right, y, "start", 8),
      draw("text", { x: 4, y: 13 }, say("line.gears.fan.front")), draw("text", { x: width - 4, y: 13, "text-anchor": "end" }, say("line.gears.fan.back")));
    return apart.length > 0;
  }

  /**
   * @param {{teeth: number, mm: number}[]} row
   * @param {number} x
   * @param {(mm: number) => number} y
   * @param {string} anchor
   * @param {number} aside
   */
  wheels(row, x, y, anchor, aside) {
    const each = [...new Map(row.map((wheel) => [wheel.mm, wheel]))].map(([, wheel]) => wheel);
    return each.flatMap(({ teeth, mm }) => [
      draw("path", { class: "gears-wheel", d: `M${x - 5} ${y(mm)}h10` }),
      draw("text", { x: x + aside, y: y(mm) + 4, "text-anchor": anchor }, String(teeth)),
    ]);
  }

  /** @param {PairView|null} pair */
  light(pair) {
    for (const [of, line] of this.lines) line.classList.toggle("lit", pair !== null && of === key(pair));
  }
}

/** @param {PairView} pair */
const key = (pair) => `${pair.front_teeth} ${pair.back_teeth} ${pair.offset_mm}`;

/** @param {PairView} pair */
const look = ({ free, friction_multiple, loss_w }) => (free ? "free" : loss_w === null || (friction_multiple ?? 1) > MARKED ? "crooked" : "slanted");

/** The harder the joint is pressed, the heavier the line. @param {PairView} pair */
const weight = ({ friction_multiple }) => (1.4 * Math.min(3, friction_multiple ?? 1)).toFixed(1);
