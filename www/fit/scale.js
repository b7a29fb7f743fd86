// A straight scale of a demand's values, with the demand's own limits on it: shared by every picture of this question.

import { draw } from "../amend.js";
import { NBSP, degreesOf, figure, short } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").DemandView} DemandView */

const EDGE = 12;
/** Pictures narrower than this, px, name a limit by its value alone. */
const NARROW = 420;
/** Room that the whole name of a limit takes beside its line, px. */
const NAME = 150;
/** Room that half a number takes at an edge, px. */
const HALF = 30;
/** Between a line and its name, px. */
const BESIDE = 5;
/** So much of the picture, as a share of what is shown, is left to the metal beside a gap. */
const METAL = 0.2;
/** From this many times the whole reach on, zero is too far away to be shown. */
const FAR = 5;

export class Scale {
  /**
   * @param {number} low
   * @param {number} high
   * @param {number} width
   */
  constructor(low, high, width) {
    this.low = low;
    this.high = high;
    this.width = width;
  }

  /** @param {number} value */
  x(value) {
    return EDGE + ((value - this.low) / (this.high - this.low || 1)) * (this.width - 2 * EDGE);
  }

  /** Whether a value lies on it. @param {number} value */
  shows(value) {
    return value >= this.low && value <= this.high;
  }

  /**
   * Everything that a demand is about: from zero where zero is near.
   * @param {DemandView} demand
   * @param {number} width
   * @param {number[]} [more]
   */
  static of({ at_least, at_most, middle, worst_low, worst_high }, width, more = []) {
    const values = [at_least, at_most, middle, worst_low, worst_high, ...more].filter((value) => value !== null);
    const [least, most] = [Math.min(...values), Math.max(...values)];
    const reach = most - least || Math.abs(most) || 1;
    const low = least < FAR * reach ? Math.min(0, least) : least - 0.1 * reach;
    return new Scale(low - (low <= 0 ? METAL * (most - low) : 0), most + 0.5 * METAL * (most - low), width);
  }

  /** The same width for some bars and the demand's limits, closer. @param {DemandView} demand @param {import("./types.js").Bar[]} bars @param {number} width */
  static ofBars({ at_least, at_most }, bars, width) {
    const ends = [...bars.flatMap(([low, high]) => [low, high]), at_least, at_most].filter((value) => typeof value === "number");
    const [least, most] = [Math.min(...ends), Math.max(...ends)];
    const edge = 0.04 * (most - least || 1);
    return new Scale(least - edge, most + edge, width);
  }
}

/** The ids of the marks of a demand's limits and their values. @param {DemandView} demand */
export const bounds = ({ at_least, at_most }) =>
  /** @type {[string, number][]} */ ([["least", at_least], ["most", at_most]].filter(([, value]) => value !== null));

/**
 * Where the names of limits stand, so much room taken by each: outwards of its line, inwards at an edge.
 * @param {DemandView} demand
 * @param {Scale} scale
 * @param {number} room
 */
const seats = (demand, scale, room) =>
  bounds(demand).map(([kind, value]) => {
    const x = scale.x(value);
    const left = kind === "least" ? x > room : x > scale.width - room;
    return { left, from: left ? x - BESIDE - room : x + BESIDE };
  });

/**
 * The demand's limits as lines across a picture, named at its top; by the value alone where two names would lie over
 * each other.
 * @param {DemandView} demand
 * @param {Scale} scale
 * @param {number} top
 * @param {number} bottom
 */
export function limitLines(demand, scale, top, bottom) {
  const [one, other] = seats(demand, scale, NAME);
  const narrow = scale.width < NARROW || (other && Math.abs(one.from - other.from) < NAME);
  const places = seats(demand, scale, narrow ? 2 * HALF : NAME);
  return bounds(demand).flatMap(([kind, value], i) => {
    const [x, { left }] = [scale.x(value), places[i]];
    const words = say(narrow ? "fit.bound" : `fit.bound.${kind}`, { value: figure(demand.quantity, value) });
    return [
      draw("path", { class: "bound", d: `M${x} ${top}V${bottom}` }),
      draw("text", { class: "bound-name", x: left ? x - BESIDE : x + BESIDE, y: top + 11, "text-anchor": left ? "end" : "start" }, words),
    ];
  });
}

/**
 * Round values along the foot of a picture.
 * @param {string} quantity
 * @param {Scale} scale
 * @param {number} y
 */
export function ticks(quantity, scale, y) {
  const span = scale.high - scale.low;
  const rough = span / Math.max(2, Math.floor(scale.width / 105));
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * ten).find((each) => each >= rough) ?? rough;
  const first = Math.ceil(scale.low / step);
  const count = Math.floor(scale.high / step) - first + 1;
  const values = Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
  return [
    draw("path", { class: "foot", d: `M${scale.x(scale.low)} ${y}H${scale.x(scale.high)}` }),
    ...values.flatMap((value) => [
      draw("path", { class: "foot", d: `M${scale.x(value)} ${y}v5` }),
      draw("text", { class: "tick", x: scale.x(value), y: y + 18, "text-anchor": anchor(scale.x(value), scale.width) }, figure(quantity, value)),
    ]),
  ];
}

/** @param {number} x @param {number} width */
const anchor = (x, width) => (x < HALF ? "start" : x > width - HALF ? "end" : "middle");

/** A small amount in the finer unit, to two or three figures. @param {string} name @param {number} value @param {number} [figures] */
export function fine(name, value, figures = 2) {
  if (name.endsWith("_rad")) return `${short(degreesOf(value), figures)}°`;
  if (!/_mm(_per_m)?$/.test(name)) return short(value, figures);
  return value < 0.1 ? `${short(value * 1000, figures)}${NBSP}µm` : `${short(value, figures)}${NBSP}mm`;
}
