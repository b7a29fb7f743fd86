// All answers: the sentences and figures of every question in one table, for the present chain and for A.

import { make } from "../dom.js";
import { QUESTIONS } from "../questions.js";
import { say } from "../words.js";
import { answersOf, figuresOf } from "./answers.js";
import { called, changeOf, inWords, signOf, written } from "./figures.js";
import { nameOf, keptOf } from "./kept.js";
import { newShadow } from "./shadow.js";
import { spansOf } from "./spans.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../work.js").Kept} Kept */
/** @typedef {import("./answers.js").Said} Said */
/** @typedef {import("./figures.js").Pair} Pair */
/** @typedef {import("./spans.js").Span} Span */

/** @param {Session} session @param {Kept|null} a */
export const openTable = (session, a) => new Table(session, a).run();

class Table {
  /** @type {Map<string, HTMLTableSectionElement>} */
  parts = new Map();

  /** @param {Session} session @param {Kept|null} a */
  constructor(session, a) {
    this.session = session;
    this.a = a;
    this.told = make("p", { class: "all-told", role: "status" }, say("all.working"));
    const heads = [say("all.question"), say(a ? "all.b" : "all.now"), ...(a ? [say("all.change"), say("compare.a")] : [])];
    this.table = make("table", { class: a ? "all-table both" : "all-table" }, make("caption", {}, this.caption()),
      make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))));
    const button = (/** @type {string} */ word, /** @type {() => void} */ onclick) => make("button", { type: "button", onclick }, say(word));
    this.print = button("all.print", () => print());
    this.copy = button("all.copy", () => this.toClipboard());
    this.element = make("dialog", { class: "all", "aria-labelledby": "all-title" },
      make("h2", { id: "all-title" }, say("compare.all")), this.told,
      make("div", { class: "all-scroll", tabindex: 0, role: "group", "aria-label": say("compare.all") }, this.table),
      make("p", { class: "hint" }, say("all.note")),
      make("div", { class: "all-buttons" }, this.print, this.copy, make("button", { type: "button", class: "primary", onclick: () => this.element.close() }, say("close"))));
    this.element.addEventListener("close", () => this.element.remove());
  }

  caption() {
    const { session, a } = this;
    const b = nameOf(keptOf(session), session.scenarios);
    return a ? say("all.caption.both", { b, a: nameOf(a, session.scenarios) }) : say("all.caption", { b });
  }

  async run() {
    document.body.append(this.element);
    this.element.showModal();
    const { session, a } = this;
    const now = await newShadow(session.scenarios);
    const held = a && (await newShadow(session.scenarios));
    const faults = [...now.take(session.bench.scenario(), session), ...(held && a ? held.follow(a, session) : [])];
    if (faults.length > 0) return void (this.told.textContent = say("ask.failed"));
    const scenarios = () => /** @type {const} */ ([now.bench.scenario(), held && held.bench.scenario()]);
    const limits = scenarios().map((scenario) => scenario?.limits ?? []); // as they are given: an example is nobody's
    await answersOf(now, (said) => this.put(said, "b"));
    if (held) await answersOf(held, (said) => this.put(said, "a"));
    const both = scenarios();
    for (const ask of this.parts.keys()) {
      const pairs = await figuresOf(ask, ...both, session.work.corner).catch(() => []);
      const [b, a] = await Promise.all(both.map(async (scenario, i) => (scenario ? spansOf(scenario, ask, limits[i]) : [])));
      this.fill(ask, pairs, { b, a });
    }
    this.told.textContent = say("all.done", { count: this.parts.size });
  }

  /** The rows of a question. @param {string} ask */
  part(ask) {
    const known = this.parts.get(ask);
    if (known) return known;
    const cell = (/** @type {string} */ side) => make("td", { class: `said ${side}`, "data-label": say(side === "a" ? "compare.a" : this.a ? "all.b" : "all.now") }, "–");
    const head = make("th", { scope: "row" }, `${1 + QUESTIONS.findIndex(({ id }) => id === ask)} ${say(`ask.${ask}`)}`);
    const [b, a] = [cell("b"), cell("a")];
    if (this.a) b.colSpan = 2;
    const part = make("tbody", { "data-ask": ask }, make("tr", {}, head, b, ...(this.a ? [a] : [])));
    this.parts.set(ask, part);
    this.table.append(part);
    return part;
  }

  /** @param {Said} said @param {string} side */
  put({ ask, answer, surprise, begun }, side) {
    const cell = /** @type {HTMLElement} */ (this.part(ask).querySelector(`.said.${side}`));
    cell.replaceChildren(make("b", {}, answer), ...(surprise ? [make("span", { class: "surprised" }, surprise)] : []),
      ...(begun ? [make("span", { class: "hint" }, say("all.begun"))] : []));
  }

  /** @param {string} ask @param {Pair[]} pairs @param {{a: Span[], b: Span[]}} spans */
  fill(ask, pairs, spans) {
    const label = (/** @type {string} */ word) => ({ "data-label": say(word) });
    const value = (/** @type {Pair} */ pair, /** @type {"a"|"b"} */ side) => [written(pair.key, pair[side]), ...over(spans[side], pair.key)];
    this.part(ask).append(...pairs.map((pair) => make("tr", { class: `figure ${pair.way}` },
      make("th", { scope: "row" }, called(pair.key)),
      make("td", label(this.a ? "all.b" : "all.now"), ...value(pair, "b")),
      ...(this.a ? [make("td", { class: "way", ...label("all.change") },
        make("span", { "aria-hidden": "true" }, signOf(pair), pair.way === "more" || pair.way === "less" ? ` ${changeOf(pair)}` : ""), make("span", { class: "hush" }, inWords(pair))),
      make("td", label("compare.a"), ...value(pair, "a"))] : []))));
  }

  /** The table as text with tabs, which spreadsheets and letters take. */
  async toClipboard() {
    const rows = [...this.table.rows].map((row) => [...row.cells].map((cell) => textOf(cell)).join("\t"));
    try {
      await navigator.clipboard.writeText([textOf(this.table.caption), ...rows, say("all.note")].join("\n"));
      this.told.textContent = say("all.copied");
    } catch {
      getSelection()?.selectAllChildren(this.table);
      this.told.textContent = say("all.copied.not");
    }
  }
}

/** What the limits leave open of a figure. @param {Span[]} spans @param {string} wanted */
const over = (spans, wanted) => spans.filter(({ key }) => key === wanted).map(({ tightest, loosest }) =>
  make("span", { class: "over" }, say("all.over", { tightest: written(wanted, tightest), loosest: written(wanted, loosest) })));

/** The text of a cell; what is only for the ear stays out. @param {Element|null} cell */
function textOf(cell) {
  const copy = /** @type {Element} */ (cell?.cloneNode(true));
  for (const hush of copy?.querySelectorAll(".hush") ?? []) hush.remove();
  return [...(copy?.childNodes ?? [])].map((node) => node.textContent?.trim()).filter(Boolean).join(" ");
}
