// Visitors with a finger, with keys alone, with a link, and with an address that makes no sense.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, test } from "node:test";
import { openChromium, visit } from "../support/hand.js";
import { centreOf, fieldLabelled, focusOn, makeSmaller, opened, pictureMark, textOf, twoFrames, until } from "../support/inside.js";
import { serving } from "../support/standing.js";
import { words } from "../support/words.js";

const GRIP = "#grips button:not([hidden])";
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe("visitors, in Chromium", () => {
  const page = serving();

  /** @type {(wishes: object, work: Parameters<typeof visit>[2]) => Promise<void>} */
  const come = (wishes, work) => visit(page.address, wishes, work);

  test("every scenario and every published size opens without a complaint", () =>
    come({}, async (hand) => {
      const names = await hand.inside(() => [...document.querySelectorAll("#scenario option")].map((each) => each.value));
      assert.ok(names.length >= 15, `${names.length} in the menu`);
      const answers = new Set();
      for (const name of names) {
        await hand.page.selectOption("#scenario", name);
        await hand.inside(twoFrames);
        answers.add(await hand.inside(textOf, "#answer"));
        assert.doesNotMatch(await hand.inside(() => document.body.innerText), /NaN|undefined|Infinity|\{\w+\}/, name);
      }
      assert.ok(answers.size > 4, "different chains have different answers");
      await hand.page.click("#reading-fold summary");
      await hand.page.waitForFunction((last) => document.querySelector("#reading li:last-child")?.textContent === last, words["reading.wide"]);
      await hand.page.click("#left-out");
      await hand.page.waitForFunction((last) => document.querySelector("#cautions li:last-child")?.textContent === last, words["left.first"]);
      assert.deepEqual(hand.complaints(), []);
    }));

  test("words that come once the first screen stands are asked for again at the next change where they did not come", async () => {
    const hand = await openChromium({});
    try {
      let asked = 0;
      await hand.page.route("**/words/en/rest.json", (route) => (asked++ === 0 ? route.abort() : route.continue()));
      await hand.goTo(page.address);
      assert.equal(await hand.inside(opened), "");
      assert.match(await hand.inside(textOf, "#answer"), /^It turns /, "the first sentence needs none of them");
      await hand.page.click("#modes button:last-child");
      await hand.inside(until(() => /^It twists /.test(document.querySelector("#answer")?.textContent ?? "")));
      assert.ok(asked >= 2, `${asked}`);
    } finally {
      await hand.close();
    }
  });

  test("no word's id is shown while its words are on the way", async () => {
    const hand = await openChromium({});
    try {
      const ids = Object.keys(JSON.parse(readFileSync(new URL("../../../www/words/en/rest.json", import.meta.url), "utf8")));
      /** @type {() => void} */
      let send = () => {};
      const sent = new Promise((done) => (send = () => done(undefined)));
      await hand.page.route("**/words/en/rest.json", (route) => sent.then(() => route.continue()));
      await hand.goTo(page.address);
      assert.equal(await hand.inside(opened), "");
      const shown = () => hand.inside((ids) => ids.filter((id) => document.body.innerText.includes(id)), ids);
      await hand.page.selectOption("#scenario", "ferry-trike");
      await hand.inside(until(() => (document.querySelector("#about")?.textContent ?? "").includes("trike")));
      await hand.page.click("#modes button:last-child");
      assert.deepEqual(await shown(), []);
      assert.match(await hand.inside(() => document.body.innerText), /…/);
      send();
      await hand.inside(until(() => /^It twists /.test(document.querySelector("#answer")?.textContent ?? "")));
      assert.deepEqual(await shown(), []);
      assert.deepEqual(hand.complaints(), []);
    } finally {
      await hand.close();
    }
  });

  test("the grip is moved by keys alone, to the stop and no further", () =>
    come({}, async (hand) => {
      const says = () => hand.inside((grip) => document.querySelector(grip).getAttribute("aria-valuetext"), GRIP);
      await hand.inside(focusOn, GRIP);
      await hand.press("End");
      const end = await says();
      await hand.press("ArrowDown");
      await hand.press("ArrowDown");
      assert.notEqual(await says(), end);
      for (let steps = 0; steps < 30; steps++) await hand.press("ArrowUp");
      assert.equal(await says(), end);
    }));

  test("a finger moves the link by its grip, and scrolls the page by the drawing", () =>
    come(PHONE, async (hand) => {
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      const [low, from] = [await hand.inside(textOf, "#now"), await hand.inside(centreOf, GRIP)];
      await swipe(hand, from, { x: from.x, y: Math.max(20, from.y - 160) });
      assert.notEqual(await hand.inside(textOf, "#now"), low, "the grip follows the finger");
      const [before, reading, sheet] = [
        await hand.inside(() => scrollY), await hand.inside(textOf, "#now"), await hand.inside(cornerOf, "#drawing"),
      ];
      await swipe(hand, sheet, { x: sheet.x, y: Math.max(20, sheet.y - 120) });
      await hand.page.waitForFunction((old) => scrollY > old, before);
      assert.equal(await hand.inside(textOf, "#now"), reading, "the drawing leaves the link alone");
    }));

  test("a link carries the whole state to another browser", async () => {
    let address = "";
    let told = ["", ""];
    await come({}, async (hand) => {
      await makeSmaller(hand, await hand.inside(fieldLabelled, words["size.pin_diameter_mm"]));
      told = [await hand.inside(textOf, "#answer"), await hand.inside(textOf, "#now")];
      address = await hand.inside(() => location.href);
    });
    await visit(address, {}, async (hand) => {
      assert.deepEqual([await hand.inside(textOf, "#answer"), await hand.inside(textOf, "#now")], told);
    });
  });

  for (const address of ["#v=1&on=nowhere&bore_mm=NaN", "#v=1&bore_mm=-5&at=1e999", "#%E0%A4%A", "#v=1&how=constructor&ask=__proto__", "#v=1&on=ferry-winch&aside=x&yaw=1e300&times=-4&beside=elephant"]) {
    test(`an address that makes no sense opens the page all the same: ${address}`, () =>
      visit(page.address + address, {}, async (hand) => {
        assert.match(await hand.inside(textOf, "#answer"), /\w/);
        assert.ok((await hand.inside(pictureMark)).colours > 8);
        assert.doesNotMatch(await hand.inside(() => document.body.innerText), /NaN|undefined|Infinity/);
        assert.deepEqual(hand.complaints(), []);
      }));
  }
});

/** A place of an element where nothing stands, near its lower left corner. */
const cornerOf = (selector) => {
  const element = document.querySelector(selector);
  element.scrollIntoView({ block: "center" });
  const box = element.getBoundingClientRect();
  return { x: box.x + 12, y: box.y + box.height - 12 };
};

/**
 * One finger from a place to another.
 * @param {Parameters<Parameters<typeof visit>[2]>[0]} hand
 * @param {{x: number, y: number}} from
 * @param {{x: number, y: number}} to
 */
async function swipe(hand, from, to) {
  const session = await hand.context.newCDPSession(hand.page);
  const touch = (type, points) => session.send("Input.dispatchTouchEvent", { type, touchPoints: points });
  await touch("touchStart", [from]);
  for (const share of [0.2, 0.4, 0.6, 0.8, 1]) {
    await touch("touchMove", [{ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }]);
    await hand.inside(twoFrames);
  }
  await touch("touchEnd", []);
  await hand.inside(twoFrames);
}
