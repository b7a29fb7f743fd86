// What is said of a chain's width: the sentence, the figures, the chart, other materials, words, how it is worked out.

import { make } from "../amend.js";
import { NBSP, decimal, exactly, gap, mmOfInch, tickOf, unitInUse } from "../figures.js";
import { has, say } from "../words.js";

/** @typedef {import("../kernel.js").Answer} Answer */
/** @typedef {import("./types.js").WidthState} WidthState */

const BESIDE = ["width.free", "width.stress", "width.press", "width.left", "width.jammed", "width.count"];
const [HUNDRED, UM_PER_MM] = [100, 1000];
const FINE = ["left_mm", "inside_mm", "clearance_mm", "swelling_mm", "growth_mm"];

/** @param {number} fraction */
const percent = (fraction) => `${decimal(fraction * HUNDRED, Math.abs(fraction) < 0.1 ? 1 : 0)} %`;

/** What is left of a gap: micrometres, which hundredths of a millimetre would hide. @param {number} mm */
const fine = (mm) => (unitInUse() === "in" || Math.abs(mm) >= 0.1 ? gap(mm) : `${decimal(mm * UM_PER_MM, 0)}${NBSP}µm`);

/** @param {number} mpa */
const stress = (mpa) => say("width.mpa", { value: decimal(mpa, 0) });

/**
 * Numbers as they are said here.
 * @param {Record<string, any>} numbers
 */
const written = (numbers) => Object.fromEntries(Object.entries(numbers).map(([name, value]) => {
  if (typeof value !== "number") return [name, value];
  if (name.endsWith("_mpa")) return [name, stress(value)];
  if (FINE.includes(name)) return [name, fine(value)];
  if (name.endsWith("_n")) return [name, decimal(value, 0)];
  if (name.endsWith("_fraction")) return [name, percent(value)];
  return [name, name === "times" ? decimal(value, value < 10 ? 1 : 0) : value];
}));

/** @param {Answer|undefined} answer */
const sentence = (answer, kind = "answer") => (answer && has(`${kind}.${answer.id}`) ? say(`${kind}.${answer.id}`, written(answer.numbers)) : "");

/** @param {WidthState} state */
export function widthSentences({ answers }) {
  const of = (/** @type {string} */ start) => answers.find(({ id }) => id.startsWith(start));
  return { answer: sentence(answers[0]), surprise: sentence(answers[0], "surprise"), helper: sentence(of("width.free")) };
}

/** @param {WidthState} state */
export function readings({ section }) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => /** @type {[string, string]} */ ([say(word), value]);
  return [
    pair("width.read.width", gap(section.width_over_pins_mm)), pair("width.read.gap", gap(section.side_gap_mm)),
    pair("width.read.free", gap(section.free_offset_mm)), pair("width.read.plates", stress(section.plate_stress_mpa)),
    pair("width.read.pin", stress(section.pin_pressure_mpa)), pair("width.read.left", fine(section.clearance_left_mm)),
  ];
}

/** @param {WidthState} state */
export function besides({ answers }) {
  const list = BESIDE.flatMap((start) => answers.filter(({ id }) => id === start || id.startsWith(`${start}.`)));
  return list.map((each) => make("li", {}, sentence(each)));
}

/**
 * What each picture tells, in a line of words.
 * @param {WidthState} state
 */
export const underPictures = ({ section, clearance_mm }) => ({
  section: say("width.section.label", { width_mm: section.width_over_pins_mm, gap_mm: section.side_gap_mm }),
  chart: say("width.chart.label", { left_mm: fine(section.clearance_left_mm), clearance_mm: fine(clearance_mm) }),
});

/**
 * What riveting leaves of the pin's clearance, along the pin.
 * @param {WidthState} state
 * @returns {import("../chart.js").Content}
 */
export function chartOf(state) {
  const { profile, bearing_mm, clearance_mm } = state;
  const end_mm = profile[profile.length - 1].at_mm;
  const [inside, mouth] = bearing_mm;
  const least = Math.min(0, ...profile.map(({ left_mm }) => left_mm));
  const spans = inside < 0 ? [[inside, mouth]] : [[inside, mouth], [-mouth, -inside]];
  const inches = unitInUse() === "in";
  const [x_unit, y_unit] = inches ? [say("unit.inch"), "mil"] : [say("unit.mm"), "µm"];
  return {
    label: underPictures(state).chart,
    x: { name: say("width.x", { unit: x_unit }), from: -end_mm, to: end_mm, write: gap, tick: tickOf, round: inches ? mmOfInch(1) : 1 },
    y: { name: say("width.y", { unit: y_unit }), from: least, to: Math.max(1.15 * clearance_mm, 0.005), write: fine, tick: (mm) => fine(mm).split(/\s/)[0] },
    ranges: [...spans.map(([from, to], i) => ({ ...(i ? {} : { name: say("width.key.bears") }), look: "free", from, to }))],
    lines: [
      { name: say("width.key.new"), look: "dashed", points: [[-end_mm, clearance_mm], [end_mm, clearance_mm]] },
      { name: say("width.key.left"), look: "main", points: profile.map(({ at_mm, left_mm }) => /** @type {[number, number]} */ ([at_mm, left_mm])) },
    ],
  };
}

/** @param {WidthState} state */
export function materials({ rows }) {
  const heads = ["material", "modulus", "yield", "pull", "press", "mass"].map((word) => make("th", { scope: "col" }, say(`width.rows.${word}`)));
  const body = rows.map((row) => make("tr", {}, make("th", { scope: "row" }, say(`width.material.${row.key}`)),
    ...[decimal(row.modulus_mpa / 1000, 0), decimal(row.yield_mpa, 0), percent(row.pull_fraction), percent(row.press_fraction), decimal(row.mass_ratio, 2)]
      .map((text) => make("td", {}, text))));
  return make("div", { class: "width-scroll", tabindex: 0, role: "region", "aria-label": say("width.rows") },
    make("table", {}, make("thead", {}, make("tr", {}, ...heads)), make("tbody", {}, ...body)), make("p", { class: "hint" }, say("width.rows.note")));
}

/**
 * The pictures in words.
 * @param {WidthState} state
 */
export function inWords({ stretches, answers, section }) {
  const layer = stretches.map(({ key, width_mm, before_mm }) => make("li", {}, say("width.twin.layer", { layer: say(`width.layer.${key}`), width_mm, before_mm })));
  return make("ul", { tabindex: 0, "aria-label": say("width.twin") }, make("li", {}, say("width.twin.all", { width_mm: section.width_over_pins_mm })), ...layer,
    ...answers.slice(4, 5).map((each) => make("li", {}, sentence(each))));
}

/**
 * Formula, values, source, what is left out, what matters most.
 * @param {WidthState} state
 */
export function workedOut({ section, press_mm, decay_mm }) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => [make("dt", {}, say(word)), make("dd", {}, value)];
  return make("div", { class: "width-work" },
    make("p", { class: "formula" }, say("width.work.formula")),
    make("dl", {},
      ...pair("width.work.pull", say("width.newton", { value: decimal(section.pull_n, 0) })),
      ...pair("width.work.inner", stress(section.inner_plate_stress_mpa)), ...pair("width.work.outer", stress(section.outer_plate_stress_mpa)),
      ...pair("width.press_mm", exactly("press_mm", press_mm)), ...pair("width.work.pressure", stress(section.press_pressure_mpa)),
      ...pair("width.work.hoop", stress(section.press_hoop_mpa)), ...pair("width.work.growth", fine(section.eye_growth_mm)),
      ...pair("width.decay_mm", exactly("decay_mm", decay_mm))),
    ...["stress", "press", "rivet", "matters", "left", "caution", "source"].map((part) => make("p", { class: part === "source" ? "source" : "" }, say(`width.work.${part}`))));
}
