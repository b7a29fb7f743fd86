// A second bench with what is on the first, to be laid out on paper without touching the page.

import { openKernel } from "../kernel.js";
import { loadWords } from "../words.js";
import { poseWork } from "../work.js";

/** @typedef {import("../kernel.js").BenchLike} BenchLike */
/** @typedef {import("../session.js").Session} Session */

/**
 * Does something with a bench that stands as the page's does, and clears it away.
 * @template T
 * @param {Session} session
 * @param {(bench: BenchLike) => T|Promise<T>} work
 */
export async function withBench(session, work) {
  const bench = (await openKernel(await loadWords("rest"))).bench;
  try {
    bench.load(session.bench.scenario());
    bench.use_inches(session.work.unit === "in");
    bench.set_springy(session.work.springy);
    bench.show_corner(session.work.corner);
    bench.show_worn(session.stood_worn_mm);
    bench.show(session.work.how);
    bench.widen(session.state.factor.value);
    poseWork(bench, session.work);
    return await work(bench);
  } finally {
    /** @type {any} */ (bench).free();
  }
}
