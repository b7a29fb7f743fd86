// What is said of a joint: its sentences, the list by gap, three ways to clean, how it is worked out, the picture in words.

import { cellOfA } from "../compare/note.js";
import { make } from "../amend.js";
import { exactly } from "../figures.js";
import { say } from "../words.js";
import { GAPS, endOf, gapOf } from "./cut.js";
import { sentence, share, short, thin, time } from "./written.js";

/** @typedef {import("./types.js").EnterState} EnterState */
/** @typedef {import("./types.js").FaceLine} FaceLine */

/** @param {EnterState} state @param {string} start */
const find = ({ answers }, start) => answers.find(({ id }) => id.startsWith(start));

/** @param {EnterState} state */
export const sentences = (state) => ({
  answer: sentence(find(state, "reach.brush")), surprise: sentence(find(state, "reach.oil")), helper: sentence(find(state, "reach.worked")),
});

/** Faces of one gap, told apart only where they differ. @param {FaceLine[]} faces */
function rowsOf(faces) {
  const told = faces.map((face) => cells(face).join());
  return told.every((each) => each === told[0]) ? [{ face: faces[0], end: "" }] : faces.map((face) => ({ face, end: endOf(face.face) }));
}

/** @param {FaceLine} face */
const cells = (face) => [
  String(face.corner_count), thin(face.height_mm), share(face.bristle_fraction), share(face.particle_fraction),
  face.liquid && face.fill_time_s !== undefined ? time(face.fill_time_s) : say("reach.dry"),
  face.flow_mm3_per_s > 0 ? short(face.flow_mm3_per_s) : "–",
];

/** What gets in, in a line of words. @param {EnterState} state */
export const inOneLine = (state) => Object.values(sentences(state)).filter(Boolean).join(" ");

/**
 * The list by face; under what differs, that of the chain that is held.
 * @param {EnterState} state
 * @param {EnterState|null} [a]
 */
export function listOf({ faces }, a = null) {
  const others = new Map((a?.faces ?? []).map((face) => [face.face, cells(face)]));
  const cell = (/** @type {FaceLine} */ face) => cells(face).map((text, at) => make("td", {}, text, ...cellOfA(text, others.get(face.face)?.[at])));

  const heads = ["gap", "corners", "height", "bristle", "particle", "liquid", "flow"].map((key) => make("th", { scope: "col" }, say(`reach.head.${key}`)));
  const rows = GAPS.flatMap((key, i) => {
    const own = faces.filter(({ face }) => gapOf(face) === key);
    return own.length === 0 ? [] : rowsOf(own).map(({ face, end }) => make("tr", {},
      make("th", { scope: "row" }, make("span", { class: "reach-disc", "aria-hidden": "true" }, String(i + 1)), ` ${say(`reach.gap.${key}`)}`, end ? `, ${say(`end.${end}`)}` : ""),
      ...cell(face)));
  });
  return make("table", {}, make("thead", {}, make("tr", {}, ...heads)), make("tbody", {}, ...rows));
}

/** Brushed, dripped on, soaked, flushed. @param {EnterState} state */
export function waysOf(state) {
  const { faces } = state;
  const wet = faces.filter(({ liquid }) => liquid).length;
  const ways = {
    brushed: [sentence(find(state, "reach.brush")), say("reach.way.brushed")], grit: [sentence(find(state, "reach.grit"))],
    dripped: [sentence(find(state, "reach.oil")), say("reach.way.dripped")],
    soaked: [say("reach.way.soaked", { wet, count: faces.length }), sentence(find(state, "reach.worked"))],
    flushed: [sentence(find(state, "reach.flushed")) || say("reach.way.still")],
  };
  return [make("h2", {}, say("reach.ways")), make("dl", { class: "reach-ways" },
    ...Object.entries(ways).flatMap(([key, said]) => [make("dt", {}, say(`reach.way.${key}.name`)), make("dd", {}, said.join(" "))])),
  make("p", { class: "reach-care" }, make("b", {}, say("reach.care.title")), " ", say("reach.care"))];
}

/** @param {EnterState} state */
export const inWords = ({ faces, view }) => make("ul", { tabindex: 0, "aria-label": say("reach.twin") }, make("li", {}, say("reach.twin.all", { times: view.times })),
  ...faces.map((face) => {
    const [corners, height, bristle, particle, liquid] = cells(face);
    const where = [say(`reach.gap.${gapOf(face.face)}`), endOf(face.face) && say(`end.${endOf(face.face)}`)].filter(Boolean).join(", ");
    return make("li", {}, say("reach.twin.face", { where, corners, height, bristle, particle, liquid }));
  }));

/**
 * Formula, values, source, what is left out, what matters most.
 * @param {EnterState} state
 * @param {Record<string, number>} geometry
 */
export function workedOut(state, geometry) {
  const values = ["side_gap_mm", "pin_clearance_mm", "roller_clearance_mm", "roller_side_clearance_mm"];
  const rows = values.flatMap((key) => [make("dt", {}, say(`value.${key}`)), make("dd", {}, exactly(key, geometry[key]))]);
  const numbers = find(state, "reach.worked")?.numbers ?? {};
  const parts = ["reach.work.section", "reach.work.flow", "reach.work.fill", "reach.work.pump", "reach.work.matters", "reach.work.left"];
  return make("div", { class: "reach-work" }, make("p", { class: "formula" }, say("reach.work.formula")), make("dl", {}, ...rows),
    ...parts.map((word) => make("p", {}, say(word, { slid: short(numbers.slid_mm3 ?? 0), pin: short(numbers.pin_mm3 ?? 0) }))),
    make("p", { class: "source" }, say("reach.work.source")));
}
