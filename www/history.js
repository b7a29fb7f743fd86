// Undo and redo: whole states of the work, oldest first; kept over a reload where the browser allows it.

import { toAddress } from "./address.js";

const KEY = "lightgap.history";
const LAST = "lightgap.last";
const DEPTH = 200;

/** @typedef {import("./work.js").Work} Work */

export class History {
  /** @type {Work[]} */
  past = [];
  /** @type {Work[]} */
  future = [];
  /** @type {Work | null} */
  present = null;

  /** @param {Work} work the state after a finished change */
  push(work) {
    if (this.present && same(this.present, work)) return;
    if (this.present) this.past.push(this.present);
    if (this.past.length > DEPTH) this.past.shift();
    this.present = structuredClone(work);
    this.future = [];
    this.keep();
  }

  /** @returns {Work | null} */
  undo() {
    const back = this.past.pop();
    if (!back || !this.present) return null;
    this.future.push(this.present);
    this.present = back;
    this.keep();
    return structuredClone(back);
  }

  /** @returns {Work | null} */
  redo() {
    const on = this.future.pop();
    if (!on || !this.present) return null;
    this.past.push(this.present);
    this.present = on;
    this.keep();
    return structuredClone(on);
  }

  keep() {
    try {
      const { past, present, future } = this;
      if (present) localStorage.setItem(LAST, toAddress(present));
      sessionStorage.setItem(KEY, JSON.stringify({ past, present, future }));
    } catch {
      // nothing kept: undo still works until the page is left
    }
  }

  /**
   * Takes up the kept history if it ends where the work stands now; tells whether there is more than that.
   * @param {Work} work
   */
  resume(work) {
    this.present = structuredClone(work);
    try {
      const kept = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
      if (!kept || !same(kept.present, work)) return false;
      this.past = kept.past;
      this.future = kept.future;
      return this.past.length > 0;
    } catch {
      return false; // an unreadable history is an empty one
    }
  }
}

/**
 * Two states alike but for where one looks.
 * @param {Work} a
 * @param {Work} b
 */
function same(a, b) {
  return toAddress({ ...a, ask: "" }) === toAddress({ ...b, ask: "" });
}

/** The address of what was last finished here, in whichever tab; nothing where the browser keeps nothing. */
export function lastKept() {
  try {
    return localStorage.getItem(LAST) ?? "";
  } catch {
    return "";
  }
}

export const forgetLast = () => localStorage.removeItem(LAST);
