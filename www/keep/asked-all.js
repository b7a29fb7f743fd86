// Every question of the page asked of what is on the bench, one after the other: its own sentences, as the page says them.

import { sentences } from "../answer.js";
import { QUESTIONS, questionOf } from "../questions.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {{ask: string, how: string, answer: string, surprise: string, helper: string}} Said */

/** How long one question may take, ms; what has not come then is left out, and the sheet says so. */
const PATIENCE_MS = 20_000;

const nextFrame = () => new Promise((done) => requestAnimationFrame(done));

/**
 * Waits until a question has its answer; false where it has none in time.
 * @param {Session} session
 * @param {string} ask
 */
async function came(session, ask) {
  const began = performance.now();
  if (session.asked) await nextFrame(); // what the last question brought goes away first
  while (performance.now() - began < PATIENCE_MS) {
    await nextFrame();
    if (session.work.ask !== ask) return false;
    if (!questionOf(ask).open) return true;
    if (session.asked && session.asked.waiting !== true && session.asked.sentences().answer) return true;
  }
  return false;
}

/**
 * @param {Session} session
 * @param {string} ask
 * @param {string} how
 * @returns {Promise<Said>}
 */
async function asked(session, ask, how) {
  session.enter(ask);
  session.move({ how, at: 1, held: null, pulls: [] }, false);
  const there = await came(session, ask);
  return { ask, how, ...(there ? sentences(session) : { answer: "", surprise: "", helper: "" }) };
}

/**
 * The sentences of all questions, in their order; the first in each of its ways. A question that the scenario states
 * nothing for has none. The bench is left as it was.
 * @param {Session} session
 * @returns {Promise<Said[]>}
 */
export async function askAll(session) {
  const kept = structuredClone(session.work);
  /** @type {Said[]} */
  const all = [];
  try {
    for (const { id, ways, offers, open } of QUESTIONS) {
      if (!offers(session.bench.scenario())) all.push({ ask: id, how: "", answer: "", surprise: "", helper: "" });
      else for (const how of id === "give" && session.state.fits ? ways : ways.slice(0, 1)) all.push({ ...(await asked(session, id, how)), how: open ? "" : how });
    }
  } finally {
    session.put(kept);
  }
  return all;
}
