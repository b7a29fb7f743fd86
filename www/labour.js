// Work away from the page's own thread: the kernel's worker, asked and answered by number.
// labour() has one worker for all questions and a slot for each thing that is shown; crew() has several for one large job.

import { Hand } from "./hand.js";

export { Refused } from "./hand.js";

/** @typedef {import("./hand.js").Job} Job */
/** @typedef {import("./hand.js").Request} Request */
/** @typedef {{progress?: (news: any) => void}} Options */

/** Workers with one queue. */
class Crew {
  /** @type {Job[]} */
  queue = [];

  /** @param {number} count */
  constructor(count) {
    this.hands = Array.from({ length: count }, () => new Hand(this));
  }

  /**
   * @param {Request} request
   * @param {string|null} slot
   * @param {Options} options
   * @returns {Promise<any>}
   */
  ask(request, slot, { progress = () => {} }) {
    return new Promise((done, failed) => {
      this.queue.push({ ...request, slot, tries: 0, progress, done, failed });
      this.next();
    });
  }

  /** Gives what waits to whoever is free. */
  next() {
    for (const hand of this.hands) {
      if (hand.job) continue;
      const job = this.queue.shift();
      if (!job) return;
      hand.take(job);
    }
  }

  /**
   * Nobody waits any longer for what was asked in a slot: it resolves to null, whatever comes of it.
   * @param {string} slot
   */
  forget(slot) {
    const waiting = this.queue.filter((job) => job.slot === slot);
    this.queue = this.queue.filter((job) => job.slot !== slot);
    const working = this.hands.flatMap(({ job }) => (job?.slot === slot ? [job] : []));
    for (const job of [...waiting, ...working]) job.done(null);
    for (const job of working) job.progress = () => {};
  }

  /** @param {string} slot */
  abandon(slot) {
    const working = this.hands.filter(({ job }) => job?.slot === slot);
    this.forget(slot);
    for (const hand of working) hand.stop();
    this.next();
  }

  /** Sends everyone home; what was not answered resolves to null. */
  dismiss() {
    for (const job of [...this.queue, ...this.hands.flatMap((hand) => hand.job ?? [])]) job.done(null);
    this.queue = [];
    for (const hand of this.hands) hand.stop();
  }
}

const one = new Crew(1);

/**
 * Asks the kernel in the worker. A newer request in the same slot makes the older one resolve to null. What the kernel
 * refuses is thrown as `Refused`; a worker that dies is started again once, and then a sentence is thrown.
 * @param {string} slot
 * @param {string} question
 * @param {object} scenario
 * @param {object} asked
 * @param {Options} [options]
 * @returns {Promise<any>}
 */
export function labour(slot, question, scenario, asked, options = {}) {
  one.forget(slot);
  return one.ask({ question, scenario, asked }, slot, options);
}

/** Stops work in a slot, if need be by ending the worker; its request resolves to null. @param {string} slot */
export const abandon = (slot) => one.abandon(slot);

/**
 * Several workers for one large job: each request goes to the next that is free.
 * @param {number} count
 */
export function crew(count) {
  const many = new Crew(count);
  return {
    ask: (/** @type {string} */ question, /** @type {object} */ scenario, /** @type {object} */ asked, /** @type {Options} */ options = {}) =>
      many.ask({ question, scenario, asked }, null, options),
    dismiss: () => many.dismiss(),
  };
}
