// One answer of the worker kept in step with what is on the bench.

import { labour } from "./labour.js";

let count = 0;

/** What is asked, as text. @param {object} scenario @param {object} asked */
const keyOf = (scenario, asked) => JSON.stringify([scenario, asked]);

/** @template T */
export class Steady {
  /** @type {T|null} the last answer, perhaps of an older request */
  answer = null;
  /** The sentence that says why there is none, or nothing. */
  failure = "";
  /** @type {import("./kernel.js").Fault[]} what the kernel refused */
  faults = [];
  wanted = "";
  answered = "";
  /** @type {[object, object]} */
  request = [{}, {}];
  busy = false;

  /**
   * @param {string} slot
   * @param {string} question
   * @param {() => void} told called after every answer
   */
  constructor(slot, question, told) {
    this.slot = `${slot}.${++count}`; // two that ask the same at once do not end each other's work
    this.question = question;
    this.told = told;
  }

  /** Whether the answer is of an older request than the last. */
  get stale() {
    return this.answered !== this.wanted;
  }

  /** The answer, while it is of the last request. */
  get known() {
    return this.stale ? null : this.answer;
  }

  /**
   * Whether the answer that is held is of this.
   * @param {object} scenario
   * @param {object} [asked]
   */
  isOf(scenario, asked = {}) {
    return this.answered === keyOf(scenario, asked);
  }

  /**
   * Wants the answer to this, as soon as the one under way has come: one request at a time, always the newest next.
   * @param {object} scenario
   * @param {object} [asked]
   */
  want(scenario, asked = {}) {
    const wanted = keyOf(scenario, asked);
    if (wanted === this.wanted) return;
    this.wanted = wanted;
    this.request = [scenario, asked];
    if (!this.busy) this.go();
  }

  async go() {
    this.busy = true;
    while (this.stale) {
      const now = this.wanted;
      try {
        const answer = await labour(this.slot, this.question, ...this.request);
        [this.answer, this.failure, this.faults] = [answer, "", []];
      } catch (error) {
        [this.answer, this.failure, this.faults] = [null, /** @type {Error} */ (error).message, /** @type {any} */ (error).faults ?? []];
      }
      this.answered = now;
      this.told();
    }
    this.busy = false;
  }
}
