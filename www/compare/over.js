// What the limits leave open of the question that is asked: its figures at the tightest and at the loosest chain.

import { byId, dress, make } from "../dom.js";
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
  /** What stands there, of which question; and whether what is told is older than the chain. */
  let [last, of, older] = ["", "", true];
  let timer = setTimeout(want, QUIET_MS);
  /** @type {Map<string, number>} how high it stood for each question, px */
  const heights = new Map();
  const asks = () => (session.work.ask === OWN || !session.state.corner || !session.state.fits ? null : spansAsked(session.scenario, session.work.ask));
  /** The question's own answer comes first. */
  function want() {
    const { ask } = session.work;
    if (questionOf(ask).open && (!session.asked || session.asked.waiting)) return; // it tells when it has come
    const asked = asks();
    if (asked) spans.want(...asked);
    older = false;
    show();
  }
  /** Its room is kept from the first: while nothing is known it stands empty, while a hand moves with what was known last. */
  function show() {
    const { ask } = session.work;
    const { over } = /** @type {{over?: string}} */ (spans.request[1]);
    const open = asks() !== null;
    const busy = open && (older || spans.stale || over !== ask);
    dress(place, { "aria-busy": busy ? "true" : null });
    const told = open && !busy ? spansTold(spans.answer ?? []) : null;
    place.hidden = !open || (!busy && told === null);
    if (busy && of === ask) return;
    of = ask;
    const shown = JSON.stringify(told);
    if (shown === last) return;
    last = shown;
    place.style.setProperty("min-height", busy && heights.has(ask) ? `${heights.get(ask)}px` : "");
    place.replaceChildren(...(told ? [make("span", {}, told.of), ...told.list.map(({ name, figure }) => make("span", {}, `${name}: `, make("b", {}, figure), " "))] : []));
    if (told) heights.set(ask, place.getBoundingClientRect().height);
  }
  session.listen((what) => {
    const changed = what.has("chain") || what.has("stated");
    older ||= changed;
    if (changed || what.has("ask")) show();
    clearTimeout(timer);
    timer = setTimeout(want, QUIET_MS);
  });
  show();
}
