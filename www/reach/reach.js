// Question 6: what can get in. The joint cut open, the list by face, what is pushed in, and the joint flexed by hand.

import { amend } from "../amend.js";
import { Answered } from "../answered.js";
import { noteOfA } from "../compare/note.js";
import { make } from "../dom.js";
import { keepTyped, typedNumber } from "../typed.js";
import { say } from "../words.js";
import { Cut } from "./cut.js";
import { Given } from "./given.js";
import { inOneLine, inWords, listOf, sentences, waysOf, workedOut } from "./said.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").EnterState} EnterState */

/** What is not stated in a scenario, as the reader of scenarios fills it in. */
const USUAL = /** @type {Record<string, number>} */ ({ bristle_mm: 0.08, particle_mm: 0.01, viscosity_pa_s: 0.1, pressure_pa: 0 });
const GIVEN = /** @type {Record<string, import("./given.js").Run>} */ ({
  bristle_mm: { low: 0.01, high: 1 }, particle_mm: { low: 0.001, high: 1 },
  viscosity_pa_s: { low: 0.001, high: 100 }, pressure_pa: { low: 0, high: 100000, even: true },
});
/** The stop, in hundredths. */
const MOST_PER = 100;
const KEYS = ["bristle", "grain", "oil", "none"];

/** @param {Session} session */
export const open = (session) => new Reach(session);

/** @extends {Answered<EnterState>} */
class Reach extends Answered {
  /** @param {Session} session */
  constructor(session) {
    super(session, "reach");
    this.cut = new Cut();
    this.scale = make("span");
    this.note = make("div");
    this.flex = new Given("reach.flex", { low: -MOST_PER, high: MOST_PER, even: true }, (per, done) => this.turn(per, done));
    this.given = Object.entries(GIVEN).map(([key, run]) => ({ key, entry: new Given(`reach.${key}`, run, (value, done) => this.put(key, value, done)) }));
    this.list = make("div", { class: "reach-list", tabindex: 0, role: "group", "aria-label": say("reach.list") });
    const key = make("ul", { class: "reach-key" }, ...KEYS.map((by) => make("li", {}, make("span", { class: `sample by-${by}`, "aria-hidden": "true" }), say(`reach.by.${by}`))));
    const section = make("section", { class: "reach none", "aria-label": say("ask.reach") },
      make("figure", {}, this.cut.picture, make("figcaption", { class: "hint" }, this.scale), key, this.note),
      this.flex.element, make("h2", {}, say("reach.list")), this.list, this.fold("reach.twin", inWords),
      this.fold("work.title", (state) => workedOut(state, session.state.geometry)));
    this.ways = make("div", { class: "reach-said" });
    const aside = make("section", { class: "reach-aside", hidden: true, "aria-label": say("reach.given") },
      make("h2", {}, say("reach.given")), ...this.given.map(({ entry }) => entry.element), this.ways);
    this.lay(section, aside);
  }

  /** How far the pitch is turned, in hundredths of its stop. */
  get per() {
    return Math.min(MOST_PER, Math.max(-MOST_PER, typedNumber(this.session, "reach.flex", 0)));
  }

  /** The chain and what is to get in. */
  get scenario() {
    const { reach = {}, ...rest } = this.sections("reach");
    return { ...rest, reach };
  }

  /** @param {Set<What>} what */
  heed(what) {
    this.steady.want(this.scenario, { share: this.per / MOST_PER });
    this.heard(what);
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
   * @param {boolean} done
   */
  turn(per, done) {
    if (per < -MOST_PER || per > MOST_PER) {
      return [{ path: "reach.flex", value: per, rule: per > 0 ? "at_most" : "at_least", numbers: { limit: per > 0 ? MOST_PER : -MOST_PER } }];
    }
    keepTyped(this.session, "reach.flex", per === 0 ? undefined : String(per), done);
    return [];
  }

  /** @param {EnterState} state */
  told(state) {
    return sentences(state);
  }

  /** @param {EnterState} state */
  fill(state) {
    const { reach } = this.scenario;
    this.cut.show(state);
    this.scale.textContent = say("reach.scale", { times: state.view.times });
    this.flex.show(this.per);
    for (const { key, entry } of this.given) entry.show(reach[key] ?? USUAL[key]);
    amend(this.list, listOf(state, this.beside));
    amend(this.note, ...noteOfA(inOneLine(state), this.beside ? inOneLine(this.beside) : ""));
    amend(this.ways, ...waysOf(state));
  }
}
