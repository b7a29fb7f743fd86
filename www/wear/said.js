// What is said of a worn chain: the sentence, the figures, what else it changes, the pictures in words, how it is worked out.

import { make } from "../amend.js";
import { angle, exactly, gap } from "../figures.js";
import { has, say } from "../words.js";
import { percent, written } from "./percent.js";
import { gaugeInWords, ruleInWords } from "./strip.js";
import { wheelInWords } from "./wheel.js";

/** @typedef {import("../kernel.js").Answer} Answer */
/** @typedef {import("./types.js").WearState} WearState */

/** What is said beside the pictures, in this order. */
const BESIDE = ["wear.pitches", "wear.measured", "wear.wheel", "wear.play", "wear.slack", "wear.life"];

/** @param {Answer|undefined} answer */
export const sentence = (answer, kind = "answer") => (answer && has(`${kind}.${answer.id}`) ? say(`${kind}.${answer.id}`, written(answer.numbers)) : "");

/**
 * The answer of the page, what nobody expects, and the two readings.
 * @param {WearState} state
 */
export function wearSentences({ answers }) {
  const measured = answers.find(({ id }) => id.startsWith("wear.measured"));
  const pitches = answers.find(({ id }) => id === "wear.pitches");
  const [length] = answers;
  return { answer: sentence(length), surprise: sentence(length, "surprise") || sentence(pitches, "surprise"), helper: sentence(measured) };
}

/** @param {WearState} state */
export function readings({ section }) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value, numbers = {}) => /** @type {[string, string]} */ ([say(word, numbers), value]);
  return [
    pair("wear.read.longer", percent(section.elongation_fraction)),
    pair("wear.read.chain", gap(section.longer_mm)),
    pair("wear.read.rule", percent(section.rule_reading_fraction)),
    pair("wear.read.gauge", percent(section.gauge_reading_fraction)),
    pair("wear.read.limit", percent(section.limit_fraction)),
    pair("wear.read.pass", percent(section.sprocket_pass_fraction), { teeth: section.sprocket_teeth_count }),
  ];
}

/**
 * @param {WearState} state
 * @param {Answer|null} friction
 */
export function besides({ answers }, friction) {
  const list = BESIDE.flatMap((start) => answers.filter(({ id }) => id === start || id.startsWith(`${start}.`)));
  const all = [...list, ...(friction ? [friction] : [])];
  return all.map((each) => make("li", {}, sentence(each)));
}

/**
 * What each picture tells, in a line of words.
 * @param {WearState} state
 */
export const underPictures = ({ joint: { worn }, wheel, strip, section, rooms }) => ({
  joint: `${say("wear.joint.along", worn)}, ${say("wear.joint.clear", worn)}`,
  wheel: wheelInWords(wheel),
  strip: `${ruleInWords(strip, section)}; ${gaugeInWords(strip, section)}`,
  room: say("wear.room.label", { new_rad: section.turn_limit_new_rad, worn_rad: section.turn_limit_worn_rad, aside_mm: Math.max(0, ...rooms[1].map(({ offset_mm }) => offset_mm)) }),
});

/**
 * The pictures in words.
 * @param {WearState} state
 */
export function inWords({ joint, wheel, strip, section, answers }) {
  const measured = answers.find(({ id }) => id.startsWith("wear.measured"));
  const item = (/** @type {string} */ word, /** @type {Record<string, any>} */ numbers) => make("li", {}, say(word, written(numbers)));
  return make("ul", { tabindex: 0, "aria-label": say("wear.twin") },
    item("wear.twin.joint", { new_mm: joint.new.along_mm, worn_mm: joint.worn.along_mm, across_mm: joint.worn.across_mm }),
    item("wear.twin.pitches", { inner_mm: section.inner_pitch_mm, outer_mm: section.outer_pitch_mm }),
    item("wear.twin.wheel", { teeth: wheel.teeth, low_mm: section.low_rise_mm, high_mm: section.high_rise_mm, rise_mm: section.sprocket_rise_mm }),
    item("wear.twin.strip", { pitches: strip.pitches, rule_mm: strip.rule_true_mm, gauge_mm: strip.gauge_true_mm, rule_fraction: section.rule_reading_fraction, gauge_fraction: section.gauge_reading_fraction }),
    make("li", {}, sentence(measured)),
    item("wear.twin.room", { new_rad: section.turn_limit_new_rad, worn_rad: section.turn_limit_worn_rad, twist_rad: section.twist_limit_rad }));
}

/**
 * Formula, values, source, what is left out, what matters most.
 * @param {WearState} state
 */
export function workedOut({ section }) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => [make("dt", {}, say(word)), make("dd", {}, value)];
  return make("div", { class: "wear-work" },
    make("p", { class: "formula" }, say("wear.work.formula")),
    make("dl", {},
      ...pair("wear.given", exactly("joint_wear_mm", section.joint_wear_mm)),
      ...pair("wear.work.inner", exactly("inner_mm", section.inner_pitch_mm)),
      ...pair("wear.work.outer", exactly("outer_mm", section.outer_pitch_mm)),
      ...pair("wear.work.rise", gap(section.sprocket_rise_mm)),
      ...pair("wear.work.turn", angle(section.turn_limit_worn_rad))),
    ...["archard", "wheel", "measure", "matters", "left", "caution", "source"].map((part) => make("p", { class: part === "source" ? "source" : "" }, say(`wear.work.${part}`))));
}
