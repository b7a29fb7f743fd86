// What tells the file of a scenario from any other.

/**
 * The SHA-256 of a text, in hexadecimal; nothing where the browser has no such thing (a page that is not served safely).
 * @param {string} text
 */
export async function fingerprint(text) {
  if (!globalThis.crypto?.subtle) return "";
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
