// What question 3 has folded under plain headings: each part asks nothing before it is opened.

import { dress, draw, make } from "../dom.js";
import { tellFaults } from "../field.js";
import { say } from "../words.js";
import { Bow } from "./bow.js";
import { Gears } from "./gears.js";
import { Running } from "./run.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").PairView} PairView */
/** @typedef {{element: HTMLElement, show: (scenario: any, a: any) => void}} Part */

const LOOKS = ["free", "slanted", "crooked"];

export class Parts {
  /** @type {{fold: HTMLDetailsElement, parts: Part[]}[]} */
  folds = [];
  /** @type {any} */
  scenario = null;
  /** @type {any} that of the chain which is held as A */
  a = null;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    const gears = ["a", "b"].map((which) => new Gears(which, session, (pair) => this.take(pair)));
    this.fold("gears", gears, make("p", { class: "hint" }, say("line.gears.how")), this.fault,
      make("div", { class: "gears-both" }, ...gears.map(({ element }) => element)), key(), make("p", { class: "hint" }, say("line.gears.left")));
    const run = new Running();
    this.fold("run", [run], run.element);
    const bow = new Bow();
    this.fold("bow", [bow], bow.element);
  }

  /**
   * @param {string} id
   * @param {Part[]} parts
   * @param {...Node} filling
   */
  fold(id, parts, ...filling) {
    const fold = make("details", { class: "fold line-part", id: `line-${id}` }, make("summary", {}, say(`line.parts.${id}`)), ...filling);
    fold.addEventListener("toggle", () => this.scenario && this.show(this.scenario, this.a));
    this.folds.push({ fold, parts });
  }

  get elements() {
    return this.folds.map(({ fold }) => fold);
  }

  /** @param {any} scenario @param {any} a */
  show(scenario, a) {
    [this.scenario, this.a] = [scenario, a];
    for (const { fold, parts } of this.folds) if (fold.open) for (const part of parts) part.show(scenario, a);
  }

  /** Puts a pair of wheels into the drive. @param {PairView} pair */
  take(pair) {
    const scenario = this.session.bench.scenario();
    const drive = { ...scenario.drive, driver_teeth: pair.front_teeth, driven_teeth: pair.back_teeth, offset_mm: pair.offset_mm };
    const faults = this.session.alter((bench) => bench.load({ ...scenario, drive }), true);
    tellFaults(this.fault, faults);
  }
}

/** What the three looks of a line mean. */
function key() {
  const sample = (/** @type {string} */ look) => {
    const line = draw("path", { class: `pair-line ${look}`, d: "M1 6H27" });
    const picture = draw("svg", { class: "gears-fan sample", "aria-hidden": "true" }, line);
    dress(picture, { viewBox: "0 0 28 12", width: 28, height: 12 });
    return picture;
  };
  return make("ul", { class: "line-key" }, ...LOOKS.map((look) => make("li", {}, sample(look), say(`line.gears.key.${look}`))));
}
