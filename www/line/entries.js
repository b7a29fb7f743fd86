// What the drive is given: the offset with its free range, and the numbers of the drive.

import { faultSentence } from "../field.js";
import { dress, make } from "../dom.js";
import { decimal, fieldOf, gap, mmOf, unitInUse } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("../kernel.js").Fault} Fault */

const POWER = ["watts", "turns_per_minute"];
const FORCE = ["tight_n"];
const ALWAYS = ["slack_n", "driver_teeth", "driven_teeth", "centre_distance_mm", "pin_friction", "face_friction"];
/** What a drive by power starts from where the scenario gives newtons: chosen. */
const CHOSEN_POWER = { watts: 200, turns_per_minute: 90 };

/** @param {string} key */
const isLength = (key) => key.endsWith("_mm");

/** A number that can be set, with the sentence that refuses it; what is typed or refused is left alone. */
class Entry {
  /** @type {number|null|undefined} the value shown last */
  shown;

  /**
   * @param {string} key
   * @param {(value: number, done: boolean) => Fault[]} set
   */
  constructor(key, set) {
    this.key = key;
    this.set = set;
    const id = `drive-${key}`;
    this.input = make("input", { type: "number", id, step: "any", inputmode: "decimal", "aria-describedby": `${id}-fault` });
    this.unit = make("span", { class: "unit", "aria-hidden": "true" });
    this.fault = make("p", { class: "fault", id: `${id}-fault`, role: "alert", hidden: true });
    const label = make("label", { for: id }, say(`drive.${key}`));
    this.element = make("div", { class: "field" }, make("div", { class: "field-row" }, label, make("span", { hidden: true }), this.input, this.unit), this.fault);
    this.input.addEventListener("change", () => {
      const { value } = this.input;
      const number = isLength(key) ? mmOf(value) : value.trim() === "" ? NaN : Number(value);
      if (Number.isNaN(number)) this.refuse([{ path: "", value, rule: "not_a_number", numbers: {} }]);
      else this.refuse(this.set(number, true));
    });
  }

  /** @param {Fault[]} faults */
  refuse(faults) {
    this.fault.textContent = faults.map(faultSentence).join(" ");
    this.fault.hidden = faults.length === 0;
    dress(this.input, { "aria-invalid": faults.length > 0 ? "true" : null });
  }

  /** @param {number|null|undefined} value */
  show(value) {
    const length = isLength(this.key) ? (unitInUse() === "in" ? "unit.inch" : "unit.mm") : `drive.${this.key}.unit`;
    this.unit.textContent = say(length);
    const refused = this.input.hasAttribute("aria-invalid") && value === this.shown;
    this.shown = value;
    if (refused || document.activeElement === this.input) return;
    if (typeof value === "number") this.input.value = isLength(this.key) ? fieldOf(value) : String(value);
    this.refuse([]);
  }
}

/** The offset: a field and a slider that goes by steps whose strands are kept. */
class Offset extends Entry {
  /** @param {(value: number, done: boolean) => Fault[]} set */
  constructor(set) {
    super("offset_mm", set);
    this.slider = make("input", { type: "range", min: 0, "aria-label": say("drive.offset_mm") });
    this.free = make("span", { class: "free-name" });
    this.end = make("span", { class: "end-name" });
    this.track = make("div", { class: "crooked-track" }, this.slider, make("div", { class: "crooked-ends" }, this.free, this.end));
    this.element.classList.add("crooked-offset");
    this.element.append(this.track);
    this.near = false;
    const aside = () => (this.near ? -Number(this.slider.value) : Number(this.slider.value));
    this.slider.addEventListener("input", () => this.refuse(set(aside(), false)));
    this.slider.addEventListener("change", () => this.refuse(set(aside(), true)));
  }

  /** @param {LineState} line */
  showLine({ offset_mm, aside_mm, step_mm, to_mm, free_mm }) {
    this.show(aside_mm);
    this.near = aside_mm < 0;
    const text = say(offset_mm <= free_mm ? "line.slider.free" : "line.slider.over", { offset_mm, free_mm });
    dress(this.slider, { max: to_mm, step: step_mm, "aria-valuetext": text });
    if (document.activeElement !== this.slider) this.slider.value = String(offset_mm);
    this.track.style.setProperty("--free", String(Math.min(1, free_mm / to_mm)));
    this.free.textContent = say("line.free.to", { free_mm });
    this.end.textContent = gap(to_mm);
  }
}

export class Entries {
  tight_n = 0;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    const entry = (/** @type {string} */ key) => new Entry(key, (value, done) => this.set(key, value, done));
    this.offset = new Offset((value, done) => this.set("offset_mm", value, done));
    this.power = POWER.map(entry);
    this.force = FORCE.map(entry);
    this.always = ALWAYS.map(entry);
    this.by = ["power", "force"].map((by) => {
      const button = make("button", { type: "button", class: "choice", "data-by": by }, say(`line.by.${by}`));
      button.addEventListener("click", () => this.pullBy(by));
      return button;
    });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.element = make("section", { class: "crooked-given" }, make("h2", {}, say("line.given")),
      make("div", { class: "crooked-by", role: "group", "aria-label": say("line.by") }, ...this.by), this.fault,
      ...[...this.power, ...this.force, ...this.always].map((each) => each.element));
  }

  /**
   * @param {string} key
   * @param {number} value
   * @param {boolean} done
   */
  set(key, value, done) {
    return this.session.alter((bench) => bench.set(`drive.${key}`, value), done);
  }

  /** The pull by the power carried, or by newtons: never both. @param {string} by */
  pullBy(by) {
    const scenario = this.session.bench.scenario();
    const { watts, turns_per_minute, tight_n, ...rest } = scenario.drive ?? {};
    if ((by === "power") === (watts !== undefined)) return;
    const pull = by === "power" ? CHOSEN_POWER : { tight_n: Number(decimal(this.tight_n, 0)) };
    const faults = this.session.alter((bench) => bench.load({ ...scenario, drive: { ...rest, ...pull } }), true);
    this.fault.textContent = faults.map(faultSentence).join(" ");
    this.fault.hidden = faults.length === 0;
  }

  /** @param {LineState} line */
  show(line) {
    const drive = this.session.bench.scenario().drive ?? {};
    const byPower = drive.watts !== undefined;
    this.tight_n = line.tight_n;
    this.offset.showLine(line);
    for (const each of this.power) each.element.hidden = !byPower;
    for (const each of this.force) each.element.hidden = byPower;
    for (const each of [...this.power, ...this.force, ...this.always]) each.show(drive[each.key]);
    for (const button of this.by) dress(button, { "aria-pressed": String((button.dataset.by === "power") === byPower) });
  }
}
