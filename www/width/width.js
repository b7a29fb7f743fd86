// Question 8: how narrow it can go. The section across, the width by layer, stresses, press fit, riveted head, parts.

import { amend } from "../amend.js";
import { Answered } from "../answered.js";
import { Chart } from "../chart.js";
import { beside } from "../chart-beside.js";
import { notesOfA, readingsWithA } from "../compare/note.js";
import { dress, make } from "../dom.js";
import { Field, tellFaults } from "../field.js";
import { say } from "../words.js";
import { layers, sectionPicture } from "./section.js";
import { besides, chartOf, inWords, materials, readings, underPictures, widthSentences, workedOut } from "./said.js";
import { widthOf } from "../wide.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").WidthState} WidthState */

const KEEPS = ["gaps", "plates"];
/** The sliders of the fits go this far, mm. */
const MOST = /** @type {Record<string, number>} */ ({ press_mm: 0.06, swelling_mm: 0.06 });

/** @param {Session} session */
export const open = (session) => new Width(session);

/** @extends {Answered<WidthState>} */
class Width extends Answered {
  /** @param {Session} session */
  constructor(session) {
    super(session, "width");
    this.chart = new Chart();
    const field = (/** @type {string} */ key) => new Field(
      { label: say(`width.${key}`), hint: say(`width.${key}.hint`), slider: true }, (mm, done) => this.set(key, mm, done));
    this.narrower = field("narrower_mm");
    this.fits = { press_mm: field("press_mm"), swelling_mm: field("swelling_mm"), decay_mm: field("decay_mm") };
    this.keeps = KEEPS.map((keep) => make("button", { type: "button", class: "choice", "data-keep": keep, onclick: () => this.keep(keep) }, say(`width.keep.${keep}`)));
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.readings = make("dl", { class: "width-readings" });
    this.picture = make("div");
    this.note = make("div");
    this.layers = make("ul", { class: "width-layers" });
    this.rows = make("div", { class: "width-rows" });
    this.said = make("ul", {});
    const aside = make("section", { class: "width-aside", "aria-label": say("width.besides"), hidden: true }, make("h2", {}, say("width.besides")), this.said);
    this.lay(this.sheet(), aside);
  }

  sheet() {
    const figure = (/** @type {string} */ word, /** @type {Node[]} */ ...inside) =>
      make("figure", {}, make("figcaption", { class: "width-title" }, say(word)), ...inside);
    const given = make("div", { class: "width-given" }, this.narrower.element,
      make("div", { class: "width-keep", role: "group", "aria-label": say("width.keep") }, ...this.keeps), this.fault);
    const fits = make("div", { class: "width-given width-fits" }, ...Object.values(this.fits).map((each) => each.element));
    return make("section", { class: "width none", "aria-label": say("ask.width") },
      given, this.readings, figure("width.section", this.picture, this.layers),
      figure("width.chart", fits, this.chart.picture, this.chart.key, this.note),
      figure("width.rows", this.rows),
      this.fold("width.twin", inWords), this.chart.table(say("width.table")), this.fold("work.title", workedOut));
  }

  /** The chain, its drive and what is asked of its width. */
  get scenario() {
    return this.sections("drive", "load", "width");
  }

  /** @param {Set<What>} what */
  heed(what) {
    this.steady.want(this.scenario);
    this.heard(what);
  }

  /**
   * @param {string} key
   * @param {number} value
   * @param {boolean} done
   */
  set(key, value, done) {
    return this.session.restate(`width.${key}`, value, done);
  }

  /** Keeps one or the other; as narrow as it was, if that can still be built. @param {string} keep */
  keep(keep) {
    const faults = this.session.alter((bench) => bench.set("width.keep", keep), true);
    tellFaults(this.fault, faults);
  }

  /** @param {WidthState} state */
  told(state) {
    return widthSentences(state);
  }

  /** @param {WidthState} state */
  fill(state) {
    const { section } = state;
    this.narrower.show(section.narrower_mm, { low: 0, high: section.narrowest_mm });
    for (const key of ["press_mm", "swelling_mm"]) {
      const value = /** @type {any} */ (state)[key];
      /** @type {any} */ (this.fits)[key].show(value, { low: 0, high: Math.max(MOST[key], value) });
    }
    this.fits.decay_mm.show(state.decay_mm, { low: 0.2, high: Math.max(6, state.decay_mm) });
    for (const button of this.keeps) dress(button, { "aria-pressed": String(button.dataset.keep === section.keeps) });
    const a = this.beside;
    amend(this.readings, ...readingsWithA(readings(state), a ? readings(a) : []));
    const notes = notesOfA(underPictures, state, a);
    amend(this.picture, ...sectionPicture(state, widthOf(this.picture, this.show), a), ...(notes.section ?? []));
    amend(this.layers, ...layers(state));
    this.chart.show(beside(chartOf(state), a && chartOf(a)));
    amend(this.note, ...(notes.chart ?? []));
    amend(this.rows, materials(state));
    amend(this.said, ...besides(state));
  }
}
