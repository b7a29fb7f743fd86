// The sets that were drawn by chance: a quick look after every change, and as many as somebody asks for.

import { Steady } from "../steady.js";
import { Crowd } from "./crowd.js";

/** @typedef {import("./types.js").ChanceView} ChanceView */

/** Sets of the quick look. */
export const QUICK = 20000;

/** What sets are drawn of: everything but how many. @param {Record<string, any>} scenario */
const drawnOf = (scenario) => JSON.stringify({ ...scenario, sampling: { ...scenario.sampling, sets: 0 } });

export class Drawn {
  /** What is on the bench, and what the many sets were drawn of. */
  of = "";
  from = "";

  /** @param {() => void} told called whenever there is more to show */
  constructor(told) {
    this.crowd = new Crowd(told);
    /** @type {Steady<ChanceView>} */
    this.quick = new Steady("fit.quick", "fit", told);
  }

  /** @param {Record<string, any>} scenario */
  want(scenario) {
    this.of = drawnOf(scenario);
    if (this.crowd.share !== null && this.from !== this.of) this.crowd.stop();
    this.quick.want(scenario, { sets: QUICK });
  }

  /**
   * @param {Record<string, any>} scenario
   * @param {number} sets
   * @param {number} block_sets
   */
  run(scenario, sets, block_sets) {
    this.from = drawnOf(scenario);
    this.crowd.run({ ...scenario, sampling: { ...scenario.sampling, sets } }, Math.ceil(sets / block_sets));
  }

  get stale() {
    return this.quick.stale;
  }

  /** What is known: the many sets where they were drawn of this very scenario and seed, the quick look if not. */
  get known() {
    return this.crowd.view && this.from === this.of ? this.crowd.view : this.quick.answer;
  }
}
