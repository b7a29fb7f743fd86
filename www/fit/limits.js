// The table of dimensions with their limits: typed, graded, pasted from a spreadsheet and copied to one.

import { make } from "../dom.js";
import { point, unitInUse } from "../figures.js";
import { faultSentence } from "../field.js";
import { labour, Refused } from "../labour.js";
import { has, say } from "../words.js";
import { button, choice, entry, faultPlace, named, tellFaults } from "./entry.js";
import { sizeName } from "./names.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").LimitView} LimitView */
/** @typedef {import("../kernel.js").Fault} Fault */

const LAWS = ["normal", "truncated", "uniform", "triangular"];
const GRADES = ["H", "h", "js"].flatMap((letter) => [6, 7, 8, 9, 10, 11].map((grade) => `${letter}${grade}`));
/** Limits that a dimension begins with: chosen. */
const BEGINS = { minus: 0.01, plus: 0.01 };

export class Limits {
  body = make("tbody");
  fault = faultPlace();
  shown = "";

  /**
   * @param {Session} session
   * @param {() => object} scenario what the worker is asked of
   */
  constructor(session, scenario) {
    this.session = session;
    this.scenario = scenario;
    const titles = ["dimension", "size", "minus", "plus", "grade", "law", "remove"].map((id) => make("th", { scope: "col" }, say(`fit.limits.${id}`)));
    this.table = make("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.limits") },
      make("table", { class: "fit-table fit-limits" }, make("thead", {}, make("tr", {}, ...titles)), this.body));
    this.more = make("div", { class: "fit-row" });
    this.sheet = make("textarea", { rows: 5, spellcheck: "false", "aria-label": say("fit.sheet"), "aria-describedby": "fit-rows", placeholder: say("fit.sheet.example") });
    this.rows = make("ul", { class: "fault fit-rows", id: "fit-rows", role: "alert", hidden: true });
    const fold = make("details", { class: "fold" }, make("summary", {}, say("fit.sheet")), make("p", { class: "hint" }, say("fit.sheet.hint")), this.sheet,
      make("div", { class: "fit-row" }, button("fit.sheet.take", () => this.paste()), button("fit.sheet.copy", () => this.copy())), this.rows);
    this.element = make("section", { class: "fit-block" }, make("h2", {}, say("fit.limits")), make("p", { class: "hint" }, say("fit.limits.hint")), this.table, this.fault, this.more, fold);
  }

  get limits() {
    return /** @type {Record<string, any>[]} */ (this.session.scenario.limits ?? []);
  }

  /**
   * Puts other limits on the bench.
   * @param {Record<string, any>[]} limits
   * @returns {Fault[]}
   */
  put(limits) {
    return this.session.alter((bench) => bench.load({ ...bench.scenario(), limits }), true);
  }

  /** @param {string} dimension @param {Record<string, any>} part */
  change(dimension, part) {
    return this.take(new Map([[dimension, part]]));
  }

  /**
   * Takes over parts of some dimensions' limits: a grade goes where both ends are given, both ends where a grade is.
   * @param {Map<string, Record<string, any>>} parts
   */
  take(parts) {
    const plain = (/** @type {Record<string, any>} */ limit, /** @type {Record<string, any>} */ part) => ("grade" in part ? dropped(limit, ["minus", "plus"]) : "minus" in part || "plus" in part ? dropped(limit, ["grade"]) : limit);
    return this.put(this.limits.map((limit) => {
      const part = parts.get(limit.dimension);
      return part ? { ...plain(limit, part), ...part } : limit;
    }));
  }

  /** @param {LimitView[]} views */
  show(views) {
    const now = JSON.stringify([views, this.limits, unitInUse()]);
    if (now === this.shown) return; // what is being typed or was refused is left alone
    this.shown = now;
    const at = document.activeElement?.closest("#fit-limits-body [data-at]")?.getAttribute("data-at");
    this.body.id = "fit-limits-body";
    this.body.replaceChildren(...views.flatMap((view) => this.row(view)));
    if (at) /** @type {HTMLElement|null} */ (this.body.querySelector(`[data-at="${at}"]`))?.focus({ preventScroll: true });
    const free = Object.keys(this.session.state.sizes).filter((key) => !views.some(({ dimension }) => dimension === key));
    const add = choice(say("fit.limits.add"), [["", say("fit.limits.add")], ...free.map((key) => /** @type {[string, string]} */ ([key, sizeName(key)]))], "", (dimension) =>
      dimension && tellFaults(this.fault, this.put([...this.limits, { dimension, ...BEGINS }])));
    this.more.replaceChildren(add);
  }

  /** @param {LimitView} view */
  row({ dimension, nominal_mm, minus_mm, plus_mm, law }) {
    const name = sizeName(dimension);
    const grade = this.limits.find((limit) => limit.dimension === dimension)?.grade ?? "";
    const place = faultPlace();
    const both = (/** @type {string} */ key, /** @type {number|null} */ value) => ({ minus: minus_mm, plus: plus_mm, [key]: value });
    const label = (/** @type {string} */ what) => say("fit.limits.of", { what: say(`fit.limits.${what}`), part: name });
    const cells = [
      entry("size_mm", label("size"), nominal_mm, place, (mm) => this.session.alter((bench) => bench.set(`chain.${dimension}`, mm), true)),
      entry("minus_mm", label("minus"), minus_mm, place, (mm) => this.change(dimension, both("minus", mm))),
      entry("plus_mm", label("plus"), plus_mm, place, (mm) => this.change(dimension, both("plus", mm))),
      choice(label("grade"), ["", ...GRADES].map((each) => [each, each || "–"]), grade, (picked) => tellFaults(place, this.change(dimension, picked ? { grade: picked } : both("plus", plus_mm)))),
      choice(label("law"), LAWS.map((each) => [each, say(`fit.law.${each}`)]), law, (picked) => tellFaults(place, this.change(dimension, { law: picked }))),
      button("fit.limits.remove", () => tellFaults(this.fault, this.put(this.limits.filter((limit) => limit.dimension !== dimension))), name),
    ];
    cells.forEach((cell, i) => cell.setAttribute("data-at", `${dimension}.${i}`));
    return [
      make("tr", {}, make("th", { scope: "row" }, `${name}${unitInUse() === "in" ? ", in" : ", mm"}`), ...cells.map((cell) => make("td", {}, cell))),
      make("tr", { class: "fault-row" }, make("td", { colspan: 7 }, place)),
    ];
  }

  async paste() {
    try {
      const scenario = await labour("fit.table", "fit", this.scenario(), { paste: this.sheet.value });
      if (scenario) this.refuse(this.session.alter((bench) => bench.load({ ...bench.scenario(), chain: scenario.chain, limits: scenario.limits }), true));
    } catch (error) {
      this.refuse(error instanceof Refused ? error.faults : [{ path: "table", value: "", rule: "other", numbers: {} }]);
    }
  }

  /** One sentence a fault. @param {Fault[]} faults */
  refuse(faults) {
    this.rows.replaceChildren(...faults.map((fault) => make("li", {}, refusal(fault))));
    this.rows.hidden = faults.length === 0;
  }

  /** As the language's spreadsheets take it: where a comma stands before decimals, semicolons between fields. */
  async copy() {
    const csv = await labour("fit.table", "fit", this.scenario(), { copy: true }).catch(() => null);
    if (csv === null) return;
    this.sheet.value = point() === "," ? csv.replace(/,/g, ";").replace(/\./g, ",") : csv;
    this.sheet.select();
    await navigator.clipboard?.writeText(this.sheet.value).catch(() => {}); // selected, it can be copied by hand
  }
}

/** @param {Record<string, any>} limit @param {string[]} keys */
const dropped = (limit, keys) => Object.fromEntries(Object.entries(limit).filter(([key]) => !keys.includes(key)));

/** What is refused of a pasted table, its row first; a cell that a row does not come to has the place where it ends. @param {Fault} fault */
function refusal(fault) {
  const [, row, column] = /^row\[(\d+)\]\.?(.*)$/.exec(fault.path) ?? [];
  const cut = column && fault.rule === "missing" && typeof fault.value === "number";
  const own = cut ? "fit.sheet.cut" : `fit.sheet.${fault.path}.${fault.rule}`;
  const told = named(row ? { ...fault, path: column || "row" } : fault);
  const said = has(own) ? say(own, { field: cut ? say(told.path) : "", last: fault.value }) : faultSentence(told);
  return row ? say("fit.sheet.row", { row, said }) : said;
}
