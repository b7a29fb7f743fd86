// How it is worked out: formula, values, source, what is left out, and the assumption that matters most.

import { byId, make } from "../dom.js";
import { decimal, degreesOf, exactly } from "../figures.js";
import { slope } from "../work.js";
import { has, say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").BenchLike} BenchLike */

const VALUES = /** @type {Record<string, string[]>} */ ({
  turn: ["pin_clearance_mm", "bearing_width_mm", "side_gap_mm", "inner_overhang_mm", "outer_overhang_mm"],
  lean: ["pin_clearance_mm", "bearing_width_mm", "side_gap_mm", "inner_overhang_mm", "outer_overhang_mm"],
  aside: ["side_gap_mm", "inner_link_width_mm", "outer_spacing_mm"],
  twist: ["pin_clearance_mm", "bearing_width_mm", "side_gap_mm", "inner_plate_height_mm", "outer_plate_height_mm"],
  "twist.collared": ["pin_clearance_mm", "bearing_length_mm", "mouth_radius_mm", "side_gap_mm", "inner_plate_height_mm", "outer_plate_height_mm"],
  "lean.collared": ["pin_clearance_mm", "bearing_length_mm", "mouth_radius_mm", "side_gap_mm", "inner_overhang_mm", "outer_overhang_mm"],
  bend: ["pin_clearance_mm", "pin_diameter_mm", "bore_mm"],
  load: ["pin_clearance_mm", "bearing_width_mm", "side_gap_mm"],
});
const LIMIT = /** @type {Record<string, string>} */ ({
  turn: "turn_limit_rad", lean: "shear_limit_rad", aside: "offset_limit_mm", twist: "twist_limit_rad",
});

/**
 * @param {Session} session
 * @param {BenchLike} probe a bench to try other gaps on
 */
export const open = (session, probe) => ({ show: () => byId("work").replaceChildren(...working(session, probe)) });

/**
 * @param {Session} session
 * @param {BenchLike} probe
 * @returns {HTMLElement[]}
 */
function working(session, probe) {
  const { how } = session.work;
  const { state } = session;
  const values = { ...state.sizes, ...state.geometry };
  const keys = VALUES[`${how}.${state.construction}`] ?? VALUES[how];
  const rows = keys.flatMap((key) => [
    make("dt", {}, make("i", {}, say(`letter.${key}`)), " ", say(`value.${key}`)), make("dd", {}, exactly(key, values[key])),
  ]);
  const limit = state.fits && LIMIT[how] ? limitOf(state.play, how) : null;
  const parts = [
    make("p", { class: "formula" }, say(`work.${how}.formula.${state.construction}`)),
    make("p", { class: "hint" }, say("work.at")),
    make("dl", {}, ...rows),
    make("p", { class: "result" }, limit ? `${say(`work.${how}.result`)} ${limit}` : ""),
    make("p", {}, say(`work.${how}.why`), keys.includes("bearing_length_mm") ? ` ${say("work.le.collared")}` : ""),
  ];
  if (limit) parts.push(matter(session, probe, how));
  if (has(`work.${how}.two.${state.construction}`)) parts.push(make("p", {}, say(`work.${how}.two.${state.construction}`)));
  parts.push(make("p", {}, make("b", {}, say("work.left")), " ", say(`work.${how}.left`)));
  parts.push(make("p", { class: "source" }, say("work.source")));
  return parts;
}

/**
 * @param {Record<string, any>} play
 * @param {string} how
 */
function limitOf(play, how) {
  const key = LIMIT[how];
  if (key.endsWith("_mm")) return exactly(key, play[key]);
  const degrees = decimal(degreesOf(play[key]), 3);
  return say("work.rad", { degrees, mrad: decimal(play[key] * 1000, 2), slope: slope(play[key]) });
}

/**
 * What half and twice the gap that matters most would do, tried on a second bench.
 * @param {Session} session
 * @param {BenchLike} probe
 * @param {string} how
 */
function matter(session, probe, how) {
  const faces = session.answers.some(({ id }) => id.startsWith(`${how}.`) && id.includes("face"));
  const key = faces ? "side_gap_mm" : "pin_clearance_mm";
  const now = session.state.gaps[key].value_mm;
  const tried = [0.5, 2].map((times) => {
    const faults = probe.load(session.bench.scenario()).concat(probe.set_gap(key, now * times));
    const state = probe.state();
    return faults.length === 0 && state.fits ? limitOf(state.play, how) : "–";
  });
  return make("p", {}, make("b", {}, say("work.matters")), " ",
    say(`work.matters.${key}`, { half: tried[0], twice: tried[1] }));
}
