// The chain cut across, and its width by layer as two bars on the same scale: as it is, and narrower.

import { draw, make } from "../amend.js";
import { gap } from "../figures.js";
import { say } from "../words.js";
import { underPictures } from "./said.js";

/** @typedef {import("./types.js").WidthState} WidthState */
/** @typedef {import("./types.js").Stretch} Stretch */

const [NARROWEST, TALLEST] = [260, 300];
/** Room beside the section, px; height of a bar and what stands over it. */
const [MARGIN, BAR, NAME] = [14, 24, 20];
const HATCH = 7;
/** How the section lines of each part run, degrees: neighbours differ. */
const LINES = /** @type {Record<string, number>} */ ({ outer: 45, inner: 135, bush: 45, roller: 135 });

/**
 * @param {WidthState} state
 * @param {number} room_px
 * @param {WidthState|null} [a] that of the chain which is held: its outline and its bar, to the same scale
 */
export function sectionPicture(state, room_px, a = null) {
  const width = Math.max(NARROWEST, room_px);
  const both = a ? [state, a] : [state];
  const most = (/** @type {(of: WidthState) => number} */ of) => Math.max(...both.map(of));
  const [half_mm, high_mm] = [most(({ before }) => before.width_over_pins_mm / 2), most(({ half_height_mm }) => half_height_mm)];
  const scale = Math.min((width - 2 * MARGIN) / (2 * half_mm), TALLEST / (2 * high_mm));
  const tall = 2 * high_mm * scale;
  const [x, y] = [width / 2, tall / 2 + 4];
  const first = tall + 8 + NAME;
  const second = first + BAR + NAME;
  const { section, before } = state;
  const name = (/** @type {number} */ at, /** @type {string} */ word, /** @type {number} */ mm) =>
    draw("text", { x, y: at - 6, "text-anchor": "middle" }, say(word, { width_mm: mm }));
  const narrower = section.narrower_mm > 0;
  const last = narrower ? second : first;
  const third = last + BAR + NAME;
  const other = a && differs(a, state) ? a : null;
  const end = other ? third + BAR : last + BAR;
  const outlines = (other?.shapes ?? []).filter(({ d }) => !state.shapes.some((own) => own.d === d)).map(({ d }) => draw("path", { class: "of-a thin", d }));
  return [draw("svg", { class: "width-picture", role: "img", "aria-label": underPictures(state).section, viewBox: `0 0 ${width} ${end + 4}`, height: end + 4 },
    draw("defs", {}, ...Object.entries(LINES).map(([role, degrees]) => hatch(role, degrees, scale))),
    draw("g", { transform: `translate(${x} ${y}) scale(${scale})` }, ...state.shapes.map(({ role, d }) =>
      draw("path", { class: `part ${role}`, d, "fill-rule": "evenodd", ...(role in LINES ? { fill: `url(#width-hatch-${role})` } : {}) })), ...outlines),
    draw("path", { class: "axis", d: `M${x} 0V${tall + 6}` }),
    name(first, "width.bar.before", before.width_over_pins_mm), ...bar(asItIs(state.stretches), x, first, scale),
    ...(narrower ? [name(second, "width.bar.now", section.width_over_pins_mm), ...bar(state.stretches, x, second, scale)] : []),
    ...(other ? [name(third, "width.bar.a", other.section.width_over_pins_mm), ...bar(other.stretches, x, third, scale)] : []))];
}

/** Whether two chains look otherwise across. @param {WidthState} a @param {WidthState} now */
const differs = (a, now) => JSON.stringify([a.shapes, a.stretches]) !== JSON.stringify([now.shapes, now.stretches]);

/**
 * @param {string} role
 * @param {number} degrees
 * @param {number} scale
 */
function hatch(role, degrees, scale) {
  const id = `width-hatch-${role}`;
  const units = { patternUnits: "userSpaceOnUse", width: HATCH, height: HATCH, patternTransform: `scale(${1 / scale}) rotate(${degrees})` };
  return draw("pattern", { id, ...units }, draw("rect", { width: HATCH, height: HATCH, class: id }), draw("path", { class: `${id} line`, d: `M0 0V${HATCH}` }));
}

/**
 * The layers of the chain as it is, from the middle out.
 * @param {Stretch[]} stretches
 */
function asItIs(stretches) {
  let from_mm = 0;
  return stretches.map(({ key, before_mm }) => {
    const begins = from_mm;
    from_mm += before_mm / 2;
    return { key, from_mm: begins, to_mm: from_mm };
  });
}

/**
 * Both sides of the middle; an overlap runs backward and is marked.
 * @param {{key: string, from_mm: number, to_mm: number}[]} stretches
 * @param {number} x
 * @param {number} y
 * @param {number} scale
 */
function bar(stretches, x, y, scale) {
  const onTop = [...stretches].sort((one, other) => Number(one.to_mm < one.from_mm) - Number(other.to_mm < other.from_mm));
  return onTop.flatMap(({ key, from_mm, to_mm }) => [1, -1].map((side) => {
    const ends = [x + side * from_mm * scale, x + side * to_mm * scale].sort((a, b) => a - b);
    return draw("rect", { class: to_mm < from_mm ? "layer overlap" : `layer ${key}`, x: ends[0], y, width: Math.max(0.5, ends[1] - ends[0]), height: BAR });
  }));
}

/**
 * What each layer takes, with the colour of its bar.
 * @param {WidthState} state
 */
export const layers = ({ stretches, section }) => stretches.map(({ key, width_mm, before_mm }) => {
  const swatch = draw("svg", { class: "width-picture sample", viewBox: "0 0 16 12", "aria-hidden": "true" }, draw("rect", { class: `layer ${key}`, width: 16, height: 12 }));
  const was = section.narrower_mm > 0 && Math.abs(width_mm - before_mm) > 1e-6 ? say("width.layer.was", { before: gap(before_mm) }) : "";
  return make("li", {}, swatch, make("span", {}, say(`width.layer.${key}`)), make("b", {}, gap(width_mm)), make("span", { class: "was" }, was));
});
