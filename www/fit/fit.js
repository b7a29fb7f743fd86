// Question 4: will every one fit? Limits, demands, chance, sorted parts and money of many chains of one drawing.

import { Answered } from "../answered.js";
import { make } from "../dom.js";
import { labour } from "../labour.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { ChancePart } from "./chance.js";
import { Crowd } from "./crowd.js";
import { Demands } from "./demands.js";
import { Eaten } from "./eaten.js";
import { Exercise } from "./exercise.js";
import { Limits } from "./limits.js";
import { Match } from "./match.js";
import { Money } from "./money.js";
import { useConstruction } from "./names.js";
import { fitSentences, workedOut } from "./said.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").FitState} FitState */
/** @typedef {import("./types.js").ChanceView} ChanceView */
/** @typedef {import("./types.js").MatchView} MatchView */

/** Sets of the quick look that follows every change. */
const QUICK = 20000;
const QUIET_MS = 200;
/** How the stage shows a set: the movement that a demand is about. */
const WAYS = /** @type {Record<string, string>} */ ({ side_gap_mm: "aside", free_offset_mm: "aside", offset_limit_mm: "aside", twist_limit_rad: "twist", shear_limit_rad: "lean" });

/** @param {Session} session */
export const open = (session) => new Fit(session);

/** @extends {Answered<FitState>} */
class Fit extends Answered {
  looked = 0;
  classes = 0;
  timer = 0;
  now = "";

  /** @param {Session} session */
  constructor(session) {
    super(session, "fit");
    const told = () => session.tell("ask");
    /** @type {Steady<ChanceView>} */
    this.quick = new Steady("fit.quick", "fit", told);
    /** @type {Steady<MatchView>} */
    this.match = new Steady("fit.match", "fit", told);
    this.crowd = new Crowd(told);
    const scenario = () => this.scenario;
    this.eaten = new Eaten();
    this.demands = new Demands(session, (demand) => { this.looked = demand; told(); });
    this.limits = new Limits(session, scenario);
    this.chance = new ChancePart(this.crowd, (sets) => this.run(sets), (set) => this.stage(set));
    this.matching = new Match((classes, done) => this.sort(classes, done));
    this.money = new Money((halves) => this.buy(halves));
    this.exercise = new Exercise(scenario, told);
    this.exercise.sizes = () => this.session.state.sizes;
    this.exercise.views = () => this.steady.answer?.limits ?? [];
    this.lay(make("section", { class: "fit none", "aria-label": say("ask.fit") }, this.demands.element,
      make("section", { class: "fit-block", "data-look": "share" }, make("h2", {}, say("fit.eaten")), make("figure", {}, this.eaten.picture),
        make("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.eaten") }, this.eaten.table)),
      this.chance.element, this.limits.element, this.matching.element, this.money.element, this.exercise.element,
      this.fold("work.title", (state) => workedOut(state, state.demands[this.looked]))));
  }

  /** What the worker is asked of. */
  get scenario() {
    return this.sections("drive", "load", "limits", "demands", "matching", "cost", "sampling");
  }

  heed() {
    const { scenario } = this;
    useConstruction(this.session.state.construction);
    const now = JSON.stringify(scenario);
    if (now !== this.now) {
      this.now = now;
      if (this.crowd.share !== null) this.crowd.stop();
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.later(), QUIET_MS);
    }
    this.steady.want(scenario);
    this.quick.want(scenario, { sets: QUICK });
    this.show();
  }

  /** What may wait until the hand rests. */
  later() {
    const { scenario } = this;
    if (scenario.matching) this.match.want({ ...scenario, sampling: { ...scenario.sampling, sets: QUICK } }, { classes: this.classes || scenario.matching.classes });
    this.show();
  }

  get waiting() {
    return this.steady.stale || this.quick.stale;
  }

  /** What is known of chance: the many sets when they were drawn for this, the quick look if not. */
  get known() {
    return this.crowd.view && this.crowd.of.startsWith(this.now.slice(0, -1).replace(/,"sampling":.*$/, "")) ? this.crowd.view : this.quick.answer;
  }

  /** @param {number} sets */
  run(sets) {
    const { steady: { answer }, scenario } = this;
    if (!answer) return;
    const blocks = Math.ceil(sets / answer.block_sets);
    this.crowd.run({ ...scenario, sampling: { ...scenario.sampling, sets } }, blocks);
  }

  /** @param {number} set */
  async stage(set) {
    const { scenario } = this;
    const quantity = this.steady.answer?.demands[this.looked].quantity ?? "";
    const sizes = await labour("fit.set", "fit", scenario, { set }).catch(() => null);
    if (!sizes) return;
    const faults = this.session.alter((bench) => bench.load({ ...bench.scenario(), chain: { ...bench.scenario().chain, ...sizes } }), false);
    if (faults.length > 0) return void this.session.tell("ask");
    this.session.visit("give");
    if (this.session.state.fits) this.session.move({ how: WAYS[quantity] ?? "turn", at: 1, held: null }, false);
    this.session.commit();
  }

  /** @param {number} classes @param {boolean} done */
  sort(classes, done) {
    this.classes = classes;
    if (done) this.session.alter((bench) => bench.set("matching.classes", classes), true);
    this.later();
  }

  /** Takes tolerances: half of what lies between the limits, the middle where it was. @param {Map<string, number>} halves */
  buy(halves) {
    const views = this.steady.answer?.limits ?? [];
    const limits = this.limits.limits.map(({ grade, ...limit }) => {
      const half = halves.get(limit.dimension);
      const view = views.find(({ dimension }) => dimension === limit.dimension);
      if (half === undefined || !view) return grade ? { ...limit, grade } : limit;
      const middle = (view.plus_mm - view.minus_mm) / 2;
      return { ...limit, minus: half - middle, plus: half + middle };
    });
    this.limits.put(limits);
  }

  sentences() {
    return this.known ? super.sentences() : { answer: this.steady.failure || say("ask.opening"), surprise: "", helper: "" };
  }

  /** @param {FitState} state */
  told(state) {
    return fitSentences(state, /** @type {ChanceView} */ (this.known), Math.min(this.looked, state.demands.length - 1));
  }

  /** @param {FitState} state */
  fill(state) {
    this.looked = Math.min(this.looked, state.demands.length - 1);
    const demand = state.demands[this.looked];
    const width = Math.max(280, Math.round(this.section.clientWidth) - 22);
    const { known } = this;
    this.demands.show(state.demands, this.looked, (known?.demands ?? []).map((each) => each.yield_fraction[0]));
    this.eaten.show(demand, width);
    this.chance.show(known, demand, this.looked, width);
    this.limits.show(state.limits);
    this.matching.show(state.paired === null ? null : this.match.answer, state.demands, width);
    this.money.show(state.money, state.demands, width);
    this.exercise.show(width);
  }
}
