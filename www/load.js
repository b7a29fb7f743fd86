// The load on the next outer link: pull, side force, moment; and whether plates and pins give.

import { byId, dress, make } from "./dom.js";
import { Field } from "./field.js";
import { figure, numberOf, short, typedOf } from "./figures.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {"tension_n"|"side_n"|"moment_n_mm"} Key */

/** The run of each slider; a value that is typed may go beyond. */
const RUNS = /** @type {const} */ ({
  tension_n: { low: 0, high: 1000, step: 5 }, side_n: { low: -200, high: 200, step: 1 },
  moment_n_mm: { low: -2000, high: 2000, step: 10 },
});

/** @param {Session} session */
export function open(session) {
  const keys = /** @type {Key[]} */ (Object.keys(RUNS));
  const entries = keys.map((key) => fieldOf(session, key));
  const choices = [false, true].map((springy) => choice(session, springy));
  const part = make("section", { class: "load", "aria-labelledby": "load-title", hidden: true },
    make("h2", { id: "load-title" }, say("load.title")), ...entries.map(({ element }) => element),
    make("div", { class: "choices" }, ...choices));
  byId("change").prepend(part);
  const show = () => {
    part.hidden = session.work.how !== "load";
    if (part.hidden) return;
    const { load } = session.state;
    keys.forEach((key, i) => entries[i].show(load[key], around(RUNS[key], load[key])));
    choices.forEach((button, i) => dress(button, { "aria-pressed": String(load.springy === (i === 1)) }));
    choices[1].children[1].textContent = say("load.springy.note", { stiffness: short(load.stiffness_n_mm, 2) });
  };
  session.listen(show);
  show();
}

/**
 * @param {Session} session
 * @param {boolean} springy
 */
function choice(session, springy) {
  const id = springy ? "load.springy" : "load.rigid";
  const button = make("button", { type: "button", class: "choice" },
    make("span", { class: "choice-name" }, say(id)), make("span", { class: "choice-note" }, say(`${id}.note`)));
  button.addEventListener("click", () => session.move({ springy }, true));
  return button;
}

/** A run that holds the value. @param {{low: number, high: number, step: number}} run @param {number} value */
const around = ({ low, high, step }, value) => ({ low: Math.min(low, value), high: Math.max(high, value), step });

/**
 * One number of the load.
 * @param {Session} session
 * @param {Key} key
 */
function fieldOf(session, key) {
  const word = `load.${key}`;
  const unit = () => say(`${word}.unit`);
  const way = { text: (/** @type {number} */ value) => typedOf(Number(value.toPrecision(7))), read: numberOf, unit, said: (/** @type {number} */ value) => `${figure(key, value)} ${unit()}` };
  return new Field({ id: `load-${key}`, label: say(word), hint: say(`${word}.hint`), slider: true, step: "any", way },
    (value, done) => session.alter((bench) => bench.set(word, value), done));
}
