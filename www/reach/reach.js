// Question 6: what can get in. The joint cut open, the list by face, what is pushed in, and the joint flexed by hand.

import { make, onceAFrame } from "../dom.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { Cut } from "./cut.js";
import { Given } from "./given.js";
import { inWords, listOf, sentences, waysOf, workedOut } from "./said.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").EnterState} EnterState */

/** What is not stated in a scenario, as the reader of scenarios fills it in. */
const USUAL = /** @type {Record<string, number>} */ ({ bristle_mm: 0.08, particle_mm: 0.01, viscosity_pa_s: 0.1, pressure_pa: 0 });
const GIVEN = /** @type {Record<string, import("./given.js").Run>} */ ({
  bristle_mm: { low: 0.01, high: 1 }, particle_mm: { low: 0.001, high: 1 },
  viscosity_pa_s: { low: 0.001, high: 100 }, pressure_pa: { low: 0, high: 100000, even: true },
});
const KEYS = ["bristle", "grain", "oil", "none"];

/** @param {Session} session */
export const open = (session) => new Reach(session);

class Reach {
  /** How far the pitch is turned, as a share of its stop. */
  share = 0;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    /** @type {Steady<EnterState>} */
    this.steady = new Steady("reach", "reach", () => session.tell("ask"));
    this.cut = new Cut();
    this.scale = make("span");
    this.flex = new Given("reach.flex", { low: -100, high: 100, even: true }, (per, done) => this.turn(per, done));
    this.given = Object.entries(GIVEN).map(([key, run]) => ({ key, entry: new Given(`reach.${key}`, run, (value, done) => this.put(key, value, done)) }));
    this.list = make("div", { class: "reach-list", tabindex: 0, role: "group", "aria-label": say("reach.list") });
    const fold = (/** @type {string} */ word) => make("details", { class: "fold" }, make("summary", {}, say(word)));
    this.folds = { twin: fold("reach.twin"), work: fold("work.title") };
    const key = make("ul", { class: "reach-key" }, ...KEYS.map((by) => make("li", {}, make("span", { class: `sample by-${by}`, "aria-hidden": "true" }), say(`reach.by.${by}`))));
    this.section = make("section", { class: "reach none", "aria-label": say("ask.reach") },
      make("figure", {}, this.cut.picture, make("figcaption", { class: "hint" }, this.scale), key),
      this.flex.element, make("h2", {}, say("reach.list")), this.list, ...Object.values(this.folds));
    this.ways = make("div", { class: "reach-said" });
    this.aside = make("section", { class: "reach-aside", hidden: true, "aria-label": say("reach.given") },
      make("h2", {}, say("reach.given")), ...this.given.map(({ entry }) => entry.element), this.ways);
    this.show = onceAFrame(() => this.draw());
    for (const each of Object.values(this.folds)) each.addEventListener("toggle", this.show);
    new ResizeObserver(this.show).observe(this.section);
  }

  /** The chain and what is to get in. */
  get scenario() {
    const { format, title, chain, reach } = /** @type {any} */ (this.session.bench.scenario());
    return { format, title, chain, reach: reach ?? {} };
  }

  /** @param {Set<What>} _ */
  heed(_) {
    this.steady.want(this.scenario, { share: this.share });
    this.show();
  }

  /**
   * @param {string} key
   * @param {number} value
   * @param {boolean} done
   */
  put(key, value, done) {
    const { reach } = this.scenario;
    return this.session.alter((bench) => bench.load(/** @type {any} */ ({ ...bench.scenario(), reach: { ...reach, [key]: value } })), done);
  }

  /**
   * @param {number} per
   * @param {boolean} _
   */
  turn(per, _) {
    if (per < -100 || per > 100) return [{ path: "reach.flex", value: per, rule: per > 0 ? "at_most" : "at_least", numbers: { limit: per > 0 ? 100 : -100 } }];
    this.share = per / 100;
    this.session.tell("ask");
    return [];
  }

  get waiting() {
    return this.steady.stale;
  }

  get state() {
    return this.session.state.fits ? this.steady.answer : null;
  }

  sentences() {
    const { state, steady } = this;
    if (state) return sentences(state);
    const apart = this.session.state.fits ? say("ask.opening") : say("reach.apart");
    return { answer: steady.failure || apart, surprise: "", helper: "" };
  }

  draw() {
    const { state } = this;
    this.section.classList.toggle("none", !state);
    this.aside.hidden = !state;
    if (!state) return;
    const { reach } = this.scenario;
    this.cut.show(state);
    this.scale.textContent = say("reach.scale", { times: state.view.times });
    this.flex.show(Math.round(100 * this.share));
    for (const { key, entry } of this.given) entry.show(reach[key] ?? USUAL[key]);
    this.list.replaceChildren(listOf(state));
    this.ways.replaceChildren(...waysOf(state));
    const fill = (/** @type {HTMLElement} */ fold, /** @type {() => HTMLElement} */ filling) =>
      fold.hasAttribute("open") && fold.replaceChildren(/** @type {Node} */ (fold.firstChild), filling());
    fill(this.folds.twin, () => inWords(state));
    fill(this.folds.work, () => workedOut(state, this.session.state.geometry));
  }
}
