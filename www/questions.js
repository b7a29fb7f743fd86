// The questions in their order: the ways of moving the chain that each offers, of what it can be asked, and the module
// that brings what it shows. The first two are the first screen's own.

/** @typedef {import("./kernel.js").Scenario} Scenario */
/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./session.js").What} What */
/**
 * What a question brings: a part of the stage, a part beside it, and its sentences.
 * @typedef {object} Asked
 * @property {HTMLElement} section put into the stage while it is asked
 * @property {HTMLElement} [aside] put beside it
 * @property {() => void} show it has just been put there
 * @property {(what: Set<What>) => void} heed something has changed while it is asked
 * @property {Asked|null} [held] the same asked of the chain that is held as A, to be drawn in its pictures
 * @property {boolean} [waiting] what is shown is older than what is asked
 * @property {() => {answer: string, surprise: string, helper: string}} sentences
 */
/**
 * @typedef {object} Question
 * @property {string} id
 * @property {string[]} ways
 * @property {(scenario: Scenario) => boolean} offers whether it can be asked of what is on the bench
 * @property {Record<string, any>} [begin] an example of sections it needs, stated where the scenario has none
 * @property {() => Promise<{open: (session: Session) => Asked}>} [open]
 * @property {string[]} [sheets] its own style sheets
 */

const WAYS = ["turn", "aside", "lean", "twist", "bend"];

/** Limits and demands to begin with, of a common order: an example, to be changed. */
const FIT = {
  limits: [{ dimension: "pin_diameter_mm", grade: "h6" }, { dimension: "bore_mm", grade: "H6" },
    { dimension: "inner_plate_mm", minus: 0.02, plus: 0.02 }, { dimension: "outer_spacing_mm", minus: 0.05, plus: 0.05 }],
  demands: [{ quantity: "side_gap_mm", at_least: 0.12 }, { quantity: "pin_clearance_mm", at_least: 0.01 }],
};

/** A drive to begin with, to be changed. */
const DRIVE = { driver_teeth: 38, driven_teeth: 17, centre_distance_mm: 1000, offset_mm: 6, watts: 200, turns_per_minute: 90 };

/** @type {Question[]} */
export const QUESTIONS = [
  { id: "give", ways: ["turn", "aside", "lean", "twist"], offers: () => true },
  { id: "touch", ways: [...WAYS, "load"], offers: () => true },
  { id: "line", ways: WAYS, offers: ({ drive }) => drive !== undefined, begin: { drive: DRIVE }, open: () => import("./line/line.js"), sheets: ["chart.css", "line/line.css"] },
  { id: "fit", ways: WAYS, offers: ({ demands }) => (demands ?? []).length > 0, begin: FIT, open: () => import("./fit/fit.js"), sheets: ["fit/fit.css"] },
  { id: "wear", ways: WAYS, offers: () => true, open: () => import("./wear/wear.js"), sheets: ["chart.css", "wear/wear.css"] },
  { id: "reach", ways: WAYS, offers: () => true, open: () => import("./reach/reach.js"), sheets: ["reach/reach.css"] },
  { id: "surface", ways: WAYS, offers: () => true, open: () => import("./surface/surface.js"), sheets: ["chart.css", "reach/reach.css", "surface/surface.css"] },
  { id: "width", ways: WAYS, offers: () => true, open: () => import("./width/width.js"), sheets: ["chart.css", "width/width.css"] },
];

/** @param {string} id */
export const questionOf = (id) => QUESTIONS.find((each) => each.id === id) ?? QUESTIONS[0];

/** @param {string} id */
export const isQuestion = (id) => QUESTIONS.some((each) => each.id === id);

/** @param {string} id */
export const waysOf = (id) => questionOf(id).ways;
