// A text that can be edited, of one line or more, with what refuses it beside it.

import { dress, make } from "../dom.js";
import { tell } from "../field.js";

let count = 0;

export class Text {
  /**
   * @param {{label: string, lines?: number, hint?: HTMLElement}} text
   * @param {(value: string) => string} put gives the sentence that refuses it, or nothing
   */
  constructor({ label, lines = 0, hint }, put) {
    const id = `making-text-${++count}`;
    this.put = put;
    this.input = lines > 0 ? make("textarea", { id, rows: lines }) : make("input", { type: "text", id });
    this.fault = make("p", { class: "fault", id: `${id}-fault`, role: "alert", hidden: true });
    dress(this.input, { "aria-describedby": `${id}-fault`, maxlength: 2000 });
    this.label = make("label", { for: id }, label);
    this.element = make("div", { class: "making-text" }, this.label, this.input, ...(hint ? [hint] : []), this.fault);
    this.input.addEventListener("change", () => this.typed());
  }

  typed() {
    tell(this.fault, this.put(this.input.value), this.input);
  }

  /**
   * Shows the text that there is; what was refused stays until it is mended or another step is shown.
   * @param {string} value
   * @param {boolean} anew
   */
  show(value, anew) {
    if (!anew && this.input.hasAttribute("aria-invalid")) return;
    tell(this.fault, "", this.input);
    if (this.input.value !== value) this.input.value = value;
  }

  /** Puts a text where the caret stands. @param {string} text */
  insert(text) {
    const { input } = this;
    const [start, end] = [input.selectionStart ?? input.value.length, input.selectionEnd ?? input.value.length];
    input.setRangeText(text, start, end, "end");
    input.focus();
    this.typed();
  }
}
