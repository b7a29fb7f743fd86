// The accessibility rules that a page is held to.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const RULES = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** @typedef {Parameters<Parameters<typeof import("./hand.js").visit>[2]>[0]} Hand */

/**
 * The accessibility rules the page breaks, each with the places.
 * @param {Pick<Hand, "page" | "inside">} hand
 */
export async function broken(hand) {
  await hand.page.evaluate(RULES);
  return hand.inside(async (tags) => {
    for (const fold of document.querySelectorAll("details")) fold.open = true;
    const { violations } = await globalThis.axe.run(document, { runOnly: tags, resultTypes: ["violations"] });
    const settled = violations.filter((each) => !each.tags.includes("experimental"));
    return settled.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
  }, TAGS);
}
