// A second bench that nobody sees: another chain in the same hand, asked the same questions.

import { sentences } from "../answer.js";
import { bring } from "../asking.js";
import { openKernel } from "../kernel.js";
import { questionOf, waysOf } from "../questions.js";
import { Session } from "../session.js";
import { loadWords } from "../words.js";
import { workWith } from "./kept.js";

/** @typedef {import("../questions.js").Asked} Asked */
/** @typedef {import("../kernel.js").Fault} Fault */
/** @typedef {import("../work.js").Kept} Kept */
/** @typedef {{answer: string, surprise: string, helper: string}} Sentences */

/** What a question keeps for itself and both chains are asked alike: the demand that is looked at. */
const ALIKE = ["looked"];
const ALL = /** @type {Set<import("../session.js").What>} */ (new Set(["chain", "pose", "look", "ask", "unit"]));

/** @param {import("../scenarios.js").Scenarios} scenarios */
export async function newShadow(scenarios) {
  const { bench } = await openKernel(await loadWords("rest"));
  return new Shadow(bench, scenarios);
}

export class Shadow extends Session {
  /** @type {Map<string, Asked>} */
  opened = new Map();
  of = "";
  /** Whether a question needed sections that its scenario does not state. */
  begun = false;
  /** Whether its joints stand as deep as they have worn, alike those of the session that is followed. */
  stands_worn = false;

  /** How deep its own joints have worn, mm, where joints stand worn. */
  get worn_mm() {
    return this.stands_worn ? this.told_worn_mm : 0;
  }

  commit() {}

  writeAddress() {}

  /**
   * A kept chain in the hand of a session.
   * @param {Kept} kept
   * @param {Session} live
   * @returns {Fault[]}
   */
  follow(kept, live) {
    this.stands_worn = live.worn_mm > 0;
    const hand = live.pulling ? { at: live.live.amplitude, held: null, pulls: [] } : {};
    const wanted = { ...workWith(live.work, kept), ...hand, a: null };
    const of = JSON.stringify([kept, wanted.unit, wanted.ask]);
    if (of === this.of) {
      const { chain, drive, parts } = this.work;
      Object.assign(this.work, wanted, { chain, drive, parts });
      this.restore();
      this.tell("pose", "look");
      return [];
    }
    const { scenarios } = this;
    if (kept.file) this.scenarios = /** @type {any} */ ({ get: () => kept.file?.scenario });
    const faults = this.put(wanted);
    this.scenarios = scenarios;
    this.of = faults.length > 0 ? "" : of;
    return faults;
  }

  /**
   * Any scenario in the hand of a session.
   * @param {import("../kernel.js").Scenario} scenario
   * @param {Session} live
   */
  take(scenario, live) {
    const { lesson: _, ...file } = /** @type {any} */ (scenario);
    return this.follow({ on: "taken", file: { name: scenario.title, scenario: file } }, live);
  }

  /**
   * What a question brings, made for this bench and never drawn; null for the first screen's own.
   * @param {string} ask
   * @returns {Promise<Asked|null>}
   */
  async opens(ask) {
    const question = questionOf(ask);
    if (!question.open) return null;
    const { open } = await bring(question.open, [ask], []);
    const known = this.opened.get(ask);
    if (known) return known;
    const made = /** @type {any} */ (open(this));
    made.draw = () => this.tell("told");
    made.brief?.();
    this.opened.set(ask, made);
    return made;
  }

  /**
   * Wants the answer to what is asked, alike what the other session's question keeps for itself.
   * @param {Asked|null} asked
   * @param {Asked|null} [like]
   */
  want(asked, like = null) {
    this.asked = asked;
    for (const key of like ? ALIKE : []) {
      if (/** @type {any} */ (like)[key] !== undefined) /** @type {any} */ (asked)[key] = /** @type {any} */ (like)[key];
    }
    asked?.heed(ALL);
  }

  /**
   * The sentences of a question as soon as they have come; null where it cannot be asked.
   * @param {string} ask
   * @returns {Promise<Sentences|null>}
   */
  async answerTo(ask) {
    this.begun = !questionOf(ask).offers(this.scenario);
    if (!this.provide(ask)) return null;
    const [how] = waysOf(ask);
    Object.assign(this.work, { ask }, waysOf(ask).includes(this.work.how) ? {} : { how, at: 1, held: null, pulls: [] });
    this.restore();
    this.forget();
    const asked = this.state.fits ? await this.opens(ask) : null;
    this.want(asked);
    if (asked) await this.until(() => !asked.waiting);
    return sentences(this);
  }

  /** Waits until something holds. @param {() => boolean} holds @returns {Promise<void>} */
  until(holds) {
    return new Promise((done) => {
      const look = () => {
        if (!holds()) return;
        const at = this.listeners.findIndex(({ listener }) => listener === look);
        if (at >= 0) this.listeners.splice(at, 1);
        done();
      };
      this.listen(look);
      look();
    });
  }
}
