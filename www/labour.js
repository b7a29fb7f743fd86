// Work away from the page's own thread: the kernel's worker, asked and answered by number.
// labour() has one worker for all questions and a slot for each thing that is shown; crew() has several for one large job.

import { admitted } from "./admit.js";
import { say } from "./words.js";

/** @typedef {import("./kernel.js").Fault} Fault */
/** What a worker is asked: the question's id, the scenario, what is asked of it. @typedef {{question: string, scenario: object, asked: object}} Request */
/** @typedef {{progress?: (news: any) => void}} Options */
/** @typedef {Request & {slot: string|null, tries: number, progress: (news: any) => void, done: (answer: any) => void, failed: (error: Error) => void}} Job */

/** What was asked cannot be: the kernel's faults. */
export class Refused extends Error {
  /** @param {Fault[]} faults */
  constructor(faults) {
    super(faults.map(({ path, rule }) => `${path}: ${rule}`).join("; "));
    this.faults = faults;
  }
}

const SCRIPT = "lightgap_worker.js";
const PROGRAM = "lightgap_worker_bg.wasm";
/** A request whose worker dies is given to another so many times. */
const TRIES = 2;

/** @type {Promise<WebAssembly.Module>|undefined} compiled once for all workers */
let program;

async function compile() {
  const answer = await fetch(PROGRAM);
  if (!answer.ok) throw new Error(`${PROGRAM}: ${answer.status}`);
  const streamed = answer.headers.get("content-type") === "application/wasm";
  return streamed ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

/** One worker, started when it first has something to do. */
class Hand {
  /** @type {Worker|null} */
  worker = null;
  /** @type {Job|null} */
  job = null;
  count = 0;

  /** @param {Crew} crew */
  constructor(crew) {
    this.crew = crew;
  }

  /** @param {Job} job */
  async take(job) {
    this.job = job;
    try {
      const module = await (program ??= compile());
      if (this.job !== job) return;
      this.start(module);
      const { question, scenario, asked } = job;
      this.worker?.postMessage({ id: ++this.count, question, scenario, asked });
    } catch (error) {
      program = undefined;
      if (this.job === job) this.end(() => job.failed(/** @type {Error} */ (error)));
    }
  }

  /** @param {WebAssembly.Module} module */
  start(module) {
    if (this.worker) return;
    const worker = (this.worker = new Worker(admitted(SCRIPT)));
    worker.onmessage = ({ data }) => worker === this.worker && this.hear(data);
    const lost = (/** @type {Event} */ event) => {
      event.preventDefault();
      if (worker === this.worker) this.died();
    };
    worker.addEventListener("error", lost);
    worker.addEventListener("messageerror", lost);
    worker.postMessage({ module });
  }

  /** @param {{id: number, news?: any, died?: string, faults?: Fault[], answer?: any}} said */
  hear({ id, news, died, faults, answer }) {
    if (died !== undefined) return this.died(died);
    const { job } = this;
    if (id !== this.count || !job) return;
    if (news !== undefined) job.progress(news);
    else this.end(() => (faults ? job.failed(new Refused(faults)) : job.done(answer)));
  }

  /**
   * The worker is gone: its request is given out once more, and then the page is told of it.
   * @param {string} [why]
   */
  died(why = "") {
    const { job } = this;
    this.stop();
    if (job && ++job.tries < TRIES) this.crew.queue.unshift(job);
    else if (job) {
      job.failed(new Error(say("labour.died")));
      reportError(new Error(`${job.question}: ${why}`, { cause: "worker" }));
    }
    this.crew.next();
  }

  /** @param {() => void} last */
  end(last) {
    this.job = null;
    last();
    this.crew.next();
  }

  stop() {
    this.worker?.terminate();
    this.worker = null;
    this.job = null;
  }
}

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
