// The files that must be refused (tests/hostile/README.md), as the page reads them: the same faults as natively.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { before, describe, test } from "node:test";
import { openBench } from "../support/bench.js";
import { ROOT } from "../support/server.js";

/** @typedef {{why: string, text?: string, change?: Record<string, any>, faults: [string, string][]}} Case */

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "tests/hostile", name), "utf8"));
/** @type {Case[]} */
const cases = read("cases.json");

/**
 * Puts a value at a path of member names.
 * @param {any} whole
 * @param {string} path
 * @param {any} value
 */
function put(whole, path, value) {
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  const place = keys.reduce((object, key) => (object[key] ??= {}), whole);
  place[last] = value;
}

/**
 * The object of a case; nothing where its text is no JSON, which the page hears from the browser.
 * @param {Case} one
 */
function objectOf({ text, change }) {
  if (text === undefined) {
    const whole = read("whole.json");
    for (const [path, value] of Object.entries(change ?? {})) put(whole, path, value);
    return whole;
  }
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

describe("files that must be refused", () => {
  /** @type {any} */
  let bench;
  before(async () => {
    bench = await openBench();
  });

  test("a scenario with every section is read", () => {
    assert.deepEqual(bench.load(read("whole.json")), []);
  });

  test("every case gives its faults and no others, and leaves the bench as it was", () => {
    bench.load(read("whole.json"));
    const stood = JSON.stringify(bench.scenario());
    let told = 0;
    for (const one of cases) {
      const object = objectOf(one);
      // What no JSON reader takes, and a number that only JavaScript takes, never reach the bench as such.
      if (object === undefined || one.faults[0][1] === "syntax") continue;
      const faults = bench.load(object).map((/** @type {any} */ fault) => [fault.path, fault.rule]);
      assert.deepEqual(faults, one.faults, one.why);
      told++;
    }
    assert.ok(told > 50, `${told} cases`);
    assert.equal(JSON.stringify(bench.scenario()), stood);
  });
});
