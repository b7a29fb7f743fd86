// What the limits leave open of a question: its figures at the tightest and at the loosest chain, asked of the kernel and said.

import { labour } from "../labour.js";
import { say } from "../words.js";
import { askedOf, called, written, writtenRange } from "./figures.js";

/** @typedef {import("../kernel.js").Scenario} Scenario */
/** One figure; null where that chain has none. @typedef {{key: string, tightest: number|null, loosest: number|null}} Span */

/** A question that tells what its limits leave open by itself: it is about nothing else. */
const OWN = "fit";

/**
 * What the worker is asked; null where there are no limits.
 * @param {Scenario} scenario
 * @param {string} ask
 * @param {Scenario["limits"]} [limits]
 * @returns {[object, {over: string}]|null}
 */
export const spansAsked = (scenario, ask, limits = scenario.limits) =>
  (limits?.length && ask !== OWN ? [{ ...askedOf(scenario, ask), limits }, { over: ask }] : null);

/** Those whose ends read otherwise: a figure is written no finer than it is known. @param {Span[]} spans */
const told = (spans) => spans.filter(({ key, tightest, loosest }) => written(key, tightest) !== written(key, loosest));

/**
 * The figures of a question that the limits leave open.
 * @param {Scenario} scenario
 * @param {string} ask
 * @param {Scenario["limits"]} [limits]
 * @returns {Promise<Span[]>}
 */
export async function spansOf(scenario, ask, limits) {
  const asked = spansAsked(scenario, ask, limits);
  return asked ? told((await labour(`spans.${ask}`, "compare", ...asked).catch(() => null)) ?? []) : [];
}

/**
 * All of them, each by its name, under what they are of; null where there are none.
 * @param {Span[]} all
 */
export function spansTold(all) {
  const spans = told(all);
  if (spans.length === 0) return null;
  const apart = spans.every(({ tightest }) => tightest === null);
  const list = spans.map(({ key, tightest: tight, loosest: loose }) => {
    const [tightest, loosest] = writtenRange(key, tight, loose);
    return { name: called(key), figure: apart ? loosest : say("over.figure", { tightest, loosest }) };
  });
  return { of: say(apart ? "over.apart" : "over.both"), list };
}

/** All of them in one sentence, or nothing. @param {Span[]} all */
export function spansSaid(all) {
  const told = spansTold(all);
  return told ? `${told.of} ${told.list.map(({ name, figure }) => `${name}: ${figure}`).join("; ")}.` : "";
}
