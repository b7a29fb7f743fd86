// Another language: the page opens anew in it, and stands as it stood: folds, what is chosen within a question, how far it
// was scrolled, the focus. What has more to keep hears of it: hands of a lesson, an open comparison.

import { speak, TURNING } from "../language.js";

/** What is chosen in a question and stands in no address. */
const CHOSEN = ".own button[aria-pressed]";
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
  const beside = document.querySelector("#compare[aria-expanded=true]") !== null;
  try {
    sessionStorage.setItem(TURNING, JSON.stringify({ ...parts, all, folds, chosen, beside, count: document.querySelectorAll(CHOSEN).length, high: scrollY }));
  } catch {
    // not kept: the address still is
  }
  speak(wanted);
}

/** Puts everything back as soon as it is there. */
export async function stand() {
  const { all, folds = [], chosen = [], beside, count, high } = kept;
  if (all === undefined) return;
  if (beside && !document.querySelector("#compare[aria-expanded=true]")) document.getElementById("compare")?.click();
  const there = () => document.querySelectorAll("details").length >= all && document.querySelectorAll(CHOSEN).length >= count && !document.querySelector(".own.waiting");
  for (let frame = 0; frame < MOST_FRAMES && !there(); frame++) await new Promise((next) => requestAnimationFrame(next));
  const details = document.querySelectorAll("details");
  for (const at of folds) if (details[at]) details[at].open = true;
  const buttons = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(CHOSEN));
  for (const at of chosen) if (buttons[at]?.getAttribute("aria-pressed") === "false") buttons[at].click();
  document.getElementById("language")?.focus({ preventScroll: true });
  scrollTo(0, high);
}
