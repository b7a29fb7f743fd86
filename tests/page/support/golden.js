// The reports that are kept (tests/golden), and the scenarios that they are the reports of.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";
import { scenarioFiles } from "./words.js";

/** The page's own way from a lesson to its steps. */
const shelf = readFileSync(join(ROOT, "www/lesson/shelf.js")).toString("base64");
const { standsOf } = await import(`data:text/javascript;base64,${shelf}`);

const read = (/** @type {string[]} */ ...path) => JSON.parse(readFileSync(join(ROOT, ...path), "utf8"));

/** @typedef {{name: string, scenario: any, report: any}} Golden */

/** Every kept report with its scenario. @returns {Golden[]} */
export function golden() {
  const ofScenario = (/** @type {string} */ file) => ({
    name: file, scenario: read("scenarios", file), report: read("tests/golden", file).report,
  });
  const ofLesson = (/** @type {{id: string}} */ { id }) => {
    const stands = standsOf(read("scenarios/lessons", `${id}.json`));
    return Object.entries(read("tests/golden/lessons", `${id}.json`)).map(([step, report]) => {
      const { scenario } = stands[Number(step.split(" ")[1]) - 1];
      return { name: `${id}, ${step}`, scenario, report };
    });
  };
  return [...scenarioFiles().map(ofScenario), ...read("scenarios/lessons/index.json").flatMap(ofLesson)];
}

/**
 * Every place where two trees differ; numbers are alike only in all their bits.
 * @param {any} a
 * @param {any} b
 * @param {string} [path]
 * @returns {string[]}
 */
export function differences(a, b, path = "") {
  if (typeof a !== "object" || a === null || typeof b !== "object" || b === null) {
    return Object.is(a, b) ? [] : [`${path}: ${a} and ${b}`];
  }
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  return keys.flatMap((key) => differences(a[key], b[key], path ? `${path}.${key}` : key));
}

/** How many numbers a report holds. @param {any} value @returns {number} */
export const count = (value) =>
  typeof value === "number" ? 1 : typeof value === "object" && value ? Object.values(value).map(count).reduce((a, b) => a + b, 0) : 0;
