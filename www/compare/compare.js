// Comparing: a chain held as A in the same hand as the present one, asked the same, its figures and outlines beside.

import { withSections } from "../answered.js";
import { sentences } from "../answer.js";
import { onceAFrame } from "../dom.js";
import { faultSentence } from "../field.js";
import { Steady } from "../steady.js";
import { Beside } from "./beside.js";
import { Ghost } from "./ghost.js";
import { askedOf } from "./figures.js";
import { fetchKept, keptOf, nameOf, readKept, workWith } from "./kept.js";
import { newShadow } from "./shadow.js";
import { putOwn } from "../keep/put-own.js";
import { OWN } from "../own.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../work.js").Kept} Kept */
/** @typedef {import("./figures.js").Pair} Pair */

/** @param {Session} session */
export async function open(session) {
  return new Compare(session, await newShadow(session.scenarios));
}

class Compare {
  /** Whether it was opened by hand; with a chain held it is always open. */
  wide = false;
  /** The address text of the chain that was last seen to be good, or not. */
  known = "";
  /** @type {Kept|null} */
  a = null;

  /**
   * @param {Session} session
   * @param {import("./shadow.js").Shadow} shadow
   */
  constructor(session, shadow) {
    this.session = session;
    this.shadow = shadow;
    this.show = onceAFrame(() => this.draw());
    /** @type {Steady<Pair[]>} */
    this.pairs = new Steady("compare", "compare", this.show);
    /** @type {Steady<{section: Record<string, number>}>} how deep A's joints have worn */
    this.worn = new Steady("compare.worn", "wear", () => this.wear());
    this.beside = new Beside({ hold: () => this.hold(), swap: () => this.swap(), drop: () => this.drop(), all: () => this.all(), mine: () => this.mine() });
    this.ghost = new Ghost(session, shadow);
    session.listen(() => this.heed());
    shadow.listen(() => {
      this.show();
      if (this.a) session.asked?.show(); // A's answer is drawn in its pictures
    });
    this.heed();
  }

  toggle() {
    this.wide = this.beside.element.hidden === true || !this.wide;
    this.draw(); // what is hidden takes no focus
    if (this.wide) this.beside.buttons.hold.focus();
  }

  hold() {
    this.put(keptOf(this.session), "compare.held");
  }

  drop() {
    this.put(null, "compare.dropped");
    this.beside.buttons.hold.focus();
  }

  /** @param {Kept|null} a @param {string} word */
  put(a, word) {
    this.session.work.a = a;
    this.session.commit();
    this.beside.tell(word);
  }

  /** A on the bench, and what stood there is held. */
  async swap() {
    const { session, a } = this;
    if (!a) return;
    const held = keptOf(session);
    const { file } = a;
    const state = (/** @type {string} */ on) => ({ ...workWith(session.work, { ...a, on }), a: held });
    if (file) await putOwn(session, file, state(OWN));
    else {
      session.put(state(a.on));
      session.commit();
    }
    this.beside.tell("compare.swapped");
  }

  async all() {
    const { openTable } = await import("./all.js");
    openTable(this.session, this.a);
  }

  async mine() {
    const { openMine } = await import("./mine.js");
    openMine(this.session);
  }

  /** The chain that is held, as soon as what it began with has come; what cannot be held is dropped and said. */
  async take() {
    const { session } = this;
    const text = JSON.stringify(session.work.a);
    if (text === this.known) return;
    this.known = text;
    this.a = null;
    if (!session.work.a) return;
    const kept = readKept(session.work.a);
    const there = kept !== null && (await fetchKept(kept, session.scenarios).catch(() => false));
    if (text !== this.known) return;
    if (kept && there) this.a = kept;
    else this.refuse("");
  }

  /** @param {string} why */
  refuse(why) {
    this.a = null;
    this.beside.refuse(why);
    this.session.work.a = null;
    this.known = "null";
    this.session.writeAddress();
  }

  heed() {
    this.take().then(() => this.stand());
  }

  /** Stands A in the same hand and asks what is asked of it. */
  stand = onceAFrame(() => {
    const { session, shadow, a } = this;
    if (!a) return void this.free();
    this.beside.fault.hidden = true;
    const faults = shadow.follow(a, session);
    if (faults.length > 0) return void this.refuse(faults.map(faultSentence).join(" "));
    if (shadow.stands_worn) this.worn.want(withSections(shadow.bench.standing(), ["drive", "load", "wear"]));
    this.limit(shadow.state.factor.cap);
    const { ask, corner } = session.work;
    shadow.opens(ask).then((asked) => session.work.ask === ask && this.ask(asked));
    this.pairs.want(askedOf(session.bench.scenario(), ask), { question: ask, corner, a: askedOf(shadow.bench.scenario(), ask) });
    this.ghost.want(nameOf(a, session.scenarios));
    this.show();
  });

  /** A is asked the same; its answer is drawn in the pictures of the question. @param {import("../questions.js").Asked|null} asked */
  ask(asked) {
    const { session, shadow, a } = this;
    shadow.want(asked, session.asked);
    if (session.asked) session.asked.held = a ? asked : null;
  }

  /** A's joints stand as deep as they have worn. */
  wear() {
    this.shadow.told_worn_mm = this.worn.answer?.section.joint_wear_mm ?? 0;
    this.stand();
  }

  free() {
    this.limit(Infinity);
    this.ghost.clear();
    const { asked } = this.session;
    if (asked?.held) {
      asked.held = null;
      asked.show();
    }
    this.show();
  }

  /** Both are drawn with gaps as many times too big. @param {number} most */
  limit(most) {
    const { session } = this;
    if (session.most === most) return;
    session.most = most;
    session.letGo();
    session.restore();
    session.tell("pose", "look");
  }

  draw() {
    const { a, session, shadow, beside } = this;
    beside.open(a !== null, this.wide);
    beside.lie(a !== null && shadow.of !== "" && this.ghost.apart);
    if (!a) return;
    beside.wait(shadow.asked?.waiting === true || this.pairs.stale);
    if (shadow.asked?.waiting !== true) beside.say(nameOf(a, session.scenarios), sentences(shadow).answer);
    if (!this.pairs.stale) beside.fill(this.pairs.answer ?? []);
    if (session.work.a === null) beside.wait(false);
  }
}
