// Files that are handed to the visitor, and those that are taken from them.

import { make } from "./dom.js";

/** No scenario is larger, bytes. */
export const LARGEST_BYTES = 1_000_000;
/** How long the address of a file stays good, ms: until the browser has begun to write it. */
const TAKEN_MS = 10_000;

/**
 * Hands a file to the visitor.
 * @param {Blob} blob
 * @param {string} name
 */
export function hand(blob, name) {
  const link = make("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), TAKEN_MS);
}

/** Data as the text of a file. @param {object} data */
export const textOf = (data) => `${JSON.stringify(data, null, 2)}\n`;

/** Data as a file. @param {object} data */
export const jsonOf = (data) => new Blob([textOf(data)], { type: "application/json" });

const TOKEN = /"(?:[^"\\]|\\.)*"|-?\d[\d.]*(?:[eE][-+]?\d+)?/g;

/** A text with every number that no number can hold between quotes, so that a fault tells it as written. @param {string} text */
const held = (text) => text.replace(TOKEN, (token) => (Math.abs(Number(token)) === Infinity && !token.startsWith('"') ? `"${token}"` : token));

/**
 * What a file holds, or why it cannot be read.
 * @param {File} file
 * @returns {Promise<{read: any}|{why: "large"|"unreadable"}>}
 */
export async function readFile(file) {
  if (file.size > LARGEST_BYTES) return { why: "large" };
  try {
    return { read: JSON.parse(held(await file.text())) };
  } catch {
    return { why: "unreadable" };
  }
}
