// The lesson being made, kept in the browser as it grows; and the files it is saved to and opened from.

import { make } from "../dom.js";

/** @typedef {import("./draft.js").Draft} Draft */

const KEY = "lightgap.making";
const LARGEST_BYTES = 1_000_000;

/** @param {Draft} draft */
export function keep(draft) {
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {
    // not kept: it stays until the page is left
  }
}

/** @returns {Draft|null} */
export function kept() {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "null");
  } catch {
    return null;
  }
}

/**
 * Hands a scenario file to the visitor.
 * @param {Record<string, any>} file
 * @param {string} name
 */
export function save(file, name) {
  const link = make("a", { href: URL.createObjectURL(new Blob([`${JSON.stringify(file, null, 2)}\n`], { type: "application/json" })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/**
 * What a file holds, or the word for why it cannot be read.
 * @param {File} file
 * @returns {Promise<{read: any}|{why: string}>}
 */
export async function readFile(file) {
  if (file.size > LARGEST_BYTES) return { why: "making.large" };
  try {
    return { read: JSON.parse(await file.text()) };
  } catch {
    return { why: "making.unreadable" };
  }
}

/** @param {string} title */
export const fileName = (title) => `${title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "lesson"}.json`;

/** A reload opens the panel again. @param {boolean} open */
export function stayOpen(open) {
  try {
    if (open) sessionStorage.setItem(KEY, "open");
    else sessionStorage.removeItem(KEY);
  } catch {
    // not kept: the panel is opened again by hand
  }
}
