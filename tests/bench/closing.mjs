// The closing of a rough face natively, in WebAssembly and by scipy, and what gets into a pitch, in one run: `node
// tests/bench/closing.mjs`. scipy is found through python3, or through PYTHON; without it the row says so.

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../page/support/server.js";

const [GOAL, GOAL_HERE, SLOWER, REACH_MS] = [25, 18, 1.8, 5];
const TURNS = 200;
const BUILD = ["--quiet", "--release", "--package", "lightgap-bench", "--features", "crowd", "--example"];
const TARGET = "wasm32-unknown-unknown";

/** @param {string[]} args @param {Record<string, string>} [env] */
function cargo(args, env = {}) {
  const done = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", env: { ...process.env, ...env } });
  if (done.status !== 0) throw new Error(done.stderr);
  return done.stdout;
}

/** Nanoseconds of one closing by scipy; nothing without it. */
function scipy() {
  const python = process.env.PYTHON ?? "python3";
  const done = spawnSync(python, [join(ROOT, "tests/bench/closing.py")], { encoding: "utf8" });
  if (done.status === 0) {
    const [version, ns] = done.stdout.trim().split("\n");
    console.log(version);
    return Number(ns);
  }
  console.log(`scipy is absent: ${python}; set PYTHON to a python that has it. No ratio to it.`);
  return null;
}

cargo(["build", ...BUILD, "closing", "--target", TARGET], { RUSTFLAGS: "-C target-feature=+simd128" });
const module = new WebAssembly.Module(readFileSync(join(process.env.CARGO_TARGET_DIR ?? join(ROOT, "target"), TARGET, "release/examples/closing.wasm")));
/** @type {Record<string, Record<string, Function>>} */
const imports = {};
for (const { module: from, name } of WebAssembly.Module.imports(module)) (imports[from] ??= {})[name] = () => 0;
const exported = /** @type {any} */ (new WebAssembly.Instance(module, /** @type {any} */ (imports)).exports);
const native = cargo(["run", ...BUILD, "closing_native"]).trim().split("\n").map((line) => line.split(" "));
const theirs = scipy();
let faults = 0;
for (const [name, answer, time] of native) {
  const row = exported[Object.keys(exported).find((key) => key === name || key.startsWith(`${name}_`)) ?? name];
  if (row(1) !== Number(answer)) {
    console.log(`DIFFERS ${name}: native ${answer}, WebAssembly ${row(1)}`);
    faults++;
    continue;
  }
  row(TURNS);
  const start = performance.now();
  row(TURNS);
  const [ns, here] = [Number(time), ((performance.now() - start) * 1e6) / TURNS];
  const goal = name === "reach" ? `goal at most ${REACH_MS} ms in WebAssembly`
    : theirs === null ? "scipy absent" : `scipy ${(theirs / 1e6).toFixed(2)} ms: ${(theirs / ns).toFixed(1)} times as fast natively (goal ${GOAL}), ${(theirs / here).toFixed(1)} in WebAssembly (goal ${GOAL_HERE})`;
  console.log(`ROW ${name}: native ${(ns / 1e6).toFixed(3)} ms, WebAssembly ${(here / 1e6).toFixed(3)} ms, ${(here / ns).toFixed(2)} times native (goal at most ${SLOWER}); ${goal}`);
}
process.exit(faults === 0 ? 0 : 1);
