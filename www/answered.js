// What the questions of the worker have in common: an answer kept in step, shown when there is one, folds filled while open.

import { amend } from "./amend.js";
import { make, onceAFrame } from "./dom.js";
import { Steady } from "./steady.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

/**
 * The chain and these sections of a scenario, where it has them.
 * @param {Record<string, any>} scenario
 * @param {string[]} keys
 */
export const withSections = (scenario, keys) =>
  Object.fromEntries(["format", "title", "chain", ...keys].filter((key) => scenario[key] !== undefined).map((key) => [key, scenario[key]]));

/**
 * A question of the worker. What extends it makes `section` and `aside`, gives `fill` and `told`, and wants its answer in `heed`.
 * @template S its answer
 */
export class Answered {
  /** @type {HTMLElement} */
  section = make("section");
  /** @type {HTMLElement|undefined} */
  aside;
  /** @type {Map<HTMLDetailsElement, (state: S) => import("./amend.js").Wanted>} */
  folds = new Map();
  show = onceAFrame(() => this.draw());
  /** @type {any} the same question of the chain that is held as A */
  held = null;

  /**
   * @param {Session} session
   * @param {string} id
   */
  constructor(session, id) {
    this.session = session;
    /** @type {Steady<S>} */
    this.steady = new Steady(id, id, () => session.tell("told"));
  }

  /**
   * A part that is filled while it is open.
   * @param {string} word
   * @param {(state: S) => import("./amend.js").Wanted} filling
   */
  fold(word, filling) {
    const fold = make("details", { class: "fold", ontoggle: this.show }, make("summary", {}, say(word)));
    this.folds.set(fold, filling);
    return fold;
  }

  /**
   * The parts of it, which are drawn again when their room changes.
   * @param {HTMLElement} section
   * @param {HTMLElement} [aside]
   */
  lay(section, aside) {
    [this.section, this.aside] = [section, aside];
    new ResizeObserver(this.show).observe(section);
  }

  /** The chain that stands on the stage and these sections of the scenario, where it has them. @param {...string} keys */
  sections(...keys) {
    return withSections(this.session.standing, keys);
  }

  /**
   * Shows what is told; a mere wish is shown when its answer comes.
   * @param {Set<import("./session.js").What>} what
   */
  heard(what) {
    if (!this.waiting || what.has("told") || what.has("ask")) this.show();
  }

  get waiting() {
    return this.steady.stale;
  }

  /** The answer, while there is a chain that it can be about. */
  get state() {
    return this.session.state.fits ? this.steady.answer : null;
  }

  /** A's answer, where one is held and it is known. @returns {S|null} */
  get beside() {
    return this.held && !this.held.waiting ? this.held.state : null;
  }

  sentences() {
    const { state } = this;
    return state ? this.told(state) : { answer: this.steady.failure || say("ask.opening"), surprise: "", helper: "" };
  }

  draw() {
    const { state } = this;
    this.section.classList.toggle("none", !state);
    if (this.aside) this.aside.hidden = !state;
    if (!state) return;
    this.fill(state);
    for (const [fold, filling] of this.folds) if (fold.open) amend(fold, /** @type {Node} */ (fold.firstChild), filling(state));
  }

  /** Shows an answer. @param {S} _state */
  fill(_state) {}

  /** Its sentences. @param {S} _state @returns {{answer: string, surprise: string, helper: string}} */
  told(_state) {
    return { answer: "", surprise: "", helper: "" };
  }
}
