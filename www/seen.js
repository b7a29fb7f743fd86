// What the bench says of itself: asked once a change, however many parts of the page want to know.

/** @typedef {import("./kernel.js").BenchLike} BenchLike */
/** @typedef {{scenario?: import("./kernel.js").Scenario, state?: import("./kernel.js").BenchState, contacts?: import("./kernel.js").Contact[]}} Chain */
/** @typedef {{live?: import("./kernel.js").Live, answers?: import("./kernel.js").Answer[]}} Said */

export class Seen {
  /** @type {Chain & Said} */
  seen = {};

  /** @param {BenchLike} bench */
  constructor(bench) {
    this.bench = bench;
  }

  /** The bench has changed: ask again. */
  forget() {
    this.seen = {};
  }

  get scenario() {
    return (this.seen.scenario ??= this.bench.scenario());
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
