// A lesson as it was before each change, so that changes can be taken back and made again.

/** @typedef {import("./draft.js").Draft} Draft */

/** So many changes can be taken back. */
const MOST = 200;

export class Turns {
  /** @type {Draft[]} */
  past = [];
  /** @type {Draft[]} */
  future = [];

  /** A change was made to this lesson. @param {Draft} before */
  made(before) {
    this.past = [...this.past, before].slice(-MOST);
    this.future = [];
  }

  /** The lesson before the last change. @param {Draft} now */
  back = (now) => turn(this.past, this.future, now);

  /** The lesson after the change that was taken back. @param {Draft} now */
  forth = (now) => turn(this.future, this.past, now);
}

/** @param {Draft[]} from @param {Draft[]} to @param {Draft} now */
function turn(from, to, now) {
  const found = from.pop();
  if (found) to.push(now);
  return found;
}
