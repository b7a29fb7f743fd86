// The page's kernel in Node beside the native one: what a pose takes (SETTLE) and what a frame takes
// (FRAME), and the ratio of their medians, in one run. First `cargo page --write DIR`, which leaves the
// module under target/site; then `node tests/bench/wasm.mjs`.
// A frame here also crosses into JavaScript for every line of the canvas; natively it is written down.

import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openBench } from "../page/support/bench.js";
import { CanvasRenderingContext2D } from "../page/support/recorder.js";
import { ROOT } from "../page/support/server.js";

const TURNS = 400;
const GOAL_MS = 4;
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
const bench = await openBench();
bench.layout(1000, 700, 14, false);
const medians = native();
const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
for (const { id, file } of read("index.json")) {
  bench.load(read(file));
  if (!bench.state().fits) continue;
  const frame = (/** @type {number} */ share) => {
    bench.scrub(share);
    bench.paint(new CanvasRenderingContext2D(), THEME, { lit: null, hide: [] });
  };
  for (const [kind, work] of [["SETTLE", (/** @type {number} */ share) => bench.scrub(share)], ["FRAME", frame]]) {
    spread(work);
    const [median, most] = spread(work);
    const ratio = median / (medians.get(`${kind} ${id}`) ?? NaN);
    console.log(`${kind} ${id}: median ${median.toFixed(3)} ms, 95 % ${most.toFixed(3)} ms, ${ratio.toFixed(2)} times native; goal ${GOAL_MS} ms`);
  }
}
