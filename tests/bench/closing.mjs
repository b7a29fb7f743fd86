// The closing of a rough face natively, in WebAssembly and by scipy, and what gets into a pitch, in one run: `node
// tests/bench/closing.mjs`. scipy is found through python3, or through PYTHON; without it the row says so.

import { native, python, rows } from "./beside.mjs";

const [GOAL, GOAL_HERE, SLOWER, REACH_MS] = [25, 18, 1.8, 5];
const TURNS = 200;

/** Nanoseconds of one closing by scipy; nothing without it. */
function scipy() {
  const said = python("closing.py", "scipy");
  if (said === null) return null;
  const [version, line] = said.trim().split("\n");
  console.log(version);
  return 1e6 * Number(line.split(" ")[2]);
}

const find = rows("crowd", "closing");
const lines = native("crowd", "closing_native").trim().split("\n").map((line) => line.split(" "));
const theirs = scipy();
let faults = 0;
for (const [name, answer, time] of lines) {
  const row = find(name);
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
