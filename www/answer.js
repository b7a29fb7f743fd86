// The answer in one sentence, its surprise, what a screen reader hears, and the stage in words.

import { byId, dress, make, write } from "./dom.js";
import { figure } from "./figures.js";
import { questionOf } from "./questions.js";
import { byHand, reading, slope } from "./work.js";
import { contactName, has, say, variant } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Answer} Answer */

const QUIET_MS = 700;

/**
 * The sentences for what is asked now.
 * @param {Session} session
 * @returns {{answer: string, surprise: string, helper: string}}
 */
export function sentences(session) {
  const { work, state, answers } = session;
  const of = (/** @type {string} */ family) => answers.find(({ id }) => id.startsWith(`${family}.`));
  const told = (/** @type {string} */ family, kind = "answer") => sentence(of(family), kind, state.construction);
  if (!state.fits) {
    const all = answers.filter(({ id }) => id.startsWith("apart.")).map((each) => sentence(each, "answer", state.construction));
    return { answer: all.join(" "), surprise: say("apart.surprise"), helper: "" };
  }
  if (questionOf(work.ask).open) return session.asked?.sentences() ?? { answer: say("ask.opening"), surprise: "", helper: "" };
  if (work.how === "load") return { answer: told("load"), surprise: told("load", "surprise"), helper: told("pressed") };
  if (work.ask === "touch") return { answer: told("touch"), surprise: told("carry"), helper: told("rub") };
  if (session.pulling || byHand(work)) return { answer: told(work.how), surprise: told(work.how, "surprise"), helper: here(session) };
  const angle_rad = of(work.how)?.numbers.angle_rad;
  const helper = angle_rad ? say("slope", { angle_rad, slope: slope(angle_rad) }) : "";
  const apart = atStop(work) && beyond(session, of(work.how));
  if (apart) return { answer: told(work.how), surprise: told(work.how, "surprise"), helper: apart };
  const range = answers.find(({ id }) => id === `range.${work.how}` || id === `range.${work.how}.apart`);
  const over = sentence(range, "answer", state.construction);
  return { answer: told(work.how), surprise: told(work.how, "surprise"), helper: over || helper };
}

/** @param {import("./work.js").Work} work */
const atStop = (work) => Math.abs(work.at) === 1;

/**
 * What to say when the solved pose, rollers and all, reads otherwise than the plain limit.
 * @param {Session} session
 * @param {Answer|undefined} answer
 */
function beyond({ work, live }, answer) {
  const limit = answer?.numbers.angle_rad ?? answer?.numbers.offset_mm;
  const name = answer?.numbers.angle_rad === undefined ? "offset_mm" : "angle_rad";
  const solved = reading(work.how, live).replace("\u2212", "");
  return limit === undefined || solved === figure(name, limit) ? "" : say(`differs.${work.how}`, live);
}

/**
 * Where a pose taken by hand has got to, and what stops it there.
 * @param {Session} session
 */
function here({ live }) {
  const stop = live.pin_touches ? (live.faces_touch ? "both" : "pin") : live.faces_touch ? "face" : "none";
  return say(`here.${stop}`, live);
}

/**
 * @param {Answer|undefined} answer
 * @param {string} kind
 * @param {string} construction
 */
function sentence(answer, kind, construction) {
  const id = answer ? variant(`${kind}.${answer.id}`, construction) : "";
  return answer && has(id) ? say(id, answer.numbers) : "";
}

/**
 * A line of the stage in words: its own sentence, or the answer of that id.
 * @param {Answer} line
 * @param {string} construction
 */
const twinLine = (line, construction) => sentence(line, "twin", construction) || sentence(line, "answer", construction);

/**
 * How hard each face presses, in words.
 * @param {Session} session
 */
function forces({ contacts, state }) {
  const pressed = contacts.filter(({ force_n }) => force_n > 0);
  return pressed.map((contact) => say("twin.force", { ...contact, ...contactName(contact, state.construction) }));
}

/**
 * What the magnifier shows, in words.
 * @param {Session} session
 */
function magnified({ magnified, work }) {
  if (!magnified) return "";
  const { what, touches, seen } = magnified;
  return say(touches ? "twin.lens.touch" : "twin.lens", { ...seen, what, thing: say(`thing.${work.beside}`) });
}

/** @param {Session} session */
export function startAnswer(session) {
  const [answer, surprise, helper, live, twin] = ["answer", "surprise", "slope", "live", "twin"].map((id) => byId(id));
  let timer = 0;
  session.listen((what) => {
    if (session.asked?.waiting && session.state.fits && !what.has("ask") && !what.has("told")) return; // told when its answer has come
    const said = sentences(session);
    write(answer, said.answer);
    write(surprise, said.surprise);
    write(helper, said.helper);
    answer.classList.toggle("bad", !session.state.fits);
    dress(byId("drawing"), { "aria-label": say("drawing.name", { answer: said.answer }) });
    clearTimeout(timer);
    timer = setTimeout(() => {
      const pulled = byHand(session.work) ? said.helper : "";
      const text = `${said.answer} ${said.surprise} ${pulled}`.trim();
      write(live, text);
      const lines = session.bench.twin().map((line) => twinLine(line, session.state.construction));
      twin.replaceChildren(...[...lines, ...forces(session), magnified(session)].filter(Boolean).map((line) => make("li", {}, line)));
    }, QUIET_MS);
  });
}
