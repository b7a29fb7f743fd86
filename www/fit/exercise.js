// Clearance is not tolerance: two sliders, one moves how big the gap is, the other how sure one is of it.

import { draw, dress, make, write } from "../dom.js";
import { decimal, figure } from "../figures.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { percent } from "./demands.js";
import { histogram } from "./histogram.js";
import { Scale } from "./scale.js";

/** @typedef {import("./types.js").TriedView} TriedView */

/** How far the gap goes either way, mm, and between which times of the limits: chosen. */
const AWAY_MM = 0.1;
const TIMES = [0.25, 2];

export class Exercise {
  bigger_mm = 0;
  times = 1;
  picture = draw("svg", { class: "fit-picture", role: "img" });
  figure = make("figure", {}, this.picture);
  said = make("p", { class: "fit-tried" });
  /**
   * @param {() => object} scenario
   * @param {() => void} told
   */
  constructor(scenario, told) {
    this.scenario = scenario;
    /** @type {Steady<TriedView>} */
    this.tried = new Steady("fit.try", "fit", told);
    const slider = (/** @type {string} */ word, /** @type {object} */ range, /** @type {(value: number) => void} */ set) => {
      const input = make("input", { type: "range", "aria-label": say(word), ...range });
      const now = make("output");
      input.addEventListener("input", () => { set(Number(input.value)); told(); });
      return { input, now, row: make("label", { class: "fit-row fit-slider" }, say(word), input, now) };
    };
    this.gap = slider("fit.try.gap", { min: -AWAY_MM, max: AWAY_MM, step: 0.005, value: 0 }, (mm) => (this.bigger_mm = mm));
    this.sure = slider("fit.try.sure", { min: TIMES[0], max: TIMES[1], step: 0.05, value: 1 }, (times) => (this.times = times));
    this.element = make("section", { class: "fit-block" }, make("h2", {}, say("fit.try")), make("p", {}, say("fit.try.hint")),
      this.gap.row, this.sure.row, this.figure, this.said);
  }

  /** @param {number} width */
  show(width) {
    this.tried.want(this.scenario(), { bigger_mm: this.bigger_mm, times: this.times });
    const { answer, failure } = this.tried;
    this.element.hidden = !answer && !failure;
    dress(this.gap.input, { "aria-valuetext": figure("gap_mm", this.bigger_mm) });
    write(this.gap.now, `${this.bigger_mm < 0 ? "" : "+"}${figure("gap_mm", this.bigger_mm)}`);
    write(this.sure.now, say("fit.try.times", { times: decimal(this.times, 2) }));
    const { demand = null, chance, fails_fraction = 0 } = answer ?? {};
    this.figure.hidden = !demand || demand.middle === null;
    if (!demand || !chance || demand.middle === null) {
      write(this.said, say("fit.try.refused"));
      return;
    }
    const [[, half]] = demand.halves;
    const said = say("fit.try.said", {
      name: say(`fit.name.${demand.quantity}`), gap: figure(demand.quantity, demand.middle), tolerance: figure(demand.quantity, half), percent: percent(fails_fraction),
    });
    const edges = [Number(demand.at_least ?? demand.middle) - AWAY_MM, Number(demand.at_most ?? demand.middle) + AWAY_MM];
    const scale = new Scale(Math.min(0, edges[0]), edges[1] + AWAY_MM / 2, width);
    histogram(this.picture, demand, chance.histogram.filter(([low, high]) => scale.shows(low) && scale.shows(high)), { width, height: 170, scale, name: said });
    write(this.said, said);
  }
}
