// The questions of wear, reach, surface and width on a phone: by finger, in inches, back and forth.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
const ASKED = { wear: "tired-trike", reach: "oiled-winch", surface: "dusty-trike", width: "ferry-trike" };
/** Where each stands in the list of questions. */
const PLACES = { wear: 5, reach: 6, surface: 7, width: 8 };
const SLIDERS = ".own input[type=range]";

describe("the four later questions on a phone, in Chromium", () => {
  const hand = standing(PHONE);
  const { open, inside, said, settled, click, until } = hand;

  /** The first slider of the question that is asked, with its thumb, and where a finger can take it to. */
  const slider = () => inside((found) => {
    const one = [...document.querySelectorAll(found)].find((each) => each.checkVisibility());
    one.scrollIntoView({ block: "center", behavior: "instant" });
    const { left, width, top, height } = one.getBoundingClientRect();
    return { value: one.value, low: { x: left + 0.3 * width, y: top + height / 2 }, high: { x: left + 0.8 * width, y: top + height / 2 } };
  }, SLIDERS);

  for (const [ask, on] of Object.entries(ASKED)) {
    test(`${ask}: a finger moves its slider and the answer follows, nothing sticks out`, async () => {
      await open(`#v=1&on=${on}&ask=${ask}`);
      const before = await slider();
      await hand.page.touchscreen.tap(before.low.x, before.low.y);
      await settled();
      const low = { value: (await slider()).value, answer: await said("answer") };
      await hand.page.touchscreen.tap(before.high.x, before.high.y);
      await settled();
      assert.ok(Number((await slider()).value) > Number(low.value), JSON.stringify([before, low]));
      assert.notEqual(await said("answer"), "");
      assert.ok(await inside(() => document.documentElement.scrollWidth <= innerWidth));
      const small = await inside((found) => [...document.querySelectorAll(found)].filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 44).length, SLIDERS);
      assert.equal(small, 0, "every slider is as high as a fingertip");
    });

    test(`${ask}: the browser's back button takes back to the question before`, async () => {
      await open(`#v=1&on=${on}&ask=give`);
      const before = await said("answer");
      await click(`#questions li:nth-child(${PLACES[ask]}) :is(a, button)`);
      await until((id) => document.body.dataset.ask === id, ask);
      await settled();
      assert.notEqual(await said("answer"), before);
      await hand.back();
      await until(() => document.body.dataset.ask === "give");
      await settled();
      assert.equal(await said("answer"), before);
    });

    // The zoom of a surface is from millimetres to micrometres, whatever the page measures in.
    if (ask !== "surface") test(`${ask}: in inches no length is left in millimetres`, async () => {
      await open(`#v=1&on=${on}&ask=${ask}&unit=in`);
      await inside(() => document.querySelectorAll(".own details").forEach((each) => each.setAttribute("open", "")));
      await settled();
      const told = await inside(() => [document.querySelector("#answer"), document.querySelector("#surprise"), document.querySelector(".own")].map((each) => each?.textContent ?? "").join("\n"));
      const left = told.match(/.{0,30}\d[\d. ]*\s?mm(?![²³^/\w]).{0,20}/g) ?? [];
      assert.deepEqual(left, []);
    });
  }

  test("a link is sent by the phone's own way and opens at its question; what was done is said in sight", async () => {
    await open("#v=1&on=ferry-trike&ask=width");
    const [left, right] = await inside(() => (({ left, right }) => [left, right])(document.querySelector(".question[aria-current]").getBoundingClientRect()));
    assert.ok(left >= 0 && right <= 360, `its question stands in sight: ${left} to ${right}`);
    const sent = await inside(async (word) => {
      let given = null;
      navigator.share = async (what) => { given = what; };
      document.querySelector("#keep").click();
      while (!document.querySelector("dialog.keep[open]")) await new Promise((next) => requestAnimationFrame(next));
      [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click();
      return given.url === location.href;
    }, words["keep.send"]);
    assert.equal(sent, true);
    await until((done) => document.querySelector(".keep-told").textContent === done, words["keep.send.done"]);
    const [top, foot] = await inside(() => (({ top, bottom }) => [top, bottom])(document.querySelector(".keep-told").getBoundingClientRect()));
    assert.ok(top >= 0 && foot <= 740, `${top} to ${foot}`);
  });

  test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
});
