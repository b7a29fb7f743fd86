// The answer in one sentence, its surprise, what a screen reader hears, and the stage in words.

import { byId, make } from "./dom.js";
import { slope } from "./figures.js";
import { has, say, variant } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Answer} Answer */

const QUIET_MS = 700;

/**
 * The sentences for what is asked now.
 * @param {Session} session
 * @returns {{answer: string, surprise: string, helper: string}}
 */
export function sentences(session) {
  const { bench, work, state } = session;
  if (!state.fits) {
    const named = state.interference.map((each) => say("apart.part", each)).join(", ");
    return { answer: say("apart.answer", { parts: named }), surprise: say("apart.surprise"), helper: "" };
  }
  const answers = bench.answers();
  const found = answers.find(({ id }) => id.startsWith(`${work.how}.`));
  if (work.ask === "touch") return touchSentences(session);
  return found ? worded(found, state.construction) : touchSentences(session);
}

/**
 * @param {Answer} answer
 * @param {string} construction
 */
function worded(answer, construction) {
  const { numbers } = answer;
  const turned = numbers.angle_rad;
  const surprise = variant(`surprise.${answer.id}`, construction);
  return {
    answer: say(variant(`answer.${answer.id}`, construction), numbers),
    surprise: has(surprise) ? say(surprise, numbers) : "",
    helper: turned ? say("slope", { angle_rad: turned, slope: slope(turned) }) : "",
  };
}

/** @param {Session} session */
function touchSentences(session) {
  const { contacts } = session;
  const touching = contacts.filter((contact) => contact.mark !== "open");
  const open = contacts.filter((contact) => contact.mark === "open");
  const kinds = [...new Set(touching.map((contact) => say(variant(`kind.${contact.kind}`, session.state.construction))))];
  const counted = touching.length === 0 ? "none" : touching.length === 1 ? "one" : "many";
  const tightest = open[0] ? say("touch.tightest", { gap_mm: Math.min(...open.map((contact) => contact.gap_mm)) }) : "";
  return { answer: say(`touch.${counted}`, { count: touching.length, kinds: kinds.join(say("and")) }), surprise: tightest, helper: "" };
}

/** @param {Session} session */
export function startAnswer(session) {
  const [answer, surprise, helper, live, twin] = ["answer", "surprise", "slope", "live", "twin"].map((id) => byId(id));
  let timer = 0;
  session.listen(() => {
    const said = sentences(session);
    if (answer.textContent !== said.answer) answer.textContent = said.answer;
    if (surprise.textContent !== said.surprise) surprise.textContent = said.surprise;
    if (helper.textContent !== said.helper) helper.textContent = said.helper;
    answer.classList.toggle("bad", !session.state.fits);
    byId("drawing").setAttribute("aria-label", say("drawing.name", { answer: said.answer }));
    clearTimeout(timer);
    timer = setTimeout(() => {
      const text = `${said.answer} ${said.surprise}`.trim();
      if (live.textContent !== text) live.textContent = text;
      twin.replaceChildren(...session.bench.twin().map(({ id, numbers }) => make("li", {}, say(`twin.${id}`, numbers))));
    }, QUIET_MS);
  });
}
