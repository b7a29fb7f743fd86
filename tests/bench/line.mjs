// Question 3 in the worker's own WebAssembly, in Node: what its first answer takes (OPENING), what each new step of the
// slider takes up to the end of rigid links (STEP), what other assumptions take once the hand rests (REST), a step back (BACK), and the curves that follow one by one (CURVE).
// First `cargo page --write DIR`, which leaves the program under target/site; then `node tests/bench/line.mjs`.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openLabourer } from "../page/support/bench.js";
import { ROOT } from "../page/support/server.js";

const OPENING_MS = 500;
const STEP_MS = 16;
const VARIANTS = ["elastic", "rigid", "hinged", "softer", "stiffer", "wider", "tighter"];

/** @param {() => any} work */
function timed(work) {
  const start = performance.now();
  const answer = work();
  return { answer, ms: performance.now() - start };
}

/** @param {number[]} times */
function spread(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return [0.5, 0.95, 1].map((share) => sorted[Math.floor(share * (sorted.length - 1))]);
}

/** @param {number} ms @param {number} goal */
const verdict = (ms, goal) => `goal ${goal} ms ${ms < goal ? "reached" : "NOT reached"}`;

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
const at = (/** @type {any} */ scenario, /** @type {number} */ mm) => ({ ...scenario, drive: { ...scenario.drive, offset_mm: mm } });
for (const { id, file } of read("index.json")) {
  const scenario = read(file);
  if (!scenario.drive) continue;
  const ask = await openLabourer();
  const opening = timed(() => ask("line", scenario, { quick: true }).answer);
  const line = opening.answer;
  if (!line) continue;
  console.log(`OPENING ${id}: ${opening.ms.toFixed(1)} ms; ${verdict(opening.ms, OPENING_MS)}`);
  const steps = Array.from({ length: Math.floor(line.reach_mm / line.step_mm) + 1 }, (_, step) => step * line.step_mm);
  const ahead = steps.filter((mm) => mm > line.offset_mm + line.step_mm / 2);
  const turns = ahead.map((mm) => timed(() => ask("line", at(scenario, mm), { quick: true })).ms);
  const rest = spread(ahead.map((mm) => timed(() => ask("line", at(scenario, mm))).ms));
  const [median, most, worst] = spread(turns);
  console.log(`STEP ${id}: ${turns.length} new steps of ${line.step_mm} mm, median ${median.toFixed(2)} ms, 95 % ${most.toFixed(2)} ms, longest ${worst.toFixed(2)} ms; ${verdict(worst, STEP_MS)}`);
  console.log(`REST ${id}: the other assumptions of a step, median ${rest[0].toFixed(2)} ms, longest ${rest[2].toFixed(2)} ms`);
  const back = spread(steps.map((mm) => timed(() => ask("line", at(scenario, mm))).ms));
  console.log(`BACK ${id}: median ${back[0].toFixed(2)} ms, longest ${back[2].toFixed(2)} ms; ${verdict(back[2], STEP_MS)}`);
  const curves = VARIANTS.map((curve) => `${curve} ${timed(() => ask("line", scenario, { curve })).ms.toFixed(0)}`);
  console.log(`CURVE ${id}, ms: ${curves.join(", ")}`);
}
