// Question 3: what a crooked line costs. The drive from above, its chart, what it is given and what is said of it.

import { Entries } from "./crooked-entries.js";
import { Chart } from "./crooked-chart.js";
import { Plan } from "./crooked-plan.js";
import { chartTable, figuresOf, planInWords, readings, said, workedOut } from "./crooked-said.js";
import { byId, make, onceAFrame } from "./dom.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Curve} Curve */

/** The curve that is the answer first, then what it is compared with. */
const VARIANTS = ["elastic", "rigid", "hinged", "softer", "stiffer", "wider", "tighter"];
const QUIET_MS = 250;

/** @param {Session} session */
export function startCrooked(session) {
  const crooked = new Crooked(session);
  session.listen((what) => crooked.heed(what));
}

class Crooked {
  /** @type {Curve[]} */
  curves = [];
  drive = "";
  timer = 0;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.plan = new Plan();
    this.chart = new Chart((mm, done) => this.slide(mm, done));
    this.entries = new Entries(session);
    this.readings = make("dl", { class: "crooked-readings" });
    const fold = (/** @type {string} */ word) => make("details", { class: "fold" }, make("summary", {}, say(word)));
    this.folds = { plan: fold("line.twin"), chart: fold("line.table"), work: fold("work.title") };
    this.said = make("div", { class: "crooked-said" });
    this.section = this.sheet();
    this.aside = make("section", { class: "crooked-aside", "aria-label": say("line.given"), hidden: true },
      this.entries.element, this.said);
    byId("stage").insertBefore(this.section, byId("live"));
    byId("found").append(this.aside);
    this.show = onceAFrame(() => this.draw());
    for (const each of Object.values(this.folds)) each.addEventListener("toggle", this.show);
    new ResizeObserver(this.show).observe(this.section);
  }

  sheet() {
    return make("section", { class: "crooked", "aria-label": say("ask.line"), hidden: true },
      make("figure", {}, this.plan.picture, make("figcaption", { class: "hint" }, this.plan.scale)),
      this.entries.offset.element, this.readings,
      make("figure", {}, make("figcaption", { class: "crooked-title" }, say("line.chart")), this.chart.picture, this.chart.key),
      ...Object.values(this.folds));
  }

  /** @param {Set<import("./session.js").What>} what */
  heed(what) {
    const on = this.session.work.ask === "line";
    if (on && this.session.stale) document.body.dataset.resting = "";
    else delete document.body.dataset.resting;
    this.section.hidden = this.aside.hidden = !on;
    if (!on) return;
    const now = this.session.drive;
    if (now !== this.drive || what.has("unit")) this.anew(now);
    this.show();
  }

  /**
   * Another drive: its curves are worked out when the hand rests, one a frame.
   * @param {string} drive
   */
  anew(drive) {
    if (drive !== this.drive) this.curves = [];
    this.drive = drive;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.next(), QUIET_MS);
  }

  next() {
    if (this.session.stale) return this.anew(this.drive);
    const variant = VARIANTS.find((each) => !this.curves.some((curve) => curve.variant === each));
    if (!variant || this.session.work.ask !== "line" || !this.session.line) return;
    const none = { variant, free_mm: 0, onset_mm: null, end_mm: null, samples: [] };
    this.curves.push(this.session.bench.line_curve(variant) ?? none);
    this.show();
    this.timer = setTimeout(() => this.next(), 0);
  }

  /**
   * @param {number} mm
   * @param {boolean} done
   */
  slide(mm, done) {
    this.session.alter((bench) => bench.set("drive.offset_mm", mm), done);
  }

  draw() {
    const { line, state } = this.session;
    if (this.section.hidden) return;
    this.section.classList.toggle("none", !line);
    this.aside.hidden = !line;
    if (!line) return;
    this.plan.show(line);
    this.chart.show(line, this.curves);
    this.entries.show(line);
    this.readings.replaceChildren(...figuresOf(line));
    this.said.replaceChildren(...said(line), ...readings(line));
    if (this.folds.plan.open) refill(this.folds.plan, planInWords(line));
    if (this.folds.chart.open) refill(this.folds.chart, chartTable(this.curves));
    if (this.folds.work.open) refill(this.folds.work, workedOut(line, state));
  }
}

/**
 * @param {HTMLElement} fold
 * @param {HTMLElement} filling
 */
function refill(fold, filling) {
  fold.replaceChildren(/** @type {Node} */ (fold.firstChild), filling);
}
