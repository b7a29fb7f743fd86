// Another language: the page opens anew in it, and stands as it stood: folds, what is chosen within a question, how far it
// was scrolled, the focus, what was typed and refused. What has more to keep hears of it: hands of a lesson, its hall.

import { speak, TURNING } from "../language.js";

/** What is chosen in a question and stands in no address. */
const CHOSEN = ".own button[aria-pressed]";
/** What can be typed; what is refused stands there alone. */
const FIELDS = "input[inputmode=decimal]";
const BETWEEN_THOUSANDS = /^\s*[-+\u2212]?[1-9]\d{0,2},\d{3}\s*$/;
/** What is open may come late: it is looked for so many frames. */
const MOST_FRAMES = 600;

/** What was kept before a turn. @type {Record<string, any>} */
let kept = {};
try {
  kept = JSON.parse(sessionStorage.getItem(TURNING) ?? "{}");
  sessionStorage.removeItem(TURNING);
} catch {
  // nothing kept: the page opens as its address has it
}

/** @typedef {{at: number, text: string}} Refused */
/** Every field with a text that was refused, by its place among all. */
const refusedNow = () => [.../** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll(FIELDS))]
  .flatMap((each, at) => (each.getAttribute("aria-invalid") === "true" ? [{ at, text: each.value }] : []));

/** @param {() => boolean} holds */
async function when(holds) {
  for (let frame = 0; frame < MOST_FRAMES && !holds(); frame++) await new Promise((next) => requestAnimationFrame(next));
}

/** @param {string} found @param {(each: any) => boolean} is @returns {number[]} the places of those that are so */
const placesOf = (found, is) => [...document.querySelectorAll(found)].flatMap((each, at) => (is(each) ? [at] : []));

/** @type {Map<string, () => unknown>} */
const keepers = new Map();

/**
 * A part of the page that has something to keep over a turn; gives what it kept before this one.
 * @param {string} name
 * @param {() => unknown} keep
 */
export function keepOver(name, keep) {
  keepers.set(name, keep);
  return kept[name];
}

/** The page in another language. @param {string} wanted */
export function turn(wanted) {
  const parts = Object.fromEntries([...keepers].map(([name, keep]) => [name, keep()]));
  const all = document.querySelectorAll("details").length;
  const folds = placesOf("details", (each) => each.open);
  const chosen = placesOf(CHOSEN, (each) => each.getAttribute("aria-pressed") === "true");
  const refused = refusedNow();
  const fields = document.querySelectorAll(FIELDS).length;
  const beside = document.querySelector("#compare[aria-expanded=true]") !== null;
  try {
    sessionStorage.setItem(TURNING, JSON.stringify({ ...parts, all, folds, chosen, beside, refused, fields, count: document.querySelectorAll(CHOSEN).length, high: scrollY }));
  } catch {
    // not kept: the address still is
  }
  speak(wanted);
}

/** Puts everything back as soon as it is there. */
export async function stand() {
  const { all, folds = [], chosen = [], beside, refused = [], fields, count, high } = kept;
  if (all === undefined) return;
  if (beside && !document.querySelector("#compare[aria-expanded=true]")) document.getElementById("compare")?.click();
  await when(() => document.querySelectorAll("details").length >= all && document.querySelectorAll(CHOSEN).length >= count && !document.querySelector(".own.waiting"));
  const details = document.querySelectorAll("details");
  for (const at of folds) if (details[at]) details[at].open = true;
  const buttons = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(CHOSEN));
  for (const at of chosen) if (buttons[at]?.getAttribute("aria-pressed") === "false") buttons[at].click();
  if (refused.length) await when(() => document.querySelectorAll(FIELDS).length >= fields);
  refuseAgain(refused);
  document.getElementById("language")?.focus({ preventScroll: true });
  scrollTo(0, high);
}

/**
 * What was refused is typed once more, so that its refusal is told in this language. What would now be a number for the first
 * time (1,234 with a comma that may stand between thousands) is left out: a language changes no chain.
 * @param {Refused[]} refused
 */
function refuseAgain(refused) {
  const fields = /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll(FIELDS));
  for (const { at, text } of refused) {
    if (!fields[at] || BETWEEN_THOUSANDS.test(text)) continue;
    fields[at].value = text;
    fields[at].dispatchEvent(new Event("change", { bubbles: true }));
  }
}
