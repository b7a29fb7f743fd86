// One worker with the kernel's program: started when it first has something to do, given one request at a time.

import { admitted } from "./admit.js";
import { say } from "./words.js";

/** @typedef {import("./kernel.js").Fault} Fault */
/** What a worker is asked: the question's id, the scenario, what is asked of it. @typedef {{question: string, scenario: object, asked: object}} Request */
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
export class Hand {
  /** @type {Worker|null} */
  worker = null;
  /** @type {Job|null} */
  job = null;
  count = 0;

  /** @param {{queue: Job[], next: () => void}} crew who gives it work and takes back what it could not do */
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
    worker.postMessage({ module, life: `lightgap.worker.${performance.timeOrigin}.${Math.random()}` });
  }

  /**
   * A worker that the browser ends, for want of memory perhaps, says nothing: the lock that it holds for as long as it
   * lives is then ours.
   * @param {string} life
   */
  watch(life) {
    const { worker } = this;
    navigator.locks.request(life, () => worker === this.worker && this.died("ended"));
  }

  /** @param {{id: number, life?: string, news?: any, died?: string, faults?: Fault[], answer?: any}} said */
  hear({ id, life, news, died, faults, answer }) {
    if (life) return this.watch(life);
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
