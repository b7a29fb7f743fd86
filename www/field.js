// One length that can be set: a number field, with a slider beside it if it has limits, and its fault sentence.

import { dress, make } from "./dom.js";
import { exactly, fieldOf, gap, mmOf, unitInUse } from "./figures.js";
import { has, say } from "./words.js";

/** @typedef {import("./kernel.js").Fault} Fault */

const STEPS = 400;
const FIELD_STEP = { mm: 0.01, in: 0.0005 };

let count = 0;

/**
 * A fault as one sentence.
 * @param {Fault} fault
 */
export function faultSentence(fault) {
  const id = `fault.${fault.rule}`;
  const key = fault.path.replace(/^chain\./, "");
  const written = (/** @type {unknown} */ value) => (typeof value === "number" ? exactly(key, value) : value);
  const numbers = Object.fromEntries(Object.entries(fault.numbers ?? {}).map(([name, value]) => [name, written(value)]));
  const field = has(`size.${key}`) ? say(`size.${key}`) : has(fault.path) ? say(fault.path) : fault.path;
  return say(has(id) ? id : "fault.other", { ...numbers, field, value: written(fault.value) });
}

export class Field {
  /**
   * @param {{label: string, hint?: string, slider?: boolean, tag?: string}} text
   * @param {(mm: number, done: boolean) => Fault[]} set
   */
  constructor(text, set) {
    this.set = set;
    const id = `field-${++count}`;
    this.input = make("input", { type: "number", id, inputmode: "decimal", "aria-describedby": `${id}-fault ${id}-hint` });
    this.unit = make("span", { class: "unit", "aria-hidden": "true" });
    this.tag = make("span", { class: "tag", hidden: true });
    this.fault = make("p", { class: "fault", id: `${id}-fault`, role: "alert", hidden: true });
    this.label = make("label", { for: id }, text.label);
    const row = make("div", { class: "field-row" }, this.label, this.tag, this.input, this.unit);
    this.element = make("div", { class: "field" }, row);
    if (text.slider) this.addSlider(text.label);
    this.element.append(make("p", { class: "hint", id: `${id}-hint` }, text.hint ?? ""), this.fault);
    this.input.addEventListener("change", () => this.typed());
  }

  /** @param {string} label */
  addSlider(label) {
    this.slider = make("input", { type: "range", "aria-label": label, step: "any" });
    this.slider.addEventListener("input", () => this.slid(false));
    this.slider.addEventListener("change", () => this.slid(true));
    this.element.append(this.slider);
  }

  typed() {
    const mm = mmOf(this.input.value);
    if (Number.isNaN(mm)) return this.refuse([{ path: "", value: this.input.value, rule: "not_a_number", numbers: {} }]);
    this.refuse(this.set(mm, true));
  }

  /** @param {boolean} done */
  slid(done) {
    const slider = /** @type {HTMLInputElement} */ (this.slider);
    this.refuse(this.set(Number(slider.value), done));
  }

  /** @param {Fault[]} faults */
  refuse(faults) {
    this.fault.textContent = faults.map(faultSentence).join(" ");
    this.fault.hidden = faults.length === 0;
    dress(this.input, { "aria-invalid": faults.length > 0 ? "true" : null });
  }

  /**
   * Shows the length the chain now has; a refused entry stays until the next good one.
   * @param {number} mm
   * @param {{low_mm: number, high_mm: number}} [limits]
   */
  show(mm, limits) {
    const typing = document.activeElement === this.input && this.input.getAttribute("aria-invalid");
    if (!typing) {
      this.input.value = fieldOf(mm);
      this.refuse([]);
    }
    this.unit.textContent = say(unitInUse() === "in" ? "unit.inch" : "unit.mm");
    this.input.step = String(FIELD_STEP[unitInUse()]);
    if (!this.slider || !limits) return;
    const { low_mm, high_mm } = limits;
    dress(this.slider, { min: low_mm, max: high_mm, step: (high_mm - low_mm) / STEPS, "aria-valuetext": gap(mm) });
    if (document.activeElement !== this.slider) this.slider.value = String(mm);
    this.slider.style.setProperty("--share", `${(100 * (mm - low_mm)) / (high_mm - low_mm)}%`);
  }

  /** @param {string} label */
  call(label) {
    if (this.label.textContent === label) return;
    this.label.textContent = label;
    this.slider?.setAttribute("aria-label", label);
  }

  /** @param {string|null} word */
  mark(word) {
    this.tag.hidden = word === null;
    this.tag.textContent = word ? say(word) : "";
  }
}
