// The lesson being made, kept in the browser as it grows, and what its file is called.

/** @typedef {import("./draft.js").Draft} Draft */

const KEY = "lightgap.making";

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
