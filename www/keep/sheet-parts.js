// The parts of the review sheet: tables of what the chain is, lists of what was asked and where it comes from.

import { make } from "../dom.js";
import { exactly, figure } from "../figures.js";
import { has, say, variant } from "../words.js";

/** @typedef {import("./sheet.js").Matter} Matter */

const LEFT_OUT = ["rigid", "still", "dry", "shape", "sections", "teaches"];
const CARE = ["fingers", "solvents", "lifting", "first"];
const QUESTIONS_OWN = ["line", "fit", "wear", "reach", "surface", "width"];
const CORNERS = /** @type {const} */ (["tightest", "middle", "loosest"]);
const PLAY = ["turn_limit_rad", "shear_limit_rad", "offset_limit_mm", "twist_limit_rad"];

/**
 * @param {string[]} heads words of the columns
 * @param {(string|Node)[][]} rows the first cell names its row
 */
export function table(heads, rows) {
  const [head, ...cells] = heads.map((word) => make("th", { scope: "col" }, say(word)));
  return make("table", {}, make("thead", {}, make("tr", {}, head, ...cells)),
    make("tbody", {}, ...rows.map(([name, ...values]) => make("tr", {}, make("th", { scope: "row" }, name), ...values.map((value) => make("td", {}, value))))));
}

/** @param {string} word @param {...(Node|string)} children */
export const part = (word, ...children) => make("section", { class: `review-part ${word.replace(/\W/g, "-")}` }, make("h2", {}, say(word)), ...children);

/** @param {string[]} lines */
const list = (lines) => make("ul", {}, ...lines.map((line) => make("li", {}, line)));

/**
 * Every size with its limits, and whether a standard, a file or nobody fixed it.
 * @param {Matter} matter
 */
export function dimensions({ state, limits, scenario }) {
  const rows = Object.entries(state.sizes).map(([key, mm]) => {
    const limit = limits.find(({ dimension }) => dimension === key);
    const stated = (scenario.limits ?? []).find((/** @type {any} */ each) => each.dimension === key);
    const run = limit ? `−${exactly(key, limit.minus_mm)}  +${exactly(key, limit.plus_mm)}` : "–";
    const law = limit ? [stated?.grade, say(`fit.law.${limit.law}`)].filter(Boolean).join(", ") : "";
    const mark = state.chosen.includes(key) ? say("chosen") : state.defaulted.includes(key) ? say("sheet.default") : say("sheet.stated");
    const letter = has(`letter.${key}`) ? ` (${say(`letter.${key}`)})` : "";
    return [`${say(variant(`size.${key}`, state.construction))}${letter}`, exactly(key, mm), run, law, mark];
  });
  return part("sheet.dimensions", make("p", {}, say(`construction.${state.construction}`), ". ", say(limits.length ? "sheet.limits.some" : "sheet.limits.none")),
    table(["sheet.dimension", "sheet.size", "sheet.limits", "sheet.law", "sheet.from"], rows));
}

/**
 * Gaps and how far the joint can give, at the middle sizes and at either end of the limits.
 * @param {Matter} matter
 */
export function gaps({ corners, limits }) {
  const at = limits.length ? CORNERS : /** @type {const} */ (["middle"]);
  const keys = Object.keys(corners.middle.geometry).concat(PLAY);
  const value = (/** @type {any} */ corner, /** @type {string} */ key) => {
    const found = corner.geometry?.[key] ?? corner.play?.[key];
    return typeof found === "number" ? (key.endsWith("_mm") ? exactly(key, found) : figure(key, found)) : "–";
  };
  return part("sheet.gaps", table(["sheet.gap", ...(limits.length ? at.map((corner) => `corner.${corner}`) : ["sheet.size"])],
    keys.map((key) => [say(`sheet.of.${key}`), ...at.map((corner) => value(corners[corner], key))])));
}

/** What was asked, and the answer with its range. @param {Matter} matter */
export function answers({ said, over }) {
  const items = said.map(({ ask, how, answer, surprise, helper }) => [
    make("dt", {}, say(`ask.${ask}`), ...(how && ask === "give" ? [` (${say(`way.${how}`)})`] : [])),
    make("dd", {}, ...(answer ? [make("b", {}, answer), " ", [surprise, helper, over[ask]].filter(Boolean).join(" ")] : [say(`sheet.unasked.${ask === "line" || ask === "fit" ? ask : "other"}`)])),
  ]);
  return part("sheet.answers", make("dl", {}, ...items.flat()));
}

/** What the chain must keep to. @param {Matter} matter */
export function demands({ scenario }) {
  const asked = /** @type {Record<string, any>[]} */ (scenario.demands ?? []);
  const bound = (/** @type {string} */ key, /** @type {any} */ value) => (typeof value === "number" ? (key.endsWith("_mm") ? exactly(key, value) : figure(key, value)) : "–");
  const rows = asked.map(({ quantity, at_least, at_most }) => [say(has(`sheet.of.${quantity}`) ? `sheet.of.${quantity}` : quantity), bound(quantity, at_least), bound(quantity, at_most)]);
  return asked.length ? [part("sheet.demands", table(["sheet.quantity", "sheet.least", "sheet.most"], rows))] : [];
}

/** Where it all comes from. @param {Matter} matter */
export function sources({ scenario, state }) {
  const own = scenario.source ? say("source", { source: scenario.source }) : say("sheet.source.none");
  const chosen = state.chosen.map((key) => say(variant(`size.${key}`, state.construction)));
  return part("sheet.sources", list([
    own, ...(chosen.length ? [say("sheet.chosen", { sizes: chosen.join(", ") })] : []), say("work.source"),
    ...QUESTIONS_OWN.map((ask) => `${ask}.work.source`).filter(has).map((word) => say(word)),
  ]));
}

export const cautions = () => part("sheet.cautions", list([...CARE, ...LEFT_OUT].map((id) => say(`left.${id}`))));
