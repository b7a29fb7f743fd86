// A number of a scenario that can be set: a field, a slider that goes by equal ratios, and the sentence that refuses it.

import { dress, make } from "../dom.js";
import { faultSentence } from "../field.js";
import { fieldOf, mmOf, unitInUse } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("../kernel.js").Fault} Fault */
/**
 * @typedef {object} Text
 * @property {string} word the id of its label; its unit is under `<word>.unit`, a hint under `<word>.hint`
 * @property {number} low where the slider begins
 * @property {number} high where it ends
 * @property {boolean} [even] the slider goes by equal steps, not by equal ratios
 * @property {boolean} [whole] the slider gives whole numbers
 */

const STEPS = 200;
/** Figures that a slider gives. */
const FIGURES = 3;

export class Given {
  /** @type {number|undefined} the value shown last */
  shown;

  /**
   * @param {string} id
   * @param {Text} text
   * @param {(value: number, done: boolean) => Fault[]} set
   */
  constructor(id, text, set) {
    this.text = text;
    this.set = set;
    this.length = id.endsWith("_mm");
    this.input = make("input", { type: "number", id, step: "any", inputmode: "decimal", "aria-describedby": `${id}-fault` });
    this.unit = make("span", { class: "unit", "aria-hidden": "true" });
    this.fault = make("p", { class: "fault", id: `${id}-fault`, role: "alert", hidden: true });
    this.slider = make("input", { type: "range", min: 0, max: STEPS, step: 1, "aria-label": say(text.word) });
    const row = make("div", { class: "field-row" }, make("label", { for: id }, say(text.word)), make("span", { hidden: true }), this.input, this.unit);
    this.element = make("div", { class: "field" }, row, this.slider, this.fault);
    this.input.addEventListener("change", () => this.typed());
    this.slider.addEventListener("input", () => this.slid(false));
    this.slider.addEventListener("change", () => this.slid(true));
  }

  typed() {
    const { value } = this.input;
    const number = this.length ? mmOf(value) : value.trim() === "" ? NaN : Number(value);
    if (Number.isNaN(number)) return this.refuse([{ path: "", value, rule: "not_a_number", numbers: {} }]);
    this.refuse(this.set(number, true));
  }

  /** @param {boolean} done */
  slid(done) {
    const { low, high, even, whole } = this.text;
    const share = Number(this.slider.value) / STEPS;
    const value = even ? low + share * (high - low) : low * (high / low) ** share;
    this.refuse(this.set(whole ? Math.round(value) : Number(value.toPrecision(FIGURES)), done));
  }

  /** @param {Fault[]} faults */
  refuse(faults) {
    this.fault.textContent = faults.map(faultSentence).join(" ");
    this.fault.hidden = faults.length === 0;
    dress(this.input, { "aria-invalid": faults.length > 0 ? "true" : null });
  }

  /** @param {number} value */
  show(value) {
    const { low, high, even, word } = this.text;
    const unit = this.length ? (unitInUse() === "in" ? "unit.inch" : "unit.mm") : `${word}.unit`;
    this.unit.textContent = say(unit);
    const refused = this.input.hasAttribute("aria-invalid") && value === this.shown;
    this.shown = value;
    if (document.activeElement !== this.slider) {
      const share = even ? (value - low) / (high - low) : Math.log(value / low) / Math.log(high / low);
      this.slider.value = String(Math.round(STEPS * Math.min(1, Math.max(0, share))));
    }
    if (refused || document.activeElement === this.input) return;
    this.input.value = this.length ? fieldOf(value) : String(value);
    this.slider.setAttribute("aria-valuetext", `${this.input.value} ${this.unit.textContent}`);
    this.refuse([]);
  }
}
