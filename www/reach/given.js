// A number of a scenario that can be set, with a slider that goes by equal ratios or by equal steps.

import { Field } from "../field.js";
import { wayOf } from "../way.js";
import { say } from "../words.js";

/** @typedef {import("../kernel.js").Fault} Fault */
/**
 * @typedef {object} Run
 * @property {number} low where the slider begins
 * @property {number} high where it ends
 * @property {boolean} [even] the slider goes by equal steps, not by equal ratios
 * @property {boolean} [whole] the slider gives whole numbers
 */

const STEPS = 200;
/** Figures that a slider gives. */
const FIGURES = 3;
const SLIDER = { low: 0, high: STEPS, step: 1 };

export class Given extends Field {
  /**
   * @param {string} word the id of its label; its unit is under `<word>.unit`
   * @param {Run} run
   * @param {(value: number, done: boolean) => Fault[]} put
   */
  constructor(word, run, put) {
    super({ id: word.replace(".", "-"), label: say(word), slider: true, step: "any", way: wayOf(word, `${word}.unit`) }, put);
    this.run = run;
  }

  placeOf(/** @type {number} */ value) {
    const { low, high, even } = this.run;
    const share = even ? (value - low) / (high - low) : Math.log(value / low) / Math.log(high / low);
    return Math.round(STEPS * Math.min(1, Math.max(0, share)));
  }

  valueAt(/** @type {number} */ place) {
    const { low, high, even, whole } = this.run;
    const share = place / STEPS;
    const value = even ? low + share * (high - low) : low * (high / low) ** share;
    return whole ? Math.round(value) : Number(value.toPrecision(FIGURES));
  }

  show(/** @type {number} */ value) {
    super.show(value, SLIDER);
  }
}
