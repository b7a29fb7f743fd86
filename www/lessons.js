// The way to the lessons; what they bring is fetched when the first of them is asked for.

import { bring } from "./asking.js";
import { byId } from "./dom.js";
import { once } from "./once.js";

/** @typedef {import("./session.js").Session} Session */

const NAME = /^lesson-(.+)-(\d+)$/;

/**
 * The lesson and step (from 1) that a scenario's name means; null for any other.
 * @param {string} on
 */
export function stepOf(on) {
  const found = NAME.exec(on);
  return found ? { id: found[1], step: Number(found[2]) } : null;
}

/**
 * Puts the lesson of a step that the address asks for among the scenarios, so that the address can be read.
 * @param {Session} session
 */
export async function shelveAsked(session) {
  const asked = stepOf(new URLSearchParams(location.hash.slice(1)).get("on") ?? "");
  if (asked) await (await import("./lesson/shelf.js")).lessonCalled(session, asked.id);
}

/** Whether a lesson was being made before a reload. */
function wasMaking() {
  try {
    return sessionStorage.getItem("lightgap.making") !== null;
  } catch {
    return false;
  }
}

/** @param {Session} session @param {() => import("./kernel.js").BenchLike} another */
export function startLessons(session, another) {
  const opened = once(async () => {
    const { open } = await bring(() => import("./lesson/choose.js"), ["lesson"], ["lesson/lesson.css"]);
    return open(session, another);
  });
  byId("lessons").addEventListener("click", async () => (await opened("lessons")).choose());
  if (wasMaking()) opened("lessons").then(({ edit }) => edit());
  // without what it brings a step is a chain like any other
  session.listen(() => stepOf(session.work.on) && opened("lessons").catch(() => {}));
}
