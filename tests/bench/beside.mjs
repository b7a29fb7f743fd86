// The examples of this folder natively and in WebAssembly with vectors, and a python script beside them.

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../page/support/server.js";

const TARGET = "wasm32-unknown-unknown";
/** Enough for every row of a native run, bytes. */
const MOST_PRINTED = 1e8;

/** @param {string[]} args @param {Record<string, string>} [env] */
function cargo(args, env = {}) {
  const done = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", maxBuffer: MOST_PRINTED, env: { ...process.env, ...env } });
  if (done.status !== 0) throw new Error(done.stderr);
  return done.stdout;
}

/** What an example of a feature is built with. @param {string} feature @param {string} example */
const built = (feature, example) => ["--quiet", "--release", "--package", "lightgap-bench", "--features", feature, "--example", example];

/** What an example prints natively. @param {string} feature @param {string} example */
export const native = (feature, example) => cargo(["run", ...built(feature, example)]);

/** An example's WebAssembly, which `rows` has built. @param {string} example */
export function program(example) {
  const folder = process.env.CARGO_TARGET_DIR ?? join(ROOT, "target");
  return new WebAssembly.Module(readFileSync(join(folder, TARGET, "release/examples", `${example}.wasm`)));
}

/**
 * The functions of an example in WebAssembly, by name. They ask for nothing but a clock that they never read, and the
 * binding may end a name in a mark of its own.
 * @param {string} feature
 * @param {string} example
 * @returns {(name: string) => any}
 */
export function rows(feature, example) {
  cargo(["build", ...built(feature, example), "--target", TARGET], { RUSTFLAGS: "-C target-feature=+simd128" });
  const module = program(example);
  /** @type {Record<string, Record<string, Function>>} */
  const imports = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) (imports[from] ??= {})[name] = () => 0;
  const exported = /** @type {any} */ (new WebAssembly.Instance(module, /** @type {any} */ (imports)).exports);
  return (name) => exported[Object.keys(exported).find((key) => key === name || key.startsWith(`${name}_`)) ?? name];
}

/**
 * What a script of this folder prints by python3, or the python that PYTHON names; nothing, said aloud, without its library.
 * @param {string} script
 * @param {string} library
 * @returns {string|null}
 */
export function python(script, library) {
  const program = process.env.PYTHON ?? "python3";
  const done = spawnSync(program, [join(ROOT, "tests/bench", script)], { encoding: "utf8" });
  if (done.status === 0) return done.stdout;
  const reason = done.error?.message ?? done.stderr.trim().split("\n").at(-1);
  console.log(`${library} is absent: ${program}: ${reason}; set PYTHON to a python that has it. No ratio to it.`);
  return null;
}
