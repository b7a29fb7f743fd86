// What a question was given besides the chain and its drive: kept in the address, so that a reload and undo bring it back.

/** @typedef {import("./session.js").Session} Session */

/**
 * Keeps it; what is as it was to begin with (no text) is not kept.
 * @param {Session} session
 * @param {string} key
 * @param {string|undefined} text
 * @param {boolean} done false while a slider is still moving
 */
export function keepTyped(session, key, text, done) {
  const { [key]: _last, ...own } = session.work.own;
  session.move({ own: text === undefined ? own : { ...own, [key]: text } }, done);
}

/**
 * A number that was kept, or the one to begin with.
 * @param {Session} session
 * @param {string} key
 * @param {number} begin
 */
export function typedNumber(session, key, begin) {
  const text = session.work.own[key] ?? "";
  return text === "" || !Number.isFinite(Number(text)) ? begin : Number(text);
}
