// A guess before the answer: choices, a count of hands for each, and the answer with its reason.

import { dress, make } from "../dom.js";
import { say } from "../words.js";

/** @typedef {import("./shelf.js").Ask} Ask */

export class Guess {
  shown = false;
  /** @type {number|null} what one visitor chose, from 1 */
  chosen = null;

  /**
   * @param {Ask} ask
   * @param {(text: string) => string} write fills in the kernel's numbers
   * @param {() => void} changed
   * @param {{hands: number[], shown: boolean, chosen: number|null}} [before] as it stood in another language
   */
  constructor(ask, write, changed, before) {
    this.ask = ask;
    this.write = write;
    this.changed = changed;
    this.hands = ask.choices.map((_, index) => before?.hands[index] ?? 0);
    if (before) [this.shown, this.chosen] = [before.shown, before.chosen];
    this.text = make("legend", {});
    this.because = make("p", { class: "lesson-because", role: "status" });
    this.rows = ask.choices.map((_, index) => this.row(index));
    this.element = make("fieldset", {}, this.text, make("ol", {}, ...this.rows.map(({ item }) => item)), this.because);
  }

  /** @param {number} index */
  row(index) {
    const choice = make("button", { type: "button", class: "lesson-choice", onclick: () => this.choose(index + 1) });
    const count = make("output", { class: "lesson-hands", "aria-label": say("lesson.hands.name", { choice: index + 1 }) });
    const raise = (/** @type {number} */ by) => () => {
      this.hands[index] = Math.max(0, this.hands[index] + by);
      this.show();
    };
    const fewer = make("button", { type: "button", onclick: raise(-1), "aria-label": say("lesson.hands.fewer", { choice: index + 1 }) }, "−");
    const more = make("button", { type: "button", onclick: raise(1), "aria-label": say("lesson.hands.more", { choice: index + 1 }) }, "+");
    const item = make("li", {}, choice, make("span", { class: "lesson-count-hands" }, fewer, count, more));
    return { item, choice, count };
  }

  /** @param {number} number from 1 */
  choose(number) {
    this.chosen = number;
    this.reveal();
  }

  reveal() {
    this.shown = true;
    this.changed();
    this.because.scrollIntoView({ block: "nearest" });
  }

  show() {
    const { ask, shown } = this;
    this.text.textContent = this.write(ask.text);
    for (const [index, { choice, count, item }] of this.rows.entries()) {
      const right = shown && index + 1 === ask.answer;
      const mark = right ? say("lesson.right") : shown && this.chosen === index + 1 ? say("lesson.wrong") : "";
      choice.replaceChildren(make("span", { class: "number" }, String(index + 1)), make("span", {}, this.write(ask.choices[index])),
        ...(mark ? [make("b", {}, mark)] : []));
      dress(choice, { "aria-pressed": String(this.chosen === index + 1), disabled: shown });
      item.classList.toggle("right", right);
      count.textContent = say("lesson.hands", { count: this.hands[index] });
    }
    const because = shown && ask.because ? this.write(ask.because) : "";
    if (this.because.textContent !== because) this.because.textContent = because;
    this.because.hidden = !shown;
  }
}

/** Hands and answers as they stand, by step. @param {Map<string, Guess>} guesses */
export const statesOf = (guesses) =>
  Object.fromEntries([...guesses].map(([name, { hands, shown, chosen }]) => [name, { hands, shown, chosen }]));
