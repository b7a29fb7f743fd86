// My chain: eight readings of a caliper, where to put it, what they leave in doubt, and on to the bench.

import { make, dress, byId } from "../dom.js";
import { Field, faultSentence, tell } from "../field.js";
import { gap, numberOf, typedOf } from "../figures.js";
import { labour } from "../labour.js";
import { Paper } from "../leaves.js";
import { putOwn } from "../keep/put-own.js";
import { Steady } from "../steady.js";
import { has, say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").Fault} Fault */
/** @typedef {{key: string, value_mm: number, doubt_mm: number}} Doubtful */
/** @typedef {{construction: string, stated: Record<string, number>, chosen: Record<string, number>, doubts: Doubtful[], gap: string, fits: boolean, picture: import("../leaves.js").Leaves}} Made */

const [PITCHES, DOUBT_MM] = [10, 0.02];
const CONSTRUCTIONS = ["bushed", "collared"];

/** @param {Session} session */
export async function openMine(session) {
  const read = /** @type {[string, number][]} */ (await labour("caliper", "caliper", session.bench.scenario(), {}));
  new Mine(session, Object.fromEntries(read)).open();
}

class Mine {
  /** @type {string|null} */
  focus = null;

  /** @param {Session} session @param {Record<string, number>} readings */
  constructor(session, readings) {
    this.session = session;
    this.pressed = false;
    this.asked = { readings, pitches: PITCHES, doubt_mm: DOUBT_MM, construction: session.state.construction };
    /** @type {Steady<Made>} */
    this.steady = new Steady("caliper", "caliper", () => this.show());
    this.paper = new Paper("caliper");
    this.fields = new Map(Object.keys(readings).map((key, index) => [key, this.field(key, `${index + 1}. `, (value) => { this.asked.readings = { ...this.asked.readings, [key]: value }; })]));
    const plain = { text: typedOf, read: numberOf, unit: () => "" };
    this.pitches = new Field({ label: say("mine.pitches"), way: plain, step: "1" }, (value) => this.take(() => { this.asked.pitches = value; }));
    this.doubt = this.field("doubt_mm", "", (value) => { this.asked.doubt_mm = value; });
    this.made = CONSTRUCTIONS.map((construction) => make("button", { type: "button", class: "choice", "data-value": construction, onclick: () => this.take(() => { this.asked.construction = construction; }) },
      make("span", { class: "choice-name" }, say(`construction.${construction}`)), make("span", { class: "choice-note" }, say(`construction.${construction}.note`))));
    this.verdict = make("p", { class: "mine-verdict", role: "status" });
    this.doubts = make("ul", { class: "mine-doubts" });
    this.chosen = make("ul", { class: "mine-chosen" });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.put = make("button", { type: "button", class: "primary", onclick: () => this.onBench() }, say("mine.put"));
    this.element = make("dialog", { class: "mine", "aria-labelledby": "mine-title" }, make("h2", { id: "mine-title" }, say("mine.title")),
      make("p", { class: "hint" }, say("mine.how")), this.parts(),
      this.fault, make("div", { class: "all-buttons" }, make("button", { type: "button", onclick: () => this.element.close() }, say("mine.leave")), this.put));
    this.element.addEventListener("close", () => this.element.remove());
  }

  parts() {
    const fields = make("div", { class: "mine-fields" }, make("div", { class: "choices mine-made", role: "group", "aria-label": say("construction.title") }, ...this.made),
      ...[...this.fields].flatMap(([key, { element }]) => (key === "over_rollers_mm" ? [this.pitches.element, element] : [element])), this.doubt.element);
    const told = make("div", { class: "mine-told" }, make("figure", {}, this.paper.picture, make("figcaption", { class: "hint" }, say("mine.picture.note"))),
      this.verdict, this.doubts, make("details", { class: "fold" }, make("summary", {}, say("mine.chosen")), make("p", { class: "hint" }, say("mine.chosen.note")), this.chosen),
      make("p", { class: "caution" }, say("mine.caution")));
    return make("div", { class: "mine-parts" }, fields, told);
  }

  /** @param {string} key @param {string} number @param {(value: number) => void} put */
  field(key, number, put) {
    const field = new Field({ label: number + say(`mine.${key}`), hint: say(`mine.${key}.hint`), id: `mine-${key}` }, (value) => this.take(() => put(value)));
    field.input.addEventListener("focus", () => { this.focus = key; this.ask(); });
    return field;
  }

  /** Takes a change; what is wrong with it is said when the kernel has answered. @param {() => void} change @returns {Fault[]} */
  take(change) {
    change();
    this.ask();
    return [];
  }

  open() {
    document.body.append(this.element);
    this.element.showModal();
    this.ask();
  }

  ask() {
    const width_px = Math.round(this.paper.picture.parentElement?.clientWidth ?? 0);
    this.steady.want(this.session.bench.scenario(), { ...this.asked, focus: this.focus, width_px });
    this.show();
  }

  show() {
    const { asked, steady } = this;
    for (const [key, field] of this.fields) field.show(asked.readings[key]);
    this.pitches.show(asked.pitches);
    this.doubt.show(asked.doubt_mm);
    for (const button of this.made) dress(button, { "aria-pressed": String(button.dataset.value === asked.construction) });
    if (steady.stale) return;
    this.refuse(steady.faults);
    dress(this.put, { disabled: !steady.answer });
    if (steady.answer) this.tell(steady.answer);
    if (this.pressed) this.onBench();
  }

  /** A sentence beside each field whose reading cannot be. @param {Fault[]} faults */
  refuse(faults) {
    const fields = new Map([...this.fields, ["pitches", this.pitches], ["doubt_mm", this.doubt]]);
    for (const [key, field] of fields) {
      if (Number.isNaN(field.way.read(field.input.value))) continue; // no number yet: its own sentence stays
      const own = faults.filter(({ path }) => path === key);
      tell(field.fault, own.map((fault) => faultSentence({ ...fault, path: `mine.${key}` })).join(" "), field.input);
    }
    const other = faults.filter(({ path }) => !fields.has(path));
    tell(this.fault, other.map(faultSentence).join(" "));
  }

  /** @param {Made} made */
  tell({ doubts, chosen, gap: verdict, picture }) {
    const numbers = (/** @type {Doubtful} */ { value_mm, doubt_mm }) => ({ value: gap(value_mm), doubt: gap(doubt_mm) });
    const side = doubts[doubts.length - 1];
    this.paper.show(picture, say(this.focus && has(`mine.${this.focus}.hint`) ? `mine.${this.focus}.hint` : "mine.picture"));
    this.verdict.textContent = say(`mine.gap.${verdict}`, numbers(side));
    this.doubts.replaceChildren(...doubts.slice(0, -1).map((each) => make("li", {}, say("mine.doubt", { name: say(`size.${each.key}`), ...numbers(each) }))));
    this.chosen.replaceChildren(...Object.entries(chosen).map(([key, mm]) => make("li", {}, `${say(`size.${key}`)} `, make("b", {}, gap(mm)), " ", make("span", { class: "tag" }, say("chosen")))));
  }

  /** The chain on the bench, as one of one's own; it can be undone. */
  async onBench() {
    const { session, steady } = this;
    const made = steady.answer;
    const wrong = /** @type {HTMLElement|null} */ (this.element.querySelector("[aria-invalid]"));
    if (wrong) return wrong.focus();
    this.pressed = steady.stale; // by the press that left the last field: it is done when the kernel has answered
    if (!made || steady.stale) return;
    const { drive } = session.bench.scenario(); // the wheels stay, whatever chain runs on them
    const scenario = /** @type {import("../kernel.js").Scenario} */ ({
      format: 1, title: say("mine.name"), about: say("mine.about"), source: say("mine.source", { doubt: gap(this.asked.doubt_mm) }),
      chain: { construction: made.construction, ...made.stated }, ...(drive ? { drive } : {}),
    });
    const faults = await putOwn(session, { name: scenario.title, scenario });
    if (faults.length > 0) return this.refuse(faults);
    this.element.close();
    byId("answer").scrollIntoView({ block: "nearest" });
  }
}
