// Clearance is not tolerance: two sliders, one moves how big the gap is, the other how sure one is of it.

import { draw, dress, make } from "../dom.js";
import { decimal, figure } from "../figures.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { percent } from "./demands.js";
import { histogram } from "./histogram.js";
import { Scale } from "./scale.js";

/** @typedef {import("./types.js").ChanceView} ChanceView */
/** @typedef {import("./types.js").DemandView} DemandView */
/** @typedef {import("./types.js").FitState} FitState */

const SETS = 20000;
/** How far the gap goes either way, mm, and between which times of the limits: chosen. */
const AWAY_MM = 0.1;
const TIMES = [0.25, 2];
/** The demands that this can be tried on, and the size that makes such a gap bigger. */
const MOVES = /** @type {Record<string, string>} */ ({ side_gap_mm: "outer_spacing_mm", pin_clearance_mm: "bore_mm", roller_clearance_mm: "roller_bore_mm" });

export class Exercise {
  bigger_mm = 0;
  times = 1;
  picture = draw("svg", { class: "fit-picture", role: "img" });
  said = make("p", {});
  /** @type {any} */
  last = null;

  /**
   * @param {() => object} scenario
   * @param {() => void} told
   */
  constructor(scenario, told) {
    this.scenario = scenario;
    /** @type {Steady<ChanceView>} */
    this.chance = new Steady("fit.try", "fit", told);
    /** @type {Steady<FitState>} */
    this.state = new Steady("fit.tried", "fit", told);
    const slider = (/** @type {string} */ word, /** @type {object} */ range, /** @type {(value: number) => void} */ set) => {
      const input = make("input", { type: "range", "aria-label": say(word), ...range });
      const now = make("output");
      input.addEventListener("input", () => { set(Number(input.value)); this.ask(); told(); });
      return { input, now, row: make("label", { class: "fit-row fit-slider" }, say(word), input, now) };
    };
    this.gap = slider("fit.try.gap", { min: -AWAY_MM, max: AWAY_MM, step: 0.005, value: 0 }, (mm) => (this.bigger_mm = mm));
    this.sure = slider("fit.try.sure", { min: TIMES[0], max: TIMES[1], step: 0.05, value: 1 }, (times) => (this.times = times));
    this.element = make("section", { class: "fit-block" }, make("h2", {}, say("fit.try")), make("p", {}, say("fit.try.hint")),
      this.gap.row, this.sure.row, make("figure", {}, this.picture), this.said);
  }

  /** The scenario with a bigger gap and other limits; nothing on the bench changes. */
  tried() {
    const { demands, ...scenario } = /** @type {any} */ (this.scenario());
    const demand = demands?.find((/** @type {any} */ each) => MOVES[each.quantity]);
    const moved = demand && MOVES[demand.quantity];
    if (!moved) return null;
    const nominal = this.sizes()[moved];
    const limits = this.views().map(({ dimension, minus_mm, plus_mm, law }) => ({ dimension, law, minus: minus_mm * this.times, plus: plus_mm * this.times }));
    const longer = moved === "outer_spacing_mm" && scenario.chain.pin_length_mm ? { pin_length_mm: this.sizes().pin_length_mm + AWAY_MM } : {};
    return { ...scenario, chain: { ...scenario.chain, ...longer, [moved]: nominal + this.bigger_mm }, limits, demands: [demand] };
  }

  /** @type {() => Record<string, number>} */
  sizes = () => ({});
  /** @type {() => import("./types.js").LimitView[]} */
  views = () => [];

  ask() {
    const tried = this.tried();
    if (!tried) return;
    this.chance.want(tried, { sets: SETS });
    this.state.want(tried);
  }

  /** @param {number} width */
  show(width) {
    const tried = this.tried();
    this.element.hidden = !tried;
    if (!tried) return;
    this.ask();
    dress(this.gap.input, { "aria-valuetext": figure("gap_mm", this.bigger_mm) });
    this.gap.now.textContent = `${this.bigger_mm < 0 ? "" : "+"}${figure("gap_mm", this.bigger_mm)}`;
    this.sure.now.textContent = say("fit.try.times", { times: decimal(this.times, 2) });
    const [demand, chance] = [this.state.answer?.demands[0], this.chance.answer?.demands[0]];
    if (!demand || !chance || demand.middle === null) {
      this.said.textContent = this.state.failure ? say("fit.try.refused") : "";
      return;
    }
    const [half] = demand.halves;
    const said = say("fit.try.said", {
      name: say(`fit.name.${demand.quantity}`), gap: figure(demand.quantity, demand.middle), tolerance: figure(demand.quantity, half[1]), percent: percent(1 - chance.yield_fraction[0]),
    });
    const edges = [[demand.at_least, -0.5], [demand.at_most, 0.5]].map(([bound, away]) => Number(bound ?? demand.middle) + 2 * Number(away) * AWAY_MM);
    const scale = new Scale(Math.min(0, edges[0]), edges[1] + 0.05, width);
    histogram(this.picture, demand, chance.histogram.filter(([low, high]) => scale.shows(low) && scale.shows(high)), { width, height: 170, scale, name: said });
    this.said.textContent = said;
  }
}
