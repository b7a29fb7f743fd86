// The words of the trade: choosing one lights what it means, on the drawing or in its question.

import { byId, dress, make } from "../dom.js";
import { say, variant } from "../words.js";
import { questionOf } from "../questions.js";
import { ENTRIES } from "./entries.js";
import { Glow } from "./glow.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./entries.js").Entry} Entry */

/** Where the words cover the lower part of the window. */
const LOW = matchMedia("(max-width: 40rem)");
/** How long a question may take to bring what is lit, ms. */
const PATIENCE_MS = 15000;
/** What does not show so long after its answer has come is not there, ms. */
const SHOWN_MS = 1500;

/** @param {Session} session */
export const open = (session) => new Glossary(session);

class Glossary {
  /** @type {Entry|null} */
  chosen = null;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.glow = new Glow(session);
    this.told = make("p", { class: "glossary-told", role: "status" }, say("glossary.hint"));
    this.buttons = ENTRIES.map((entry) => make("button", { type: "button", "data-word-of": entry.id, "aria-pressed": "false", onclick: () => this.choose(entry) },
      `${say(`glossary.${entry.id}`)} (${say(`glossary.${entry.id}.trade`)})`));
    this.element = make("section", { class: "glossary", "aria-labelledby": "glossary-title", hidden: true, onkeydown: (/** @type {KeyboardEvent} */ event) => this.key(event) },
      make("div", { class: "glossary-head" }, make("h2", { id: "glossary-title" }, say("glossary.title")), make("button", { type: "button", class: "glossary-close", onclick: () => this.close() }, say("close"))),
      this.told, make("ul", {}, ...this.buttons.map((button) => make("li", {}, button))));
    document.body.append(this.element);
  }

  show() {
    this.element.hidden = false;
    this.buttons[0].focus();
  }

  close() {
    this.quench();
    this.element.hidden = true;
    byId("glossary").focus();
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.key === "Escape") this.close();
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const at = this.buttons.indexOf(/** @type {HTMLButtonElement} */ (document.activeElement));
    if (!step || at < 0) return;
    event.preventDefault();
    this.buttons[(at + step + this.buttons.length) % this.buttons.length].focus();
  }

  /** What was lit is lit no longer. */
  quench() {
    this.chosen = null;
    this.session.light(null);
    this.glow.show(null);
    for (const part of document.querySelectorAll(".glossed")) part.classList.remove("glossed");
    for (const button of this.buttons) dress(button, { "aria-pressed": "false" });
  }

  /** @param {Entry} entry */
  async choose(entry) {
    const again = this.chosen === entry;
    this.quench();
    this.told.textContent = say("glossary.hint");
    if (again) return;
    this.chosen = entry;
    dress(this.buttons[ENTRIES.indexOf(entry)], { "aria-pressed": "true" });
    const lit = this.goTo(entry) && (await laidOut()) && this.chosen === entry && (await this.light(entry));
    if (this.chosen === entry) this.told.textContent = say(lit ? variant(`glossary.${entry.id}.lit`, this.session.state.construction) : "glossary.cannot");
  }

  /** Goes where a word lives; false where this chain cannot be asked that. @param {Entry} entry */
  goTo({ ask, how, springy = false, part, begin = {} }) {
    const { session } = this;
    const drawn = byId("field").clientWidth > 0;
    const there = ask ?? (part || drawn ? session.work.ask : "give");
    if (!session.offers(there)) return false;
    session.visit(there);
    if (how && (how !== session.work.how || springy)) session.move({ how, at: 1, held: null, ...(springy ? { springy } : {}) }, true);
    const scenario = /** @type {Record<string, any>} */ (session.bench.scenario());
    const needs = Object.keys(begin).some((key) => scenario[key] === undefined);
    return !needs || session.alter((bench) => bench.load(/** @type {any} */ ({ ...scenario, ...begin })), true).length === 0;
  }

  /** Lights a word once it is there; false where this chain has no such thing. @param {Entry} entry */
  async light(entry) {
    const { face, layer, view, part } = entry;
    if (face) this.session.light(this.session.contacts.find(({ kind }) => kind === face)?.id ?? null);
    if (layer || view) this.glow.show({ layer, view });
    const found = part ? await this.shown(part, entry) : byId("sheet");
    if (part) found?.classList.add("glossed");
    found?.scrollIntoView({ block: "start" });
    if (view && LOW.matches) scrollBy(0, this.glow.topOf(view));
    return found !== null && (!face || this.session.lit !== null);
  }

  /**
   * A part of the page as soon as it shows.
   * @param {string} selector
   * @param {Entry} entry
   * @returns {Promise<Element|null>}
   */
  shown(selector, entry) {
    const begun = performance.now();
    let settled = Infinity;
    return new Promise((done) => {
      const look = () => {
        const [found, now] = [document.querySelector(selector), performance.now()];
        const waits = questionOf(this.session.work.ask).open && this.session.asked?.waiting !== false;
        settled = waits ? Infinity : Math.min(settled, now);
        if (!waits && found?.checkVisibility()) done(found);
        else if (this.chosen !== entry || now - begun > PATIENCE_MS || now - settled > SHOWN_MS) done(null);
        else requestAnimationFrame(look);
      };
      look();
    });
  }
}

/** The page is laid out with what has been asked of it. @returns {Promise<boolean>} */
const laidOut = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))));
