// What stands beside the present chain's answer: A's answer, the figures in which the two differ, and the buttons.

import { byId, dress, make } from "../dom.js";
import { say } from "../words.js";
import { called, changeOf, inWords, signOf, written } from "./figures.js";

/** @typedef {import("./figures.js").Pair} Pair */
/** What the buttons do. @typedef {Record<"hold"|"swap"|"drop"|"all"|"mine", () => void>} Acts */

/** What needs a chain that is held. */
const HELD_ONLY = /** @type {const} */ (["swap", "drop"]);

export class Beside {
  last = "";

  /** @param {Acts} acts */
  constructor(acts) {
    const button = (/** @type {keyof Acts} */ act) => make("button", { type: "button", onclick: acts[act] }, say(`compare.${act}`));
    this.answer = make("p", { class: "beside-answer" });
    this.list = make("ul", { class: "beside-pairs" });
    this.rest = make("li", { class: "hint" });
    this.apart = make("p", { class: "hint", hidden: true }, say("compare.apart"));
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.told = make("p", { class: "hush", role: "status" });
    this.buttons = { hold: button("hold"), swap: button("swap"), drop: button("drop"), all: button("all"), mine: button("mine") };
    this.element = make("section", { class: "beside", "aria-label": say("compare.title"), hidden: true },
      this.answer, this.list, this.apart, this.fault, make("div", { class: "beside-buttons" }, ...Object.values(this.buttons)), this.told);
    byId("slope").after(this.element);
  }

  /** @param {string} word */
  tell(word) {
    this.told.textContent = say(word);
  }

  /** @param {string} why */
  refuse(why) {
    this.fault.hidden = false;
    this.fault.textContent = `${say("compare.refused")} ${why}`.trim();
  }

  /**
   * What there is to see.
   * @param {boolean} held whether a chain is held
   * @param {boolean} wide whether it was opened by hand
   */
  open(held, wide) {
    this.element.hidden = !held && !wide && this.fault.hidden;
    dress(byId("compare"), { "aria-expanded": String(!this.element.hidden) });
    for (const key of HELD_ONLY) this.buttons[key].hidden = !held;
    this.buttons.hold.textContent = say(held ? "compare.again" : "compare.hold");
    this.answer.hidden = this.list.hidden = !held;
  }

  /** @param {boolean} waiting what is shown is older than what is asked */
  wait(waiting) {
    this.element.classList.toggle("waiting", waiting);
  }

  /** @param {string} name @param {string} answer */
  say(name, answer) {
    const text = `${name}: ${answer}`;
    if (text === this.last) return;
    this.last = text;
    this.answer.replaceChildren(make("b", { class: "letter" }, say("compare.a")), " ", make("span", { class: "beside-name" }, `${name}:`), " ", answer);
  }

  /** Says why no outlines are drawn. @param {boolean} apart */
  lie(apart) {
    this.apart.hidden = !apart;
  }

  /** The figures that differ; how many do not. @param {Pair[]} pairs */
  fill(pairs) {
    const changed = pairs.filter(({ way }) => way !== "same");
    this.list.replaceChildren(...changed.map(item), this.rest);
    const same = pairs.length - changed.length;
    this.rest.textContent = say(changed.length === 0 ? "compare.same" : ["compare.none", "compare.rest.one"][same] ?? "compare.rest", { count: same });
  }
}

/** One figure: the present value, how it differs, that of A. @param {Pair} pair */
const item = (pair) => make("li", {},
  make("span", { class: "beside-name" }, called(pair.key)), " ", make("b", {}, written(pair.key, pair.b)), " ",
  make("span", { class: `way ${pair.way}`, "aria-hidden": "true" }, `${signOf(pair)} ${pair.change === null ? "" : changeOf(pair)}`),
  make("span", { class: "hush" }, `, ${inWords(pair)},`), " ",
  make("span", { class: "beside-a" }, say("compare.of.a", { value: written(pair.key, pair.a) })));
