// Tightest, middle, loosest: which chain of the limits stands on the stage, and what makes it; what the limits leave open of
// a later question is fetched with it.

import { bring } from "./asking.js";
import { byId, dress, make } from "./dom.js";
import { once } from "./once.js";
import { inside, say, variant } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

const CORNERS = ["tightest", "middle", "loosest"];

/** @param {Session} session */
export function startCorners(session) {
  const place = byId("corners");
  const buttons = CORNERS.map((corner) => {
    const button = make("button", { type: "button", "data-corner": corner }, say(`corner.${corner}`));
    button.addEventListener("click", () => session.stand(corner));
    return button;
  });
  place.append(...buttons);
  const over = once(async () => (await bring(() => import("./compare/over.js"), ["compare"], ["compare/over.css"])).open(session));
  session.listen(() => session.state.corner && session.work.ask !== "give" && over("").catch(() => {}));
  session.listen((what) => {
    if (!what.has("chain")) return;
    const { corner, construction } = session.state;
    place.hidden = byId("corner-ends").hidden = corner === null;
    if (!corner) return;
    for (const button of buttons) dress(button, { "aria-pressed": String(button.dataset.corner === corner.at) });
    const ends = corner.ends.map(({ dimension, end }) => say(`corner.${end}`, { size: inside(variant(`size.${dimension}`, construction)) }));
    const named = ends.length > 0 ? say(`corner.${corner.at}.named`, { ends: ends.join(", ") }) : say("corner.middle.named");
    byId("corner-ends").textContent = named;
  });
}
