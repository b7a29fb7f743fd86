// Question 4 by keys alone, from the first screen: nothing is clicked and nothing is focused but by Tab.

import assert from "node:assert/strict";

/** Stops that are pressed at once, and how often before a walk is lost. */
const [STRIDE, STRIDES] = [12, 16];

/** Holds the focus where it was to come: stops that are pressed too much go no further. @param {string} wanted */
const holdAt = (wanted) => {
  const hold = (/** @type {KeyboardEvent} */ event) => event.key === "Tab" && document.activeElement?.matches(wanted) && event.preventDefault();
  addEventListener("keydown", hold, true);
  window.release = () => removeEventListener("keydown", hold, true);
};

/** @param {ReturnType<typeof import("./standing.js").standing>} hand */
export async function byKeysAlone(hand) {
  const { open, until, said, hash } = hand;
  const to = async (selector, back = false) => {
    const there = (wanted) => document.activeElement?.matches(wanted);
    const { keyboard } = hand.page;
    await hand.inside(holdAt, selector);
    if (back) await keyboard.down("Shift");
    for (let strides = 0; !(await hand.inside(there, selector)); strides++) {
      assert.ok(strides < STRIDES, `${selector} is not come to`);
      for (let stop = 0; stop < STRIDE; stop++) await keyboard.press("Tab");
    }
    if (back) await keyboard.up("Shift");
    await hand.inside(() => window.release());
  };
  const here = () => hand.inside(() => [document.activeElement.dataset.at, document.activeElement.value]);
  const ask = async (back) => {
    await to("#questions li:nth-child(4) button", back);
    await hand.press("Enter");
    await hand.settled();
  };
  await open("#v=1&on=ferry-thousand");
  await ask();

  const limit = "outer_spacing_mm.1";
  await to(`[data-at="${limit}"]`);
  const [, minus] = await here();
  for (const key of ["ArrowUp", "ArrowUp", "ArrowUp", "ArrowDown"]) await hand.page.keyboard.press(key); // faster than the worker
  await hand.settled();
  assert.deepEqual(await here(), [limit, (Number(minus) + 0.02).toFixed(2)], "two steps, the field still in hand");
  assert.match(decodeURIComponent(await hash()), new RegExp(`"minus":${Number(minus) + 0.02}`));

  await to("#fit-sets", true);
  await hand.press("ArrowDown");
  assert.equal(await hand.value("#fit-sets"), "10000000");
  await to("#fit-run");
  await hand.press("Enter");
  await until(() => Number(document.querySelector(".fit progress").value) > 0);
  await to("#fit-stop");
  await hand.press("Enter");
  await until(() => document.activeElement.id === "fit-run");
  const drawn = await hand.inside(() => Number(document.querySelector(".fit-news").textContent.replace(/\D/g, "")));
  assert.ok(drawn > 0 && drawn < 10_000_000, `${drawn}: what was drawn stays, as far as it came`);

  await to(".fit-worst button");
  await hand.press("Enter");
  await until(() => document.body.dataset.ask === "give" && document.activeElement.id === "sheet");
  const [worst, slides] = [await hash(), await said("answer")];
  assert.match(worst, /outer_spacing_mm=/);
  await hand.press("Control+z");
  await until(() => !location.hash.includes("outer_spacing_mm="));
  assert.notEqual(await said("answer"), slides);

  await ask(true);
  const notes = () => hand.inside(() => [...document.querySelectorAll(".fit-three .hint")].map((each) => each.textContent));
  const sd = (note) => Number(/deviation ([\d.]+)/.exec(note)[1]);
  await until(() => document.querySelector(".fit-three .hint").textContent !== "");
  const bins = await notes();
  assert.ok(sd(bins[1]) < sd(bins[0]), bins.join("; "));
  assert.match(bins[1], /left over/);
  await to(".fit-slider input");
  for (let i = 0; i < 4; i++) await hand.press("ArrowRight");
  await until(() => document.querySelector(".fit-count").textContent === "8");
  assert.ok(sd((await notes())[1]) < sd(bins[1]), "more bins leave less spread");

  await to(".fit-block:has(textarea) summary", true);
  await hand.press("Enter");
  await to(".fit textarea");
  await hand.page.keyboard.insertText("dimension,minus_mm,plus_mm\nbore_mm,0.002,0.003");
  await hand.press("Tab");
  await hand.press("Enter");
  await until(() => document.querySelectorAll("#fit-limits-body tr:not(.fault-row)").length === 1);
  assert.equal(await hand.value('[data-at="bore_mm.2"]'), "0.003");
  assert.deepEqual(hand.complaints(), []);
}
