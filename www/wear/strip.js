// A rule and a gauge on the same taut chain, one under the other, each with its reading.

import { draw, make } from "../amend.js";
import { gap } from "../figures.js";
import { say } from "../words.js";
import { px } from "../wide.js";
import { percent } from "./percent.js";

/** @typedef {import("./types.js").WearState} WearState */

const NARROWEST = 280;
const MARGIN = 12;
/** Lines of the pictures from their tops, px. */
const AT = { pins: 10, rule: 24, ruleEnd: 48, below: 54 };
/** A pin as it is drawn, px. */
const PIN = 4.5;

/** @param {WearState["strip"]} strip @param {WearState["section"]} section */
export const ruleInWords = (strip, section) => say("wear.strip.rule", { rule: percent(section.rule_reading_fraction), over: gap(strip.rule_true_mm) });

/** @param {WearState["strip"]} strip @param {WearState["section"]} section */
export const gaugeInWords = (strip, section) => say("wear.strip.gauge", { gauge: percent(section.gauge_reading_fraction), over: gap(strip.gauge_true_mm) });

/**
 * @param {WearState} state
 * @param {number} room_px
 */
export function stripPicture({ strip, section }, room_px) {
  const width = Math.max(NARROWEST, room_px);
  const [from, to] = [strip.rollers_mm[0] - strip.roller_mm, strip.rollers_mm[1] + strip.roller_mm];
  const scale = (width - 2 * MARGIN) / (to - from);
  const x = (/** @type {number} */ mm) => px(MARGIN + (mm - from) * scale);
  const percents = { rule: percent(section.rule_reading_fraction), gauge: percent(section.gauge_reading_fraction) };
  const name = (/** @type {string} */ text) => make("p", { class: "wear-reading" }, text);
  const picture = (/** @type {string} */ word, /** @type {number} */ height, /** @type {import("../amend.js").Wanted[]} */ parts) =>
    draw("svg", { class: "wear-picture", role: "img", "aria-label": say(word, { ...percents, pitches: strip.pitches }), viewBox: `0 0 ${width} ${height}`, height }, ...parts);
  const tall = 2 * strip.roller_mm * scale + 8;
  return [
    name(ruleInWords(strip, section)),
    picture("wear.strip.rule.label", AT.below, rule(strip, x)),
    name(gaugeInWords(strip, section)),
    picture("wear.strip.gauge.label", tall, gauge(strip, x, scale, tall / 2)),
    make("p", { class: "wear-badge" }, say(strip.times > 1 ? "wear.times" : "wear.true", { times: strip.times })),
  ];
}

/**
 * Links in turn along a line of places.
 * @param {number[]} places
 * @param {number} y
 */
const links = (places, y) => places.slice(1).map((to, index) =>
  draw("path", { class: index % 2 ? "link outer" : "link inner", d: `M${places[index]} ${y}H${to}` }));

/**
 * @param {WearState["strip"]} strip
 * @param {(mm: number) => number} x
 */
function rule({ pins_mm, marks_mm }, x) {
  const [last, pin] = [x(marks_mm[marks_mm.length - 1]), x(pins_mm[pins_mm.length - 1])];
  const places = pins_mm.map(x);
  return [
    draw("rect", { class: "part rule", x: x(0) - 8, y: AT.rule, width: pin - x(0) + 16, height: AT.ruleEnd - AT.rule }),
    draw("rect", { class: "over", x: last, y: AT.rule, width: Math.max(0, pin - last), height: AT.ruleEnd - AT.rule }),
    draw("path", { class: "ticks", d: marks_mm.map((mm) => `M${x(mm)} ${AT.rule}v15`).join("") }),
    draw("path", { class: "drop", d: `M${pin} ${AT.pins}V${AT.ruleEnd}` }),
    ...links(places, AT.pins),
    ...places.map((cx) => draw("circle", { class: "pin", cx, cy: AT.pins, r: PIN })),
  ];
}

/**
 * @param {WearState["strip"]} strip
 * @param {(mm: number) => number} x
 * @param {number} scale
 * @param {number} y
 */
function gauge({ gauge_mm, nominal_mm, rollers_mm, roller_mm, pins_mm }, x, scale, y) {
  const [from, to, nominal] = [x(gauge_mm[0]), x(gauge_mm[1]), x(nominal_mm)];
  const places = pins_mm.map(x);
  return [
    ...rollers_mm.map((mm) => draw("circle", { class: "roller", cx: x(mm), cy: y, r: roller_mm * scale })),
    draw("rect", { class: "part gauge", x: from, y: y - 8, width: nominal - from, height: 16 }),
    draw("rect", { class: "over", x: nominal, y: y - 8, width: Math.max(0, to - nominal), height: 16 }),
    ...[0, places.length - 1].map((end) => draw("circle", { class: "pin", cx: places[end], cy: y, r: PIN })),
    draw("path", { class: "pull", d: `M${from + 18} ${y}h-12m5 -4l-5 4l5 4M${to - 18} ${y}h12m-5 -4l5 4l-5 4` }),
  ];
}
