// A on the review sheet: its outlines on the drawing, why not where they are not, and every figure in which the two differ.

import { make } from "../dom.js";
import { QUESTIONS } from "../questions.js";
import { say } from "../words.js";
import { figuresOf } from "./answers.js";
import { called, changeOf, signOf, written } from "./figures.js";
import { isApart } from "./ghost.js";
import { fetchKept, nameOf, readKept } from "./kept.js";
import { newShadow } from "./shadow.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("./figures.js").Pair} Pair */
/** What a sheet has of A: its name, why its outlines are not drawn or nothing, its figures by question. @typedef {{name: string, apart: string, figures: {ask: string, pairs: Pair[]}[]}} Held */

/**
 * What there is of A; null where none is held.
 * @param {Session} session
 * @param {string[]} asks what is asked on the sheet
 * @returns {Promise<Held|null>}
 */
export async function heldOf(session, asks) {
  const a = readKept(session.work.a);
  if (!a || !(await fetchKept(a, session.scenarios).catch(() => false))) return null;
  const shadow = await newShadow(session.scenarios);
  if (shadow.follow(a, session).length > 0) return null;
  const figures = [];
  for (const { id: ask } of QUESTIONS.filter(({ id }) => asks.includes(id))) {
    const pairs = await figuresOf(ask, session.bench.scenario(), shadow.bench.scenario(), session.work.corner).catch(() => []);
    figures.push({ ask, pairs: pairs.filter(({ way }) => way === "more" || way === "less") });
  }
  const name = nameOf(a, session.scenarios);
  return { name, apart: isApart(shadow, session) ? say("compare.apart") : "", figures };
}

/** Its part of the sheet. @param {Held} held */
export function besideOnSheet({ name, figures }) {
  const cells = (/** @type {Pair} */ pair) => [written(pair.key, pair.b), `${signOf(pair)} ${changeOf(pair)}`, written(pair.key, pair.a)];
  const rows = figures.flatMap(({ ask, pairs }) => pairs.map((pair, at) => make("tr", {},
    make("th", { scope: "row" }, ...(at === 0 ? [make("b", {}, say(`ask.${ask}`)), make("br")] : []), called(pair.key)), ...cells(pair).map((text) => make("td", {}, text)))));
  const heads = ["sheet.quantity", "all.b", "all.change", "compare.a"].map((word) => make("th", { scope: "col" }, say(word)));
  return make("section", { class: "review-part sheet-beside" }, make("h2", {}, say("sheet.beside", { name })),
    make("p", {}, say(rows.length > 0 ? "sheet.beside.how" : "sheet.beside.same")),
    ...(rows.length > 0 ? [make("table", {}, make("thead", {}, make("tr", {}, ...heads)), make("tbody", {}, ...rows))] : []));
}
