// The step of a lesson that is being edited: its sentence, the numbers it can hold, what it shows, its face, its guess.

import { make } from "../dom.js";
import { figure } from "../figures.js";
import { contactName, has, say } from "../words.js";
import { changesBetween } from "./draft.js";
import { GuessForm } from "./guess.js";
import { hasOpenBrace, hasOwnNumber, placesOf, unknownPlace } from "./places.js";
import { Text } from "./text.js";

/** @typedef {import("./draft.js").Draft} Draft */
/** @typedef {import("./draft.js").Shown} Shown */
/** @typedef {import("../session.js").Session} Session */

export class StepForm {
  /** @type {Record<string, any>|null} what the kernel worked out for the step */
  numbers = null;

  /**
   * @param {Session} session
   * @param {(part: Partial<Shown>) => string} put gives the sentence that refuses it
   */
  constructor(session, put) {
    this.session = session;
    const checked = (/** @type {Partial<Shown>} */ part, /** @type {string} */ text) => this.unknown(text) || put(part);
    this.stale = make("p", { class: "hint", hidden: true }, say("making.stale"));
    this.say = new Text({ label: say("making.say"), lines: 4, hint: this.stale }, (text) => checked({ say: text }, text));
    this.places = make("select", { id: "making-places" });
    this.put = make("button", { type: "button", onclick: () => this.last.insert(`{${this.places.value}}`) }, say("making.put"));
    this.shows = make("p", { class: "making-shows" });
    this.light = make("select", { id: "making-light", onchange: () => put({ light: this.light.value || undefined }) });
    this.guess = new GuessForm(checked);
    /** The text that a number is put into: the one edited last. */
    this.last = this.say;
    this.element = make("div", { class: "making-step" }, this.say.element,
      make("div", { class: "making-places" }, make("label", { for: "making-places" }, say("making.places")), this.places, this.put, make("p", { class: "hint" }, say("making.places.hint"))),
      this.shows,
      make("div", { class: "making-light" }, make("label", { for: "making-light" }, say("making.light")), this.light), this.guess.element);
    this.element.addEventListener("focusin", ({ target }) => (this.last = [this.say, ...this.guess.texts].find(({ input }) => input === target) ?? this.last));
  }

  /** @param {string} text */
  unknown(text) {
    if (hasOpenBrace(text)) return say("making.fault.brace");
    const place = this.numbers && unknownPlace(text, this.numbers);
    return place === null ? "" : say("making.fault.place", { place });
  }

  /** @param {Draft} draft @param {boolean} anew */
  show({ steps, at }, anew) {
    const step = steps[at];
    if (anew) this.last = this.say;
    this.say.show(step.say, anew);
    this.stale.hidden = !hasOwnNumber([step.say, step.ask?.text, ...(step.ask?.choices ?? []), step.ask?.because].join(" "));
    this.guess.show(step.ask, anew);
    this.shows.textContent = [say("making.shows"), shown(step), changes(steps, at)].join(" ");
    this.showLights(step.light ?? "");
  }

  /** @param {string} light */
  showLights(light) {
    const { contacts, state } = this.session;
    const options = contacts.map((contact) => {
      const { who, where } = contactName(contact, state.construction);
      return make("option", { value: contact.id }, `${who}, ${where}`);
    });
    if (light && !contacts.some(({ id }) => id === light)) options.push(make("option", { value: light }, light));
    this.light.replaceChildren(make("option", { value: "" }, say("making.light.none")), ...options);
    this.light.value = light;
  }

  /** @param {Record<string, any>|null} numbers */
  showNumbers(numbers) {
    this.numbers = numbers;
    const kept = this.places.value;
    const groups = numbers ? placesOf(numbers).map(({ part, places }) =>
      make("optgroup", { label: part }, ...places.map(({ path, text }) => make("option", { value: path }, text)))) : [make("option", { value: "" }, say("making.places.none"))];
    this.places.replaceChildren(...groups);
    if ([...this.places.options].some(({ value }) => value === kept)) this.places.value = kept;
    this.put.disabled = !numbers;
  }
}

/** @param {Shown} step */
const shown = ({ question, way, at }) => say("making.shows.as", { question: say(`ask.${question}`), way: say(`way.${way}`), share_fraction: at });

/**
 * What a step changes, in words.
 * @param {Shown[]} steps
 * @param {number} at
 */
function changes(steps, at) {
  if (at === 0) return say("making.changes.first");
  const all = Object.entries(changesBetween(steps[at - 1].scenario, steps[at].scenario));
  return all.length === 0 ? say("making.changes.none") : say("making.changes", { changes: all.map(([path, value]) => change(path, value)).join("; ") });
}

/** @param {string} path @param {any} value */
function change(path, value) {
  const key = path.split(".").at(-1) ?? path;
  const name = [`size.${key}`, `value.${key}`, `making.part.${key}`].find(has);
  const what = name ? say(name) : key.replaceAll("_", " ");
  if (value === null) return say("making.gone", { what });
  return typeof value === "object" ? what : `${what} ${has(`construction.${value}`) ? say(`construction.${value}`) : figure(key, value)}`;
}
