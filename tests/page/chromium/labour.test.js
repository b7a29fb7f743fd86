// Work in the worker: newer before older, given up, and a worker that dies.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

/** In the page: the labour module, a scenario with a drive, and every worker that is started, in `globalThis.bench`. */
const prepare = async () => {
  const workers = [];
  globalThis.Worker = class extends Worker {
    constructor(address) {
      super(address);
      workers.push(this);
    }
  };
  const module = await import("./labour.js");
  const scenario = await (await fetch("scenarios/ferry-trike.json")).json();
  const at = (mm) => ({ ...scenario, drive: { ...scenario.drive, offset_mm: mm } });
  Object.assign(globalThis, { bench: { ...module, workers, at, scenario } });
};

describe("the worker, in Chromium", () => {
  const hand = standing();
  const { open } = hand;
  before(async () => {
    await open();
    await hand.inside(prepare);
  });

  test("no worker is started before a question needs one", async () => {
    const programs = () => performance.getEntriesByType("resource").filter(({ name }) => name.includes("lightgap_worker")).length;
    assert.equal(await hand.inside(programs), 0);
  });

  test("an older request in a slot gives way to a newer one, another slot does not", async () => {
    const given = await hand.inside(async () => {
      const { labour, at } = globalThis.bench;
      const asked = [["a", 2], ["a", 12], ["b", 4]].map(([slot, mm]) => labour(slot, "line", at(mm), {}));
      return (await Promise.all(asked)).map((answer) => answer?.offset_mm ?? null);
    });
    assert.deepEqual(given, [null, 12, 4]);
  });

  test("what is refused is named, and the worker lives on", async () => {
    const said = await hand.inside(async () => {
      const { labour, at, workers } = globalThis.bench;
      const faults = await labour("a", "line", at("crooked"), {}).catch((error) => error.faults);
      const unknown = await labour("a", "weather", at(1), {}).catch((error) => error.faults);
      return { path: faults[0].path, unknown: unknown[0].path, workers: workers.length };
    });
    assert.deepEqual(said, { path: "drive.offset_mm", unknown: "question", workers: 1 });
  });

  test("work that is abandoned ends, and the next request is answered by a new worker", async () => {
    const given = await hand.inside(async () => {
      const { labour, abandon, at, workers } = globalThis.bench;
      const long = labour("a", "line", at(1), { curve: "elastic" });
      await new Promise((next) => setTimeout(next));
      abandon("a");
      const [left, next] = [await long, await labour("a", "line", at(3), {})];
      return { left, next: next.offset_mm, workers: workers.length };
    });
    assert.deepEqual(given, { left: null, next: 3, workers: 2 });
  });

  test("a worker that dies is started again once, and then a sentence says so", async () => {
    const given = await hand.inside(async () => {
      const { labour, at, workers } = globalThis.bench;
      const die = () => workers[workers.length - 1].dispatchEvent(new ErrorEvent("error"));
      const first = labour("a", "line", at(5), {});
      await new Promise((next) => setTimeout(next));
      die();
      const once = (await first).offset_mm;
      const second = labour("a", "line", at(6), {}).catch((error) => error.message);
      await new Promise((next) => setTimeout(next));
      die();
      await new Promise((next) => setTimeout(next));
      die();
      return { once, twice: await second, then: (await labour("a", "line", at(7), {})).offset_mm };
    });
    assert.deepEqual(given, { once: 5, twice: words["labour.died"], then: 7 });
  });

  test("a crew answers all, each request once, and goes home when it is dismissed", async () => {
    const given = await hand.inside(async () => {
      const { crew, at } = globalThis.bench;
      const three = crew(3);
      const answers = await Promise.all([1, 2, 3, 4, 5].map((mm) => three.ask("line", at(mm), {})));
      const left = three.ask("line", at(8), { curve: "rigid" });
      three.dismiss();
      return [...answers.map(({ offset_mm }) => offset_mm), await left];
    });
    assert.deepEqual(given, [1, 2, 3, 4, 5, null]);
  });

  test("no script but the worker's own is admitted", async () => {
    const refused = await hand.inside(() => {
      try {
        new Worker("main.js");
        return "";
      } catch (error) {
        return error.name;
      }
    });
    assert.equal(refused, "TypeError");
  });
});
