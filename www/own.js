// A scenario that a visitor opened from a file, and the way to keeping and handing over; a reload keeps it.

import { addSheet } from "./asking.js";
import { byId } from "./dom.js";
import { loadWords } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

const KEY = "lightgap.own";
const OWN = "own";

/** @param {Session} session */
export function keepOwn(session) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ name: session.scenarios.nameOf(OWN), scenario: session.scenarios.get(OWN) }));
  } catch {
    // not kept: it stays until the page is left
  }
}

/** @param {Session} session */
export function restoreOwn(session) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (kept?.scenario) session.scenarios.set(OWN, kept);
  } catch {
    // what cannot be read was not kept
  }
}

/** @type {Promise<{show: () => void, take: (file: File) => Promise<void>}>|undefined} */
let brought;

/** @param {Session} session */
const bring = (session) => (brought ??= Promise.all([import("./keep/keep.js"), loadWords("keep"), loadWords("lesson"), addSheet("keep/keep.css"), addSheet("lesson/lesson.css")])
  .then(([{ open }]) => open(session)));

/** @param {Session} session */
export function startKeeping(session) {
  byId("keep").addEventListener("click", async () => (await bring(session)).show());
  addEventListener("dragover", (event) => event.dataTransfer?.types.includes("Files") && event.preventDefault());
  addEventListener("drop", async (event) => {
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    const keeping = await bring(session);
    keeping.show();
    await keeping.take(file);
  });
}
