// The answer in one sentence, its surprise, what a screen reader hears, and the stage in words.

import { byId, make } from "./dom.js";
import { slope } from "./figures.js";
import { has, say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Answer} Answer */

const QUIET_MS = 700;

/**
 * The sentences for what is asked now.
 * @param {Session} session
 * @returns {{answer: string, surprise: string}}
 */
export function sentences(session) {
  const { bench, work } = session;
  const state = bench.state();
  if (!state.apart) {
    const named = state.interference.map((each) => say("apart.part", each)).join(", ");
    return { answer: say("apart.answer", { parts: named }), surprise: say("apart.surprise") };
  }
  const answers = bench.answers();
  const found = answers.find(({ id }) => id.startsWith(`${work.how}.`));
  if (work.ask === "touch") return touchSentences(session);
  return found ? worded(found) : touchSentences(session);
}

/** @param {Answer} answer */
function worded(answer) {
  const numbers = { ...answer.numbers };
  const turned = Object.entries(numbers).find(([key]) => key.endsWith("_rad"));
  if (turned) numbers.slope = slope(/** @type {number} */ (turned[1]));
  const surprise = `surprise.${answer.id}`;
  return { answer: say(`answer.${answer.id}`, numbers), surprise: has(surprise) ? say(surprise, numbers) : "" };
}

/** @param {Session} session */
function touchSentences(session) {
  const contacts = session.bench.contacts();
  const touching = contacts.filter((contact) => contact.mark !== "open");
  const open = contacts.filter((contact) => contact.mark === "open");
  const kinds = [...new Set(touching.map((contact) => say(`kind.${contact.kind}`)))];
  const counted = touching.length === 0 ? "none" : touching.length === 1 ? "one" : "many";
  const tightest = open[0] ? say("touch.tightest", { gap_mm: Math.min(...open.map((contact) => contact.gap_mm)) }) : "";
  return { answer: say(`touch.${counted}`, { count: touching.length, kinds: kinds.join(say("and")) }), surprise: tightest };
}

/** @param {Session} session */
export function startAnswer(session) {
  const [answer, surprise, live, twin] = ["answer", "surprise", "live", "twin"].map((id) => byId(id));
  let timer = 0;
  session.listen(() => {
    const said = sentences(session);
    if (answer.textContent !== said.answer) answer.textContent = said.answer;
    if (surprise.textContent !== said.surprise) surprise.textContent = said.surprise;
    answer.classList.toggle("bad", !session.bench.state().apart);
    clearTimeout(timer);
    timer = setTimeout(() => {
      const text = `${said.answer} ${said.surprise}`.trim();
      if (live.textContent !== text) live.textContent = text;
      twin.replaceChildren(...session.bench.twin().map(({ id, numbers }) => make("li", {}, say(`twin.${id}`, numbers))));
    }, QUIET_MS);
  });
}
