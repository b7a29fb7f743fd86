// A scenario as the file that is handed over, and what tells that file from any other.

/** @param {object} scenario */
export const scenarioText = (scenario) => `${JSON.stringify(scenario, null, 2)}\n`;

/**
 * The SHA-256 of a text, in hexadecimal; nothing where the browser has no such thing (a page that is not served safely).
 * @param {string} text
 */
export async function fingerprint(text) {
  if (!globalThis.crypto?.subtle) return "";
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
