// The page's own kernel in Node beside the native one: what a pose takes (SETTLE) and what the whole
// document of a frame takes (FRAME, which the page writes by a module of its own), the same work on both
// sides, and the ratio of their medians, in one run; and what the same frame takes when it is painted on a canvas call by call (CANVAS), as the page
// does, beside the time that a frame may take. First `cargo page --write DIR`, which leaves the module
// under target/site; then `node tests/bench/wasm.mjs`.

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { svgOf } from "../../www/keep/svg.js";
import { openBench } from "../page/support/bench.js";
import { CanvasRenderingContext2D } from "../page/support/recorder.js";
import { ROOT } from "../page/support/server.js";

const TURNS = 400;
const GOAL_MS = 4;
const GOAL = 1.8;
const THEME = { sheet: "#ffffff" };

/** @param {(share: number) => void} work */
function spread(work) {
  const times = Array.from({ length: TURNS }, (_, i) => {
    const start = performance.now();
    work(i / TURNS);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return [0.5, 0.95].map((share) => times[Math.floor(share * (TURNS - 1))]);
}

/** The native medians, by kind and scenario. */
function native() {
  const args = ["compare", "--bench", "pitch", "--", "--quick", "only the spreads"];
  const { stdout } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8" });
  const lines = [...stdout.matchAll(/^(SETTLE|FRAME) ([\w-]+): median ([\d.]+)/gm)];
  return new Map(lines.map(([, kind, id, median]) => [`${kind} ${id}`, Number(median)]));
}

Object.assign(globalThis, { CanvasRenderingContext2D });
// Without words, as the native side is.
const bench = await openBench({});
bench.layout(1000, 700, 14, false);
const medians = native();
const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
for (const { id, file } of read("index.json")) {
  bench.load(read(file));
  if (!bench.state().fits) continue;
  const settle = (/** @type {number} */ share) => bench.scrub(share);
  const frame = (/** @type {number} */ share) => {
    bench.scrub(share);
    svgOf(bench, { theme: THEME, caption: [] });
  };
  const canvas = (/** @type {number} */ share) => {
    bench.scrub(share);
    bench.paint(new CanvasRenderingContext2D(), THEME, { lit: null, hide: [] });
  };
  for (const [kind, work] of /** @type {[string, (share: number) => void][]} */ ([["SETTLE", settle], ["FRAME", frame], ["CANVAS", canvas]])) {
    spread(work);
    const [median, most] = spread(work);
    const known = medians.get(`${kind} ${id}`);
    const ratio = known === undefined ? "" : `, ${(median / known).toFixed(2)} times native (goal at most ${GOAL})`;
    console.log(`${kind} ${id}: median ${median.toFixed(3)} ms, 95 % ${most.toFixed(3)} ms${ratio}; goal ${GOAL_MS} ms`);
  }
}
