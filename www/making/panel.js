// The panel beside the bench: its buttons, the steps, the step being edited, the lesson's name and file.

import { byId, dress, make } from "../dom.js";
import { say } from "../words.js";
import { alter } from "./draft.js";
import { Files } from "./files.js";
import { StepForm } from "./step.js";
import { StepList } from "./steps.js";
import { Text } from "./text.js";

/** @typedef {import("./draft.js").Draft} Draft */
/** @typedef {import("./making.js").Making} Making */

export class Panel {
  /** @param {Making} making */
  constructor(making) {
    const button = (/** @type {string} */ word, /** @type {() => void} */ onclick, kind = "") => make("button", { type: "button", class: kind, onclick }, say(word));
    this.undo = button("making.undo", () => making.turn(making.turns.back, "making.undone"));
    this.redo = button("making.redo", () => making.turn(making.turns.forth, "making.redone"));
    this.title = new Text({ label: say("making.name") }, (title) => making.change((draft) => ({ ...draft, title })));
    this.about = new Text({ label: say("making.about"), lines: 2 }, (about) => making.change((draft) => ({ ...draft, about })));
    this.list = new StepList(making);
    this.form = new StepForm(making.session, (part) => making.change(alter(part)));
    this.take = button("making.take", () => making.record(false));
    this.told = make("p", { class: "making-told", role: "status" });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true });
    this.files = new Files(making);
    this.element = make("section", { class: "making", "aria-labelledby": "making-title", hidden: true },
      make("div", { class: "making-head" }, make("h2", { id: "making-title", tabindex: -1 }, say("making.title")), this.undo, this.redo, button("making.close", () => making.close())),
      make("p", { class: "hint" }, say("making.hint")), button("making.record", () => making.record(true), "primary"), this.told, this.fault,
      this.list.element, this.form.element, make("div", { class: "making-row" }, this.take, button("making.try", () => making.try())),
      this.title.element, this.about.element, this.files.element, make("p", { class: "hint" }, say("making.kept")));
    byId("stage").after(this.element);
    this.element.addEventListener("keydown", (event) => this.key(event));
  }

  /**
   * @param {Draft} draft
   * @param {import("./turns.js").Turns} turns
   * @param {boolean} anew whether another step is edited
   */
  show(draft, turns, anew) {
    this.title.show(draft.title, anew);
    this.about.show(draft.about, anew);
    this.list.show(draft);
    this.form.show(draft, anew);
    this.take.textContent = say("making.take", { step: draft.at + 1 });
    dress(this.undo, { disabled: turns.past.length === 0 });
    dress(this.redo, { disabled: turns.future.length === 0 });
    this.files.show();
  }

  /** What has been done. @param {string} word @param {number} at the step, from 0 */
  tell(word, at) {
    this.told.textContent = word && say(word, { step: at + 1 });
  }

  /** Undo and redo by keyboard; a text that is being typed has its own. @param {KeyboardEvent} event */
  key(event) {
    const typing = /** @type {Element} */ (event.target).matches("input[type=text], textarea");
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !["z", "y"].includes(key)) return;
    event.stopPropagation(); // the bench has an undo of its own
    if (typing) return;
    event.preventDefault();
    (key === "z" && !event.shiftKey ? this.undo : this.redo).click();
  }
}
