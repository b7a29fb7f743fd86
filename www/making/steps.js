// The steps of a lesson being made: one is edited; each can be moved, doubled, deleted.

import { dress, make } from "../dom.js";
import { say } from "../words.js";
import { double, drop, shift } from "./draft.js";

/** @typedef {import("./draft.js").Draft} Draft */
/** @typedef {import("./making.js").Making} Making */

const ACTS = /** @type {const} */ ({
  earlier: { change: shift(-1), word: "making.moved" },
  later: { change: shift(1), word: "making.moved" },
  double: { change: double, word: "making.doubled" },
  drop: { change: drop, word: "making.dropped" },
});

export class StepList {
  /** @param {Making} making */
  constructor(making) {
    this.making = making;
    this.list = make("ol", { class: "making-list" });
    this.acts = /** @type {(keyof typeof ACTS)[]} */ (Object.keys(ACTS)).map((act) => {
      const button = make("button", { type: "button", onclick: () => this.act(act) }, say(`making.${act}`));
      return { act, button };
    });
    this.element = make("div", { class: "making-steps" }, make("h3", { id: "making-steps" }, say("making.steps")), this.list,
      make("div", { class: "making-row" }, ...this.acts.map(({ button }) => button)));
    dress(this.list, { "aria-labelledby": "making-steps" });
  }

  /** @param {keyof typeof ACTS} act */
  act(act) {
    this.making.act(ACTS[act].change, ACTS[act].word);
    const { button } = /** @type {{button: HTMLButtonElement}} */ (this.acts.find((each) => each.act === act));
    if (button.disabled) /** @type {HTMLElement|null} */ (this.list.querySelector("[aria-current]"))?.focus();
  }

  /** @param {Draft} draft */
  show({ steps, at }) {
    while (this.list.children.length > steps.length) this.list.lastElementChild?.remove();
    for (let index = this.list.children.length; index < steps.length; index++) {
      this.list.append(make("li", {}, make("button", { type: "button", onclick: () => this.making.go(index) })));
    }
    for (const [index, item] of [...this.list.children].entries()) {
      const button = /** @type {HTMLElement} */ (item.firstElementChild);
      dress(button, { "aria-current": index === at ? "step" : null });
      button.replaceChildren(make("span", { class: "number" }, String(index + 1)), make("span", {}, steps[index].say), ...(steps[index].ask ? [make("b", { "aria-hidden": true }, "?")] : []));
    }
    const off = { earlier: at === 0, later: at === steps.length - 1, double: false, drop: steps.length === 1 };
    for (const { act, button } of this.acts) dress(button, { disabled: off[act], "aria-label": say(`making.${act}.name`, { step: at + 1 }) });
  }
}
