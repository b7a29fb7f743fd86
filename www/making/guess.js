// The guess of a step being made: a question, its choices with the right one marked, and why.

import { dress, make } from "../dom.js";
import { say } from "../words.js";
import { Text } from "./text.js";

/** @typedef {import("../lesson/shelf.js").Ask} Ask */

const [LEAST, MOST] = [2, 9];

export class GuessForm {
  /** @type {Text[]} */
  choices = [];
  /** @type {Ask|undefined} */
  ask;

  /** @param {(part: {ask: Ask|undefined}, text: string) => string} put gives the sentence that refuses it; the text is the one typed */
  constructor(put) {
    this.put = put;
    this.switch = make("button", { type: "button", onclick: () => this.turn() });
    this.text = new Text({ label: say("making.ask.text") }, (text) => this.change({ text }, text));
    this.because = new Text({ label: say("making.ask.because"), lines: 2 }, (because) => this.change({ because }, because));
    this.list = make("ol", { class: "making-choices" });
    this.more = make("button", { type: "button", onclick: () => this.add() }, say("making.ask.more"));
    this.body = make("fieldset", {}, this.text.element, this.list, this.more, this.because.element);
    this.element = make("div", { class: "making-guess" }, this.switch, this.body);
  }

  /** @returns {Text[]} every text of the guess */
  get texts() {
    return [this.text, ...this.choices, this.because];
  }

  /** @param {Partial<Ask>} part @param {string} text */
  change(part, text = "") {
    return this.ask ? this.put({ ask: { ...this.ask, ...part } }, text) : "";
  }

  turn() {
    const ask = { text: say("making.ask.text.new"), choices: [say("making.ask.choice.new"), say("making.ask.other.new")], answer: 1 };
    this.put({ ask: this.ask ? undefined : ask }, "");
    if (this.ask) this.text.input.select();
  }

  add() {
    const { choices } = /** @type {Ask} */ (this.ask);
    this.change({ choices: [...choices, say("making.ask.choice.new")] });
    this.choices.at(-1)?.input.select();
  }

  /** @param {number} index */
  less(index) {
    const { choices, answer } = /** @type {Ask} */ (this.ask);
    this.change({ choices: choices.toSpliced(index, 1), answer: answer > index + 1 || answer === choices.length ? Math.max(1, answer - 1) : answer });
    this.choices[Math.min(index, choices.length - 2)].input.focus();
  }

  /** @param {number} index */
  row(index) {
    const choice = index + 1;
    const text = new Text({ label: say("making.ask.choice", { choice }) }, (typed) => this.change({ choices: this.ask?.choices.with(index, typed) }, typed));
    this.choices.push(text);
    const right = make("input", { type: "radio", name: "making-right", "aria-label": say("making.ask.right.name", { choice }), onchange: () => this.change({ answer: choice }) });
    const less = make("button", { type: "button", "aria-label": say("making.ask.less.name", { choice }), onclick: () => this.less(index) }, say("making.ask.less"));
    return make("li", {}, text.element, make("label", { class: "making-right" }, right, say("making.ask.right")), less);
  }

  /** @param {Ask|undefined} ask @param {boolean} anew another step */
  show(ask, anew) {
    this.ask = ask;
    this.switch.textContent = say(ask ? "making.ask.off" : "making.ask");
    this.body.hidden = !ask;
    if (!ask) return;
    if (anew || this.choices.length !== ask.choices.length) {
      this.choices = [];
      this.list.replaceChildren(...ask.choices.map((_, index) => this.row(index)));
    }
    this.text.show(ask.text, anew);
    this.because.show(ask.because ?? "", anew);
    for (const [index, choice] of this.choices.entries()) choice.show(ask.choices[index], anew);
    for (const [index, item] of [...this.list.children].entries()) {
      const right = /** @type {HTMLInputElement} */ (item.querySelector("input[type=radio]"));
      right.checked = index + 1 === ask.answer;
      dress(/** @type {HTMLButtonElement} */ (item.lastElementChild), { disabled: ask.choices.length <= LEAST });
    }
    dress(this.more, { disabled: ask.choices.length >= MOST });
  }
}
