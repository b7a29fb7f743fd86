// Chance and matching of a million, natively, in WebAssembly (one thread) and by numpy, in one run: milliseconds and
// ratios, and the speed-up by native workers. `node tests/bench/crowd.mjs` builds what it needs; numpy is found through
// python3, or through PYTHON. Without it the rows say so and have no ratio.

import { native, python, rows } from "./beside.mjs";

/** At least so many times as fast as numpy, natively and in WebAssembly. @type {Record<string, number[]>} */
const GOALS = { normal: [4, 2.5], truncated: [4, 2.8], classes: [4, 4], ranks: [1 / 1.4, 1 / 1.4] };
const SLOWER = 1.8;
const SAMPLES = 5;

/** Lines of name, answer, milliseconds. @param {string} text */
const lines = (text) => new Map(text.trim().split("\n").map((line) => line.split(" ")).filter((each) => each.length === 3)
  .map(([name, answer, ms]) => [name, { answer: Number(answer), ms: Number(ms) }]));

/** numpy's lines; none without it. */
function numpy() {
  const said = python("crowd.py", "numpy");
  if (said === null) return new Map();
  console.log(said.split("\n")[0]);
  return lines(said);
}

const find = rows("crowd", "crowd");
const ours = lines(native("crowd", "crowd_native"));
const rival = numpy();
let faults = 0;
for (const name of Object.keys(GOALS)) {
  const row = find(name);
  const here = ours.get(name);
  if (row(1) !== here?.answer) {
    console.log(`DIFFERS ${name}: native ${here?.answer}, WebAssembly ${row(1)}`);
    faults++;
    continue;
  }
  const times = Array.from({ length: SAMPLES }, () => {
    const start = performance.now();
    row(1);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const ms = times[Math.floor(SAMPLES / 2)];
  const theirs = rival.get(name)?.ms;
  const [goal, goalHere] = GOALS[name];
  const beside = theirs === undefined ? "numpy absent" : `numpy ${theirs.toFixed(1)} ms: ${(theirs / here.ms).toFixed(2)} times as fast natively (goal ${goal.toFixed(2)}), ${(theirs / ms).toFixed(2)} in WebAssembly (goal ${goalHere.toFixed(2)})`;
  console.log(`ROW ${name}: native ${here.ms.toFixed(1)} ms, WebAssembly ${ms.toFixed(1)} ms, ${(ms / here.ms).toFixed(2)} times native (goal at most ${SLOWER}); ${beside}`);
}
if (rival.has("sorts")) console.log(`numpy sorts the same four kinds by value alone in ${rival.get("sorts")?.ms.toFixed(1)} ms; ranks gives their order, as argsort does`);
const one = ours.get("workers-1");
for (const [name, { answer, ms }] of ours) {
  if (!name.startsWith("workers-") || !one) continue;
  if (answer !== one.answer) faults++;
  console.log(`${name}: ${ms.toFixed(1)} ms, ${(one.ms / ms).toFixed(2)} times as fast as one; ${answer === one.answer ? "the same bits" : "OTHER BITS"}`);
}
process.exit(faults === 0 ? 0 : 1);
