// Question 3: what a crooked line costs. The drive from above, its chart, what it is given and what is said of it.

import { amend } from "../amend.js";
import { Answered } from "../answered.js";
import { Chart } from "../chart.js";
import { beside } from "../chart-beside.js";
import { readingsWithA } from "../compare/note.js";
import { dress, make } from "../dom.js";
import { labour } from "../labour.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { chartOf, wattsOf } from "./chart.js";
import { Entries } from "./entries.js";
import { Parts } from "./parts.js";
import { Plan } from "./plan.js";
import { figuresOf, lineSentences, planInWords, readings, said, workedOut } from "./said.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").Curve} Curve */
/** @typedef {import("./types.js").LineState} LineState */

/** The curve that is the answer first, then what it is compared with. */
const VARIANTS = ["elastic", "rigid", "hinged", "softer", "stiffer", "wider", "tighter"];
/** What is worked out of a chain that stands beside another. */
const BRIEF = ["elastic"];
const QUIET_MS = 250;
let count = 0;
/** After so long without a change the other assumptions are worked out; until then nothing is said of them. */
const REST_MS = 120;

/** @param {Session} session */
export const open = (session) => new Crooked(session);

/** @extends {Answered<LineState>} */
class Crooked extends Answered {
  /** @type {Curve[]} */
  curves = [];
  /** @type {Record<string, any>} the chain and its drive, as the strands are solved for them */
  scenario = {};
  drive = "";
  inWatts = false;
  timer = 0;
  resting = 0;
  variants = VARIANTS;
  slot = `line.curve.${++count}`; // two that are asked at once do not end each other's work

  /** @param {Session} session */
  constructor(session) {
    super(session, "line");
    /** @type {Steady<LineState>} the answer with what other assumptions say */
    this.whole = new Steady("line.whole", "line", this.show);
    this.plan = new Plan();
    this.chart = new Chart();
    this.entries = new Entries(session);
    this.readings = make("dl", { class: "crooked-readings" });
    this.said = make("div", { class: "crooked-said" });
    this.parts = new Parts(session);
    this.title = make("figcaption", { class: "crooked-title" });
    this.shows = ["times", "watts"].map((show) => make("button", { type: "button", class: "choice", "data-show": show, onclick: () => this.showIn(show) }, say(`line.show.${show}`)));
    this.lay(this.sheet(), make("section", { class: "crooked-aside", "aria-label": say("line.given"), hidden: true }, this.entries.element, this.said));
  }

  sheet() {
    return make("section", { class: "crooked none", "aria-label": say("ask.line") },
      make("figure", {}, this.plan.picture, make("figcaption", { class: "hint" }, this.plan.scale)),
      this.entries.offset.element, this.readings,
      make("figure", {}, this.title, make("div", { class: "crooked-by", role: "group", "aria-label": say("line.show") }, ...this.shows), this.chart.picture, this.chart.key),
      ...this.parts.elements, this.fold("line.twin", planInWords), this.chart.table(say("line.table")),
      this.fold("work.title", (line) => workedOut(line, this.session.state)));
  }

  /** The whole answer where it is of this drive at this offset, else the quick one. */
  get state() {
    const quick = super.state;
    return quick && this.whole.isOf(this.scenario) ? (this.whole.answer ?? quick) : quick;
  }

  /** @param {Set<What>} what */
  heed(what) {
    const scenario = (this.scenario = this.sections("drive", "load"));
    this.steady.want(scenario, { quick: true });
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.session.asked === this && this.whole.want(scenario), REST_MS);
    const { drive, ...rest } = scenario;
    const now = JSON.stringify([rest, { ...drive, offset_mm: 0 }]);
    if (now !== this.drive || what.has("unit")) this.anew(now);
    this.heard(what);
  }

  brief() {
    this.variants = BRIEF;
  }

  /**
   * Another drive: its curves are worked out when the hand rests, one after the other.
   * @param {string} drive
   */
  anew(drive) {
    if (drive !== this.drive) this.curves = [];
    this.drive = drive;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.next(), QUIET_MS);
  }

  async next() {
    const { drive } = this;
    const variant = this.variants.find((each) => !this.curves.some((curve) => curve.variant === each));
    if (!variant || this.session.asked !== this) return;
    const none = { variant, free_mm: 0, onset_mm: null, end_mm: null, unsettled_mm: [], samples: [] };
    const curve = await labour(this.slot, "line", this.scenario, { curve: variant }).catch(() => none);
    if (drive !== this.drive || curve === null) return; // a newer request has taken its place
    this.curves.push(curve);
    this.show();
    this.next();
  }

  /**
   * @param {number} mm
   * @param {boolean} done
   */
  slide(mm, done) {
    const near = (this.steady.answer?.aside_mm ?? 0) < 0;
    this.session.restate("drive.offset_mm", near ? -mm : mm, done);
  }

  /** @param {string} show what the chart tells */
  showIn(show) {
    this.inWatts = show === "watts";
    this.show();
  }

  /** @param {LineState} line */
  told(line) {
    return lineSentences(line);
  }

  /** @param {LineState} line */
  fill(line) {
    this.plan.show(line, this.beside);
    const content = this.inWatts ? wattsOf : chartOf;
    const slide = (/** @type {number} */ mm, /** @type {boolean} */ done) => this.slide(mm, done);
    this.chart.show(beside(content(line, this.curves, slide), this.beside && content(this.beside, this.held.curves, slide)));
    this.title.textContent = say(this.inWatts ? "line.watts" : "line.chart");
    for (const each of this.shows) dress(each, { "aria-pressed": String((each.dataset.show === "watts") === this.inWatts) });
    this.entries.show(line);
    this.parts.show(this.scenario, this.beside && this.held.scenario);
    amend(this.readings, ...readingsWithA(figuresOf(line), this.beside ? figuresOf(this.beside) : []));
    amend(this.said, ...said(line), ...readings(line, this.curves));
  }
}
