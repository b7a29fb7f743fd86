// The way to the lessons; what they bring is fetched when the first of them is asked for.

import { addSheet } from "./asking.js";
import { byId } from "./dom.js";
import { loadWords } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

const STEP = /^lesson-(.+)-\d+$/;

/** @type {Promise<{choose: () => void, heed: () => void}>|undefined} */
let brought;

/** @param {Session} session */
const bring = (session) => (brought ??= Promise.all([import("./lesson/choose.js"), loadWords("lesson"), addSheet("lesson/lesson.css")])
  .then(([{ open }]) => open(session)));

/**
 * Puts the lesson of a step that the address asks for among the scenarios, so that the address can be read.
 * @param {Session} session
 */
export async function shelveAsked(session) {
  const found = STEP.exec(new URLSearchParams(location.hash.slice(1)).get("on") ?? "");
  if (found) await (await import("./lesson/shelf.js")).lessonCalled(session, found[1]);
}

/** @param {Session} session */
export function startLessons(session) {
  byId("lessons").addEventListener("click", async () => (await bring(session)).choose());
  session.listen(async () => {
    if (!brought && STEP.test(session.work.on)) (await bring(session)).heed();
  });
}
