// A scenario of the visitor's own on the bench: one that was opened, measured, or held and taken back.

import { keepOwn, OWN } from "../own.js";
import { anew } from "../work.js";

/** @typedef {import("../session.js").Session} Session */

/**
 * Puts it on the bench, to be undone as one step; gives its faults, and then all stays as it was.
 * @param {Session} session
 * @param {{name: string, scenario: any}} named
 * @param {import("../work.js").Work} [work] the state that it stands in; begun anew where none is given
 */
export async function putOwn(session, named, work = anew(session.work, OWN)) {
  const { scenarios } = session;
  const last = { name: scenarios.nameOf(OWN), scenario: scenarios.get(OWN) };
  scenarios.set(OWN, named);
  const faults = session.put(work);
  if (faults.length === 0) {
    await keepOwn(session);
    session.commit();
  } else if (last.scenario) scenarios.set(OWN, { ...last, scenario: last.scenario });
  else scenarios.drop(OWN);
  return faults;
}
