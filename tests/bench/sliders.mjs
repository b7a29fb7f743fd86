// From the input of a slider to its painted answer, in Chromium, for every slider of the questions of wear, reach, surface
// and width: `node tests/bench/sliders.mjs`, medians in ms of so many moves, with the frames that each took. An address takes
// the place of a page of its own.

import { visit } from "../page/support/hand.js";
import { answered } from "../page/support/inside.js";
import { startPage } from "../page/support/server.js";

const MOVES = process.argv.includes("--quick") ? 5 : 41;
const ASKED = { wear: "ferry-winch", reach: "oiled-winch", surface: "dusty-trike", width: "ferry-trike" };

/** Moves each slider by keys' steps and waits until the question shows what was asked. @param {number} moves */
async function timed(moves) {
  const frame = () => new Promise((next) => requestAnimationFrame(next));
  const rows = [];
  for (const slider of document.querySelectorAll("#stage .own input[type=range], #found input[type=range]")) {
    if (!slider.checkVisibility()) continue;
    const [low, high] = [Number(slider.min), Number(slider.max)];
    const begin = slider.value;
    const tries = [];
    for (let i = 0; i < moves; i++) {
      slider.value = String(low + (high - low) * (0.2 + (0.5 * i) / moves));
      await frame();
      const from = performance.now();
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      let frames = 0;
      await Promise.resolve();
      do {
        await frame();
        frames++;
      } while (document.querySelector(".own.waiting") && frames < 200);
      tries.push({ ms: performance.now() - from, frames });
    }
    slider.value = begin;
    slider.dispatchEvent(new Event("change", { bubbles: true }));
    const middle = (of) => tries.map(of).sort((a, b) => a - b)[Math.floor(moves / 2)];
    rows.push({ slider: slider.getAttribute("aria-label"), ms: middle(({ ms }) => ms), frames: middle(({ frames }) => frames) });
  }
  return rows;
}

const given = process.argv.find((each) => each.startsWith("http"));
const page = given ? { address: given, stop: async () => {} } : await startPage();
try {
  for (const [ask, on] of Object.entries(ASKED)) {
    await visit(`${page.address}#v=1&on=${on}&ask=${ask}`, { viewport: { width: 1280, height: 900 } }, async (hand) => {
      await hand.inside(answered);
      for (const { slider, ms, frames } of await hand.inside(timed, MOVES)) {
        console.log(`${ask.padEnd(8)} ${String(slider).padEnd(28)} ${ms.toFixed(1).padStart(7)} ms ${String(frames).padStart(3)} frames`);
      }
    });
  }
} finally {
  await page.stop();
}
