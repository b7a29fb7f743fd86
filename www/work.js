// What a person has on the bench, as plain data: everything an address or an undo step holds.

import { decimal, figure, mmOfInch, unitInUse } from "./figures.js";
import { isQuestion, waysOf } from "./questions.js";
import { say } from "./words.js";

/** @typedef {import("./kernel.js").BenchLike} BenchLike */
/** @typedef {import("./kernel.js").Scenario} Scenario */
/** @typedef {import("./kernel.js").Fault} Fault */
/** @typedef {import("./kernel.js").Pose} Pose */
/** Taken hold of at one point of a section and let go at another. @typedef {{view: string, from: number[], to: number[]}} Pull */
/** A whole chain that is kept: what it began with and what differs; `file` where the menu does not list it. @typedef {{on: string, chain?: Record<string, any>, drive?: Record<string, any>, parts?: Record<string, any>, springy?: boolean, file?: {name: string, scenario: Scenario}}} Kept */
/**
 * @typedef {object} Work
 * @property {string} on the scenario, or `size-40-bushed` for a published size
 * @property {Record<string, any>} chain what differs from it
 * @property {Record<string, any>} drive what differs from its drive
 * @property {Record<string, any>} parts its other sections that are not as they were, whole: limits, wear and the like
 * @property {string} [file] the file that was opened, packed, where the work is on one
 * @property {string} ask the question
 * @property {string} how the way the chain is moved
 * @property {number} at how far along that way
 * @property {Pose|null} held a place in the room to move instead
 * @property {Pull[]} pulls what was then pulled by hand, one after the other, in mm of the drawn section
 * @property {number|null} times how many times too big gaps are drawn; null: the start value
 * @property {"mm"|"in"} unit
 * @property {boolean} springy whether plates and pins give under a load
 * @property {string} corner which end of the limits stands there: tightest, middle or loosest
 * @property {string} beside what lies beside the gap in the magnifier
 * @property {Kept|null} a the chain that is held as A, beside which this one stands
 * @property {Record<string, string>} own what a question was given besides the chain and its drive, as it was typed
 */

/** The sections that may differ from the scenario the work began with. */
export const PARTS = ["limits", "demands", "matching", "cost", "sampling", "wear", "width", "reach", "surface", "load"];

/** What may lie beside the gap in the magnifier. */
const THINGS = ["paper", "hair", "sand", "bristle", "dust"];

/** What is read off the chain for each way of moving it. */
const READINGS = /** @type {const} */ ({
  turn: "total_rad", aside: "offset_mm", lean: "yaw_rad", twist: "twist_rad", bend: "bend_rad",
});

/**
 * Where the chain stands along the way it is moved, as people read it.
 * @param {string} how
 * @param {import("./kernel.js").Live} live
 */
export function reading(how, live) {
  if (how === "load") return say("reading.load", { share_fraction: live.amplitude });
  const name = READINGS[/** @type {keyof typeof READINGS} */ (how)];
  return figure(name, live[name] ?? 0);
}

/** The same slope over a length one can picture. @param {number} rad */
export function slope(rad) {
  const fraction = Math.abs(Math.tan(rad));
  if (unitInUse() === "in") return say("slope.foot", { value: decimal(fraction * 12, 3) });
  const mm = fraction * 1000;
  return say("slope.metre", { value: decimal(mm, mm < 10 ? 1 : 0) });
}

/**
 * @param {string} on
 * @returns {Work}
 */
export const newWork = (on) => ({
  on, chain: {}, drive: {}, parts: {}, ask: "give", how: "turn", at: 1, held: null, pulls: [], times: null, unit: "mm", corner: "middle", beside: "paper", own: {},
  springy: false, a: null,
});

/**
 * Another scenario as its file has it, at its stop; unit and what lies in the magnifier stay.
 * @param {Work} work
 * @param {string} on
 * @returns {Work}
 */
export const anew = ({ own: { worn: _worn, ...own }, ...work }, on) => ({
  ...work, own, on, chain: {}, drive: {}, parts: {}, held: null, pulls: [], at: 1, times: null, corner: "middle",
});

/**
 * Puts the chain of a state on the bench: first what it began with, then what was changed.
 * @param {BenchLike} bench
 * @param {import("./scenarios.js").Scenarios} scenarios
 * @param {Work} work
 * @returns {{faults: Fault[], base: Record<string, any>, drive: Record<string, any>, parts: Record<string, any>}}
 */
export function loadWork(bench, scenarios, work) {
  const [size, construction] = sizeOf(work.on);
  const file = scenarios.get(work.on) ?? bench.scenario();
  let faults = size ? bench.adopt_size(size, construction) : bench.load(file);
  const begun = bench.scenario();
  const base = begun.drive ?? {};
  const [chain, drive] = [changed(begun.chain, work.chain), changed(base, work.drive ?? {})];
  const parts = work.parts ?? {};
  if (faults.length === 0 && (chain !== begun.chain || drive !== base || Object.keys(parts).length > 0)) {
    faults = bench.load({ ...begun, chain, ...(begun.drive || drive !== base ? { drive } : {}), ...parts });
  }
  return { faults, base: begun.chain, drive: base, parts: partsOf(begun) };
}

/**
 * The sections of a scenario beside its chain and drive; null where it has none.
 * @param {Record<string, any>} scenario
 */
export const partsOf = (scenario) => Object.fromEntries(PARTS.map((key) => [key, scenario[key] ?? null]));

/**
 * A part of a scenario with some of its values changed; null takes one out.
 * @param {Record<string, any>} base
 * @param {Record<string, any>} changes
 */
function changed(base, changes) {
  if (Object.keys(changes).length === 0) return base;
  return Object.fromEntries(Object.entries({ ...base, ...changes }).filter(([, value]) => value !== null));
}

/**
 * The keys of a chain that are not as they were; null for one that is gone.
 * @param {Record<string, any>} base
 * @param {Record<string, any>} chain
 */
export function changesFrom(base, chain) {
  const keys = new Set([...Object.keys(base), ...Object.keys(chain)]);
  const changed = [...keys].filter((key) => plain(chain[key]) !== plain(base[key]));
  return Object.fromEntries(changed.map((key) => [key, plain(chain[key])]));
}

/**
 * The sections that are not as they were.
 * @param {Record<string, any>} base
 * @param {Record<string, any>} parts
 */
export function partsFrom(base, parts) {
  const same = (/** @type {string} */ key) => JSON.stringify(parts[key]) === JSON.stringify(base[key] ?? null);
  return Object.fromEntries(Object.entries(parts).filter(([key]) => !same(key)));
}

/** A size as one number in mm, however the file writes it. @param {any} value */
const plain = (value) => (typeof value?.inch === "number" ? mmOfInch(value.inch) : value ?? null);

/**
 * An asked-for state over the present one, without what does not exist here.
 * @param {Partial<Work>} asked
 * @param {Work} work
 * @param {import("./scenarios.js").Scenarios} scenarios
 * @returns {Work}
 */
export function sensible(asked, work, scenarios) {
  const given = Object.entries(asked).filter(([, value]) => value !== undefined);
  const wanted = /** @type {Work} */ ({ ...work, ...Object.fromEntries(given) });
  if (!isQuestion(wanted.ask)) wanted.ask = "give";
  if (!waysOf(wanted.ask).includes(wanted.how)) wanted.how = "turn";
  if (!THINGS.includes(wanted.beside)) wanted.beside = "paper";
  if (!sizeOf(wanted.on)[0] && !scenarios.has(wanted.on)) wanted.on = work.on;
  return wanted;
}

/** @param {string} on */
export const isSize = (on) => sizeOf(on)[0] !== null;

/**
 * The published size a state began with and the construction it was taken up with.
 * @param {string} on
 * @returns {[string|null, string]}
 */
function sizeOf(on) {
  const found = /^size-(\w+)-(bushed|collared)$/.exec(on);
  return found ? [found[1], found[2]] : [null, ""];
}

/** The pose of a room, without its outline. @param {import("./kernel.js").Room} room */
export const poseOf = ({ offset_mm, yaw_rad }) => ({ offset_mm, yaw_rad });

/** Whether the pose was taken by hand. @param {Work} work */
export const byHand = (work) => work.held !== null || work.pulls.length > 0;

/**
 * Puts the pose of a state on the bench: its share or place first, then every pull again.
 * @param {BenchLike} bench
 * @param {Work} work
 * @param {{fits: boolean}} [state] of the bench
 */
export function poseWork(bench, { at, held, pulls }, { fits } = bench.state()) {
  if (!fits) return;
  if (held) bench.room_to(held.offset_mm, held.yaw_rad);
  else bench.scrub(at);
  for (const { view, from, to } of pulls) {
    if (!bench.grab(view, from[0], from[1])) continue;
    bench.drag(to[0], to[1]);
    bench.release();
  }
}
