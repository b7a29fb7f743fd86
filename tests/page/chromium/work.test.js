// The work on the page: what is pulled, changed, undone and lit, and that nothing of it is lost.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { centreOf, focusOn, twoFrames } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const GRIP = "#grips button:not([hidden])";
const UNDO = "#undo";

describe("the work on the page, in Chromium", () => {
  const hand = standing();
  const { open, put, click, until, said, value, hash } = hand;
  beforeEach(() => open());

  const field = (label) => hand.inside((text) => {
    const found = [...document.querySelectorAll("#gaps label")].find((each) => each.textContent === text);
    return `#${found.getAttribute("for")}`;
  }, label);
  const setGap = async (gap, mm) => put(await field(words[`gap.${gap}`]), mm);

  test("a pose pulled by hand is the same after a reload, aside and turned", async () => {
    const from = await hand.inside(centreOf, GRIP);
    await hand.drag([from, { x: from.x + 10, y: from.y + 60 }, { x: from.x + 25, y: from.y + 130 }]);
    const pulled = [await hash(), await said("now"), await said("slope"), await said("touching")];
    assert.match(pulled[0], /pull=/);
    await hand.reload();
    assert.deepEqual([await hash(), await said("now"), await said("slope"), await said("touching")], pulled);
  });

  test("undo and redo go through gaps, ways of moving and pulls, over a reload too", async () => {
    const seen = [await hash()];
    const note = async () => seen.push(await hash());
    await setGap("pin_clearance_mm", "0.05");
    await note();
    await click('#modes [data-how="aside"]');
    await note();
    const from = await hand.inside(centreOf, GRIP);
    await hand.drag([from, { x: from.x, y: from.y + 40 }]);
    await note();
    assert.equal(new Set(seen).size, seen.length, "each change is another state");
    await hand.reload();
    for (const state of seen.slice(0, -1).reverse()) {
      await click(UNDO);
      assert.equal(await hash(), state);
    }
    assert.equal(await hand.inside(() => document.querySelector("#undo").disabled), true);
    for (const state of seen.slice(1)) {
      await click("#redo");
      assert.equal(await hash(), state);
    }
  });

  test("without a bush or with one, the next link turns as far", async () => {
    for (const scenario of ["ferry-winch", "ferry-trike"]) {
      await open(`#v=1&on=${scenario}&ask=give&how=turn&at=1`);
      const figure = async (construction) => {
        await click(`.choice[data-value="${construction}"]`);
        assert.equal(await said("chain-fault"), "");
        return /[\d.]+°/.exec(await said("answer"))[0];
      };
      assert.equal(await figure("bushed"), await figure("collared"), scenario);
    }
  });

  test("a chain that does not go together says so, moves nothing, and undo brings the last one back", async () => {
    const answer = await said("answer");
    await setGap("pin_clearance_mm", "-0.02");
    assert.match(await said("answer"), /does not go together: 0\.02 mm too little/);
    assert.equal(await hand.inside(() => document.querySelector("#play").disabled), true);
    assert.equal(await hand.inside((grip) => document.querySelector(grip) === null, GRIP), true);
    await click(UNDO);
    assert.equal(await said("answer"), answer);
  });

  test("the dot in the room to move goes by arrow keys and stays in its room", async () => {
    await hand.inside(() => /** @type {SVGElement} */ (document.querySelector("#room .dot")).focus());
    const text = () => hand.inside(() => document.querySelector("#room .dot").getAttribute("aria-valuetext"));
    const start = await text();
    for (let step = 0; step < 40; step++) await hand.press("ArrowRight");
    const end = await text();
    assert.notEqual(end, start);
    await hand.press("ArrowRight");
    assert.equal(await text(), end, "metal ends the way");
  });

  test("inches are written in the sentence, the fields and back", async () => {
    await click('#modes [data-how="aside"]');
    const [mm, shown] = [await said("answer"), await field(words["gap.side_gap_mm"])];
    const before = Number(await value(shown));
    await click("#unit");
    assert.match(await said("answer"), / mil /);
    assert.ok(Math.abs(Number(await value(shown)) * 25.4 - before) < 0.0026, "four decimals of an inch");
    await click("#unit");
    assert.equal(await said("answer"), mm);
  });

  test("a face clicked in the drawing lights its row, and Escape puts it out", async () => {
    const [x, y] = await hand.inside(() => {
      const box = document.querySelector("#drawing").getBoundingClientRect();
      return [box.x + box.width * 0.3, box.y + box.height * 0.3];
    });
    await hand.page.mouse.click(x, y);
    await hand.inside(twoFrames);
    const lit = () => hand.inside(() => document.querySelectorAll('.row[aria-pressed="true"]').length);
    assert.equal(await lit(), 1);
    await hand.inside(focusOn, "#sheet");
    await hand.press("Escape");
    assert.equal(await lit(), 0);
  });

  test("what lies beside the gap in the magnifier can be chosen, is said in words and stays over a reload", async () => {
    const glass = () => hand.inside(() => /** @type {HTMLCanvasElement} */ (document.querySelector("#lens")).toDataURL());
    const seen = new Set([await glass()]);
    for (const thing of ["hair", "sand", "bristle", "dust"]) {
      await hand.page.selectOption("#lens-thing", thing);
      await hand.inside(twoFrames);
      seen.add(await glass());
      assert.match(await hand.inside(() => document.querySelector("#lens").getAttribute("aria-label")), new RegExp(words[`thing.${thing}`]));
    }
    assert.equal(seen.size, 5, "each looks otherwise");
    await until((dust) => document.querySelector("#twin").textContent.includes(dust), words["thing.dust"]);
    await hand.reload();
    assert.equal(await hand.inside(() => document.querySelector("#lens-thing").value), "dust");
  });

  test("the first movement ends at the stop, and any key ends it at once", async () => {
    await hand.page.emulateMedia({ reducedMotion: "no-preference" });
    await hand.goTo("about:blank");
    await hand.goTo(hand.address);
    await until(() => document.body.classList.contains("opening"));
    await hand.press("Shift");
    assert.equal(await hand.inside(() => document.body.classList.contains("opening")), false);
    const stopped = [await said("now"), await said("touching-count")];
    await hand.page.emulateMedia({ reducedMotion: "reduce" });
    await open();
    assert.deepEqual([await said("now"), await said("touching-count")], stopped);
  });
});
