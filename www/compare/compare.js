// Comparing: a chain held as A, its answer under the present one's, the figures of both side by side.

import { sentences } from "../answer.js";
import { byId, dress, make, onceAFrame } from "../dom.js";
import { faultSentence } from "../field.js";
import { Steady } from "../steady.js";
import { Ghost } from "./ghost.js";
import { say } from "../words.js";
import { askedOf, called, changeOf, inWords, signOf, written } from "./figures.js";
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
  last = "";

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
    const button = (/** @type {string} */ word, /** @type {() => void} */ onclick) => make("button", { type: "button", onclick }, say(word));
    this.held = make("p", { class: "beside-answer" });
    this.list = make("ul", { class: "beside-pairs" });
    this.rest = make("li", { class: "hint" });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.told = make("p", { class: "hush", role: "status" });
    this.buttons = {
      hold: button("compare.hold", () => this.hold()), swap: button("compare.swap", () => this.swap()),
      drop: button("compare.drop", () => this.drop()), all: button("compare.all", () => this.all()),
      mine: button("compare.mine", () => this.mine()),
    };
    this.element = make("section", { class: "beside", "aria-label": say("compare.title"), hidden: true },
      this.held, this.list, this.fault, make("div", { class: "beside-buttons" }, ...Object.values(this.buttons)), this.told);
    this.ghost = new Ghost(session, shadow);
    byId("slope").after(this.element);
    session.listen(() => this.heed());
    shadow.listen(this.show);
    this.heed();
  }

  toggle() {
    this.wide = this.element.hidden === true || !this.wide;
    this.show();
    if (this.wide) this.buttons.hold.focus();
  }

  /** @param {string} word */
  tell(word) {
    this.told.textContent = say(word);
  }

  hold() {
    this.put(keptOf(this.session), "compare.held");
  }

  drop() {
    this.put(null, "compare.dropped");
    this.buttons.hold.focus();
  }

  /** @param {Kept|null} a @param {string} word */
  put(a, word) {
    this.session.work.a = a;
    this.session.commit();
    this.tell(word);
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
    this.tell("compare.swapped");
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
    this.fault.hidden = false;
    this.fault.textContent = `${say("compare.refused")} ${why}`.trim();
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
    this.fault.hidden = true;
    const faults = shadow.follow(a, session);
    if (faults.length > 0) return void this.refuse(faults.map(faultSentence).join(" "));
    this.limit(shadow.state.factor.cap);
    const { ask, corner } = session.work;
    shadow.opens(ask).then((asked) => session.work.ask === ask && shadow.want(asked, session.asked));
    this.pairs.want(askedOf(session.bench.scenario(), ask), { question: ask, corner, a: askedOf(shadow.bench.scenario(), ask) });
    this.ghost.want(nameOf(a, session.scenarios));
    this.show();
  });

  free() {
    this.limit(Infinity);
    this.ghost.clear();
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
    const { a, session, shadow } = this;
    this.element.hidden = !a && !this.wide && this.fault.hidden;
    dress(byId("compare"), { "aria-expanded": String(!this.element.hidden) });
    for (const key of /** @type {const} */ (["swap", "drop"])) this.buttons[key].hidden = !a;
    this.buttons.hold.textContent = say(a ? "compare.again" : "compare.hold");
    this.held.hidden = this.list.hidden = !a;
    if (!a) return;
    const waiting = shadow.asked?.waiting === true || this.pairs.stale;
    this.element.classList.toggle("waiting", waiting);
    if (shadow.asked?.waiting !== true) this.say(a, sentences(shadow).answer);
    if (!this.pairs.stale) this.fill(this.pairs.answer ?? []);
    if (session.work.a === null) this.element.classList.remove("waiting");
  }

  /** @param {Kept} a @param {string} answer */
  say(a, answer) {
    const name = nameOf(a, this.session.scenarios);
    const text = `${name}: ${answer}`;
    if (text === this.last) return;
    this.last = text;
    this.held.replaceChildren(make("b", { class: "letter" }, say("compare.a")), " ", make("span", { class: "beside-name" }, `${name}:`), " ", answer);
  }

  /** The figures that differ; how many do not. @param {Pair[]} pairs */
  fill(pairs) {
    const changed = pairs.filter(({ way }) => way !== "same");
    this.list.replaceChildren(...changed.map(item), this.rest);
    const same = pairs.length - changed.length;
    this.rest.textContent = say(changed.length === 0 ? "compare.same" : same > 0 ? "compare.rest" : "compare.none", { count: same });
  }
}

/** One figure: the present value, how it differs, that of A. @param {Pair} pair */
const item = (pair) => make("li", {},
  make("span", { class: "beside-name" }, called(pair.key)), " ", make("b", {}, written(pair.key, pair.b)), " ",
  make("span", { class: `way ${pair.way}`, "aria-hidden": "true" }, `${signOf(pair)} ${pair.change === null ? "" : changeOf(pair)}`),
  make("span", { class: "hush" }, `, ${inWords(pair)},`), " ",
  make("span", { class: "beside-a" }, say("compare.of.a", { value: written(pair.key, pair.a) })));
