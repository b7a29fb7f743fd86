// One number that can be set: a number field, with a slider beside it if it is wanted, its unit and its fault sentence.

import { dress, make, write } from "./dom.js";
import { exactly, unitInUse } from "./figures.js";
import { LENGTH, numberField, typed } from "./way.js";
import { has, say } from "./words.js";

/** @typedef {import("./kernel.js").Fault} Fault */
/** @typedef {import("./way.js").Way} Way */

const STEPS = 400;
/** What an arrow key goes in a field of a length, in the unit it is written in. */
export const FIELD_STEP = { mm: 0.01, in: 0.0005 };

/**
 * A fault as one sentence.
 * @param {Fault} fault
 */
export function faultSentence(fault) {
  const id = `fault.${fault.rule}`;
  const key = fault.path.replace(/^chain\./, "");
  const written = (/** @type {unknown} */ value) => (typeof value === "number" ? exactly(key, value) : value);
  const numbers = Object.fromEntries(Object.entries(fault.numbers ?? {}).map(([name, value]) => [name, written(value)]));
  const field = has(`size.${key}`) ? say(`size.${key}`) : has(fault.path) ? say(fault.path) : fault.path || say("fault.file");
  return say(has(id) ? id : "fault.other", { ...numbers, field, value: written(fault.value) });
}

/**
 * Says what is wrong, or nothing, and marks the field that it is about.
 * @param {HTMLElement} place
 * @param {string} sentence
 * @param {Element} [input]
 */
export function tell(place, sentence, input) {
  if (sentence || place.textContent) place.textContent = sentence; // said anew, it is heard anew
  place.hidden = sentence === "";
  if (input) dress(input, { "aria-invalid": sentence ? "true" : null });
}

/** @param {HTMLElement} place @param {Fault[]} faults @param {Element} [input] */
export const tellFaults = (place, faults, input) => tell(place, faults.map(faultSentence).join(" "), input);

let count = 0;

export class Field {
  /** @type {number|null|undefined} the value shown last */
  shown;
  /** The text that was written last; another one is being typed. */
  written = "";
  /** The text of the value that was shown last, with its unit. */
  stood = "";

  /**
   * @param {{label: string, hint?: string, slider?: boolean, id?: string, way?: Way, step?: string}} text
   * @param {(value: number, done: boolean) => Fault[]} put
   */
  constructor({ label, hint = "", slider, id = `field-${++count}`, way = LENGTH, step }, put) {
    this.put = put;
    this.way = way;
    this.step = step;
    this.input = numberField({ id, "data-step": step, "aria-describedby": `${id}-fault ${id}-hint` });
    this.unit = make("span", { class: "unit", "aria-hidden": "true" });
    this.tag = make("span", { class: "tag", hidden: true });
    this.fault = make("p", { class: "fault", id: `${id}-fault`, role: "alert", hidden: true });
    this.label = make("label", { for: id }, label);
    this.element = make("div", { class: "field" }, make("div", { class: "field-row" }, this.label, this.tag, this.input, this.unit));
    if (slider) this.addSlider(label);
    this.element.append(make("p", { class: "hint", id: `${id}-hint` }, hint), this.fault);
    this.input.addEventListener("change", () => this.typed());
  }

  /** @param {string} label */
  addSlider(label) {
    this.slider = make("input", { type: "range", "aria-label": label, step: "any" });
    this.slider.addEventListener("input", () => this.slid(false));
    this.slider.addEventListener("change", () => this.slid(true));
    this.element.append(this.slider);
  }

  /** Where the slider stands at a value. @param {number} value */
  placeOf(value) {
    return value;
  }

  /** The value where the slider stands. @param {number} place */
  valueAt(place) {
    return place;
  }

  typed() {
    this.written = this.input.value;
    this.refuse(typed(this.input, this.way.read(this.input.value), (value) => this.put(value, true)));
  }

  /** @param {boolean} done */
  slid(done) {
    this.refuse(this.put(this.valueAt(Number(this.slider?.value)), done));
  }

  /** @param {Fault[]} faults */
  refuse(faults) {
    tellFaults(this.fault, faults, this.input);
  }

  /**
   * Shows the value that there is now; what is being typed stays, and what was refused until the value is another.
   * @param {number|null|undefined} value
   * @param {{low: number, high: number, step?: number}} [limits] of the slider
   */
  show(value, limits) {
    if (!limits && value === this.shown && this.input.value + unitInUse() === this.stood) return;
    const [here, refused] = [document.activeElement === this.input, this.input.hasAttribute("aria-invalid")];
    const kept = refused ? here || value === this.shown : here && this.input.value !== this.written;
    this.shown = value;
    write(this.unit, this.way.unit());
    dress(this.input, { "data-step": this.step ?? FIELD_STEP[unitInUse()] });
    if (!kept) this.write(value);
    if (typeof value === "number" && limits) this.showSlider(value, limits);
  }

  /** @param {number|null|undefined} value */
  write(value) {
    if (typeof value === "number") this.input.value = this.way.text(value);
    this.written = this.input.value;
    this.stood = this.written + unitInUse();
    this.refuse([]);
  }

  /** @param {number} value @param {{low: number, high: number, step?: number}} limits */
  showSlider(value, { low, high, step = (high - low) / STEPS }) {
    if (!this.slider) return;
    dress(this.slider, { min: low, max: high, step, "aria-valuetext": this.way.said?.(value) ?? `${this.way.text(value)} ${this.way.unit()}` });
    if (document.activeElement !== this.slider) this.slider.value = String(this.placeOf(value));
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
    write(this.tag, word ? say(word) : "");
  }
}
