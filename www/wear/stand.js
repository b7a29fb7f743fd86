// Which joints stand on the drawing above: the worn ones while wear is asked about, always, or those as new.

import { dress, make } from "../dom.js";
import { keepTyped } from "../typed.js";
import { say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */

const NEW = "0";

export class Stand {
  worn_mm = 0;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.buttons = ["worn", "new", "always"].map((choice) => {
      const button = make("button", { type: "button", "data-stand": choice }, say(`wear.stand.${choice}`));
      button.addEventListener("click", () => keepTyped(session, "worn", this.kept(choice), true));
      return button;
    });
    this.element = make("div", { class: "wear-stand", role: "group", "aria-label": say("wear.stand") }, make("span", {}, say("wear.stand")), ...this.buttons);
  }

  /** What the address keeps of a choice. @param {string} choice */
  kept(choice) {
    return { new: NEW, always: String(this.worn_mm) }[choice];
  }

  /**
   * Joints have worn so deep.
   * @param {number} worn_mm
   */
  show(worn_mm) {
    this.keep(worn_mm);
    this.session.wear();
    const { choice } = this;
    for (const button of this.buttons) dress(button, { "aria-pressed": String(button.dataset.stand === choice) });
  }

  /** @param {number} worn_mm */
  keep(worn_mm) {
    this.worn_mm = this.session.told_worn_mm = worn_mm;
    const { own } = this.session.work;
    if (this.choice === "always") this.session.work.own = { ...own, worn: String(worn_mm) };
  }

  get choice() {
    const { worn } = this.session.work.own;
    return worn === undefined ? "worn" : worn === NEW ? "new" : "always";
  }

  /**
   * Joints are to stand worn so deep with the change that is being made: what is given need not wait for its answer.
   * @param {import("../kernel.js").BenchLike} bench
   * @param {number} worn_mm
   */
  with(bench, worn_mm) {
    this.keep(worn_mm);
    this.session.stood_worn_mm = this.session.worn_mm;
    bench.show_worn(this.session.stood_worn_mm);
  }
}
