// A lesson being made, as plain data: every step with the whole scenario it shows; what a step changes is worked out
// when the file is written, so that steps can be moved, doubled and taken out without another step changing.

/** @typedef {import("../lesson/shelf.js").Ask} Ask */
/** @typedef {import("../lesson/shelf.js").Step} Step */
/**
 * @typedef {object} Shown
 * @property {string} say
 * @property {Record<string, any>} scenario its sections, without names and steps
 * @property {string} question
 * @property {string} way
 * @property {number} at
 * @property {string} [look]
 * @property {string} [light]
 * @property {Ask} [ask]
 */
/** @typedef {{title: string, about: string, source: string, steps: Shown[], at: number}} Draft at counts from 0 */

const NAMES = ["format", "title", "about", "source", "lesson"];
const BEGIN = { question: "give", way: "turn", at: 1 };
/** A size read in inches carries the rounding of its conversion; so many figures are ours. */
const FIGURES = 12;

/**
 * A scenario without its names and steps.
 * @param {Record<string, any>} scenario
 */
export const sectionsOf = (scenario) => Object.fromEntries(Object.entries(tidy(scenario)).filter(([key]) => !NAMES.includes(key)));

/**
 * The same with every number in as many figures as were given.
 * @param {any} value
 * @returns {any}
 */
function tidy(value) {
  if (typeof value === "number") return Number(value.toPrecision(FIGURES));
  if (Array.isArray(value)) return value.map(tidy);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined).map(([key, each]) => [key, tidy(each)]));
}

const same = (/** @type {unknown} */ a, /** @type {unknown} */ b) => JSON.stringify(a) === JSON.stringify(b);
const isPlain = (/** @type {unknown} */ value) => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * What leads from one scenario to another, by path; null takes something out.
 * @param {Record<string, any>} from
 * @param {Record<string, any>} to
 * @param {string} [under]
 * @returns {Record<string, any>}
 */
export function changesBetween(from, to, under = "") {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return Object.assign({}, ...keys.map((key) => {
    const [before, after, path] = [from[key], to[key], under + key];
    if (same(before, after)) return {};
    if (under === "" && isPlain(before) && isPlain(after)) return changesBetween(before, after, `${key}.`);
    return { [path]: after ?? null };
  }));
}

/**
 * A step as a file has it: what it changes of the one before it, and what it says.
 * @param {Shown} step
 * @param {{scenario: Record<string, any>, question: string, way: string, at: number}} last
 * @returns {Step}
 */
function written(step, last) {
  const set = changesBetween(last.scenario, step.scenario);
  const { question, way, at, look, light, ask } = step;
  return {
    say: step.say,
    ...(Object.keys(set).length > 0 && { set }),
    ...(question !== last.question && { question }),
    ...(way !== last.way && { way }),
    ...(at !== last.at && { at }),
    ...(look && { look }),
    ...(light && { light }),
    ...(ask && { ask }),
  };
}

/**
 * The scenario file of a lesson.
 * @param {Draft} draft
 * @returns {Record<string, any>}
 */
export function fileOf({ title, about, source, steps }) {
  const [{ scenario }] = steps;
  const lesson = steps.map((step, index) => written(step, steps[index - 1] ?? { scenario, ...BEGIN }));
  return { format: 1, title, ...(about && { about }), ...(source && { source }), ...scenario, lesson };
}

/**
 * A lesson to go on with, from its stands.
 * @param {Record<string, any>} file
 * @param {(Step & {scenario: Record<string, any>, question: string, way: string, at: number})[]} stands
 * @param {(scenario: Record<string, any>) => Record<string, any>} whole a scenario as the kernel writes it
 * @returns {Draft}
 */
export function draftOf({ title, about = "", source = "" }, stands, whole) {
  const steps = stands.map(({ say, scenario, question, way, at, look, light, ask }) =>
    ({ say, scenario: sectionsOf(whole(scenario)), question, way, at, ...(look && { look }), ...(light && { light }), ...(ask && { ask }) }));
  return { title, about: about ?? "", source: source ?? "", steps, at: 0 };
}

/** @typedef {(draft: Draft) => Draft} Change */

/** @param {Shown} step @returns {Change} puts one after the present step */
export const insert = (step) => ({ steps, at, ...rest }) => ({ ...rest, steps: steps.toSpliced(at + 1, 0, step), at: at + 1 });

/** @type {Change} */
export const double = (draft) => insert(structuredClone(draft.steps[draft.at]))(draft);

/** @type {Change} */
export const drop = ({ steps, at, ...rest }) => ({ ...rest, steps: steps.toSpliced(at, 1), at: Math.max(0, Math.min(at, steps.length - 2)) });

/** @param {1|-1} by @returns {Change} */
export const shift = (by) => ({ steps, at, ...rest }) => ({ ...rest, steps: steps.toSpliced(at, 1).toSpliced(at + by, 0, steps[at]), at: at + by });

/** @param {Partial<Shown>} part @returns {Change} */
export const alter = (part) => ({ steps, at, ...rest }) => ({ ...rest, steps: steps.with(at, { ...steps[at], ...part }), at });
