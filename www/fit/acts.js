// What question 4 does to the bench: a set that was drawn put on the stage, and the cheapest tolerances taken over.

import { byId } from "../dom.js";
import { labour } from "../labour.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").Scenario} Scenario */

/** How the stage shows a set: the movement that a demand is about. */
const WAYS = /** @type {Record<string, string>} */ ({ side_gap_mm: "aside", free_offset_mm: "aside", offset_limit_mm: "aside", twist_limit_rad: "twist", shear_limit_rad: "lean" });

/**
 * The chain of one set, by its number; the hand goes with it, since the button that was pressed is gone.
 * @param {Session} session
 * @param {object} scenario what it was drawn of
 * @param {string} quantity
 * @param {number} set
 */
export async function stage(session, scenario, quantity, set) {
  const sizes = await labour("fit.set", "fit", scenario, { set }).catch(() => null);
  if (!sizes) return;
  const faults = session.alter((bench) => bench.load({ ...bench.scenario(), chain: { ...bench.scenario().chain, ...sizes } }), false);
  if (faults.length > 0) return void session.tell("ask");
  session.visit("give");
  if (session.state.fits) session.move({ how: WAYS[quantity] ?? "turn", at: 1, held: null }, false);
  session.commit();
  await null; // it is told, and the drawing shown
  byId("sheet").focus();
}

/**
 * The limits of the cheapest tolerances.
 * @param {import("./limits.js").Limits} limits
 * @param {object} scenario
 * @param {string} way `worst` or `rss`
 */
export async function buy(limits, scenario, way) {
  /** @type {import("./types.js").Bought[]|null} */
  const bought = await labour("fit.buy", "fit", scenario, { buy: way }).catch(() => null);
  if (bought) limits.take(new Map(bought.map(([dimension, [minus, plus]]) => [dimension, { minus, plus }])));
}
