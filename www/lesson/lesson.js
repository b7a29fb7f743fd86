// A lesson: its step on the bench, the guess before the answer, and the way from step to step.

import { toAddress } from "../address.js";
import { byId } from "../dom.js";
import { figure, together } from "../figures.js";
import { crew } from "../labour.js";
import { say } from "../words.js";
import { keepOver } from "../keep/turning.js";
import { Board } from "./board.js";
import { Guess, statesOf } from "./guess.js";
import { Hall } from "./hall.js";
import { stepOf } from "../lessons.js";
import { anew } from "../work.js";
import { filled, lessonCalled, nameOf } from "./shelf.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./shelf.js").Lesson} Lesson */
/** @typedef {import("./shelf.js").Stand} Stand */

export class Teaching {
  /** @type {Lesson|null} */
  lesson = null;
  step = 1;
  /** @type {Record<string, any>|null} what the kernel worked out for the step */
  numbers = null;
  /** @type {{guesses?: Record<string, any>, before?: import("../work.js").Work, hall?: boolean}} as it stood in another language */
  kept = keepOver("lesson", () => ({ guesses: statesOf(this.guesses), before: this.before, hall: this.hall.is })) ?? {};
  /** What was on the bench when the lesson began: leaving it leads back there. */
  before = this.kept.before;
  /** A worker of its own: the numbers of a step do not keep its picture waiting. */
  clerk = crew(1);
  /** @type {Map<string, Guess>} by step, so that hands and answers stay */
  guesses = new Map();

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.board = new Board(this);
    this.hall = new Hall(this);
    this.board.lay(this.hall.buttons);
    session.listen(() => this.heed());
    if (this.kept.hall) this.hall.turn(true);
    addEventListener("keydown", (event) => this.hall.key(event));
  }

  /** @returns {Stand|undefined} */
  get stand() {
    return this.lesson?.stands[this.step - 1];
  }

  /** @returns {Guess|null} */
  get guess() {
    const { lesson, stand } = this;
    if (!lesson || !stand?.ask) return null;
    const name = nameOf(lesson.id, this.step);
    const known = this.guesses.get(name) ?? new Guess(stand.ask, (text) => this.write(text), () => this.show(), this.kept.guesses?.[name]);
    this.guesses.set(name, known);
    return known;
  }

  /**
   * The work as the step leaves it.
   * @param {Lesson} lesson
   * @param {Stand} stand
   */
  workOf({ id }, { question: ask, way: how, at }) {
    return { ...anew(this.session.work, nameOf(id, this.step)), ask, how, at };
  }

  /** Whether the bench stands as the step left it, however large its gaps are drawn. */
  get isThere() {
    const { session, lesson, stand } = this;
    if (!lesson || !stand) return false;
    const ask = session.offers(stand.question) ? stand.question : "give";
    return toAddress({ ...this.workOf(lesson, stand), ask, times: session.work.times }) === toAddress(session.work);
  }

  /** @param {string} text */
  write(text) {
    return together(filled(text, this.numbers ?? {}, figure));
  }

  /**
   * @param {Lesson} lesson
   * @param {number} step from 1
   */
  start(lesson, step) {
    if (!stepOf(this.session.work.on)) this.before = structuredClone(this.session.work);
    this.lesson = lesson;
    return this.go(step);
  }

  /**
   * Goes to a step: a place of its own in the browser's history.
   * @param {number} step from 1
   */
  async go(step) {
    const { session, lesson } = this;
    const stand = lesson?.stands[step - 1];
    if (!lesson || !stand) return;
    this.step = step;
    this.forget();
    session.put(this.workOf(lesson, stand));
    session.arrive();
    session.light(stand.light ?? null);
    await this.reckon(stand);
  }

  /**
   * The lesson has other words; its chains are as they were.
   * @param {Lesson} lesson
   */
  renew(lesson) {
    this.lesson = lesson;
    this.guesses.delete(nameOf(lesson.id, this.step));
    this.show();
  }

  /** What another step was told with: no sentence takes its numbers from there. */
  forget() {
    this.numbers = null;
    this.show();
  }

  /** @param {Stand} stand */
  async reckon(stand) {
    this.forget();
    const chain = this.session.state.sizes;
    this.clerk.dismiss(); // nobody waits for an older step
    const report = await this.clerk.ask("report", stand.scenario, {});
    if (!report || stand !== this.stand) return;
    this.numbers = { ...report, chain };
    this.show();
    this.board.live.textContent = `${say("lesson.count", { step: this.step, of: this.lesson?.stands.length })} ${this.write(stand.say)}`;
  }

  /** @param {1|-1} by */
  turn(by) {
    if (!this.lesson) return;
    if (!this.isThere) return this.go(this.step);
    if (by > 0 && this.guess && !this.guess.shown) return this.guess.reveal();
    this.go(Math.max(1, Math.min(this.step + by, this.lesson.stands.length)));
  }

  async close() {
    this.hall.leave();
    const { session } = this;
    if (stepOf(session.work.on)) {
      await session.begin(this.before ?? { ...anew(session.work, session.scenarios.ids[0]), ask: "give", how: "turn" });
      session.light(null);
      session.commit();
    }
    this.lesson = null;
    this.show();
    byId("lessons").focus();
  }

  /** Another step may have come by the address, by undo or by the browser's history. */
  async heed() {
    const asked = stepOf(this.session.work.on);
    if (asked && (asked.id !== this.lesson?.id || asked.step !== this.step)) {
      const lesson = await lessonCalled(this.session, asked.id);
      if (!lesson || this.session.work.on !== nameOf(asked.id, asked.step)) return;
      [this.lesson, this.step] = [lesson, asked.step];
      if (this.stand && this.isThere) this.session.light(this.stand.light ?? null);
      if (this.stand) await this.reckon(this.stand);
    }
    this.show();
  }

  show() {
    this.board.show();
    if (this.lesson && this.stand) this.hall.show();
  }
}

/** @type {Teaching|null} */
let teaching = null;

/** @param {Session} session */
export const teach = (session) => (teaching ??= new Teaching(session));
