// A whole chain as it is kept: what it began with, and what differs from that.

import { newWork, isSize } from "../work.js";
import { say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../work.js").Kept} Kept */
/** @typedef {import("../work.js").Work} Work */

const PARTS = /** @type {const} */ (["chain", "drive", "parts"]);

/** @param {unknown} value */
const isPlain = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * What stands on the bench, to be kept. One that the menu does not list is kept whole, without its lesson.
 * @param {Session} session
 * @returns {Kept}
 */
export function keptOf({ work, scenarios }) {
  const parts = PARTS.filter((key) => Object.keys(work[key]).length > 0).map((key) => [key, structuredClone(work[key])]);
  const scenario = scenarios.isBrought(work.on) ? scenarios.get(work.on) : undefined;
  const { lesson: _, ...file } = /** @type {any} */ (scenario ?? {});
  return {
    on: work.on, ...Object.fromEntries(parts), ...(work.springy ? { springy: true } : {}),
    ...(scenario ? { file: { name: scenarios.nameOf(work.on), scenario: file } } : {}),
  };
}

/**
 * A kept chain as an address may hold it; null where it is none.
 * @param {any} kept
 * @returns {Kept|null}
 */
export function readKept(kept) {
  if (!isPlain(kept) || typeof kept.on !== "string") return null;
  if (PARTS.some((key) => kept[key] !== undefined && !isPlain(kept[key]))) return null;
  return kept.file === undefined || (isPlain(kept.file) && isPlain(kept.file.scenario)) ? kept : null;
}

/**
 * The present state with a kept chain in place of its own.
 * @param {Work} work
 * @param {Kept} kept
 * @returns {Work}
 */
export const workWith = (work, { on, chain = {}, drive = {}, parts = {}, springy = false }) =>
  ({ ...newWork(on), ...work, on, chain, drive, parts, springy });

/**
 * What a kept chain is called.
 * @param {Kept} kept
 * @param {import("../scenarios.js").Scenarios} scenarios
 */
export function nameOf({ on, file }, scenarios) {
  const size = /^size-(\w+)-/.exec(on);
  if (size) return say("compare.size", { number: size[1] });
  return file ? String(file.name) : scenarios.nameOf(on);
}

/**
 * Fetches what a kept chain began with; false where there is no such thing.
 * @param {Kept} kept
 * @param {import("../scenarios.js").Scenarios} scenarios
 */
export async function fetchKept({ on, file }, scenarios) {
  if (file || isSize(on)) return true;
  if (!scenarios.has(on)) return false;
  await scenarios.fetch(on);
  return true;
}
