// A drag of six hundred moves on every question, in Chromium with its window on no screen: how long the stage takes from an
// input event to the last call that draws on it (rasterising left out); what all scripts of a frame take on the page's own
// thread, what is said and written after the picture among it, while the browser records; the longest task; what a move
// changes on the page, in counts; and what a thousand drags leave in memory. A move waits until the page has taken it, so
// that the drag takes ten seconds or longer.
// `node tests/bench/drag.mjs` (behind it a question's id, for that one alone; SECONDS and DRAGS make it shorter, PAGE is a
// page that is served already) prints, and ends with 1 where a goal is missed, since times depend on the machine.

import { openChromium } from "../page/support/hand.js";
import { answered, opened } from "../page/support/inside.js";
import { HELD, drag, place } from "../page/support/drags.js";
import { changesSoFar, countChanges } from "../page/support/changes.js";
import { startPage } from "../page/support/server.js";

const SECONDS = Number(process.env.SECONDS ?? 10);
const PER_SECOND = 60;
const GOAL_MS = 4;
const LONG_TASK_MS = 50;
const DRAGS = Number(process.env.DRAGS ?? 1000);
/** Growth by more than this over a thousand drags is a leak, bytes: a kilobyte for each. */
const MOST_GROWTH = 1e6;
const US_PER_MS = 1000;
const KINDS = new Set(["EventDispatch", "FireAnimationFrame", "TimerFire", "RunMicrotasks", "FunctionCall"]);
/** What begins a frame of the page's own thread, in the task that ends with its drawing. */
const BEGINS = "BeginMainThreadFrame";
/** A frame in which none of these ran has nothing new to show. */
const SHOWS = new Set(["Paint", "FireAnimationFrame"]);
const CATEGORIES = ["devtools.timeline", "disabled-by-default-devtools.timeline", "disabled-by-default-devtools.timeline.frame"];

/**
 * The scripts' time of each frame that shows something new, and of each task, from what the browser recorded. To a frame
 * belongs what has run since the last one, and the task that draws it.
 * @param {any[]} events
 */
function spent(events) {
  const main = events.find(({ name }) => name === "FireAnimationFrame");
  if (!main) return { frames: [], tasks: [] };
  const own = events.filter(({ pid, tid }) => pid === main.pid && tid === main.tid).sort((a, b) => a.ts - b.ts);
  const tasks = own.filter(({ name, tdur }) => name === "RunTask" && tdur);
  /** @type {number[]} */
  const frames = [];
  let [sum, until, next] = [0, 0, 0];
  for (const { ts, dur } of tasks) {
    let [ends, shows] = [false, false];
    for (; next < own.length && own[next].ts < ts + dur; next++) {
      const { name, tdur, ts: from, dur: long } = own[next];
      ends ||= name === BEGINS;
      shows ||= SHOWS.has(name);
      if (!tdur || !KINDS.has(name) || from < until) continue;
      [sum, until] = [sum + tdur, from + long];
    }
    if (!ends) continue;
    if (shows) frames.push(sum / US_PER_MS);
    sum = 0;
  }
  return { frames: frames.sort((a, b) => a - b), tasks: tasks.map(({ tdur }) => tdur / US_PER_MS) };
}

/** Bytes that scripts hold once what nobody needs is gone. @param {any} session */
async function held(session) {
  await session.send("HeapProfiler.collectGarbage");
  return (await session.send("Runtime.getHeapUsage")).usedSize;
}

/** @param {string} address @param {string} id @param {string[]} how the chain, and what is taken hold of */
async function measure(address, id, how) {
  const hand = await openChromium({ viewport: { width: 1280, height: 800 } });
  try {
    return await measured(hand, address, id, how);
  } catch (fault) {
    console.log(`DRAG ${id}: ${fault}: MISSED`);
    return false;
  } finally {
    await hand.close();
  }
}

/**
 * Notes, for each input event, how long it takes from there to the last call that draws on a canvas: what a hand waits for
 * before the picture follows it.
 */
function noteDrawing() {
  const [took, drawn] = [/** @type {number[]} */ ([]), { began: 0, last: 0 }];
  const done = () => {
    if (drawn.last > drawn.began && drawn.began > 0) took.push(drawn.last - drawn.began);
    drawn.began = 0;
  };
  for (const kind of ["pointermove", "input"]) {
    addEventListener(kind, () => {
      if (drawn.began > 0) return;
      drawn.began = performance.now();
      requestAnimationFrame(done);
    }, true);
  }
  // Each painting ends with the context's own state restored; the calls before it are left as they are.
  const { restore } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.restore = function () {
    restore.call(this);
    drawn.last = performance.now();
  };
  Object.assign(window, { tookToDraw: took });
}

/** What a move of the same drag changes, in counts. @param {any} hand @param {string} selector */
async function changed(hand, selector) {
  await hand.inside(countChanges);
  await drag(hand.page, await place(hand, selector), 2 * PER_SECOND, US_PER_MS / PER_SECOND);
  await hand.inside(answered);
  const counts = Object.entries(await hand.inside(changesSoFar));
  return counts.map(([what, count]) => `${what} ${(count / (2 * PER_SECOND)).toFixed(1)}`).join(", ");
}

/** @param {any} hand @param {string} address @param {string} id @param {string[]} how */
async function measured(hand, address, id, [chain, selector]) {
  const page = hand.page;
  await page.addInitScript(noteDrawing);
  await hand.goTo(`${address}#v=1&on=${chain}&ask=${id}`);
  await hand.inside(opened);
  await hand.inside(answered);
  await drag(page, await place(hand, selector), PER_SECOND, 0);
  await hand.inside(answered);
  const at = await place(hand, selector);
  await hand.inside(() => void (/** @type {any} */ (window).tookToDraw.length = 0));
  await drag(page, at, SECONDS * PER_SECOND, US_PER_MS / PER_SECOND);
  await hand.inside(answered);
  const drawn = (await hand.inside(() => /** @type {any} */ (window).tookToDraw)).sort((/** @type {number} */ a, /** @type {number} */ b) => a - b);
  const browser = page.context().browser();
  await browser.startTracing(page, { categories: CATEGORIES });
  await drag(page, at, SECONDS * PER_SECOND, US_PER_MS / PER_SECOND);
  await hand.inside(answered);
  const { frames, tasks } = spent(JSON.parse((await browser.stopTracing()).toString()).traceEvents);
  const session = await page.context().newCDPSession(page);
  const each = await changed(hand, selector);
  const before = await held(session);
  const again = await place(hand, selector);
  for (let turn = 0; turn < DRAGS; turn++) await drag(page, again, 2, 0);
  await hand.inside(answered);
  const grown = (await held(session)) - before;
  const share = (/** @type {number} */ part, from = frames) => from[Math.floor(part * (from.length - 1))] ?? NaN;
  const work = drawn.length > 0 ? drawn : frames; // where nothing is drawn on a canvas, all scripts count
  const toDraw = drawn.length > 0 ? `to the last draw call median ${share(0.5, drawn).toFixed(2)} ms, 95 % ${share(0.95, drawn).toFixed(2)} ms; ` : "";
  const longest = tasks.reduce((most, each) => Math.max(most, each), 0); // they may be more than a call takes
  const good = share(0.95, work) <= GOAL_MS && longest < LONG_TASK_MS && grown < MOST_GROWTH;
  console.log(`DRAG ${id} (${chain}, ${at.name}): ${toDraw}all scripts of ${frames.length} frames ${share(0.5).toFixed(2)} and ${share(0.95).toFixed(2)} ms (goal ${GOAL_MS}); longest task ${longest.toFixed(1)} ms (goal ${LONG_TASK_MS}); ${DRAGS} drags leave ${(grown / US_PER_MS).toFixed(0)} kB; a move: ${each}${good ? "" : ": MISSED"}`);
  return good;
}

const wanted = process.argv[2];
const { PAGE } = process.env;
const site = PAGE ? { address: PAGE, stop: async () => {} } : await startPage();
let good = true;
try {
  for (const [id, how] of Object.entries(HELD)) if (!wanted || wanted === id) good = (await measure(site.address, id, how)) && good;
} finally {
  await site.stop();
}
process.exitCode = good ? 0 : 1;
