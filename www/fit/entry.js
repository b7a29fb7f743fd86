// One number of a table that can be typed, with the sentence that refuses it beneath its row.

import { make } from "../dom.js";
import { FIELD_STEP, tellFaults as tellAt } from "../field.js";
import { degreesOf, numberOf, radOf, typedOf, unitInUse } from "../figures.js";
import { numberField, typed, wayOf } from "../way.js";
import { has, say } from "../words.js";

/** @typedef {import("../kernel.js").Fault} Fault */

/** @type {import("../way.js").Way} */
const ANGLE = { text: (rad) => typedOf(Number(degreesOf(rad).toFixed(4))), read: (text) => radOf(numberOf(text)), unit: () => "°" };

/** What an arrow key goes in an angle, degrees: as fine as angles are told. */
const ANGLE_STEP = 0.01;

/** @param {string} name */
const stepOf = (name) => (name.endsWith("_rad") ? ANGLE_STEP : name.endsWith("_mm") ? FIELD_STEP[unitInUse()] : undefined);

/** A place for sentences about what was typed. */
export const faultPlace = () => make("p", { class: "fault", role: "alert", hidden: true, id: `fit-fault-${++count}` });
let count = 0;

/**
 * Says what is wrong, or nothing.
 * @param {HTMLElement} place
 * @param {Fault[]} faults
 * @param {Element} [input]
 */
export function tellFaults(place, faults, input) {
  tellAt(place, faults.map(named), input);
}

/**
 * The same fault with a field that has a name: `limits[3].plus` is the upper limit.
 * @param {Fault} fault
 * @returns {Fault}
 */
export function named(fault) {
  const id = `fit.field.${fault.path.replace(/^.*\]\.?/, "") || "row"}`;
  return has(id) ? { ...fault, path: id } : fault;
}

/**
 * A number field. An empty one means nothing where that is allowed.
 * @param {string} name its key, which ends in its unit
 * @param {string} label
 * @param {number|null} value
 * @param {HTMLElement} place where its fault is told
 * @param {(value: number|null) => Fault[]} set
 * @param {{empty?: boolean}} [may]
 */
export function entry(name, label, value, place, set, { empty = false } = {}) {
  const { text, read } = name.endsWith("_rad") ? ANGLE : wayOf(name, "");
  const input = numberField({ "aria-label": label, "aria-describedby": place.id, "data-step": stepOf(name), value: value === null ? "" : text(value) });
  input.addEventListener("change", () => {
    const nothing = empty && input.value.trim() === "";
    tellFaults(place, typed(input, nothing ? null : read(input.value), set), input);
  });
  return input;
}

/**
 * A choice among words.
 * @param {string} label
 * @param {[string, string][]} choices
 * @param {string} chosen
 * @param {(value: string) => void} set
 */
export function choice(label, choices, chosen, set) {
  const select = make("select", { "aria-label": label }, ...choices.map(([value, text]) => make("option", { value, selected: value === chosen }, text)));
  select.addEventListener("change", () => set(select.value));
  return select;
}

/** @param {string} word @param {() => void} work @param {string} [of] what tells it from others of the same word, in its name behind that */
export function button(word, work, of) {
  const made = make("button", { type: "button", "aria-label": of && `${say(word)}: ${of}` }, say(word));
  made.addEventListener("click", work);
  return made;
}
