// The work on the bench: one plain state, and every change to it.

import { useUnit } from "./figures.js";
import { questionOf } from "./questions.js";
import { Seen } from "./seen.js";
import { changesFrom, loadWork, newWork, partsFrom, partsOf, poseWork } from "./work.js";

/** @typedef {import("./kernel.js").BenchLike} BenchLike */
/** @typedef {import("./kernel.js").Fault} Fault */
/** @typedef {import("./work.js").Work} Work */

export class Worked extends Seen {
  /** Gaps are drawn at most so many times too big: what stands beside the chain cannot be drawn larger. */
  most = Infinity;
  /** How deep joints have worn by the answer to that question, mm, and how deep they stand on the bench. */
  told_worn_mm = 0;
  stood_worn_mm = 0;
  /** @type {Record<string, any>} */
  base = {};
  /** @type {Record<string, any>} */
  baseDrive = {};
  /** @type {Record<string, any>} */
  baseParts = {};

  /**
   * @param {BenchLike} bench
   * @param {import("./scenarios.js").Scenarios} scenarios
   */
  constructor(bench, scenarios) {
    super(bench);
    this.scenarios = scenarios;
    /** @type {Work} */
    this.work = newWork(scenarios.ids[0]);
  }

  /**
   * Puts a state on the bench; returns the faults when its chain is refused (nothing then changes).
   * @param {Work} wanted
   * @returns {Fault[]}
   */
  put(wanted) {
    const last = this.work;
    const { faults, base, drive, parts } = loadWork(this.bench, this.scenarios, wanted);
    if (faults.length > 0 && wanted !== last) {
      this.put(last);
      return faults;
    }
    [this.base, this.baseDrive, this.baseParts] = [base, drive, parts];
    this.work = { ...wanted, ...this.differs() };
    if (!this.provide(this.work.ask)) this.work.ask = "give";
    this.measure(this.work.unit);
    this.restore();
    this.tell("chain", "pose", "look", "ask", "unit");
    return [];
  }

  /** Poses and shows the chain as the work has it. */
  restore() {
    this.stood_worn_mm = this.worn_mm;
    this.bench.show_worn(this.stood_worn_mm);
    this.bench.set_springy(this.work.springy);
    this.bench.show_corner(this.work.corner);
    this.bench.show(this.work.how);
    this.widen();
    poseWork(this.bench, this.work);
  }

  /** Draws gaps as many times too big as is wished for and may be. */
  widen({ factor } = this.bench.state()) {
    this.bench.widen(Math.min(this.work.times ?? factor.start, this.most));
  }

  /** How deep joints stand worn on the bench: as was chosen, or as the question about wear tells while it is asked. */
  get worn_mm() {
    const { ask, own } = this.work;
    return Number(own.worn ?? (ask === "wear" ? this.told_worn_mm : 0)) || 0;
  }

  /** Stands the joints anew where they have worn otherwise. */
  wear() {
    if (this.worn_mm === this.stood_worn_mm) return;
    this.letGo();
    this.restore();
    this.tell("chain", "pose", "look");
  }

  /** Another chain or another scale under the hand: what was pulled stays as a share of the movement. */
  letGo() {
    if (this.work.pulls.length === 0) return;
    this.work.at = this.bench.live().amplitude;
    this.work.held = null;
    this.work.pulls = [];
  }

  /** What differs from the scenario or size the work began with: its chain, its drive, its other sections. */
  differs() {
    const scenario = this.bench.scenario();
    return {
      chain: changesFrom(this.base, scenario.chain),
      drive: changesFrom(this.baseDrive, scenario.drive ?? {}),
      parts: partsFrom(this.baseParts, partsOf(scenario)),
    };
  }

  /** Whether the lists beside the stage are seen: a question that brings its own parts has them in their place. */
  get listed() {
    return questionOf(this.work.ask).open === undefined;
  }

  /**
   * Whether a question can be asked of what is on the bench.
   * @param {string} ask
   */
  offers(ask) {
    const { offers, begin } = questionOf(ask);
    return offers(this.scenario) || (begin !== undefined && this.state.fits);
  }

  /**
   * States what a question needs where the scenario does not say it; false where it cannot be asked of this chain.
   * @param {string} ask
   */
  provide(ask) {
    const [{ offers, begin }, scenario] = [questionOf(ask), this.bench.scenario()];
    if (offers(scenario)) return true;
    if (!begin || !this.bench.state().fits || this.bench.load({ ...scenario, ...begin }).length > 0) return false;
    Object.assign(this.work, this.differs());
    this.restore();
    this.tell("chain");
    return true;
  }

  /**
   * A change of the chain: `alter` does it on the bench.
   * @param {(bench: BenchLike) => Fault[]} alter
   * @param {boolean} done false while a slider is still moving
   */
  alter(alter, done) {
    this.letGo();
    const faults = alter(this.bench);
    if (faults.length === 0) {
      Object.assign(this.work, this.differs());
      const state = this.bench.state();
      if (this.work.times !== null) this.work.times = Math.min(this.work.times, state.factor.cap);
      this.widen(state);
      poseWork(this.bench, this.work, state);
      this.tell("chain", "pose", "look");
      if (done) this.commit();
    }
    return faults;
  }

  /**
   * A change of what only a question is about: the chain stays as it is, and so does its drawing.
   * @param {string} path
   * @param {unknown} value
   * @param {boolean} done
   */
  restate(path, value, done) {
    const faults = this.bench.set(path, value);
    if (faults.length === 0) {
      Object.assign(this.work, this.differs());
      this.tell("stated");
      if (done) this.commit();
    }
    return faults;
  }

  /**
   * A change of the pose or the view.
   * @param {Partial<Work>} part
   * @param {boolean} done
   */
  move(part, done) {
    const posed = part.how || part.at !== undefined || part.held;
    if (part.times !== undefined) this.letGo();
    Object.assign(this.work, part, posed ? { pulls: [] } : {});
    if (part.springy !== undefined) this.bench.set_springy(part.springy);
    if (part.how) this.bench.show(part.how);
    if (posed) poseWork(this.bench, this.work);
    if (part.times !== undefined) this.widen();
    if (part.unit) {
      this.measure(part.unit);
      this.tell("unit", "chain");
    }
    if (part.own) {
      this.wear();
      this.tell("own");
    } else this.tell("pose", "look");
    if (done) this.commit();
  }

  /** @param {"mm"|"in"} unit what lengths are written in, on the page and on the drawing */
  measure(unit) {
    useUnit(unit);
    this.bench.use_inches(unit === "in");
  }

  /** A finished change: what keeps changes extends this. */
  commit() {}
}
