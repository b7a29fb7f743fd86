// A file that was opened goes along in the address: compressed, in letters that an address may hold, up to a stated length.

import { LARGEST_BYTES } from "../files.js";
import { OWN } from "../own.js";
import { notice } from "./notice.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {{name: string, scenario: import("../kernel.js").Scenario}} Named */

/** Longer than this, in letters, an address does not get on its way everywhere. */
export const LONGEST = 4000;
/** How the name of a file begins that is too long to be carried. */
const LONG = "long.";
/** Letters that tell such a file from others. */
const TELLING = 24;

/** @type {Map<string, Named>} those of this visit, for undo */
const known = new Map();

/** @param {ReadableStream<any>} stream @param {number} most */
async function bytesOf(stream, most) {
  const chunks = [];
  let length = 0;
  for (const reader = stream.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) throw new Error("too much");
    chunks.push(value);
  }
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}

/** @param {string} text */
export async function pack(text) {
  const packed = await bytesOf(new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw")), LARGEST_BYTES);
  const letters = Array.from(packed, (byte) => String.fromCharCode(byte)).join("");
  return btoa(letters).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

/** @param {string} packed */
export async function unpack(packed) {
  const bytes = Uint8Array.from(atob(packed.replace(/-/g, "+").replace(/_/g, "/")), (letter) => letter.charCodeAt(0));
  const plain = await bytesOf(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw")), LARGEST_BYTES);
  return new TextDecoder("utf-8", { fatal: true }).decode(plain);
}

/** Whether what is on the bench goes along in its address. @param {string|undefined} file */
export const isCarried = (file) => Boolean(file) && !(file ?? "").startsWith(LONG);

/**
 * The file on the bench goes along in the address from now on.
 * @param {Session} session
 */
export async function carry({ scenarios, work }) {
  const scenario = scenarios.get(OWN);
  if (!scenario) return;
  const packed = await pack(JSON.stringify(scenario));
  const file = packed.length <= LONGEST ? packed : `${LONG}${packed.length}.${packed.slice(-TELLING)}`;
  known.set(file, { name: scenarios.nameOf(OWN), scenario });
  scenarios.carried = file;
  if (work.on === OWN) work.file = file;
}

/**
 * Takes up the file of a state; what cannot be read is said, and what is on the bench stays.
 * @param {Session} session
 * @param {string} file
 */
export async function takeUp({ scenarios }, file) {
  try {
    const here = known.get(file);
    if (!here && !isCarried(file)) return notice("notice.file.long");
    const scenario = here ? here.scenario : JSON.parse(await unpack(file));
    scenarios.set(OWN, here ?? { name: String(scenario.title), scenario });
    known.set(file, { name: scenarios.nameOf(OWN), scenario });
    scenarios.carried = file;
  } catch {
    notice("notice.file.unread");
  }
}
