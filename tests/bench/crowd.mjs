// Chance and matching of a million, natively, in WebAssembly (one thread) and by numpy, in one run: milliseconds and
// ratios, the least of nine turns each; and the speed-up by workers, natively and in WebAssembly, with how much of the machine
// was free for them: workers cannot be faster than the cores that nobody else has. `node tests/bench/crowd.mjs`
// builds what it needs; numpy is found through python3, or through PYTHON. Without it the rows say so and have no ratio.

import { cpus, loadavg } from "node:os";
import { setTimeout as pause } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import { native, program, python, rows } from "./beside.mjs";

/** At least so many times as fast as numpy, natively and in WebAssembly. @type {Record<string, number[]>} */
const GOALS = { normal: [4, 2.5], truncated: [4, 2.8], classes: [4, 4], ranks: [1 / 1.4, 1 / 1.4] };
const SLOWER = 1.8;
const SAMPLES = 9;
const BLOCKS = Math.ceil(1_000_000 / 2048);
/** So long one looks at what the cores do, ms. */
const LOOK_MS = 1000;

/** Lines of name, answer, milliseconds. @param {string} text */
const lines = (text) => new Map(text.trim().split("\n").map((line) => line.split(" ")).filter((each) => each.length === 3)
  .map(([name, answer, ms]) => [name, { answer: Number(answer), ms: Number(ms) }]));

/** @param {() => void} work */
function least(work) {
  const times = Array.from({ length: SAMPLES }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}

/** What a worker does: it stands, warms up, and then draws the blocks that it is told of. */
const HAND = `
  const { parentPort, workerData: { module, imports } } = require("node:worker_threads");
  const given = {};
  for (const { module: from, name } of imports) (given[from] ??= {})[name] = () => 0;
  const all = new WebAssembly.Instance(module, given).exports;
  const share = all[Object.keys(all).find((key) => key === "share" || key.startsWith("share_"))];
  share(0, 40);
  parentPort.on("message", ([from, to]) => parentPort.postMessage(share(from, to)));
  parentPort.postMessage("ready");
`;

/** The time that all cores have idled and have had, in all. */
const spent = () => cpus().reduce(([idle, all], { times }) => [idle + times.idle, all + Object.values(times).reduce((sum, each) => sum + each, 0)], [0, 0]);

/** Says how many cores there are and how many of them nobody else is at. @param {string} what is timed next */
async function machine(what) {
  const [idle, all] = spent();
  await pause(LOOK_MS);
  const [later, end] = spent();
  const free = (cpus().length * (later - idle)) / (end - all);
  console.log(`before ${what}: ${free.toFixed(2)} of ${cpus().length} cores free, load ${loadavg()[0].toFixed(2)}`);
}

/** The least time in which so many workers draw a million sets in WebAssembly, and how many passed. @param {number} count */
async function shared(count) {
  const module = program("crowd");
  const imports = WebAssembly.Module.imports(module).map(({ module: from, name }) => ({ module: from, name }));
  const hands = Array.from({ length: count }, () => new Worker(HAND, { eval: true, workerData: { module, imports } }));
  const heard = () => Promise.all(hands.map((hand) => new Promise((done) => hand.once("message", done))));
  await heard();
  const portion = Math.ceil(BLOCKS / count);
  let [ms, passes] = [Infinity, 0];
  for (let turn = 0; turn < SAMPLES; turn++) {
    const start = performance.now();
    const each = heard();
    hands.forEach((hand, i) => hand.postMessage([i * portion, (i + 1) * portion]));
    passes = /** @type {number[]} */ (await each).reduce((sum, one) => sum + one, 0);
    ms = Math.min(ms, performance.now() - start);
  }
  await Promise.all(hands.map((hand) => hand.terminate()));
  return { ms, passes };
}

/** numpy's lines; none without it. */
function numpy() {
  const said = python("crowd.py", "numpy");
  if (said === null) return new Map();
  console.log(said.split("\n")[0]);
  return lines(said);
}

const find = rows("crowd", "crowd");
await machine("the rows and the native workers");
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
  const ms = least(() => row(1));
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
await machine("the workers in WebAssembly");
const alone = await shared(1);
for (const count of [1, 2, 7]) {
  const { ms, passes } = count === 1 ? alone : await shared(count);
  if (passes !== alone.passes) faults++;
  console.log(`WebAssembly workers-${count}: ${ms.toFixed(1)} ms, ${(alone.ms / ms).toFixed(2)} times as fast as one; ${passes === alone.passes ? "the same count" : "OTHER COUNT"}`);
}
process.exit(faults === 0 ? 0 : 1);
