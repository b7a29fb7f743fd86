// Which part eats the gap: the real gap at scale, and in it, laid end to end, what each dimension can take of it.

import { amend, draw, make } from "../amend.js";
import { draw as drawn, dress, make as made } from "../dom.js";
import { decimal, figure } from "../figures.js";
import { say } from "../words.js";
import { fine, limitLines, Scale, ticks } from "./scale.js";
import { sizeName } from "./names.js";

/** @typedef {import("./types.js").DemandView} DemandView */
/** @typedef {import("./types.js").PartView} PartView */

const HEIGHT = 236;
const [TOP, METAL, ROOM, FOOT] = [18, 40, 128, 208];
/** What the widest sentence in the gap takes, px. */
const ROOM_FOR_WORDS = 128;
const ROOM_FOR_MIDDLE = 170;
const ROOM_FOR_NAME = 84;
/** So many kinds of section lines; each dimension keeps its own. */
const KINDS = 5;
/** The metal on both sides of a gap, by the number that is demanded. */
const SIDES = /** @type {Record<string, string[]>} */ ({
  side_gap_mm: ["outer_plate", "inner_plate"], pin_clearance_mm: ["bore", "pin"],
  roller_clearance_mm: ["roller", "barrel"], roller_side_clearance_mm: ["inner_plate", "roller"],
});

/** Section lines, one direction and pitch for each kind. */
const hatching = () =>
  Array.from({ length: KINDS + 1 }, (_, kind) => {
    const [turn, pitch] = [[45, 8], [-45, 7], [90, 6], [0, 7], [30, 10], [135, 9]][kind];
    return draw("pattern", { id: `fit-hatch-${kind}`, width: pitch, height: pitch, patternUnits: "userSpaceOnUse", patternTransform: `rotate(${turn})` },
      draw("path", { class: "hatch", d: `M0 0V${pitch}` }));
  });

/** The parts that move a number, the greediest first. @param {DemandView} demand */
export const eaters = ({ parts }) => parts.filter(({ reach }) => reach > 0).sort((a, b) => b.share - a.share || b.reach - a.reach);

/** What is left of a number in the worst case. @param {DemandView} demand */
const leftOf = ({ worst_low, quantity }) =>
  [worst_low === null ? say("fit.left.nothing") : say("fit.left", { value: figure(quantity, worst_low) }), say("fit.left.worst")];

/** The picture in a line of words. @param {DemandView} demand */
export const eatenInWords = (demand) =>
  [...(demand.middle === null ? [] : [say("fit.middle", { value: figure(demand.quantity, demand.middle) })]), leftOf(demand).join(" ")].join(", ");

export class Eaten {
  picture = drawn("svg", { class: "fit-picture", role: "img" });
  table = made("table", { class: "fit-table" });

  /**
   * @param {DemandView} demand
   * @param {number} width
   */
  show(demand, width) {
    const parts = eaters(demand);
    const named = parts[0] ? say("fit.eaten.name", { quantity: say(`fit.name.${demand.quantity}`), dimension: sizeName(parts[0].dimension), share_fraction: parts[0].share }) : "";
    dress(this.picture, { viewBox: `0 0 ${width} ${HEIGHT}`, height: HEIGHT, "aria-label": named });
    const scale = Scale.of(demand, width);
    amend(this.picture, draw("defs", {}, ...hatching()), ...limitLines(demand, scale, TOP - 14, FOOT), ...this.metal(demand, scale),
      ...this.blocks(demand, parts, scale), ...ticks(demand.quantity, scale, FOOT));
    this.fill(demand, parts);
  }

  /** What stands on both sides of the gap, and its middle size between. @param {DemandView} demand @param {Scale} scale */
  metal(demand, scale) {
    const { middle, quantity } = demand;
    if (middle === null) return [];
    const sides = scale.shows(0) ? SIDES[quantity] : undefined;
    const [from, to] = [scale.x(Math.max(0, scale.low)), scale.x(middle)];
    const side = (/** @type {string} */ name, /** @type {number} */ x, /** @type {number} */ wide, /** @type {number} */ kind) => [
      draw("rect", { class: `metal ${kind ? "inner" : "held"}`, x, y: METAL, width: wide, height: 52 }),
      draw("rect", { class: "lines", fill: `url(#fit-hatch-${kind})`, x, y: METAL, width: wide, height: 52 }),
      ...(wide > ROOM_FOR_NAME ? [draw("text", { class: "side", x: kind ? x + wide - 6 : x + 6, y: METAL + 31, "text-anchor": kind ? "end" : "start" }, say(`fit.side.${name}`))] : []),
    ];
    const plates = sides ? [...side(sides[0], 0, from, 0), ...side(sides[1], to, scale.width - to, 1)] : [];
    const y = METAL + 26;
    const arrow = (/** @type {number} */ x, /** @type {number} */ way) => draw("path", { class: "arrow", d: `M${x} ${y}l${way * 9} -3.5v7z` });
    return [
      ...plates, draw("path", { class: "dimension", d: `M${from} ${y}H${to}M${from} ${METAL - 6}V${METAL + 58}M${to} ${METAL - 6}V${ROOM + 58}` }),
      arrow(from, 1), arrow(to, -1),
      draw("text", { class: "middle", x: (from + to) / 2, y: y - 7, "text-anchor": "middle" }, to - from > ROOM_FOR_MIDDLE ? say("fit.middle", { value: figure(quantity, middle) }) : figure(quantity, middle)),
    ];
  }

  /**
   * From the middle downwards what each dimension can take, laid end to end; beyond the last, what is left.
   * @param {DemandView} demand
   * @param {PartView[]} parts
   * @param {Scale} scale
   */
  blocks(demand, parts, scale) {
    const { middle } = demand;
    if (middle === null) return [];
    let at = middle;
    const blocks = parts.flatMap((part, i) => {
      const [right, left] = [scale.x(at), scale.x((at -= part.reach))];
      const [wide, kind] = [right - left, i % KINDS];
      const label = wide > 26 ? [draw("text", { class: "block-number", x: (left + right) / 2, y: ROOM + 30, "text-anchor": "middle" }, String(i + 1))] : [];
      return [
        draw("rect", { class: `block kind-${kind}`, x: left, y: ROOM, width: wide, height: 48 }),
        draw("rect", { class: "lines", fill: `url(#fit-hatch-${kind})`, x: left, y: ROOM, width: wide, height: 48 }), ...label,
      ];
    });
    const zero = scale.x(Math.max(0, scale.low));
    const left = leftOf(demand);
    const end = scale.x(at);
    const inside = end - zero > ROOM_FOR_WORDS;
    const beside = scale.x(middle) + 8;
    if (!inside && beside + ROOM_FOR_WORDS > scale.width) return [...blocks, draw("text", { class: "left", x: scale.width / 2, y: ROOM + 67, "text-anchor": "middle" }, left.join(" "))];
    const [x, anchor] = inside ? [(zero + end) / 2, "middle"] : [beside, "start"];
    return [...blocks, ...left.map((line, row) => draw("text", { class: "left", x, y: ROOM + 21 + 17 * row, "text-anchor": anchor }, line))];
  }

  /** The same in a table: it is the picture in words. @param {DemandView} demand @param {PartView[]} parts */
  fill({ quantity }, parts) {
    const head = ["part", "tolerance", "times", "eats", "share"].map((each) => make("th", { scope: "col" }, say(`fit.eaten.${each}`)));
    const row = (/** @type {PartView} */ part, /** @type {number} */ i) => make("tr", {},
      make("th", { scope: "row" }, make("span", { class: `swatch kind-${i % KINDS}` }, String(i + 1)), ` ${sizeName(part.dimension)}`),
      make("td", {}, `± ${fine("t_mm", part.half_mm, 3)}`), make("td", {}, decimal(part.slope, 2)),
      make("td", {}, `± ${figure(quantity, part.reach)}`),
      make("td", {}, `${decimal(100 * part.share, 0)} %`));
    amend(this.table, make("caption", { class: "hush" }, say("fit.eaten")), make("thead", {}, make("tr", {}, ...head)), make("tbody", {}, ...parts.map(row)));
  }
}
