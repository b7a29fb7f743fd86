// Ten minutes of a drive at full speed, in the worker's program without a worker: its memory stays, and every moment
// is the one that a program asked for the first time gives. SOAK=36000 asks for every frame of the ten minutes.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { openLabourer } from "../support/bench.js";
import { differences } from "../support/golden.js";
import { ROOT } from "../support/server.js";

/** 90 turns a minute of 44 teeth for ten minutes. */
const PITCHES = 10 * 90 * 44;
const FRAMES = Number(process.env.SOAK ?? 1500);
/** Frames in which memory may still grow, as a share. */
const WARM = 0.2;
/** A moment is asked for again after whole circuits of both kinds of joint; sums of so many pitches round, pitches. */
const ROUNDING = 1e-6;

const scenario = JSON.parse(readFileSync(join(ROOT, "scenarios/ferry-trike.json"), "utf8"));
const at = (/** @type {number} */ travel_pitches) => ({ run: { travel_pitches, joint: 0, stuck: false, width_px: 900, close_px: 420, text_px: 14 } });

/** @param {Awaited<ReturnType<typeof openLabourer>>} ask @param {number} pitches */
const moment = (ask, pitches) => ask("line", scenario, at(pitches)).answer;

test("a drive runs for ten minutes without growth and without drift", async () => {
  const ask = await openLabourer();
  const first = moment(ask, 0);
  const whole = first.pitches;
  assert.ok(whole > 40 && whole % 2 === 0, `${whole} pitches close`);
  let settled = 0;
  for (let frame = 1; frame <= FRAMES; frame++) {
    const pitches = (PITCHES * frame) / FRAMES;
    const run = moment(ask, pitches);
    const apart = Math.abs(run.done_pitches - (pitches % whole));
    assert.ok(Math.min(apart, whole - apart) < ROUNDING, `${pitches} pitches: at ${run.done_pitches}`);
    if (frame <= WARM * FRAMES) settled = ask.memory();
  }
  assert.ok(settled > 0);
  assert.equal(ask.memory(), settled, "bytes of memory");
  const fresh = await openLabourer();
  for (const pitches of [0, 0.5, 17.25, PITCHES]) {
    assert.deepEqual(differences(moment(ask, pitches), moment(fresh, pitches)), [], `after ${pitches} pitches`);
  }
});
