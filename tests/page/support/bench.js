// The kernel of the page without a page: a bench from the site that `cargo page` has built.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";
import { words } from "./words.js";

/** Where `cargo page` puts what it generates. */
export const SITE = join(process.env.CARGO_TARGET_DIR ?? join(ROOT, "target"), "site");

/**
 * A bench with the page's words, or others.
 * @param {Record<string, string>} [said]
 * @returns {Promise<any>}
 */
export async function openBench(said = words) {
  const glue = readFileSync(join(SITE, "lightgap_stage.js"));
  const module = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
  await module.default({ module_or_path: readFileSync(join(SITE, "lightgap_stage_bg.wasm")) });
  return new module.Bench(said);
}

/**
 * The worker's head without a worker: its script, run here.
 * @returns {Promise<((question: string, scenario: object, asked?: object) => {answer?: any, faults?: any[]}) & {memory: () => number}>} and how much memory it has, bytes
 */
export async function openLabourer() {
  const script = readFileSync(join(SITE, "lightgap_worker.js"), "utf8");
  const glue = new Function(`let onmessage; ${script}; return wasm_bindgen;`)();
  const { memory } = await glue({ module_or_path: readFileSync(join(SITE, "lightgap_worker_bg.wasm")) });
  const head = new glue.Labourer();
  const ask = (/** @type {string} */ question, /** @type {object} */ scenario, asked = {}) => head.answer(question, scenario, asked);
  return Object.assign(ask, { memory: () => memory.buffer.byteLength });
}
