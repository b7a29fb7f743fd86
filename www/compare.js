// The way to comparing: what it brings is fetched when a chain is first held, or the button is pressed.

import { bring } from "./asking.js";
import { byId } from "./dom.js";
import { once } from "./once.js";

/** @typedef {import("./session.js").Session} Session */

/** @param {Session} session */
export function startCompare(session) {
  const opened = once(async () => {
    const { open } = await bring(() => import("./compare/compare.js"), ["compare"], ["compare/compare.css"]);
    return open(session);
  });
  byId("compare").addEventListener("click", async () => (await opened("compare")).toggle());
  byId("sheet").addEventListener("keydown", async (event) => {
    if (event.key === "a" && !event.ctrlKey && !event.metaKey && !event.altKey) (await opened("compare")).hold();
  });
  session.listen(() => session.work.a && opened("compare").catch(() => {}));
}
