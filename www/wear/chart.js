// How high the rollers ride against the wear of a joint, with the limits and where the teeth give up.

import { gap, mmOfInch, tickOf, unitInUse } from "../figures.js";
import { say } from "../words.js";
import { percent } from "./percent.js";

/** @typedef {import("./types.js").WearState} WearState */

/**
 * @param {WearState} state
 * @param {(mm: number, done: boolean) => void} slide
 * @returns {import("../chart.js").Content}
 */
export function chartOf({ heights, limits, section }, slide) {
  const last = heights[heights.length - 1];
  const unit = say(unitInUse() === "in" ? "unit.inch" : "unit.mm");
  const round = unitInUse() === "in" ? mmOfInch(1) : 1;
  const line = (/** @type {string} */ word, /** @type {string} */ look, /** @type {"low_mm"|"high_mm"} */ of) =>
    ({ name: say(word), look, points: heights.map((each) => /** @type {[number, number]} */ ([each.wear_mm, each[of]])) });
  const teeth = section.sprocket_teeth_count;
  const rule = limits.rule_mm <= limits.to_mm && teeth > 67 ? [{ name: say("wear.mark.rule", { teeth }), at: limits.rule_mm }] : [];
  return {
    label: say("wear.chart.label", { teeth, pass: percent(section.sprocket_pass_fraction), now: percent(section.elongation_fraction) }),
    x: { name: say("wear.x", { unit }), from: 0, to: limits.to_mm, write: gap, tick: tickOf, round },
    y: { name: say("wear.y", { unit }), from: 0, to: 1.12 * last.high_mm, write: gap, tick: tickOf, round },
    ranges: [{ name: say("wear.key.past"), look: "out", from: limits.pass_mm, to: limits.to_mm }],
    lines: [line("wear.key.low", "third", "low_mm"), line("wear.key.high", "main", "high_mm")],
    marks: [
      { name: say("wear.mark.fixed", { at: percent(section.limit_fixed_fraction) }), at: limits.fixed_mm },
      { name: say("wear.mark.adjustable", { at: percent(section.limit_fraction) }), at: limits.adjustable_mm, look: "limit" },
      ...rule,
      { name: say("wear.mark.pass", { at: percent(section.sprocket_pass_fraction) }), at: limits.pass_mm, look: "limit" },
    ].filter(({ at }) => at <= limits.to_mm),
    marker: {
      at: Math.min(section.joint_wear_mm, limits.to_mm), value: Math.min(section.high_rise_mm, last.high_mm), step: limits.to_mm / 200, slide, name: say("wear.given"),
      text: say("wear.marker", { wear_mm: section.joint_wear_mm, now: percent(section.elongation_fraction) }),
    },
  };
}
