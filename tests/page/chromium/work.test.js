// What a visitor does with the page beyond the shorter suite.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openChromium, visit } from "../support/hand.js";
import { centreOf, makeSmaller, fieldLabelled, fieldState, focusOn, opened, pictureMark, textOf, twoFrames } from "../support/inside.js";
import { startPage } from "../support/server.js";
import { words } from "../support/words.js";

const GRIP = "#grips button:not([hidden])";
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe("work on the page, in Chromium", () => {
  /** @type {Awaited<ReturnType<typeof startPage>>} */
  let page;
  before(async () => (page = await startPage()));
  after(() => page?.stop());

  /** @type {(wishes: object, work: Parameters<typeof visit>[2]) => Promise<void>} */
  const come = (wishes, work) => visit(page.address, wishes, work);

  test("a change is taken back and made again", () =>
    come({}, async (hand) => {
      const field = await hand.inside(fieldLabelled, words["size.pin_diameter_mm"]);
      const value = async () => (await hand.inside(fieldState, field)).value;
      const [first, drawn] = [await value(), await hand.inside(pictureMark)];
      await makeSmaller(hand, field);
      const changed = await value();
      assert.notEqual(changed, first);
      await hand.drag([await hand.inside(centreOf, "#undo")]);
      assert.equal(await value(), first);
      assert.deepEqual(await hand.inside(pictureMark), drawn);
      await hand.drag([await hand.inside(centreOf, "#redo")]);
      assert.equal(await value(), changed);
    }));

  test("inches are the same chain in another unit", () =>
    come({}, async (hand) => {
      const field = await hand.inside(fieldLabelled, words["size.pitch_mm"]);
      const value = async () => Number((await hand.inside(fieldState, field)).value);
      const mm = await value();
      await hand.drag([await hand.inside(centreOf, "#unit")]);
      const inch = await value();
      assert.ok(Math.abs(inch * 25.4 - mm) < 1e-3, `${inch} in and ${mm} mm`);
      await hand.drag([await hand.inside(centreOf, "#unit")]);
      assert.equal(await value(), mm);
    }));

  test("a chain that does not go together names its overlap and moves nowhere", () =>
    come({}, async (hand) => {
      await hand.page.selectOption("#scenario", "stiff-link");
      await hand.inside(twoFrames);
      assert.match(await hand.inside(textOf, "#answer"), /too little between/);
      assert.equal(await hand.inside(() => document.querySelector("#scrub").disabled), true);
      assert.equal(await hand.inside(() => document.querySelectorAll("#grips button:not([hidden])").length), 0);
      assert.ok((await hand.inside(pictureMark)).colours > 8, "it is drawn all the same");
    }));

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
      assert.deepEqual(hand.complaints(), []);
    }));

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

  test("the opening movement ends at the stop, and nothing moves after it", () =>
    come({ reducedMotion: "no-preference" }, async (hand) => {
      const [mark, reading] = [await hand.inside(pictureMark), await hand.inside(textOf, "#now")];
      for (let frames = 0; frames < 10; frames++) await hand.inside(twoFrames);
      assert.deepEqual(await hand.inside(pictureMark), mark);
      await hand.inside(focusOn, "#scrub");
      await hand.press("End");
      assert.equal(await hand.inside(textOf, "#now"), reading);
    }));

  test("any key ends the opening movement at once", async () => {
    const hand = await openChromium({ reducedMotion: "no-preference" });
    try {
      await hand.goTo(page.address);
      await hand.page.waitForFunction(() => document.body.classList.contains("opening"));
      await hand.press("Escape");
      assert.equal(await hand.inside(() => document.body.classList.contains("opening")), false);
      assert.equal(await hand.inside(opened), "");
    } finally {
      await hand.close();
    }
  });

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

  for (const address of ["#v=1&on=nowhere&bore_mm=NaN", "#v=1&bore_mm=-5&at=1e999", "#%E0%A4%A", "#v=1&how=constructor&ask=__proto__", "#v=1&on=ferry-winch&aside=x&yaw=1e300&times=-4"]) {
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
 * @param {Awaited<ReturnType<typeof openChromium>>} hand
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
