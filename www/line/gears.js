// My gears: two arrangements of wheels, the offsets that each uses, and what every pair costs.

import { amend } from "../amend.js";
import { cellOfA, noteOfA } from "../compare/note.js";
import { dress, make } from "../dom.js";
import { faultSentence } from "../field.js";
import { unitInUse } from "../figures.js";
import { labour, Refused } from "../labour.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { Fan } from "./fan.js";
import { inShort, inWords, isOf, loss, multiple, summary } from "./gears-said.js";
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
  /** @type {Arrangement|null} what the table shows */
  drawn = null;
  unit = "";
  /** @type {Map<HTMLElement, PairView>} */
  buttons = new Map();
  /** @type {HTMLElement[]} where A's numbers stand, in the order of the pairs */
  slots = [];
  /** @type {object|null} what A is asked of */
  a = null;
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
    /** @type {Steady<Arrangement>} the same wheels under the chain that is held as A */
    this.ofA = new Steady(`line.gears.${which}.a`, "line", () => this.draw());
    this.note = make("div");
    this.fan = new Fan(say(`line.gears.${which}`));
    this.table = make("div", { class: "gears-table" });
    this.element = make("section", { class: "gears", "data-which": which, "aria-label": say(`line.gears.${which}`) },
      make("h2", {}, say(`line.gears.${which}`)), this.summary, this.note, this.fan.picture, this.table,
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

  /** The arrangement as the kernel takes it; none where a field holds no numbers. */
  wanted() {
    const read = this.fields.map((field) => ({ field, value: field.read(this.text(field.key)) }));
    return read.some(({ value }) => value === null) ? null : Object.fromEntries(read.map(({ field, value }) => [field.key, value]));
  }

  /** @param {object & {drive?: Record<string, any>}} scenario @param {object|null} a */
  show(scenario, a) {
    this.a = a;
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
    if (this.a) this.ofA.want(this.a, { gears: this.of });
    const a = this.a ? this.ofA.known : null;
    const [now, other] = [summary(told), a ? summary(a) : ""];
    this.summary.textContent = now;
    const apart = this.fan.show(told, a);
    amend(this.note, ...noteOfA(now, apart ? `${other} ${say("line.gears.of.a")}` : other));
    if (this.drawn !== told || this.unit !== unitInUse()) this.table.replaceChildren(this.grid(told));
    [this.drawn, this.unit] = [told, unitInUse()];
    this.slots.forEach((slot, at) => amend(slot, ...(a ? cellOfA(inShort(told.pairs[at]), inShort(a.pairs[at])) : [])));
    const { drive = {} } = this.session.bench.scenario();
    for (const [button, pair] of this.buttons) dress(button, { "aria-pressed": String(isOf(drive, pair)) });
  }

  /** Back wheels down, the outermost first as in the picture, front wheels across. @param {Arrangement} told */
  grid(told) {
    this.buttons = new Map();
    this.slots = told.pairs.map(() => make("span"));
    const at = (/** @type {number} */ front, /** @type {number} */ back) => front * told.back_mm.length + back;
    const { front: fronts = [], back: backs = [] } = /** @type {Record<string, number[]>} */ (this.of);
    const head = (/** @type {string} */ scope, /** @type {string} */ text) => make("th", { scope }, text);
    return make("table", {},
      make("thead", {}, make("tr", {}, head("col", say("line.gears.corner")), ...fronts.map((front) => head("col", say("line.gears.front", { teeth: front }))))),
      make("tbody", {}, ...backs.map((back, row) => make("tr", {}, head("row", say("line.gears.back", { teeth: back })),
        ...fronts.map((_, column) => this.cell(told.pairs[at(column, row)], this.slots[at(column, row)])))).reverse()));
  }

  /** @param {PairView|null} pair @param {HTMLElement} slot */
  cell(pair, slot) {
    if (!pair) return make("td", {}, say("line.gears.none"), slot);
    const button = make("button", { type: "button", class: pair.free ? "pair free" : "pair", "aria-pressed": "false" },
      make("b", {}, multiple(pair)), " ", make("span", {}, loss(pair)));
    button.setAttribute("aria-label", `${button.textContent}: ${inWords(pair)}`); // its own words first: who speaks them means it
    for (const kind of ["focus", "pointerenter"]) button.addEventListener(kind, () => this.fan.light(pair));
    for (const kind of ["blur", "pointerleave"]) button.addEventListener(kind, () => this.fan.light(null));
    button.addEventListener("click", () => this.take(pair));
    this.buttons.set(button, pair);
    return make("td", {}, button, slot);
  }
}
