// What the bench says of itself: asked once a change, however many parts of the page want to know.

/** @typedef {import("./kernel.js").BenchLike} BenchLike */
/** @typedef {{state?: import("./kernel.js").BenchState, contacts?: import("./kernel.js").Contact[]}} Chain */
/** @typedef {{live?: import("./kernel.js").Live, answers?: import("./kernel.js").Answer[], line?: import("./kernel.js").LineState|null}} Said */

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

  get state() {
    return (this.seen.state ??= this.bench.state());
  }

  get contacts() {
    return (this.seen.contacts ??= this.state.fits ? this.bench.contacts() : []);
  }

  get answers() {
    return (this.seen.answers ??= this.bench.answers());
  }

  /** Whether a slider of something else than the offset is still moving: strands are solved when it rests. */
  moving = false;
  /** @type {{drive: string, line: import("./kernel.js").LineState|null}} */
  last = { drive: "", line: null };

  /** The chain and its drive, whatever the offset: what the strands are solved for. */
  get drive() {
    const { chain, drive } = this.bench.scenario();
    return JSON.stringify([chain, { ...drive, offset_mm: 0 }]);
  }

  /** Whether `line` is still of the drive as it was before a slider began to move. */
  get stale() {
    return this.moving && this.last.line !== null && this.last.drive !== this.drive;
  }

  /** The drive at its offset; none without one, or where the chain does not go together. */
  get line() {
    if (this.seen.line === undefined && this.stale) return this.last.line;
    if (this.seen.line === undefined) {
      this.seen.line = this.bench.line();
      this.last = { drive: this.drive, line: this.seen.line };
    }
    return this.seen.line;
  }

  get live() {
    return (this.seen.live ??= this.bench.live());
  }
}
