// Question 4: will every one fit? Limits, demands, chance, sorted parts and money of many chains of one drawing.

import { amend } from "../amend.js";
import { Answered, withSections } from "../answered.js";
import { noteOfA } from "../compare/note.js";
import { make } from "../dom.js";
import { unitInUse } from "../figures.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { buy, stage } from "./acts.js";
import { ChancePart } from "./chance.js";
import { Drawn, QUICK } from "./drawn.js";
import { Demands } from "./demands.js";
import { Eaten, eatenInWords } from "./eaten.js";
import { Exercise } from "./exercise.js";
import { Limits } from "./limits.js";
import { Match } from "./match.js";
import { Money } from "./money.js";
import { useConstruction } from "./names.js";
import { fitSentences, workedOut } from "./said.js";
import { widthOf } from "../wide.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./types.js").FitState} FitState */
/** @typedef {import("./types.js").ChanceView} ChanceView */
/** @typedef {import("./types.js").MatchView} MatchView */

const QUIET_MS = 200;

/** @param {Session} session */
export const open = (session) => new Fit(session);

/** @extends {Answered<FitState>} */
class Fit extends Answered {
  looked = 0;
  classes = 0;
  timer = 0;
  now = "";
  /** @type {unknown[]} what the parts were drawn of that a sorting leaves as they are */
  filled = [];

  /** @param {Session} session */
  constructor(session) {
    super(session, "fit");
    const told = () => session.tell("told");
    /** @type {Steady<MatchView>} */
    this.match = new Steady("fit.match", "fit", told);
    this.drawn = new Drawn(told);
    const scenario = () => this.scenario;
    this.eaten = new Eaten();
    this.note = make("div");
    this.demands = new Demands(session, (demand) => { this.looked = demand; told(); });
    this.limits = new Limits(session, scenario);
    this.chance = new ChancePart(this.drawn.crowd, (sets) => this.run(sets), (set) => stage(session, this.scenario, this.quantity, set));
    this.matching = new Match((classes, done) => this.sort(classes, done));
    this.money = new Money((way) => buy(this.limits, this.scenario, way));
    this.exercise = new Exercise(scenario, told);
    this.lay(make("section", { class: "fit none", "aria-label": say("ask.fit") }, this.demands.element,
      make("section", { class: "fit-block", "data-look": "share" }, make("h2", {}, say("fit.eaten")), make("figure", {}, this.eaten.picture, this.note),
        make("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.eaten") }, this.eaten.table)),
      this.chance.element, this.limits.element, this.matching.element, this.money.element, this.exercise.element,
      this.fold("work.title", (state) => workedOut(state, state.demands[this.looked]))));
  }

  /** What the worker is asked of: limits are about the middle, whatever stands on the stage. */
  get scenario() {
    return withSections(this.session.scenario, ["drive", "load", "limits", "demands", "matching", "cost", "sampling"]);
  }

  /** @param {Set<import("../session.js").What>} what */
  heed(what) {
    const { scenario } = this;
    useConstruction(this.session.state.construction);
    const now = JSON.stringify(scenario);
    if (now !== this.now) {
      this.now = now;
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.later(), QUIET_MS);
    }
    this.steady.want(scenario);
    this.drawn.want(scenario);
    this.heard(what);
  }

  /** What may wait until the hand rests. */
  later() {
    const { scenario } = this;
    if (scenario.matching) this.match.want({ ...scenario, sampling: { ...scenario.sampling, sets: QUICK } }, { classes: this.classes || scenario.matching.classes });
    this.show();
  }

  get waiting() {
    return this.steady.stale || this.drawn.stale;
  }

  /** The number that is looked at. */
  get quantity() {
    return this.steady.answer?.demands[this.looked]?.quantity ?? "";
  }

  /**
   * The same number of the chain that is held: what is demanded of it, and the sets that were drawn.
   * @param {string} quantity
   */
  ofA(quantity) {
    const at = this.beside?.demands.findIndex((each) => each.quantity === quantity) ?? -1;
    const known = /** @type {ChanceView|null} */ (this.held?.drawn.known ?? null);
    const each = known?.demands[at];
    return this.beside && at >= 0 ? { demand: this.beside.demands[at], chance: known && each ? { sets: known.sets, each } : null } : null;
  }

  /** What is sorted of the chain that is held; null while it is not known, or none is held. @returns {import("./match.js").OfA|null} */
  get sortedOfA() {
    const { beside, held } = this;
    if (!beside || (beside.paired !== null && held.match.stale)) return null;
    return { match: beside.paired === null ? null : held.match.answer, demands: beside.demands };
  }

  /** @param {number} sets */
  run(sets) {
    const { answer } = this.steady;
    if (answer) this.drawn.run(this.scenario, sets, answer.block_sets);
  }

  /** @param {number} classes @param {boolean} done */
  sort(classes, done) {
    this.classes = classes;
    if (done) this.session.alter((bench) => bench.set("matching.classes", classes), true);
    this.later();
  }

  sentences() {
    return this.drawn.known ? super.sentences() : { answer: this.steady.failure || say("ask.opening"), surprise: "", helper: "" };
  }

  /** @param {FitState} state */
  told(state) {
    return fitSentences(state, /** @type {ChanceView} */ (this.drawn.known), Math.min(this.looked, state.demands.length - 1));
  }

  /** @param {FitState} state */
  fill(state) {
    this.looked = Math.min(this.looked, state.demands.length - 1);
    const demand = state.demands[this.looked];
    const width = Math.max(280, Math.round(widthOf(this.section)) - 22);
    const a = this.ofA(demand.quantity);
    const { known, crowd } = this.drawn;
    const filling = [state, known, this.looked, width, unitInUse(), this.steady.stale, crowd.share, crowd.failure, a?.demand, a?.chance?.each];
    if (filling.some((each, index) => each !== this.filled[index])) this.fillParts(state, width, a);
    this.filled = filling;
    this.matching.show(state.paired === null ? null : this.match.answer, state.demands, width, this.sortedOfA);
    this.exercise.show(width);
  }

  /** @param {FitState} state @param {number} width @param {ReturnType<Fit["ofA"]>} a */
  fillParts(state, width, a) {
    const [demand, { known }] = [state.demands[this.looked], this.drawn];
    if (!this.steady.stale) { // a hand that goes on typing is not taken back by an older answer
      this.demands.show(state.demands, this.looked, (known?.demands ?? []).map((each) => each.yield_fraction[0]));
      this.limits.show(state.limits);
    }
    this.eaten.show(demand, width);
    amend(this.note, ...noteOfA(eatenInWords(demand), a ? eatenInWords(a.demand) : ""));
    this.chance.show(known, demand, this.looked, width, a?.chance);
    this.money.show(state.money, state.demands, width);
  }
}
