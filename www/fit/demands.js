// What is demanded: which number, its least and its most; one of them is looked at.

import { amend, make as described } from "../amend.js";
import { dress, make } from "../dom.js";
import { figure, unitInUse, written } from "../figures.js";
import { say } from "../words.js";
import { button, choice, entry, faultPlace, tellFaults } from "./entry.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").DemandView} DemandView */

const QUANTITIES = [
  "side_gap_mm", "pin_clearance_mm", "roller_clearance_mm", "roller_side_clearance_mm", "width_over_pins_mm", "yaw_limit_rad",
  "turn_limit_rad", "twist_limit_rad", "free_offset_mm", "pitch_under_load_mm",
];
/** What is allowed of a number at first, as shares of its middle: chosen. */
const BEGINS = { least: 0.7, most: 1.3 };

export class Demands {
  tabs = make("div", { class: "fit-tabs", role: "group", "aria-label": say("fit.demands") });
  editor = make("div", { class: "fit-row fit-demand" });
  fault = faultPlace();
  shown = "";

  /**
   * @param {Session} session
   * @param {(demand: number) => void} look
   */
  constructor(session, look) {
    this.session = session;
    this.look = look;
    this.element = make("section", { class: "fit-demands" }, this.tabs, this.editor, this.fault);
  }

  get demands() {
    return /** @type {Record<string, any>[]} */ (this.session.scenario.demands ?? []);
  }

  /** @param {Record<string, any>[]} demands */
  put(demands) {
    return this.session.alter((bench) => bench.load({ ...bench.scenario(), demands }), true);
  }

  /**
   * @param {DemandView[]} views
   * @param {number} looked
   * @param {(number|undefined)[]} yields
   */
  show(views, looked, yields) {
    amend(this.tabs, ...views.map(({ quantity }, i) => {
      const passes = yields[i] === undefined ? "" : say("fit.passes", { percent: percent(yields[i]) });
      return described("button", { type: "button", "aria-pressed": String(i === looked), onclick: () => this.look(i) },
        described("b", {}, say(`fit.name.${quantity}`)), " ", described("span", {}, passes));
    }));
    const now = JSON.stringify([looked, views.length, views[looked], unitInUse()]);
    if (now !== this.shown) this.edit(views, looked); // what is being typed or was refused is left alone
    this.shown = now;
  }

  /** @param {DemandView[]} views @param {number} looked */
  edit(views, looked) {
    const { quantity, at_least, at_most, middle } = views[looked];
    const { demands } = this;
    const change = (/** @type {Record<string, any>} */ part) => this.put(demands.map((demand, i) => (i === looked ? clean({ ...demand, ...part }) : demand)));
    const name = say(`fit.name.${quantity}`);
    const bound = (/** @type {string} */ key, /** @type {number|null} */ value) => make("label", {}, say(`fit.${key}`), " ",
      entry(quantity, say(`fit.${key}.of`, { name }), value, this.fault, (typed) => change({ [key]: typed }), { empty: true }));
    const free = QUANTITIES.filter((key) => !views.some((view) => view.quantity === key) && (key !== "free_offset_mm" || this.session.bench.scenario().drive));
    const add = choice(say("fit.demand.add"), [["", say("fit.demand.add")], ...free.map((key) => /** @type {[string, string]} */ ([key, say(`fit.name.${key}`)]))], "", (key) => key && this.add(key));
    const now = middle === null ? "" : say("fit.demand.middle", { value: figure(quantity, middle) });
    const at = /** @type {HTMLElement|null} */ (document.activeElement)?.getAttribute("aria-label");
    this.editor.replaceChildren(bound("at_least", at_least), bound("at_most", at_most), make("span", { class: "hint" }, now), add,
      ...(views.length > 1 ? [button("fit.demand.remove", () => { this.look(0); tellFaults(this.fault, this.put(demands.filter((_, i) => i !== looked))); }, name)] : []));
    if (at) /** @type {HTMLElement|null} */ (this.editor.querySelector(`[aria-label="${CSS.escape(at)}"]`))?.focus({ preventScroll: true });
  }

  /** A demand about what the chain of the drawing has now. @param {string} quantity */
  add(quantity) {
    const { geometry, play } = this.session.state;
    const now = geometry[quantity] ?? play[quantity] ?? null;
    const bounds = now === null ? { at_least: 0 } : { at_least: now * BEGINS.least, at_most: now * BEGINS.most };
    const faults = this.put([...this.demands, { quantity, ...bounds }]);
    tellFaults(this.fault, faults);
    if (faults.length === 0) this.look(this.demands.length - 1);
    dress(this.editor, {});
  }
}

/** @param {Record<string, any>} demand */
const clean = (demand) => Object.fromEntries(Object.entries(demand).filter(([, value]) => value !== null));

/** A yield in per cent with as many figures as tell it from all. @param {number|undefined} share */
export const percent = (share = 0) => written(Number((100 * share).toFixed(share > 0.999 ? 3 : share > 0.99 ? 2 : 1)));
