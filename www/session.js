// Where a visitor is with the work: what is lit and asked, what can be undone, the address and the browser's history.

import { fromAddress, toAddress } from "./address.js";
import { History } from "./history.js";
import { waysOf } from "./questions.js";
import { isSize, sensible } from "./work.js";
import { Worked } from "./worked.js";

/** @typedef {import("./work.js").Work} Work */
/** @typedef {import("./seen.js").What} What */

export class Session extends Worked {
  /** @type {string|null} */
  lit = null;
  /** @type {string[]} contacts whose marks are held back */
  hidden = [];
  /** @type {import("./questions.js").Asked|null} what the question brings with it, once it has opened */
  asked = null;
  /** @type {{what: string, touches: boolean, seen: import("./kernel.js").Magnified}|null} what the magnifier shows */
  magnified = null;
  /** Whether a hand holds a link at this moment. */
  pulling = false;
  history = new History();

  /** @param {string} corner the end of the limits to put on the bench, or the middle */
  stand(corner) {
    this.letGo();
    this.put({ ...this.work, corner });
    this.commit();
  }

  /** A finished change: it can be undone, and a reload keeps it. */
  commit() {
    this.history.push(this.work);
    this.writeAddress();
    this.tell("ask");
  }

  /** What the browser's history keeps of a place. */
  get mark() {
    const { on, ask, how } = this.work;
    return { on, ask, how };
  }

  writeAddress() {
    history.replaceState(this.mark, "", toAddress(this.work));
  }

  /** Another step of a lesson: a place in the browser's history, and a change that can be undone. */
  arrive() {
    if (history.state?.on !== this.work.on) history.pushState(this.mark, "", toAddress(this.work));
    this.commit();
  }

  /**
   * Goes to another question: a place in the browser's history, not in undo.
   * @param {string} ask
   */
  visit(ask) {
    if (ask === this.work.ask) return;
    const { parts } = this.work;
    this.enter(ask);
    history.pushState(this.mark, "", toAddress(this.work));
    if (this.work.parts !== parts) this.history.push(this.work); // what the question needed was stated
  }

  /** @param {string} ask */
  enter(ask) {
    if (!this.provide(ask)) return;
    this.work.ask = ask;
    const ways = waysOf(ask);
    if (!ways.includes(this.work.how)) this.move({ how: ways[0], at: 1, held: null }, false);
    this.wear();
    this.tell("ask", "pose", "look");
  }

  /** @param {string|null} id */
  light(id) {
    if (id === this.lit) return;
    this.lit = id;
    this.tell("lit");
  }

  /** @param {Work|null} work */
  step(work) {
    if (!work) return;
    this.begin({ ...work, ask: this.work.ask }).then(() => this.writeAddress());
  }

  /**
   * Puts a state on the bench as soon as its scenario has come; gives the faults.
   * @param {Work} work
   */
  async begin(work) {
    await this.takeUp(work);
    return this.bringUp(work);
  }

  /**
   * The same where the file that it carries, if any, has been taken up.
   * @param {Work} work
   */
  async bringUp(work) {
    if (!isSize(work.on)) await this.scenarios.fetch(work.on);
    return this.put(work);
  }

  /**
   * Takes up the file that a state carries, unless it is here.
   * @param {Partial<Work>|null} work
   */
  async takeUp(work) {
    if (work?.on !== "own" || !work.file || work.file === this.scenarios.carried) return;
    await (await import("./keep/carry.js")).takeUp(this, work.file);
  }

  /** Reads the address; false when it holds nothing of ours. */
  async readAddress() {
    const asked = fromAddress(location.hash);
    await this.takeUp(asked);
    return asked !== null && (await this.bringUp(sensible(asked, this.work, this.scenarios))).length === 0;
  }
}
