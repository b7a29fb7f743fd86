// Times as much as straight, against the offset: the answer, its bounds, the band of stiffness, other side gaps.

import { decimal, gap, mmOfInch, tickOf, unitInUse } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("./types.js").Curve} Curve */
/** @typedef {import("../chart.js").At} At */

/** The chart ends at this many times however hard rigid joints would press. */
const MOST = 5;
/** The lines that are drawn in watts: fewer, since there is a band more. */
const WATTS = ["hinged", "rigid", "elastic"];
/** The lines by what is assumed, the answer last and so on top. */
const LOOKS = /** @type {Record<string, string>} */ ({ tighter: "dashdot", wider: "dashed", hinged: "dotted", rigid: "second", elastic: "main" });

/** A curve whose every value is another of its samples. @param {Curve|undefined} curve @param {(sample: import("./types.js").Sample) => number|null} of */
const by = (curve, of) => curve && { ...curve, samples: curve.samples.map((sample) => ({ ...sample, friction_multiple: of(sample) })) };

/**
 * The same in watts of 100, with the band of friction.
 * @param {LineState} line
 * @param {Curve[]} curves
 * @param {(mm: number, done: boolean) => void} slide
 * @returns {import("../chart.js").Content}
 */
export function wattsOf(line, curves, slide) {
  const watts = curves.flatMap((curve) => by(curve, ({ loss_w }) => loss_w) ?? []);
  const content = chartOf(line, watts, slide);
  const elastic = curves.find(({ variant }) => variant === "elastic");
  const most = 1.15 * Math.max(0.1, line.answers[0].numbers.loss_w ?? 0, ...(elastic?.samples ?? []).map(({ loss_w, band_w }) => band_w?.[1] ?? loss_w));
  const [low, high] = [0, 1].map((end) => by(elastic, ({ band_w }) => band_w?.[end] ?? null));
  const of = (/** @type {string} */ variant) => watts.find((curve) => curve.variant === variant);
  return {
    ...content,
    label: say("line.watts.name"), y: { name: say("line.watts.y"), from: 0, to: most, write: (w) => decimal(w, most < 3 ? 1 : 0) },
    bands: band(low, high, most, "line.key.mu"),
    lines: Object.entries(LOOKS).flatMap(([variant, look]) => {
      const curve = of(variant);
      return curve && WATTS.includes(variant) ? [{ name: say(`line.key.${variant}`), look, points: seen(curve, most) }] : [];
    }),
    marker: content.marker && { ...content.marker, value: line.answers[0].numbers.loss_w ?? null },
  };
}

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
    x: { name: say("line.x", { unit: say(unitInUse() === "in" ? "unit.inch" : "unit.mm") }), from: 0, to: to_mm, write: gap, tick: tickOf, round },
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
 * @param {string} [word]
 */
function band(softer, stiffer, most, word = "line.key.band") {
  if (!softer || !stiffer) return [];
  const [low, high] = [seen(softer, most), seen(stiffer, most)];
  const both = (/** @type {At[]} */ these, /** @type {At[]} */ others) => these.filter(([mm]) => others.some(([other]) => other === mm));
  return [{ name: say(word), low: both(low, high), high: both(high, low) }];
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
