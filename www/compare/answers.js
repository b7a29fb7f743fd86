// The answers to all questions of one chain: their sentences, one after the other, and their figures.

import { labour } from "../labour.js";
import { QUESTIONS } from "../questions.js";
import { askedOf } from "./figures.js";

/** @typedef {import("../kernel.js").Scenario} Scenario */
/** @typedef {import("./shadow.js").Shadow} Shadow */
/** @typedef {import("./figures.js").Pair} Pair */
/** The answer to one question; `begun` where its limits were only begun with. @typedef {{ask: string, answer: string, surprise: string, helper: string, begun: boolean}} Said */

/**
 * The answers of a chain that stands on a shadow bench, in the order of the questions; those that cannot be asked are left out.
 * @param {Shadow} shadow
 * @param {(said: Said) => void} [told] called after each
 */
export async function answersOf(shadow, told = () => {}) {
  /** @type {Said[]} */
  const all = [];
  for (const { id: ask } of QUESTIONS) {
    const sentences = await shadow.answerTo(ask);
    if (!sentences) continue;
    const said = { ask, ...sentences, begun: shadow.begun };
    all.push(said);
    told(said);
  }
  return all;
}

/**
 * The figures of a question of two scenarios, or of one.
 * @param {string} ask
 * @param {Scenario} b the present one
 * @param {Scenario|null} a the one that is held
 * @param {string} corner
 * @returns {Promise<Pair[]>}
 */
export async function figuresOf(ask, b, a, corner) {
  const asked = { question: ask, corner, a: a && askedOf(a, ask) };
  return (await labour(`compare.${ask}`, "compare", askedOf(b, ask), asked)) ?? [];
}
