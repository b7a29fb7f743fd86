// What the bench says of itself, asked once a change however many parts of the page want to know; and who is told of a change.

/** @typedef {import("./kernel.js").BenchLike} BenchLike */
/** @typedef {{scenario?: import("./kernel.js").Scenario, standing?: import("./kernel.js").Scenario, state?: import("./kernel.js").BenchState, contacts?: import("./kernel.js").Contact[]}} Chain */
/** @typedef {{live?: import("./kernel.js").Live, answers?: import("./kernel.js").Answer[]}} Said */
/**
 * What has changed; after `told`, an answer of the worker, `own`, what a question is asked with, and
 * `stated`, a part of the scenario that only a question is about, the chain is as it was. @typedef {"chain"|"pose"|"look"|"ask"|"unit"|"lit"|"told"|"own"|"stated"} What */

const ASIDE = new Set(["told", "own", "stated"]);

export class Seen {
  /** @type {Chain & Said} */
  seen = {};
  /** @type {{listener: (what: Set<What>) => void, answers: boolean}[]} */
  listeners = [];
  /** @type {((what: Set<What>) => void)[]} */
  painters = [];
  /** @type {Set<What>} */
  pending = new Set();

  /** @param {BenchLike} bench */
  constructor(bench) {
    this.bench = bench;
  }

  /** The bench has changed: ask again. */
  forget() {
    this.seen = {};
  }

  /**
   * @param {(what: Set<What>) => void} listener
   * @param {boolean} [answers] whether what leaves the chain as it was concerns it
   */
  listen(listener, answers = true) {
    this.listeners.push({ listener, answers });
  }

  /**
   * For what paints a canvas, before the others write on the page: to set letters a browser first works out the style of
   * whatever has been written.
   * @param {(what: Set<What>) => void} painter
   */
  listenFirst(painter) {
    this.painters.push(painter);
  }

  /** @param {...What} what */
  tell(...what) {
    if (what[0] !== "told" && what[0] !== "own") this.forget();
    const first = this.pending.size === 0;
    for (const each of what) this.pending.add(each);
    if (first) queueMicrotask(() => this.flush());
  }

  flush() {
    const what = this.pending;
    this.pending = new Set();
    const only = [...what].every((each) => ASIDE.has(each));
    if (!only) for (const paint of this.painters) paint(what);
    for (const { listener, answers } of this.listeners) if (answers || !only) listener(what);
  }

  get scenario() {
    return (this.seen.scenario ??= this.bench.scenario());
  }

  /** The scenario of the chain that stands here: the one in the middle of its limits is the scenario's own. */
  get standing() {
    const { corner } = this.state;
    return corner && corner.at !== "middle" ? (this.seen.standing ??= this.bench.standing()) : this.scenario;
  }

  get state() {
    return (this.seen.state ??= this.bench.state());
  }

  get contacts() {
    return (this.seen.contacts ??= this.state.fits ? this.bench.contacts() : []);
  }

  get answers() {
    return (this.seen.answers ??= this.bench.answers());
  }

  get live() {
    return (this.seen.live ??= this.bench.live());
  }
}
