// The page's sentences, read from the same files as the page reads.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";

/** @type {Record<string, string>} */
export const words = Object.assign({}, ...readdirSync(join(ROOT, "www/words/en")).map((name) =>
  JSON.parse(readFileSync(join(ROOT, "www/words/en", name), "utf8"))));

/** @returns {string[]} the scenario files, in the menu's order */
export function scenarioFiles() {
  const index = JSON.parse(readFileSync(join(ROOT, "scenarios/index.json"), "utf8"));
  const entries = Array.isArray(index) ? index : index.scenarios;
  return entries.map((entry) => (typeof entry === "string" ? entry : (entry.file ?? `${entry.id}.json`)));
}
