// What the limits leave open of the question that is asked: its figures at the tightest and at the loosest chain.

import { byId, make } from "../dom.js";
import { questionOf } from "../questions.js";
import { Steady } from "../steady.js";
import { spansAsked, spansTold } from "./spans.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./spans.js").Span} Span */

/** How long the hand rests before the worker is asked, ms. */
const QUIET_MS = 400;
/** The question that tells it on the first screen. */
const OWN = "give";

/** @param {Session} session */
export function open(session) {
  const place = make("p", { class: "hint", id: "over", hidden: true });
  byId("slope").after(place);
  /** @type {Steady<Span[]>} */
  const spans = new Steady("over", "compare", show);
  let last = "";
  let timer = setTimeout(want, QUIET_MS);
  /** The question's own answer comes first. */
  function want() {
    const { ask } = session.work;
    if (questionOf(ask).open && (!session.asked || session.asked.waiting)) return; // it tells when it has come
    const asked = ask === OWN ? null : spansAsked(session.bench.scenario(), ask);
    if (asked) spans.want(...asked);
    show();
  }
  function show() {
    const { ask } = session.work;
    const { over } = /** @type {{over?: string}} */ (spans.request[1]);
    const known = session.state.corner && session.state.fits && over === ask && !spans.stale;
    const told = known ? spansTold(spans.answer ?? []) : null;
    place.hidden = told === null;
    const shown = JSON.stringify(told);
    if (shown === last) return;
    last = shown;
    place.replaceChildren(...(told ? [make("span", {}, told.of), ...told.list.map(({ name, figure }) => make("span", {}, `${name}: `, make("b", {}, figure), " "))] : []));
  }
  session.listen((what) => {
    if (what.has("chain") || what.has("ask")) show();
    clearTimeout(timer);
    timer = setTimeout(want, QUIET_MS);
  });
}
