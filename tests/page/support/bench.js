// The kernel of the page without a page: a bench from the site that `cargo page` has built.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";
import { words } from "./words.js";

/** Where `cargo page` puts what it generates. */
export const SITE = join(process.env.CARGO_TARGET_DIR ?? join(ROOT, "target"), "site");

/**
 * A bench with the page's words.
 * @returns {Promise<any>}
 */
export async function openBench() {
  const glue = readFileSync(join(SITE, "lightgap_wasm.js"));
  const module = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
  await module.default({ module_or_path: readFileSync(join(SITE, "lightgap_wasm_bg.wasm")) });
  return new module.Bench(words);
}
