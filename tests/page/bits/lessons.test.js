// Every sentence of every lesson, filled as the page fills it with what the worker works out for its step.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { figure } from "../../../www/figures.js";
import { filled, standsOf } from "../../../www/lesson/shelf.js";
import { openBench, openLabourer } from "../support/bench.js";
import { ROOT } from "../support/server.js";

const read = (name) => JSON.parse(readFileSync(join(ROOT, "scenarios/lessons", name), "utf8"));
/** How a number is written, by what its path says it is. */
const WRITTEN = [[/_fraction|yield_/, /^\d+(\.\d)?\u00a0%$/], [/_mm$/, /^\u2212?\d+(\.\d+)?\u00a0(mm|µm)$/], [/time_s$/, /^\d+$/], [/_rad$/, /^\u2212?\d+(\.\d+)?°$/], [/./, /^\u2212?\d+(\.\d+)?$/]];

test("every number in a lesson is filled, and written as what it is", async () => {
  const [bench, ask] = [await openBench(), await openLabourer()];
  let count = 0;
  for (const { id, file } of read("index.json")) {
    for (const { scenario, say, ask: asked } of standsOf(read(file))) {
      assert.deepEqual(bench.load(scenario), [], id);
      const numbers = { ...(await ask("report", scenario)).answer, chain: bench.state().sizes };
      const texts = [say, asked?.text, asked?.because, ...(asked?.choices ?? [])].filter(Boolean);
      for (const [place, path] of texts.flatMap((text) => [...text.matchAll(/\{([\w.]+)\}/g)])) {
        const [, written] = WRITTEN.find(([kind]) => kind.test(path));
        assert.match(filled(place, numbers, figure), written, `${id}: ${path}`);
        count++;
      }
    }
  }
  assert.ok(count > 40, `only ${count} were seen`);
});
