// Single solve, whole pitch and gap queries in WebAssembly beside native, at one optimisation level, in
// one run: nanoseconds a turn and their ratio. `node tests/bench/rows.mjs` builds what it needs.

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../page/support/server.js";

const TURNS = 20_000;
const GOAL = 1.8;
const BUILD = ["--quiet", "--release", "--package", "lightgap-bench", "--features", "wasm", "--example"];

/** @param {string[]} args @param {Record<string, string>} [env] */
function cargo(args, env = {}) {
  const done = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", env: { ...process.env, ...env } });
  if (done.status !== 0) throw new Error(done.stderr);
  return done.stdout;
}

const target = "wasm32-unknown-unknown";
cargo(["build", ...BUILD, "rows", "--target", target], { RUSTFLAGS: "-C target-feature=+simd128" });
const file = join(process.env.CARGO_TARGET_DIR ?? join(ROOT, "target"), target, "release/examples/rows.wasm");
const module = new WebAssembly.Module(readFileSync(file));
/** What the binding would bring, none of which these rows call. @type {Record<string, Record<string, Function>>} */
const imports = {};
for (const { module: from, name } of WebAssembly.Module.imports(module)) {
  (imports[from] ??= {})[name] = () => 0;
}
const exported = /** @type {any} */ (new WebAssembly.Instance(module, /** @type {any} */ (imports)).exports);
/** The binding ends every name in a mark of its own. */
const rowOf = (/** @type {string} */ name) => exported[Object.keys(exported).find((key) => key.startsWith(`${name}_`)) ?? name];
const native = new Map(cargo(["run", ...BUILD, "rows_native"]).trim().split("\n").map((line) => line.split(" ")).map(([name, ns]) => [name, Number(ns)]));
for (const [name, ns] of native) {
  const row = rowOf(name);
  row(TURNS / 10);
  const start = performance.now();
  row(TURNS);
  const here = ((performance.now() - start) * 1e6) / TURNS;
  console.log(`ROW ${name}: native ${ns.toFixed(0)} ns, WebAssembly ${here.toFixed(0)} ns: ${(here / ns).toFixed(2)} times (goal at most ${GOAL})`);
}
