// Making a lesson in the page: the bench is recorded step by step, and the panel beside it shows what there is.

import { byId, dress } from "../dom.js";
import { tell } from "../field.js";
import { labour } from "../labour.js";
import { shelve } from "../lesson/shelf.js";
import { stepOf } from "../lessons.js";
import { keepOwn, OWN } from "../own.js";
import { say } from "../words.js";
import { alter, fileOf, insert, sectionsOf } from "./draft.js";
import { keep, kept, stayOpen } from "./kept.js";
import { Panel } from "./panel.js";
import { Trial } from "./trial.js";
import { Turns } from "./turns.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./draft.js").Draft} Draft */
/** @typedef {import("./draft.js").Change} Change */
/** @typedef {import("./draft.js").Shown} Shown */

/** How far along a way a step stands, in so many decimals. */
const DECIMALS = 3;

export class Making {
  turns = new Turns();

  /**
   * @param {Session} session
   * @param {() => import("../kernel.js").BenchLike} another a bench to try a lesson on
   * @param {import("../lesson/lesson.js").Teaching} teaching
   */
  constructor(session, another, teaching) {
    this.session = session;
    this.trial = new Trial(another());
    this.teaching = teaching;
    this.draft = kept() ?? this.fresh();
    this.panel = new Panel(this);
    session.listen((what) => this.heed(what));
  }

  /** A lesson of one step: what is on the bench. @returns {Draft} */
  fresh() {
    const { scenario } = this.session;
    return { title: say("making.untitled"), about: "", source: scenario.source ?? "", steps: [this.seen()], at: 0 };
  }

  /** The bench as a step shows it. @returns {Shown} */
  seen() {
    const { work, scenario, lit, live } = this.session;
    const at = Number((work.held || work.pulls.length > 0 ? live.amplitude : work.at).toFixed(DECIMALS));
    return { say: say("making.say.new"), scenario: sectionsOf(scenario), question: work.ask, way: work.how, at: Math.max(-1, Math.min(at, 1)), ...(lit && { light: lit }) };
  }

  async open() {
    this.panel.element.hidden = false;
    document.body.toggleAttribute("data-making", true);
    stayOpen(true);
    byId("making-title").focus(); // now: a focus that comes later takes it from who has gone on
    await this.settle(true);
  }

  close() {
    this.panel.element.hidden = true;
    document.body.removeAttribute("data-making");
    stayOpen(false);
    byId("lessons").focus();
  }

  async try() {
    this.draft = { ...this.draft, at: 0 };
    this.close();
    await this.settle(true);
    this.teaching.board.next.focus();
  }

  /**
   * Changes the lesson, or gives the sentence that refuses the change.
   * @param {Change} change
   */
  change(change) {
    const draft = change(this.draft);
    const why = this.trial.wrong(fileOf(draft));
    if (why) return why;
    this.turns.made(this.draft);
    this.put(draft);
    return "";
  }

  /** @param {Draft} draft */
  put(draft) {
    const [before, after] = [this.draft.steps[this.draft.at], draft.steps[draft.at]];
    const moved = ["scenario", "question", "way", "at", "light"].some((key) => JSON.stringify(/** @type {any} */ (before)[key]) !== JSON.stringify(/** @type {any} */ (after)[key]));
    const anew = draft.at !== this.draft.at || draft.steps.length !== this.draft.steps.length;
    this.draft = draft;
    this.settle(anew || moved, anew);
  }

  /** @param {(now: Draft) => Draft|undefined} way @param {string} word */
  turn(way, word) {
    const draft = way(this.draft);
    if (!draft) return;
    this.draft = draft;
    this.settle(true);
    this.panel.tell(word, this.draft.at);
  }

  /**
   * @param {Change} change
   * @param {string} word
   */
  act(change, word) {
    const why = this.change(change);
    tell(this.panel.fault, why);
    this.panel.tell(why ? "" : word, this.draft.at);
  }

  /** @param {boolean} anew a step of its own, or into the present one */
  record(anew) {
    const { say: _, ...seen } = this.seen();
    const { ask, look } = this.draft.steps[this.draft.at];
    if (!anew) return this.act(alter({ light: undefined, ...seen, ask, look }), "making.taken");
    this.act(insert(this.seen()), "making.recorded");
    this.panel.form.say.input.focus();
    this.panel.form.say.input.select();
  }

  /** @param {number} at */
  async go(at) {
    this.draft = { ...this.draft, at };
    await this.settle(true);
  }

  /**
   * Keeps the lesson, puts it on the shelf, and shows its step.
   * @param {boolean} bench whether the bench is to show the step too
   * @param {boolean} anew whether another step is edited
   */
  async settle(bench, anew = bench) {
    const { session, draft } = this;
    const file = fileOf(draft);
    keep(draft);
    session.scenarios.set(OWN, { name: draft.title, scenario: /** @type {any} */ (file) });
    keepOwn(session);
    const lesson = shelve(session, OWN, file);
    this.panel.show(draft, this.turns, anew);
    if (bench) await this.teaching.start(lesson, draft.at + 1);
    else this.teaching.renew(lesson);
    await this.reckon();
  }

  async reckon() {
    const scenario = this.teaching.stand?.scenario;
    if (!scenario) return;
    this.panel.form.showNumbers(null);
    const { draft, session } = this;
    const sizes = session.state.sizes;
    const report = await labour("making", "report", scenario, {}).catch(() => null);
    if (report && draft === this.draft) this.panel.form.showNumbers({ ...report, chain: sizes });
  }

  /** The lesson may have been walked on by its own buttons. @param {Set<string>} what */
  heed(what) {
    if (this.panel.element.hidden) return;
    const asked = stepOf(this.session.work.on);
    const at = (asked?.id === OWN ? asked.step : 0) - 1;
    if (at >= 0 && at !== this.draft.at && this.draft.steps[at]) {
      this.draft = { ...this.draft, at };
      this.panel.show(this.draft, this.turns, true);
      this.reckon();
    } else if (what.has("chain")) this.panel.form.showLights(this.draft.steps[this.draft.at].light ?? "");
    dress(this.panel.take, { disabled: this.teaching.isThere && at === this.draft.at });
  }

  /**
   * Goes on with a lesson that was opened, unless it is the one being made.
   * @param {import("../lesson/shelf.js").Lesson} lesson
   * @param {number} step from 1
   */
  goOn(lesson, step) {
    if (JSON.stringify(lesson.file) === JSON.stringify(fileOf(this.draft))) this.draft = { ...this.draft, at: step - 1 };
    else this.begin({ ...this.trial.draftOf(lesson.file), at: step - 1 });
  }

  /** Takes up another lesson; the last one can be had back. @param {Draft} draft */
  begin(draft) {
    this.turns.made(this.draft);
    this.draft = draft;
    this.settle(true);
  }
}

/** @type {Making|null} */
let making = null;

/** @param {Session} session @param {() => import("../kernel.js").BenchLike} another @param {import("../lesson/lesson.js").Teaching} teaching */
export const makeLesson = (session, another, teaching) => (making ??= new Making(session, another, teaching));
