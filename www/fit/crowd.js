// A million sets by several workers: drawn in blocks, added up in the order of the blocks by one of them.

import { crew, labour } from "../labour.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").ChanceView} ChanceView */

/** Blocks in one request: short enough to be seen to move, long enough to be worth a message. */
const PORTION = 12;
const MOST_WORKERS = 8;

/** How many workers: one core is left to the page. */
export const workers = () => Math.max(1, Math.min(MOST_WORKERS, (navigator.hardwareConcurrency || 2) - 1));

export class Crowd {
  /** @type {ChanceView|null} what has been drawn so far */
  view = null;
  /** Share of the blocks that have been added up; null while nothing is under way. @type {number|null} */
  share = null;
  failure = "";
  count = 0;
  /** @type {ReturnType<typeof crew>|null} */
  crew = null;

  /** @param {() => void} told called whenever there is more to show */
  constructor(told) {
    this.told = told;
  }

  /** Stops; what was drawn so far stays. */
  stop() {
    this.count++;
    this.crew?.dismiss();
    this.crew = null;
    this.share = null;
    this.told();
  }

  /**
   * Draws all blocks of a scenario. A later call, or a stop, ends this one.
   * @param {object} scenario
   * @param {number} blocks
   * @param {number} [hands]
   */
  async run(scenario, blocks, hands = workers()) {
    this.stop();
    const now = this.count;
    [this.view, this.failure, this.share] = [null, "", 0];
    this.told();
    const many = (this.crew = crew(hands));
    const starts = Array.from({ length: Math.ceil(blocks / PORTION) }, (_, i) => i * PORTION);
    const rows = starts.map((from) => many.ask("fit", scenario, { run: [from, Math.min(from + PORTION, blocks)] }));
    for (const row of rows) row.catch(() => {}); // whichever fails is waited for below
    try {
      await labour("fit.begin", "fit", scenario, { begin: true });
      for (const [i, row] of rows.entries()) {
        const add = await row;
        if (now !== this.count) return;
        const view = add && (await labour("fit.add", "fit", scenario, { add }));
        if (now !== this.count) return;
        if (!view) throw new Error(say("labour.died"));
        [this.view, this.share] = [view, (i + 1) / rows.length];
        this.told();
      }
    } catch (error) {
      if (now !== this.count) return;
      this.failure = /** @type {Error} */ (error).message;
    }
    this.stop();
  }
}
