// What the limits leave open of the question that is asked: its figures at the tightest and at the loosest chain.

import { byId, make } from "../dom.js";
import { questionOf } from "../questions.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { askedOf, called, written } from "./figures.js";

/** @typedef {import("../session.js").Session} Session */
/** One figure; null where that chain has none. @typedef {{key: string, tightest: number|null, loosest: number|null}} Span */

/** How long the hand rests before the worker is asked, ms. */
const QUIET_MS = 400;
/** Questions that tell it in a sentence of their own. */
const OWN = ["give", "fit"];

/** @param {Session} session */
export function open(session) {
  const place = make("p", { class: "hint", id: "over" });
  byId("slope").after(place);
  /** @type {Steady<Span[]>} */
  const spans = new Steady("over", "compare", show);
  let timer = setTimeout(want, QUIET_MS);
  /** The question's own answer comes first. */
  function want() {
    const scenario = session.bench.scenario();
    const { ask } = session.work;
    if (questionOf(ask).open && (!session.asked || session.asked.waiting)) return; // it tells when it has come
    if (scenario.limits?.length && !OWN.includes(ask)) spans.want({ ...askedOf(scenario, ask), limits: scenario.limits }, { over: ask });
    show();
  }
  function show() {
    const { ask } = session.work;
    const { over } = /** @type {{over?: string}} */ (spans.request[1]);
    const told = session.state.corner && session.state.fits && over === ask && !spans.stale ? spans.answer ?? [] : [];
    place.hidden = told.length === 0;
    place.textContent = told.length ? sentence(told) : "";
  }
  session.listen((what) => {
    if (what.has("chain") || what.has("ask")) show();
    clearTimeout(timer);
    timer = setTimeout(want, QUIET_MS);
  });
}

/** @param {Span[]} spans */
function sentence(spans) {
  const apart = spans.every(({ tightest }) => tightest === null);
  const list = spans.map(({ key, tightest, loosest }) => say(apart ? "over.loosest" : "over.figure", { name: called(key), tightest: written(key, tightest), loosest: written(key, loosest) }));
  return say(apart ? "over.apart" : "over.both", { list: list.join("; ") });
}
