// A drag to and fro on every question, as a hand does it.

/** For each question the chain that is asked about, and what is taken hold of. @type {Record<string, [string, string]>} */
export const HELD = {
  give: ["ferry-winch", "#grips .grip:not([hidden])"],
  touch: ["ferry-winch", "#grips .grip:not([hidden])"],
  line: ["ferry-trike", ".own input[type=range]"],
  fit: ["ferry-thousand", ".own input[type=range]"],
  wear: ["tired-trike", ".own input[type=range]"],
  reach: ["oiled-winch", ".own input[type=range]"],
  surface: ["dusty-trike", ".own input[type=range]"],
  width: ["ferry-trike", ".own input[type=range]"],
};

/** Where to press, and how far to go to either side. @param {any} hand @param {string} selector */
export const place = (hand, selector) =>
  hand.inside((/** @type {string} */ selector) => {
    const found = [...document.querySelectorAll(selector)].find((each) => each.getClientRects().length > 0);
    if (!found) throw new Error(`there is no ${selector}`);
    found.scrollIntoView({ block: "center" });
    const { x, y, width, height } = found.getBoundingClientRect();
    const name = found.getAttribute("aria-label") ?? "";
    return { x: x + width / 2, y: y + height / 2, reach: Math.max(60, width / 3), name };
  }, selector);

/** To and fro and a little up and down. @param {{x: number, y: number, reach: number}} at @param {number} turn */
const along = ({ x, y, reach }, turn) => [x + reach * Math.sin(turn / 25), y + 20 * Math.sin(turn / 40)];

/**
 * Presses, goes to and fro, lets go; a move waits until the page has taken it.
 * @param {any} page
 * @param {{x: number, y: number, reach: number}} at
 * @param {number} moves
 * @param {number} pause_ms between moves
 */
export async function drag(page, at, moves, pause_ms) {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  for (let turn = 0; turn < moves; turn++) {
    const [x, y] = along(at, turn);
    await page.mouse.move(x, y);
    if (pause_ms > 0) await page.waitForTimeout(pause_ms);
  }
  await page.mouse.up();
}
