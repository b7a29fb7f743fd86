// The page's sentences, read from the same files as the page reads.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";

/** Every sentence of a language. @param {string} language @returns {Record<string, string>} */
export const wordsOf = (language) => Object.assign({}, ...readdirSync(join(ROOT, "www/words", language)).map((name) =>
  JSON.parse(readFileSync(join(ROOT, "www/words", language, name), "utf8"))));

export const words = wordsOf("en");

/** @returns {string[]} the scenario files, in the menu's order */
export function scenarioFiles() {
  const index = JSON.parse(readFileSync(join(ROOT, "scenarios/index.json"), "utf8"));
  const entries = Array.isArray(index) ? index : index.scenarios;
  return entries.map((entry) => (typeof entry === "string" ? entry : (entry.file ?? `${entry.id}.json`)));
}
