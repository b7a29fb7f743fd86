// The load on the next outer link: pull, side force, moment; and whether plates and pins give.

import { byId, dress, make } from "./dom.js";
import { faultSentence } from "./field.js";
import { figure } from "./figures.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {"tension_n"|"side_n"|"moment_n_mm"} Key */

/** The run of each slider; a value that is typed may go beyond. */
const RUNS = /** @type {const} */ ({
  tension_n: { low: 0, high: 1000, step: 5 }, side_n: { low: -200, high: 200, step: 1 },
  moment_n_mm: { low: -2000, high: 2000, step: 10 },
});

/** @param {Session} session */
export function startLoad(session) {
  const keys = /** @type {Key[]} */ (Object.keys(RUNS));
  const entries = keys.map((key) => new Entry(session, key));
  const choices = [false, true].map((springy) => choice(session, springy));
  const part = make("section", { class: "load", "aria-labelledby": "load-title", hidden: true },
    make("h2", { id: "load-title" }, say("load.title")), ...entries.map(({ element }) => element),
    make("div", { class: "choices" }, ...choices));
  byId("change").prepend(part);
  session.listen(() => {
    part.hidden = session.work.how !== "load";
    if (part.hidden) return;
    const { load } = session.state;
    for (const entry of entries) entry.show(load[entry.key]);
    choices.forEach((button, i) => dress(button, { "aria-pressed": String(load.springy === (i === 1)) }));
    choices[1].children[1].textContent = say("load.springy.note", { stiffness: String(Number(load.stiffness_n_mm.toPrecision(2))) });
  });
}

/**
 * @param {Session} session
 * @param {boolean} springy
 */
function choice(session, springy) {
  const id = springy ? "load.springy" : "load.rigid";
  const button = make("button", { type: "button", class: "choice" },
    make("span", { class: "choice-name" }, say(id)), make("span", { class: "choice-note" }, say(`${id}.note`)));
  button.addEventListener("click", () => session.move({ springy }, true));
  return button;
}

/** One number of the load, as a slider and a field. */
class Entry {
  /**
   * @param {Session} session
   * @param {Key} key
   */
  constructor(session, key) {
    this.session = session;
    this.key = key;
    const name = say(`load.${key}`);
    this.fault = make("p", { class: "fault", id: `load-${key}-fault`, role: "alert", hidden: true });
    this.input = make("input", { type: "number", id: `load-${key}`, step: "any", inputmode: "decimal", "aria-describedby": this.fault.id });
    this.slider = make("input", { type: "range", "aria-label": name, step: RUNS[key].step });
    const unit = make("span", { class: "unit", "aria-hidden": "true" }, say(`load.${key}.unit`));
    this.element = make("div", { class: "field" },
      make("div", { class: "field-row" }, make("label", { for: this.input.id }, name), make("span", { hidden: true }), this.input, unit),
      this.slider, make("p", { class: "hint" }, say(`load.${key}.hint`)), this.fault);
    this.slider.addEventListener("input", () => this.put(this.slider.valueAsNumber, false));
    this.slider.addEventListener("change", () => this.put(this.slider.valueAsNumber, true));
    this.input.addEventListener("change", () => this.put(this.input.valueAsNumber, true));
  }

  /**
   * @param {number} value
   * @param {boolean} done
   */
  put(value, done) {
    const none = [{ path: "", value, rule: "not_a_number", numbers: {} }];
    const set = () => this.session.alter((bench) => bench.set(`load.${this.key}`, value), done);
    const faults = Number.isFinite(value) ? set() : none;
    this.fault.textContent = faults.map(faultSentence).join(" ");
    this.fault.hidden = faults.length === 0;
    dress(this.input, { "aria-invalid": faults.length > 0 ? "true" : null });
  }

  /** @param {number} value */
  show(value) {
    const { low, high } = RUNS[this.key];
    const refused = document.activeElement === this.input && this.input.getAttribute("aria-invalid");
    if (!refused) {
      this.input.value = String(Number(value.toPrecision(7)));
      this.fault.hidden = true;
      dress(this.input, { "aria-invalid": null });
    }
    const text = `${figure(this.key, value)} ${say(`load.${this.key}.unit`)}`;
    dress(this.slider, { min: Math.min(low, value), max: Math.max(high, value), "aria-valuetext": text });
    if (document.activeElement !== this.slider) this.slider.value = String(value);
  }
}
