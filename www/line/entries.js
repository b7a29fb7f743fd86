// What the drive is given: the offset with its free range, and the numbers of the drive.

import { dress, make } from "../dom.js";
import { Field, tellFaults } from "../field.js";
import { gap } from "../figures.js";
import { wayOf } from "../way.js";
import { say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("../kernel.js").Fault} Fault */

/** What stands on the stage is the same at every offset. */
const OFFSET = "offset_mm";
const POWER = ["watts", "turns_per_minute"];
const FORCE = ["tight_n"];
const ALWAYS = ["slack_n", "driver_teeth", "driven_teeth", "centre_distance_mm", "pin_friction", "face_friction"];
/** What a drive by power starts from where the scenario gives newtons: chosen. */
const CHOSEN_POWER = { watts: 200, turns_per_minute: 90 };

/** The offset: a field and a slider that goes by steps whose strands are kept. */
class Offset extends Field {
  near = false;
  text = "";

  /** @param {(value: number, done: boolean) => Fault[]} put */
  constructor(put) {
    super({ id: "drive-offset_mm", label: say("drive.offset_mm"), slider: true, step: "any" }, put);
    this.free = make("span", { class: "free-name" });
    this.end = make("span", { class: "end-name" });
    this.track = make("div", { class: "crooked-track" }, /** @type {Node} */ (this.slider), make("div", { class: "crooked-ends" }, this.free, this.end));
    this.element.classList.add("crooked-offset");
    this.element.append(this.track);
    this.way = { ...this.way, said: () => this.text };
  }

  placeOf(/** @type {number} */ value) {
    return Math.abs(value);
  }

  valueAt(/** @type {number} */ place) {
    return this.near ? -place : place;
  }

  /** @param {LineState} line */
  showLine({ offset_mm, aside_mm, step_mm, to_mm, free_mm }) {
    this.near = aside_mm < 0;
    this.text = say(offset_mm <= free_mm ? "line.slider.free" : "line.slider.over", { offset_mm, free_mm });
    this.show(aside_mm, { low: 0, high: to_mm, step: step_mm });
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
    const entry = (/** @type {string} */ key) => {
      const word = `drive.${key}`;
      const text = { id: `drive-${key}`, label: say(word), step: "any", way: wayOf(key, `${word}.unit`) };
      return { key, field: new Field(text, (value, done) => this.set(key, value, done)) };
    };
    this.offset = new Offset((value, done) => this.set(OFFSET, value, done));
    this.power = POWER.map(entry);
    this.force = FORCE.map(entry);
    this.always = ALWAYS.map(entry);
    this.by = ["power", "force"].map((by) => {
      const button = make("button", { type: "button", class: "choice", "data-by": by }, say(`line.by.${by}`));
      button.addEventListener("click", () => this.pullBy(by));
      return button;
    });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.begun = make("p", { class: "hint" }, say("line.begun"));
    this.element = make("section", { class: "crooked-given" }, make("h2", {}, say("line.given")), this.begun,
      make("div", { class: "crooked-by", role: "group", "aria-label": say("line.by") }, ...this.by), this.fault,
      ...[...this.power, ...this.force, ...this.always].map(({ field }) => field.element));
  }

  /**
   * @param {string} key
   * @param {number} value
   * @param {boolean} done
   */
  set(key, value, done) {
    if (key === OFFSET) return this.session.restate(`drive.${key}`, value, done);
    return this.session.alter((bench) => bench.set(`drive.${key}`, value), done);
  }

  /** The pull by the power carried, or by newtons: never both. @param {string} by */
  pullBy(by) {
    const scenario = this.session.bench.scenario();
    const { watts, turns_per_minute, tight_n, ...rest } = scenario.drive ?? {};
    if ((by === "power") === (watts !== undefined)) return;
    const pull = by === "power" ? CHOSEN_POWER : { tight_n: Math.round(this.tight_n) };
    const faults = this.session.alter((bench) => bench.load({ ...scenario, drive: { ...rest, ...pull } }), true);
    tellFaults(this.fault, faults);
  }

  /** @param {LineState} line */
  show(line) {
    const drive = this.session.scenario.drive ?? {};
    const byPower = drive.watts !== undefined;
    this.tight_n = line.tight_n;
    this.offset.showLine(line);
    this.begun.hidden = Object.keys(this.session.baseDrive).length > 0;
    for (const { field } of this.power) field.element.hidden = !byPower;
    for (const { field } of this.force) field.element.hidden = byPower;
    for (const { key, field } of [...this.power, ...this.force, ...this.always]) field.show(drive[key]);
    for (const button of this.by) dress(button, { "aria-pressed": String((button.dataset.by === "power") === byPower) });
  }
}
