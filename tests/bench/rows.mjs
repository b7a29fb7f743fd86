// The rows of `cargo compare` in WebAssembly (with vectors) beside native, both sides of each, at one
// optimisation level, in one run. Before a row is timed its answers are compared: ours bit for bit with
// native, the rival's within the row's own tolerance. `node tests/bench/rows.mjs` builds what it needs;
// a word behind it runs the rows whose names hold it.

import { native, rows } from "./beside.mjs";

const GOAL = 1.8;
const SAMPLES = 9;

/** The native rows, as `rows.rs` prints them. */
function printed() {
  return native("wasm", "rows_native").trim().split("\n").map((line) => {
    const [name, rival, ...rest] = line.split("\t");
    const [goal, theirs, ours, within, theirNs, ourNs] = rest.map(Number);
    return { name, rival, goal, answers: [theirs, ours], within, ns: [theirNs, ourNs] };
  });
}

const row = rows("wasm", "rows");
const [answer, turns] = [row("answer"), row("turns")];

/** Median time of a turn, ns. @param {number} index @param {number} side @param {number} nativeNs */
function median(index, side, nativeNs) {
  const count = Math.max(1, Math.round(2e7 / nativeNs / 2));
  turns(index, side, count);
  const times = Array.from({ length: SAMPLES }, () => {
    const start = performance.now();
    turns(index, side, count);
    return ((performance.now() - start) * 1e6) / count;
  });
  return times.sort((a, b) => a - b)[Math.floor(SAMPLES / 2)];
}

let faults = 0;
for (const [index, { name, rival, goal, answers, within, ns }] of printed().entries()) {
  if (!name.includes(process.argv[2] ?? "")) continue;
  const here = [0, 1].map((side) => answer(index, side));
  if (here[1] !== answers[1] || Math.abs(here[0] - answers[0]) > within * (1 + Math.abs(answers[0]))) {
    console.log(`DIFFERS ${name}: native ${answers}, WebAssembly ${here}`);
    faults += 1;
    continue;
  }
  const [theirs, ours] = [0, 1].map((side) => median(index, side, ns[side]));
  const slower = ours / ns[1];
  console.log(
    `ROW ${name}: lightgap native ${ns[1].toFixed(0)} ns, WebAssembly ${ours.toFixed(0)} ns: ${slower.toFixed(2)} times native ` +
      `(goal at most ${GOAL}${slower <= GOAL ? "" : ", NOT reached"}); ` +
      `${rival} ${ns[0].toFixed(0)} ns, ${theirs.toFixed(0)} ns; ` +
      `faster by ${(ns[0] / ns[1]).toFixed(1)} natively, ${(theirs / ours).toFixed(1)} in WebAssembly (goal ${goal})`,
  );
}
process.exit(faults === 0 ? 0 : 1);
