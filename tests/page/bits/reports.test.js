// The kernel as WebAssembly and as a native program: the same reports, bit for bit, and the same refusals.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { openLabourer } from "../support/bench.js";
import { count, differences, golden } from "../support/golden.js";
import { ROOT } from "../support/server.js";
import { scenarioFiles } from "../support/words.js";

const VARIANTS = 25;
/** How far lengths stray, as a share: most a little, every fifth chain beyond what can be made. */
const SPREADS = [0.04, 0.04, 0.04, 0.04, 0.8];

const scenarios = scenarioFiles().map((file) => JSON.parse(readFileSync(join(ROOT, "scenarios", file), "utf8")));

/** Numbers from 0 to 1, the same ones in every run (a linear congruence, Knuth's MMIX factors). */
function numbers() {
  let state = 1n;
  return () => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return Number(state >> 11n) / 2 ** 53;
  };
}

/**
 * The scenario with every length a little off: some go together, some do not, some are refused.
 * @param {any} scenario
 * @param {() => number} next
 * @param {number} spread
 */
function variant(scenario, next, spread) {
  const other = (value) => {
    if (typeof value === "number") return value * (1 + spread * (next() - 0.5));
    return typeof value === "object" && value ? { inch: other(value.inch) } : value;
  };
  const chain = Object.fromEntries(Object.entries(scenario.chain).map(([key, value]) => [key, other(value)]));
  return { ...scenario, chain };
}

describe("reports from WebAssembly", () => {
  /** @type {Awaited<ReturnType<typeof openLabourer>>} */
  let ask;
  /** @type {string} */
  let folder;
  before(async () => {
    ask = await openLabourer();
    folder = mkdtempSync(join(tmpdir(), "lightgap-"));
  });
  after(() => rmSync(folder, { recursive: true }));

  /**
   * The native reports or refusals of scenarios, in order.
   * @param {any[]} wanted
   */
  function native(wanted) {
    const files = wanted.map((scenario, index) => {
      const file = join(folder, `${index}.json`);
      writeFileSync(file, JSON.stringify(scenario));
      return file;
    });
    const done = spawnSync("cargo", ["solve", ...files], { cwd: ROOT, encoding: "utf8", maxBuffer: 2 ** 28 });
    assert.ok([0, 2].includes(done.status ?? -1), done.stderr);
    const said = done.stderr.split("\n").filter(Boolean);
    const reports = done.stdout.split("\n").filter(Boolean).map((line) => JSON.parse(line));
    return files.map((file) => {
      const faults = said.filter((line) => line.startsWith(`${file}: `));
      return faults.length > 0 ? { faults } : { report: reports.shift() };
    });
  }

  test("every scenario and every step of a lesson has the report that is kept, natively at full optimisation and here", () => {
    const kept = golden();
    assert.ok(kept.length > 30, `${kept.length} reports`);
    native(kept.map(({ scenario }) => scenario)).forEach(({ report, faults }, index) => {
      const { name, scenario, report: expected } = kept[index];
      assert.deepEqual(faults, undefined, name);
      assert.ok(count(expected) > 7, `${name} holds numbers`);
      assert.deepEqual(differences(report, expected), [], `${name}, natively`);
      assert.deepEqual(differences(ask("report", scenario).answer, expected), [], `${name}, in WebAssembly`);
    });
  });

  test("chains a little off these give the same numbers, or are refused for the same fields", () => {
    const next = numbers();
    const each = (scenario) => (_, index) => variant(scenario, next, SPREADS[index % SPREADS.length]);
    const wanted = scenarios.flatMap((scenario) => Array.from({ length: VARIANTS }, each(scenario)));
    let [solved, apart, refused] = [0, 0, 0];
    native(wanted).forEach(({ report, faults }, index) => {
      const { answer, faults: said = [] } = ask("report", wanted[index]);
      if (report) {
        assert.deepEqual(said, [], wanted[index].title);
        assert.deepEqual(differences(answer, report), []);
        if (report.play) solved++;
        else apart++;
      } else {
        assert.equal(said.length, faults.length);
        said.forEach((fault, at) => assert.ok(faults[at].includes(fault.path), `${fault.path} in ${faults[at]}`));
        refused++;
      }
    });
    assert.ok(solved > 20 && apart > 5 && refused > 5, `${solved} solved, ${apart} not together, ${refused} refused`);
  });
});
