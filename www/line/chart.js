// Times as much as straight, against the offset: the answer, its bounds, the band of stiffness, other side gaps.

import { decimal, fieldOf, gap, mmOfInch, unitInUse } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("./types.js").Curve} Curve */
/** @typedef {import("../chart.js").At} At */

/** The chart ends at this many times however hard rigid joints would press. */
const MOST = 5;
/** The lines by what is assumed, the answer last and so on top. */
const LOOKS = /** @type {Record<string, string>} */ ({ tighter: "dashdot", wider: "dashed", hinged: "dotted", rigid: "second", elastic: "main" });

/**
 * What the chart shows of a drive and the curves that are there so far.
 * @param {LineState} line
 * @param {Curve[]} curves
 * @param {(mm: number, done: boolean) => void} slide
 * @returns {import("../chart.js").Content}
 */
export function chartOf(line, curves, slide) {
  const of = (/** @type {string} */ variant) => curves.find((curve) => curve.variant === variant);
  const most = mostOf(of("elastic"));
  const lines = Object.entries(LOOKS).flatMap(([variant, look]) => {
    const curve = of(variant);
    return curve ? [{ name: say(`line.key.${variant}`), look, points: seen(curve, most) }] : [];
  });
  const { offset_mm, to_mm, step_mm, free_mm, answers } = line;
  const round = unitInUse() === "in" ? mmOfInch(1) : 1;
  return {
    label: say("line.chart.name", { ...line }),
    x: { name: say("line.x", { unit: say(unitInUse() === "in" ? "unit.inch" : "unit.mm") }), from: 0, to: to_mm, write: gap, tick: (mm) => String(Number(fieldOf(mm))), round },
    y: { name: say("line.y"), from: 1, to: most, write: (times) => decimal(times, 1) },
    ranges: [{ name: say("line.key.free"), look: "free", from: 0, to: free_mm }],
    bands: band(of("softer"), of("stiffer"), most), lines, marks: marks(line, of("rigid")),
    marker: {
      at: offset_mm, value: answers[0].numbers.multiple ?? null, step: step_mm, slide, name: say("drive.offset_mm"),
      text: say(offset_mm <= free_mm ? "line.slider.free" : "line.slider.over", { offset_mm, free_mm }),
    },
  };
}

/** @param {Curve|undefined} elastic */
function mostOf(elastic) {
  const top = Math.max(...(elastic?.samples ?? []).map((each) => each.friction_multiple ?? 1), 1.5);
  return Math.min(MOST, Math.ceil(2 * top + 0.2) / 2);
}

/**
 * The samples of a curve that have a multiple, up to the first beyond the chart.
 * @param {Curve} curve
 * @param {number} most
 * @returns {At[]}
 */
function seen({ samples }, most) {
  const points = samples.flatMap(({ offset_mm, friction_multiple }) => (friction_multiple === null ? [] : [/** @type {At} */ ([offset_mm, friction_multiple])]));
  const over = points.findIndex(([, times]) => times > most);
  return points.slice(0, over < 0 ? points.length : over + 1);
}

/**
 * @param {Curve|undefined} softer
 * @param {Curve|undefined} stiffer
 * @param {number} most
 */
function band(softer, stiffer, most) {
  if (!softer || !stiffer) return [];
  const [low, high] = [seen(softer, most), seen(stiffer, most)];
  const both = (/** @type {At[]} */ these, /** @type {At[]} */ others) => these.filter(([mm]) => others.some(([other]) => other === mm));
  return [{ name: say("line.key.band"), low: both(low, high), high: both(high, low) }];
}

/**
 * @param {LineState} line
 * @param {Curve|undefined} rigid
 */
function marks({ free_mm, reach_mm }, rigid) {
  const onset_mm = rigid?.onset_mm;
  return [
    { name: say("line.mark.free"), at: free_mm },
    ...(typeof onset_mm === "number" ? [{ name: say("line.mark.onset"), at: onset_mm }] : []),
    { name: say("line.mark.end"), at: reach_mm },
  ];
}
