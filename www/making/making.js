// Making a lesson in the page: a panel beside the bench, where the bench is recorded step by step.

import { byId, dress, make } from "../dom.js";
import { faultSentence, tell } from "../field.js";
import { labour } from "../labour.js";
import { shelve, standsOf } from "../lesson/shelf.js";
import { stepOf } from "../lessons.js";
import { keepOwn, OWN } from "../own.js";
import { say } from "../words.js";
import { alter, draftOf, fileOf, insert, sectionsOf } from "./draft.js";
import { Files } from "./files.js";
import { keep, kept, stayOpen } from "./kept.js";
import { StepForm } from "./step.js";
import { StepList } from "./steps.js";
import { Text } from "./text.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").Fault} Fault */
/** @typedef {import("./draft.js").Draft} Draft */
/** @typedef {import("./draft.js").Change} Change */
/** @typedef {import("./draft.js").Shown} Shown */

/** So many changes can be taken back. */
const MOST_CHANGES = 200;
/** How far along a way a step stands, in so many decimals. */
const DECIMALS = 3;

export class Making {
  /** @type {Draft[]} */
  past = [];
  /** @type {Draft[]} */
  future = [];

  /**
   * @param {Session} session
   * @param {() => import("../kernel.js").BenchLike} another a bench to try a lesson on
   * @param {import("../lesson/lesson.js").Teaching} teaching
   */
  constructor(session, another, teaching) {
    this.session = session;
    this.probe = another();
    this.teaching = teaching;
    this.draft = kept() ?? this.fresh();
    const button = (/** @type {string} */ word, /** @type {() => void} */ onclick, kind = "") => make("button", { type: "button", class: kind, onclick }, say(word));
    this.undo = button("making.undo", () => this.step(this.past, this.future, "making.undone"));
    this.redo = button("making.redo", () => this.step(this.future, this.past, "making.redone"));
    this.title = new Text({ label: say("making.name") }, (title) => this.change((draft) => ({ ...draft, title })));
    this.about = new Text({ label: say("making.about"), lines: 2 }, (about) => this.change((draft) => ({ ...draft, about })));
    this.list = new StepList(this);
    this.form = new StepForm(session, (part) => this.change(alter(part)));
    this.take = make("button", { type: "button", onclick: () => this.record(false) });
    this.told = make("p", { class: "making-told", role: "status" });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.files = new Files(this);
    this.element = make("section", { class: "making", "aria-labelledby": "making-title", hidden: true },
      make("div", { class: "making-head" }, make("h2", { id: "making-title", tabindex: -1 }, say("making.title")), this.undo, this.redo, button("making.close", () => this.close())),
      make("p", { class: "hint" }, say("making.hint")), button("making.record", () => this.record(true), "primary"), this.told, this.fault,
      this.list.element, this.form.element, make("div", { class: "making-row" }, this.take, button("making.try", () => this.try())),
      this.title.element, this.about.element, this.files.element, make("p", { class: "hint" }, say("making.kept")));
    byId("stage").after(this.element);
    this.element.addEventListener("keydown", (event) => this.key(event));
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
    this.element.hidden = false;
    document.body.toggleAttribute("data-making", true);
    stayOpen(true);
    await this.settle(true);
    byId("making-title").focus();
  }

  close() {
    this.element.hidden = true;
    document.body.removeAttribute("data-making");
    stayOpen(false);
    byId("lessons").focus();
  }

  async try() {
    this.draft = { ...this.draft, at: 0 };
    this.close();
    await this.settle(true);
    this.teaching.next.focus();
  }

  /**
   * What the kernel finds wrong with a lesson, as sentences.
   * @param {Record<string, any>} file
   */
  wrong(file) {
    const name = (/** @type {string} */ path) => {
      const part = path.replace(/^lesson\[\d+\]\.|^(?=title|about)/, "making.").replace("making.title", "making.name");
      const choice = /choices\[(\d+)\]/.exec(part);
      return choice ? say("making.ask.choice", { choice: Number(choice[1]) + 1 }) : part.replace(/^making\.set\.chain\./, "");
    };
    return this.probe.load(/** @type {any} */ (file)).map((/** @type {Fault} */ fault) => faultSentence({ ...fault, path: name(fault.path) })).join(" ");
  }

  /**
   * Changes the lesson, or gives the sentence that refuses the change.
   * @param {Change} change
   */
  change(change) {
    const draft = change(this.draft);
    const why = this.wrong(fileOf(draft));
    if (why) return why;
    this.past = [...this.past, this.draft].slice(-MOST_CHANGES);
    this.future = [];
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

  /** @param {Draft[]} from @param {Draft[]} to @param {string} word */
  step(from, to, word) {
    const draft = from.pop();
    if (!draft) return;
    to.push(this.draft);
    this.draft = draft;
    this.settle(true);
    this.tell(word);
  }

  /**
   * @param {Change} change
   * @param {string} word
   */
  act(change, word) {
    const why = this.change(change);
    tell(this.fault, why);
    this.tell(why ? "" : word);
  }

  /** @param {boolean} anew a step of its own, or into the present one */
  record(anew) {
    const { say: _, ...seen } = this.seen();
    const { ask, look } = this.draft.steps[this.draft.at];
    if (!anew) return this.act(alter({ light: undefined, ...seen, ask, look }), "making.taken");
    this.act(insert(this.seen()), "making.recorded");
    this.form.say.input.focus();
    this.form.say.input.select();
  }

  /** @param {string} word */
  tell(word) {
    this.told.textContent = word && say(word, { step: this.draft.at + 1 });
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
    this.show(anew);
    if (bench) await this.teaching.start(lesson, draft.at + 1);
    else this.teaching.renew(lesson);
    await this.reckon();
  }

  async reckon() {
    const scenario = this.teaching.stand?.scenario;
    if (!scenario) return;
    this.form.showNumbers(null);
    const { draft, session } = this;
    const sizes = session.state.sizes;
    const report = await labour("making", "report", scenario, {}).catch(() => null);
    if (report && draft === this.draft) this.form.showNumbers({ ...report, chain: sizes });
  }

  /** The lesson may have been walked on by its own buttons. @param {Set<string>} what */
  heed(what) {
    if (this.element.hidden) return;
    const asked = stepOf(this.session.work.on);
    const at = (asked?.id === OWN ? asked.step : 0) - 1;
    if (at >= 0 && at !== this.draft.at && this.draft.steps[at]) {
      this.draft = { ...this.draft, at };
      this.show(true);
      this.reckon();
    } else if (what.has("chain")) this.form.showLights(this.draft.steps[this.draft.at].light ?? "");
    dress(this.take, { disabled: this.teaching.isThere && at === this.draft.at });
  }

  /** @param {boolean} anew */
  show(anew) {
    const { draft } = this;
    this.title.show(draft.title, anew);
    this.about.show(draft.about, anew);
    this.list.show(draft);
    this.form.show(draft, anew);
    this.take.textContent = say("making.take", { step: draft.at + 1 });
    dress(this.undo, { disabled: this.past.length === 0 });
    dress(this.redo, { disabled: this.future.length === 0 });
    this.files.show();
  }

  /** Undo and redo by keyboard; a text that is being typed has its own. @param {KeyboardEvent} event */
  key(event) {
    const typing = /** @type {Element} */ (event.target).matches("input[type=text], textarea");
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !["z", "y"].includes(key)) return;
    event.stopPropagation(); // the bench has an undo of its own
    if (typing) return;
    event.preventDefault();
    (key === "z" && !event.shiftKey ? this.undo : this.redo).click();
  }

  /**
   * Goes on with a lesson that was opened, unless it is the one being made.
   * @param {import("../lesson/shelf.js").Lesson} lesson
   * @param {number} step from 1
   */
  goOn(lesson, step) {
    if (JSON.stringify(lesson.file) === JSON.stringify(fileOf(this.draft))) this.draft = { ...this.draft, at: step - 1 };
    else this.begin({ ...this.draftOf(lesson.file), at: step - 1 });
  }

  /** Takes up another lesson; the last one can be had back. @param {Draft} draft */
  begin(draft) {
    this.past = [...this.past, this.draft].slice(-MOST_CHANGES);
    this.future = [];
    this.draft = draft;
    this.settle(true);
  }

  /**
   * A lesson's file as a draft; a scenario without steps becomes a lesson of one.
   * @param {Record<string, any>} file that the kernel takes
   */
  draftOf(file) {
    const whole = (/** @type {any} */ scenario) => {
      this.probe.load(scenario);
      return this.probe.scenario();
    };
    const lesson = file.lesson?.length > 0 ? file.lesson : [{ say: say("making.say.new") }];
    return draftOf(file, standsOf({ ...file, lesson }), whole);
  }
}

/** @type {Making|null} */
let making = null;

/** @param {Session} session @param {() => import("../kernel.js").BenchLike} another @param {import("../lesson/lesson.js").Teaching} teaching */
export const makeLesson = (session, another, teaching) => (making ??= new Making(session, another, teaching));
