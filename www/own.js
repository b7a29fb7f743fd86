// A scenario that a visitor opened from a file, and the way to keeping and handing over; a reload keeps it.

import { bring } from "./asking.js";
import { byId } from "./dom.js";
import { once } from "./once.js";

/** @typedef {import("./session.js").Session} Session */

const KEY = "lightgap.own";
/** What an opened file is called among the scenarios. */
export const OWN = "own";

/** @param {Session} session */
function write({ scenarios }) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ name: scenarios.nameOf(OWN), scenario: scenarios.get(OWN), file: scenarios.carried }));
  } catch {
    // not kept: it stays until the page is left
  }
}

/**
 * A reload keeps the opened file, and then the address carries it where it can.
 * @param {Session} session
 */
export async function keepOwn(session) {
  write(session);
  await (await import("./keep/carry.js")).carry(session);
  write(session);
}

/** @param {Session} session */
export function restoreOwn(session) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (!kept?.scenario) return;
    session.scenarios.set(OWN, kept);
    session.scenarios.carried = kept.file ?? "";
  } catch {
    // what cannot be read was not kept
  }
}

/** @param {Session} session */
export function startKeeping(session) {
  const opened = once(async () => {
    const { open } = await bring(() => import("./keep/keep.js"), ["keep", "lesson"], ["keep/keep.css", "lesson/lesson.css"]);
    return open(session);
  });
  byId("keep").addEventListener("click", async () => (await opened("keep")).show());
  addEventListener("dragover", (event) => event.dataTransfer?.types.includes("Files") && event.preventDefault());
  addEventListener("drop", async (event) => {
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    const keeping = await opened("keep");
    keeping.show();
    await keeping.take(file);
  });
}
