// My gears: two arrangements of wheels, the offsets that each uses, and what every pair costs.

import { make } from "../dom.js";
import { faultSentence } from "../field.js";
import { decimal, gap } from "../figures.js";
import { labour, Refused } from "../labour.js";
import { say } from "../words.js";
import { Fan } from "./fan.js";
import { Row } from "./row.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").Arrangement} Arrangement */
/** @typedef {import("./types.js").PairView} PairView */

/** What both arrangements begin with: chosen, not measured. From the frame outwards. */
const CHOSEN = /** @type {Record<string, Record<string, string>>} */ ({
  a: { front: "44", front_step_mm: "0", back: "42 36 32 28 25 22 19 17 15 13 11", back_step_mm: "3.9", aside_mm: "0", guides: "11 11" },
  b: { front: "30 46", front_step_mm: "8", back: "32 28 25 22 19 17 15 13 12 11", back_step_mm: "4", aside_mm: "0", guides: "11 11" },
});
const ROWS = ["front", "back", "guides"];
const QUIET_MS = 200;

/** One of the two arrangements. */
export class Gears {
  /** @type {Arrangement|null} */
  told = null;
  /** @type {object} what it was told of */
  of = {};
  asked = "";
  timer = 0;

  /**
   * @param {string} which
   * @param {Session} session
   * @param {(pair: PairView) => void} take
   */
  constructor(which, session, take) {
    this.which = which;
    this.session = session;
    this.take = take;
    this.fields = Object.keys(CHOSEN[which]).map((key) => new Row(`${which}.${key}`, key, ROWS.includes(key), (text) => this.keep(key, text)));
    this.summary = make("p", { class: "gears-summary", "aria-live": "polite" });
    this.fan = new Fan(say(`line.gears.${which}`));
    this.table = make("div", { class: "gears-table" });
    this.element = make("section", { class: "gears", "data-which": which, "aria-label": say(`line.gears.${which}`) },
      make("h3", {}, say(`line.gears.${which}`)), this.summary, this.fan.picture, this.table,
      make("div", { class: "gears-fields" }, ...this.fields.map((each) => each.element)));
  }

  /** The text of a field: what was typed, or what was chosen. @param {string} key */
  text(key) {
    return this.session.work.own?.[`gears.${this.which}.${key}`] ?? CHOSEN[this.which][key];
  }

  /**
   * @param {string} key
   * @param {string} text
   */
  keep(key, text) {
    const own = { ...this.session.work.own, [`gears.${this.which}.${key}`]: text };
    if (text === CHOSEN[this.which][key]) delete own[`gears.${this.which}.${key}`];
    this.session.move({ own }, true);
  }

  /** The arrangement as the kernel takes it; the faults of fields that hold no numbers. */
  wanted() {
    const read = this.fields.map((field) => ({ field, value: field.read(this.text(field.key)) }));
    for (const { field, value } of read) field.refuse(value === null ? say("fault.not_a_number", { field: field.name, value: this.text(field.key) }) : "");
    return read.some(({ value }) => value === null) ? null : Object.fromEntries(read.map(({ field, value }) => [field.key, value]));
  }

  /** @param {object & {drive?: Record<string, any>}} scenario */
  show(scenario) {
    for (const field of this.fields) field.show(this.text(field.key));
    const { driver_teeth, driven_teeth, offset_mm, ...drive } = scenario.drive ?? {};
    const now = JSON.stringify([{ ...scenario, drive }, this.fields.map(({ key }) => this.text(key))]);
    if (now !== this.asked) {
      this.asked = now;
      this.element.toggleAttribute("data-busy", true);
      if (!this.told) this.summary.textContent = say("line.gears.busy");
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.ask(scenario), QUIET_MS);
    } else this.draw();
  }

  /** @param {object} scenario */
  async ask(scenario) {
    const gears = this.wanted();
    try {
      const told = gears && (await labour(`line.gears.${this.which}`, "line", scenario, { gears }));
      if (told) [this.told, this.of] = [told, gears];
    } catch (error) {
      const faults = error instanceof Refused ? error.faults : [];
      for (const field of this.fields) field.refuse(faults.filter(({ path }) => path === field.key).map((fault) => faultSentence({ ...fault, path: field.name })).join(" "));
      if (faults.length === 0) this.summary.textContent = /** @type {Error} */ (error).message;
    }
    this.element.toggleAttribute("data-busy", false);
    this.draw();
  }

  draw() {
    const { told } = this;
    if (!told) return;
    this.summary.textContent = summary(told);
    this.fan.show(told);
    this.table.replaceChildren(this.grid(told));
  }

  /** Back wheels down, the outermost first as in the picture, front wheels across. @param {Arrangement} told */
  grid(told) {
    const { drive = {} } = this.session.bench.scenario();
    const at = (/** @type {number} */ front, /** @type {number} */ back) => told.pairs[front * told.back_mm.length + back];
    const { front: fronts = [], back: backs = [] } = /** @type {Record<string, number[]>} */ (this.of);
    const head = (/** @type {string} */ scope, /** @type {string} */ text) => make("th", { scope }, text);
    return make("table", {},
      make("thead", {}, make("tr", {}, head("col", say("line.gears.corner")), ...fronts.map((front) => head("col", say("line.gears.front", { teeth: front }))))),
      make("tbody", {}, ...backs.map((back, row) => make("tr", {}, head("row", say("line.gears.back", { teeth: back })),
        ...fronts.map((_, column) => this.cell(at(column, row), drive)))).reverse()));
  }

  /**
   * @param {PairView|null} pair
   * @param {Record<string, any>} drive
   */
  cell(pair, drive) {
    if (!pair) return make("td", {}, say("line.gears.none"));
    const now = drive.driver_teeth === pair.front_teeth && drive.driven_teeth === pair.back_teeth && Math.abs(drive.offset_mm) === Math.abs(pair.offset_mm);
    const loss = pair.loss_w === null ? "–" : say("line.gears.watts", { watts: decimal(pair.loss_w, 2) });
    const button = make("button", { type: "button", class: pair.free ? "pair free" : "pair", "aria-pressed": String(now), "aria-label": inWords(pair) },
      make("b", {}, pair.free ? say("line.gears.free") : times(pair, "line.gears.times")), " ", make("span", {}, loss));
    for (const kind of ["focus", "pointerenter"]) button.addEventListener(kind, () => this.fan.light(pair));
    for (const kind of ["blur", "pointerleave"]) button.addEventListener(kind, () => this.fan.light(null));
    button.addEventListener("click", () => this.take(pair));
    return make("td", {}, button);
  }
}

/** @param {PairView} pair */
const times = ({ friction_multiple }, word = "line.times") => (friction_multiple === null ? "–" : say(word, { times: decimal(friction_multiple, 2) }));

/** @param {PairView} pair */
const inWords = (pair) => say(pair.free ? "line.gears.pair.free" : "line.gears.pair", {
  front: pair.front_teeth, back: pair.back_teeth, aside_mm: Math.abs(pair.offset_mm), times: times(pair),
  watts: pair.loss_w === null ? "–" : decimal(pair.loss_w, 2), straight: decimal(pair.straight_w, 2),
});

/** The range that is used, how much of it is free, and the pair that costs most. @param {Arrangement} told */
function summary({ pairs, range_mm, of_w }) {
  const all = pairs.filter((pair) => pair !== null);
  const more = (/** @type {PairView} */ pair) => (pair.loss_w ?? pair.straight_w) - pair.straight_w;
  const worst = [...all].sort((one, other) => more(other) - more(one))[0];
  if (!worst) return say("line.gears.nothing");
  const crooked = worst.free ? "" : ` ${say("line.gears.worst", { front: worst.front_teeth, back: worst.back_teeth, aside_mm: Math.abs(worst.offset_mm), times: times(worst), watts: decimal(worst.loss_w ?? 0, 2), straight: decimal(worst.straight_w, 2), of_w: decimal(of_w, 0) })}`;
  const guides = worst.guide_w > 0 ? ` ${say("line.gears.guides", { watts: decimal(worst.guide_w, 2) })}` : "";
  return say("line.gears.range", { low: gap(range_mm[0]), high: gap(range_mm[1]), free_mm: Math.min(...all.map(({ free_mm }) => free_mm)), free: all.filter(({ free }) => free).length, count: all.length }) + crooked + guides;
}
