// The accessibility rules that a page is held to.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const RULES = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** @typedef {Parameters<Parameters<typeof import("./hand.js").visit>[2]>[0]} Hand */

/** What depends on colours alone: the one rule to ask anew in another theme. */
export const CONTRAST = { only: ["color-contrast"] };
/** All but that, which takes as long as all others and is the same in every engine. */
export const BUT_CONTRAST = { without: ["color-contrast"] };

/**
 * The accessibility rules the page breaks, each with the places.
 * @param {Pick<Hand, "page" | "inside">} hand
 * @param {{only?: string[], without?: string[]}} [which] rules
 */
export async function broken(hand, { only, without = [] } = {}) {
  if (!(await hand.inside(() => "axe" in globalThis))) await hand.page.evaluate(RULES);
  return hand.inside(async (asked, off) => {
    for (const fold of document.querySelectorAll("details")) fold.open = true;
    const rules = Object.fromEntries(off.map((id) => [id, { enabled: false }]));
    const { violations } = await globalThis.axe.run(document, { runOnly: asked, rules, resultTypes: ["violations"], preload: false });
    const settled = violations.filter((each) => !each.tags.includes("experimental"));
    return settled.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
  }, only ? { type: "rule", values: only } : { type: "tag", values: TAGS }, without);
}
