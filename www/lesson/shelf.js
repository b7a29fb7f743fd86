// Lessons as scenarios: every step of a lesson is a scenario of its own, with what the steps before it changed.

/** @typedef {import("../kernel.js").Scenario} Scenario */
/** @typedef {import("../session.js").Session} Session */
/** @typedef {{text: string, choices: string[], answer: number, because?: string}} Ask */
/**
 * One step as the file has it.
 * @typedef {object} Step
 * @property {string} say
 * @property {Record<string, any>} [set]
 * @property {string} [question]
 * @property {string} [way]
 * @property {number} [at]
 * @property {string} [look]
 * @property {string} [light]
 * @property {Ask} [ask]
 */
/** A step and where the steps up to it have led. @typedef {Step & {scenario: Scenario, question: string, way: string, at: number}} Stand */
/** @typedef {{id: string, title: string, about: string, file: Record<string, any>, stands: Stand[]}} Lesson */
/** @typedef {{id: string, file: string, title: string}} Listed */

/** @type {Map<string, Lesson>} those on the shelf */
const shelf = new Map();

/**
 * @param {string} id
 * @param {number} step from 1
 */
export const nameOf = (id, step) => `lesson-${id}-${step}`;

/** @param {Session} session @returns {Promise<Listed[]>} */
export const listLessons = ({ scenarios }) => scenarios.file("lessons/index.json");

/**
 * A scenario with some of its values changed, by path.
 * @param {Record<string, any>} scenario
 * @param {Record<string, any>} changes
 */
function changed(scenario, changes) {
  const whole = structuredClone(scenario);
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split(".");
    const last = /** @type {string} */ (keys.pop());
    let place = whole;
    for (const key of keys) place = Object.hasOwn(place, key) && place[key] ? place[key] : (place[key] = {});
    place[last] = value;
  }
  return whole;
}

/**
 * The steps of a lesson, each on what the steps before it changed.
 * @param {Record<string, any>} file
 * @returns {Stand[]}
 */
export function standsOf({ lesson, ...begin }) {
  let [scenario, question, way, at] = [begin, "give", "turn", 1];
  return lesson.map((/** @type {Step} */ step) => {
    scenario = changed(scenario, step.set ?? {});
    [question, way, at] = [step.question ?? question, step.way ?? way, step.at ?? at];
    return { ...step, scenario, question, way, at };
  });
}

/**
 * Puts a lesson on the shelf: its steps become scenarios of the session.
 * @param {Session} session
 * @param {string} id
 * @param {Record<string, any>} file
 * @returns {Lesson}
 */
export function shelve(session, id, file) {
  const lesson = { id, title: file.title, about: file.about ?? "", file, stands: standsOf(file) };
  for (const [index, { scenario }] of lesson.stands.entries()) {
    session.scenarios.set(nameOf(id, index + 1), { name: `${file.title}, ${index + 1}`, scenario });
  }
  shelf.set(id, lesson);
  return lesson;
}

/**
 * A lesson of ours by its id, from the shelf or its file; null when there is none.
 * @param {Session} session
 * @param {string} id
 */
export async function lessonCalled(session, id) {
  const known = shelf.get(id);
  if (known) return known;
  const own = session.scenarios.get(id);
  if (own && "lesson" in own) return shelve(session, id, own);
  const listed = (await listLessons(session)).find((each) => each.id === id);
  if (!listed) return null;
  return shelve(session, id, await session.scenarios.file(`lessons/${listed.file}`));
}

/**
 * The name that tells how the value at a path is written: a share stays one whatever it is the share of.
 * @param {string} path
 */
export function kindOf(path) {
  const keys = path.split(".").filter((key) => !/^\d+$/.test(key));
  return keys.some((key) => /_fraction|^yield_/.test(key)) ? "share_fraction" : (keys.at(-1) ?? path);
}

/**
 * The text with its {paths} filled from numbers the kernel worked out; each is written by the ending of its name.
 * @param {string} text
 * @param {Record<string, any>} numbers
 * @param {(name: string, value: unknown) => string} write
 */
export function filled(text, numbers, write) {
  return text.replace(/\{([\w.]+)\}/g, (_, path) => {
    const keys = path.split(".");
    const value = keys.reduce((/** @type {any} */ place, /** @type {string} */ key) => place?.[key], numbers);
    return value === undefined || value === null ? "–" : write(kindOf(path), value);
  });
}
