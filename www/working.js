// How it is worked out, under a fold; what is said there is fetched when it is first opened.

import { bring } from "./asking.js";
import { byId } from "./dom.js";
import { once } from "./once.js";

/** @typedef {import("./session.js").Session} Session */

/**
 * @param {Session} session
 * @param {() => import("./kernel.js").BenchLike} another a bench to try other gaps on
 */
export function startWorking(session, another) {
  const fold = /** @type {HTMLDetailsElement} */ (byId("work-fold"));
  const opened = once(async () => (await bring(() => import("./working/working.js"), ["working"], ["working/working.css"])).open(session, another()));
  const show = async () => fold.open && (await opened("working")).show();
  fold.addEventListener("toggle", show);
  session.listen(show);
}
