// One field of an arrangement: a row of teeth, or a length; what is refused stays as it was typed.

import { make } from "../dom.js";
import { faultSentence, tell } from "../field.js";
import { fieldOf, mmOf, numberOf } from "../figures.js";
import { LENGTH, unread } from "../way.js";
import { say } from "../words.js";

export class Row {
  /**
   * @param {string} id
   * @param {string} key
   * @param {boolean} many whether it holds a row of teeth
   * @param {(text: string) => void} keep
   */
  constructor(id, key, many, keep) {
    this.key = key;
    this.many = many;
    this.name = `line.gears.field.${key}`;
    const field = `gears-${id.replace(".", "-")}`;
    this.input = make("input", { id: field, type: "text", inputmode: many ? "text" : "decimal", autocomplete: "off", spellcheck: false, "aria-describedby": `${field}-fault` });
    this.unit = make("span", { class: "unit", "aria-hidden": "true" });
    this.fault = make("p", { class: "fault", id: `${field}-fault`, role: "alert", hidden: true });
    this.element = make("div", { class: "field" }, make("label", { for: field }, say(this.name)), make("span", { class: "gears-entry" }, this.input, this.unit), this.fault);
    this.input.addEventListener("change", () => keep(this.plain(this.input.value)));
  }

  /** A length is kept in mm, whatever it is typed in. @param {string} text */
  plain(text) {
    const mm = this.many ? NaN : mmOf(text);
    return Number.isFinite(mm) ? String(Number(mm.toFixed(4))) : text.trim();
  }

  /**
   * The numbers that a kept text holds; none where something in it is no number or beyond all numbers, which is told.
   * @param {string} text
   * @returns {number|number[]|null}
   */
  read(text) {
    const numbers = this.many ? text.split(/[\s,;/]+/).filter((part) => part !== "").map(numberOf) : [numberOf(text)];
    const odd = numbers.find((number) => !Number.isFinite(number));
    this.refuse(odd === undefined ? "" : faultSentence(unread(this.name, text, odd)));
    if (odd !== undefined) return null;
    return this.many ? numbers : numbers[0];
  }

  /** @param {string} text as it is kept */
  show(text) {
    this.unit.textContent = this.many ? "" : LENGTH.unit();
    if (document.activeElement === this.input) return;
    const number = Number(text);
    this.input.value = this.many || text === "" || Number.isNaN(number) ? text : fieldOf(number);
  }

  /** @param {string} sentence */
  refuse(sentence) {
    tell(this.fault, sentence, this.input);
  }
}
