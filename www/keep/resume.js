// What was kept from the last visit: said where it was taken up, offered where the page is opened without an address.

import { forgetLast, lastKept } from "../history.js";
import { notice } from "./notice.js";

/** @typedef {import("../session.js").Session} Session */

/**
 * @param {Session} session
 * @param {boolean} resumed whether undo goes back beyond the opening of the page
 * @param {string} asked the fragment that the page was opened with
 */
export async function resume(session, resumed, asked) {
  const { history } = session;
  const present = history.present;
  const until = (/** @type {HTMLElement} */ line) => session.listen(() => history.present !== present && line.remove());
  if (resumed) return until(await notice("notice.restored", { count: history.past.length }));
  const last = lastKept();
  if (asked.startsWith("#v=")) return until(await notice("notice.refused"));
  if (!last || last === location.hash) return;
  until(await notice("notice.last", {}, [["notice.last.go", () => (location.hash = last)], ["notice.last.forget", forgetLast]]));
}
