// Sets drawn by workers: the same bits by any number of them, and never those of an older request or another seed.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { ROOT } from "./server.js";

/** The tests of the page's crowd, on a page that stands. @param {ReturnType<typeof import("./standing.js").standing>} hand */
export function crowdTests(hand) {
  test("one, two and seven workers give the same bits as the kernel natively", async () => {
    const [one, two, seven] = await hand.inside(async () => {
      const { Crowd } = await import(new URL("fit/crowd.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const views = [];
      for (const hands of [1, 2, 7]) {
        const crowd = new Crowd(() => {});
        await crowd.run(scenario, Math.ceil(20000 / 2048), hands);
        views.push(JSON.stringify(crowd.view) + crowd.failure);
      }
      return views;
    });
    assert.equal(two, one);
    assert.equal(seven, one);
    // The kept report is the native kernel's, of the same seed and sets.
    const { fit } = JSON.parse(readFileSync(join(ROOT, "tests/golden/ferry-thousand.json"), "utf8")).report;
    const view = JSON.parse(one);
    assert.deepEqual([view.sets, ...view.yield_fraction], [fit.sets, fit.yield_fraction, fit.yield_se]);
    assert.equal(view.demands.length, fit.demands.length);
    view.demands.forEach(({ yield_fraction, mean, sd, percentiles, worst }, i) => {
      const native = fit.demands[i];
      assert.deepEqual([...yield_fraction, ...mean, ...sd], [native.yield_fraction, native.yield_se, native.mean, native.mean_se, native.sd, native.sd_se]);
      assert.deepEqual(percentiles, native.percentiles.map(({ share_fraction, value, se }) => [share_fraction, value, se]));
    });
  });

  test("sets of an older request never overwrite those of a newer one", async () => {
    const [newer, alone, later] = await hand.inside(async () => {
      const { Crowd } = await import(new URL("fit/crowd.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const older = { ...scenario, limits: scenario.limits.map((limit) => ({ ...limit, law: "uniform" })), sampling: { seed: 3, sets: 1000000 } };
      const crowd = new Crowd(() => {});
      const first = crowd.run(older, Math.ceil(1000000 / 2048), 2);
      while (!crowd.view) await new Promise((done) => setTimeout(done, 5)); // the older one is under way
      await crowd.run(scenario, Math.ceil(20000 / 2048), 2);
      const newer = JSON.stringify(crowd.view);
      await first;
      const fresh = new Crowd(() => {});
      await fresh.run(scenario, Math.ceil(20000 / 2048), 1);
      return [newer, JSON.stringify(fresh.view), JSON.stringify(crowd.view)];
    });
    assert.equal(newer, alone);
    assert.equal(later, alone);
  });

  test("sets of another seed are not taken for those of this one", async () => {
    const [same, other, again] = await hand.inside(async () => {
      const { Drawn } = await import(new URL("fit/drawn.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const drawn = new Drawn(() => {});
      drawn.want(scenario);
      drawn.run(scenario, 50000, 2048);
      while (drawn.crowd.share !== null || drawn.stale) await new Promise((done) => setTimeout(done, 10));
      const sets = [drawn.known.sets];
      for (const seed of [5, scenario.sampling.seed]) {
        drawn.want({ ...scenario, sampling: { ...scenario.sampling, seed } });
        sets.push(drawn.known.sets);
      }
      return sets;
    });
    assert.deepEqual([same, other, again], [50000, 20000, 50000]);
  });
}
