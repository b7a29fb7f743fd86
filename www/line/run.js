// Follow one joint round the drive: the whole chain moving, the joint close up, its contacts and its work.

import { amend } from "../amend.js";
import { Chart } from "../chart.js";
import { beside } from "../chart-beside.js";
import { noteOfA } from "../compare/note.js";
import { dress, make } from "../dom.js";
import { Paper } from "../leaves.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { slider } from "./slider.js";
import { contacts, curveOf, foldRows, named, ofA, sentenceOf, summaryOf } from "./run-said.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").RunState} RunState */

/** Pitches a second on the screen: on its way, and slower while the joint folds. */
const PACE = { way: 3, fold: 0.4 };
/** A step of the buttons and keys, pitches: a quarter of a fold. */
const STEP = 0.25;
const TEXT_PX = 14;
/** A new visitor sees the joint run onto the driver, part of the way through. */
const FIRST = { fold: 0, share: 0.5 };

export class Running {
  /** @type {{travel_pitches: number, fold: number|null, share: number, joint: number, stuck: boolean}} */
  at = { travel_pitches: 0, ...FIRST, joint: 0, stuck: false };
  /** @type {any} */
  scenario = null;
  /** @type {any} that of the chain which is held as A */
  a = null;
  playing = false;
  told = "";
  last = 0;
  /** @type {RunState|null} what is shown: the last answer, also after a calculation that broke off */
  run = null;

  constructor() {
    /** @type {Steady<RunState>} */
    this.steady = new Steady("line.run", "line", () => this.draw());
    /** @type {Steady<RunState>} a whole circuit of A: it is the same wherever the joint is */
    this.ofA = new Steady("line.run.a", "line", () => this.draw());
    this.note = make("div");
    this.drive = new Paper("run-drive");
    this.close = new Paper("run-close");
    this.chart = new Chart();
    this.play = make("button", { type: "button", class: "choice", onclick: () => this.toggle() });
    this.scrub = slider("line.run.scrub", (value) => this.go({ travel_pitches: value + this.at.joint, fold: null }));
    this.share = slider("line.run.share", (value) => this.go({ fold: this.run?.shown ?? 0, share: value / 100 }));
    dress(this.share.input, { min: 0, max: 100, step: 1 });
    this.said = make("p", { class: "run-said", "aria-live": "polite" });
    this.broken = make("p", { class: "fault run-broken", role: "alert", hidden: true });
    this.list = make("ol", { class: "run-contacts" });
    this.sum = make("p", { class: "run-sum" });
    this.table = make("div", { class: "gears-table run-folds" });
    this.choices = [...this.choice("stuck", [false, true]), ...this.choice("joint", [0, 1])];
    this.element = this.sheet();
  }

  sheet() {
    const button = (/** @type {string} */ word, /** @type {() => void} */ onclick) => make("button", { type: "button", class: "choice", "data-run": word, onclick }, say(`line.run.${word}`));
    const group = (/** @type {string} */ key) => make("div", { class: "run-choice", role: "group", "aria-label": say(`line.run.${key}`) },
      make("span", {}, say(`line.run.${key}`)), ...this.choices.filter(({ dataset }) => dataset.key === key));
    return make("div", { class: "run" },
      make("p", { class: "caution" }, say("left.fingers")), this.drive.picture,
      make("div", { class: "run-buttons" }, this.play, button("back", () => this.step(-STEP)), button("on", () => this.step(STEP)), button("next", () => this.next())),
      this.scrub.element,
      make("div", { class: "run-both" }, make("div", {}, this.close.picture, this.share.element),
        make("div", { class: "run-text" }, this.said, this.broken, this.list, this.sum, this.note, group("stuck"), group("joint"))),
      this.table, make("figure", {}, make("figcaption", { class: "crooked-title" }, say("line.run.chart")), this.chart.picture, this.chart.key),
      this.chart.table(say("line.run.table")), make("p", { class: "hint" }, say("line.run.left")));
  }

  /**
   * @param {"stuck"|"joint"} key
   * @param {(boolean|number)[]} values
   */
  choice(key, values) {
    return values.map((value) => make("button", {
      type: "button", class: "choice", "data-key": key, "data-value": String(value), onclick: () => this.go({ [key]: value }),
    }, say(`line.run.${key}.${value}`)));
  }

  /** @param {any} scenario @param {any} a */
  show(scenario, a) {
    [this.scenario, this.a] = [scenario, a];
    this.want();
    this.draw();
  }

  want() {
    const width = Math.max(260, Math.round(widthOf(this.element) || 600));
    this.element.toggleAttribute("data-busy", true);
    const close = Math.min(420, width);
    this.steady.want(this.scenario, { run: { ...this.at, width_px: width, close_px: close, text_px: TEXT_PX } });
    const { joint, stuck } = this.at;
    if (this.a) this.ofA.want(this.a, { run: { travel_pitches: 0, ...FIRST, joint, stuck, width_px: close, close_px: close, text_px: TEXT_PX } });
  }

  /** A's circuit, where one is held and it is known. */
  get beside() {
    return this.a ? this.ofA.known : null;
  }

  /** @param {Partial<Running["at"]>} part */
  go(part) {
    this.at = { ...this.at, ...part };
    if (this.scenario) this.want();
  }

  /** Goes on from where the picture is, whichever way it was reached. @param {number} pitches */
  step(pitches) {
    const from = this.at.fold === null || !this.run ? this.at.travel_pitches : this.run.travel_pitches;
    this.go({ travel_pitches: from + pitches, fold: null });
  }

  /** To the middle of the next fold. */
  next() {
    if (!this.run) return;
    const ahead = this.run.folds.findIndex(({ share }) => share < 0.5);
    this.go({ fold: ahead < 0 ? 0 : ahead, share: 0.5 });
  }

  toggle() {
    this.playing = !this.playing;
    this.last = 0;
    if (this.playing) requestAnimationFrame((now) => this.tick(now));
    this.draw();
  }

  /** @param {number} now */
  tick(now) {
    if (!this.playing || !this.element.isConnected || this.element.closest("details:not([open])")) {
      this.playing = false;
      return this.draw();
    }
    const seconds = this.last ? Math.min(0.1, (now - this.last) / 1000) : 0;
    this.last = now;
    const folding = this.run?.folding ?? null;
    if (!this.steady.stale || seconds === 0) this.step(seconds * (folding === null ? PACE.way : PACE.fold));
    requestAnimationFrame((next) => this.tick(next));
  }

  /** The table of folds: its rows are kept while their numbers stay, so that focus stays. @param {RunState} run */
  tell(run) {
    const told = JSON.stringify([run.circuit, run.folds.map(({ whole, turns, pin_n }) => [whole, turns, pin_n])]);
    if (told !== this.told) this.table.replaceChildren(foldRows(run, (fold) => this.go({ fold, share: FIRST.share })));
    this.told = told;
    this.table.querySelectorAll("button").forEach((button, fold) => dress(button, { "aria-pressed": String(fold === run.shown) }));
  }

  draw() {
    const run = (this.run = this.steady.answer ?? this.run);
    this.element.toggleAttribute("data-busy", this.steady.stale);
    this.play.textContent = say(this.playing ? "line.run.pause" : "line.run.play");
    for (const each of this.choices) dress(each, { "aria-pressed": String(String(this.at[/** @type {"stuck"} */ (each.dataset.key)]) === each.dataset.value) });
    const broken = this.steady.faults.length > 0 ? "" : this.steady.failure;
    dress(this.broken, { hidden: broken === "" });
    this.broken.textContent = broken;
    if (!run) return;
    this.drive.show(named(run), say("line.run.picture", { pitches: run.pitches }));
    this.close.show(run.close, say("line.run.close", { times: run.fold_times }));
    this.scrub.put(run.done_pitches, { max: run.pitches, step: 0.05 }, sentenceOf(run));
    this.share.put(Math.round(100 * run.folds[run.shown].share), {}, sentenceOf(run));
    this.said.textContent = run.as_straight ? `${say("line.run.straight")} ${sentenceOf(run)}` : sentenceOf(run);
    this.list.replaceChildren(...contacts(run, this.at.stuck));
    this.sum.textContent = summaryOf(run);
    const a = this.beside;
    amend(this.note, ...noteOfA(ofA(run), a ? ofA(a) : ""));
    this.tell(run);
    const slide = (/** @type {number} */ pitches) => this.go({ travel_pitches: pitches + this.at.joint, fold: null });
    this.chart.key.hidden = !a;
    if (!this.playing) this.chart.show(beside(curveOf(run, slide), a && curveOf(a, slide)));
  }
}
