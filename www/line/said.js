// What is said of a crooked line: the sentence, the figures, what others say, and the pictures in words.

import { make } from "../amend.js";
import { decimal, exactly, figure, gap } from "../figures.js";
import { has, say } from "../words.js";

/** @typedef {import("../kernel.js").Answer} Answer */
/** @typedef {import("./types.js").LineState} LineState */

const OTHERS = ["line.laboratory", "line.practice", "line.model"];
const BESIDE = ["line.lubricated", "line.rollers", "line.guides", "line.ends", "line.joints"];
/** Joints from this multiple on are told one by one. */
const MARKED = 1.05;

/** @param {Answer|undefined} answer */
const sentence = (answer, kind = "answer") => (answer && has(`${kind}.${answer.id}`) ? say(`${kind}.${answer.id}`, answer.numbers) : "");

/**
 * The answer of the page for a drive, its surprise, and its watts.
 * @param {LineState} line
 */
export function lineSentences({ answers }) {
  const [cost] = answers;
  const watts = answers.find(({ id }) => id === "line.watts");
  return { answer: sentence(cost), surprise: sentence(cost, "surprise"), helper: sentence(watts) };
}

/**
 * Multiple and share of power side by side.
 * @param {LineState} line
 */
export function figuresOf({ answers, offset_mm, tight_n }) {
  const [{ numbers }] = answers;
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => /** @type {[string, string]} */ ([say(word), value]);
  const times = numbers.multiple === undefined ? "–" : say("line.times", { times: decimal(numbers.multiple, 2) });
  const share = numbers.loss_w === undefined ? "–" : say("line.of100", numbers);
  return [
    pair("line.read.times", times), pair("line.read.share", share), pair("line.read.straight", say("line.of100", { loss_w: numbers.straight_w })),
    pair("line.read.pull", say("line.newton", { tight_n: decimal(tight_n, 0) })), pair("line.read.offset", gap(offset_mm)),
  ];
}

/**
 * What the laboratory, the trade and the model say.
 * @param {LineState} line
 */
export function said({ answers }) {
  const list = OTHERS.flatMap((id) => answers.filter((each) => each.id === id));
  return [make("h2", {}, say("line.said")), make("dl", { class: "crooked-others" },
    ...list.flatMap((each) => [make("dt", {}, say(`line.by.${each.id}`)), make("dd", {}, sentence(each))]))];
}

/**
 * Bounds and what else takes power; and where the answer's curve has no answer.
 * @param {LineState} line
 * @param {import("./types.js").Curve[]} curves
 */
export function readings({ answers }, curves) {
  const list = BESIDE.flatMap((id) => answers.filter((each) => each.id === id)).map((each) => make("li", {}, sentence(each)));
  const count = curves.find(({ variant }) => variant === "elastic")?.unsettled_mm.length ?? 0;
  if (count > 0) list.push(make("li", {}, say("line.unsettled", { count })));
  return [make("h2", {}, say("line.bounds")), make("ul", {}, ...list)];
}

/**
 * The plan in words.
 * @param {LineState} line
 */
export function planInWords(line) {
  const { view } = line;
  if (!view) return make("p", {}, say("line.no_view"));
  const told = view.joints.map((joint, index) => ({ ...joint, joint: index + 1, times: decimal(joint.friction_multiple ?? 1, 2) }));
  const hard = told.filter((each) => (each.friction_multiple ?? 1) > MARKED || Math.abs(each.eccentricity_mm) > view.half_bearing_mm);
  const rows = hard.map((each) => make("li", {}, say("line.twin.joint", { ...each, pin_n: decimal(each.pin_n, 0), aside_mm: Math.abs(each.eccentricity_mm) })));
  return make("ul", { tabindex: 0, "aria-label": say("line.twin") },
    make("li", {}, say("line.twin.wheels", { driver: view.driver.teeth, driven: view.driven.teeth, offset_mm: line.offset_mm, joints: line.joints })),
    make("li", {}, say("line.twin.thrust", { half_mm: view.half_bearing_mm })), ...rows,
    make("li", {}, say(hard.length ? "line.twin.rest" : "line.twin.none", { count: told.length - hard.length })));
}

/**
 * Formula, values, source, what is left out.
 * @param {LineState} line
 * @param {import("../kernel.js").BenchState} state
 */
export function workedOut(line, { geometry }) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => [make("dt", {}, say(word)), make("dd", {}, value)];
  return make("div", { class: "crooked-work" },
    make("p", { class: "formula" }, say("line.work.formula")),
    make("dl", {}, ...pair("line.work.joints", figure("joints", line.joints)), ...pair("value.side_gap_mm", exactly("side_gap_mm", geometry.side_gap_mm)),
      ...pair("line.work.free", exactly("free_mm", line.free_mm)), ...pair("line.work.reach", exactly("reach_mm", line.reach_mm)),
      ...pair("drive.tight_n", say("line.newton", { tight_n: decimal(line.tight_n, 0) }))),
    ...["how", "ends", "matters", "left", "source"].map((part) => make("p", { class: part === "source" ? "source" : "" }, say(`line.work.${part}`))));
}
