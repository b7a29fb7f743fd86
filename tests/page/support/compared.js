// Comparing with a chain that is held, the same in every engine: hold, change, see both, swap, undo, reload, all answers.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { fieldLabelled, focusOn, textOf } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

const NARROWER = "17.5952";

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function comparedSuite(engine, openHand) {
  describe(`comparing in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open, click, until, said, hash, put, undo } = hand;
    /** Presses the button of these words beside the answer. */
    const press = async (word) => {
      await hand.inside((text) => [...document.querySelectorAll(".beside button")].find((each) => each.textContent === text && !each.hidden).click(), words[word]);
      await hand.settled();
    };
    /** Waits until the figures beside the answer hold this text. */
    const beside = (text) => until((wanted) => document.querySelector(".beside:not(.waiting) .beside-pairs")?.textContent.replaceAll("\u00a0", " ").includes(wanted), text);
    const held = () => hand.inside(textOf, ".beside:not([hidden]) .beside-answer");
    const narrow = async () => {
      await put(await hand.inside(fieldLabelled, words["size.outer_spacing_mm"]), NARROWER);
      await beside("0.12 mm");
    };
    beforeEach(async () => {
      await open();
      await click("#compare");
      await until(() => document.querySelector(".beside:not([hidden])"));
      await press("compare.hold");
      await until(() => document.querySelector(".beside-answer:not([hidden])")?.textContent.length > 20);
    });

    test("a narrower gap stands beside the one that is held, with the difference for eye and ear", async () => {
      await beside(words["compare.same"]);
      await narrow();
      const text = await hand.inside(textOf, ".beside-pairs");
      assert.match(text, /Side gap 0\.12 mm ▼ 0\.22 mm, 0\.22 mm less than A, A 0\.34 mm/);
      assert.match(text, /Slides aside, each way 0\.06 mm ▼ 0\.11 mm/);
      assert.match(text, /The other 5 figures are the same\./);
      assert.match(await held(), /Ferry winch.*It turns 0\.25°/);
      assert.deepEqual(hand.complaints(), []);
    });

    test("outlines of A stand on the drawing where it differs, and move in the same hand", async () => {
      const dashes = () => hand.inside(() => [...document.querySelectorAll(".ghost path[stroke-dasharray]")].map((path) => path.getAttribute("d")));
      await until(() => document.querySelector("svg.ghost"));
      assert.deepEqual(await dashes(), [], "A stands as the chain does");
      await narrow();
      await until(() => document.querySelectorAll(".ghost path[stroke-dasharray]").length > 3);
      const turned = await dashes();
      assert.match(await hand.inside(textOf, ".ghost text"), /^A$/);
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      await until((before) => [...document.querySelectorAll(".ghost path[stroke-dasharray]")].some((path, at) => path.getAttribute("d") !== before[at]), turned);
      await press("compare.drop");
      assert.equal(await hand.inside(() => document.querySelector("svg.ghost")), null);
    });

    test("a chain of one's own by caliper: refused beside the field, doubted, put on the bench, undone", async () => {
      const before = await hash();
      await press("compare.mine");
      await until(() => document.querySelector("dialog.mine .mine-verdict")?.textContent.length > 10);
      await hand.inside(focusOn, "#mine-over_inner_mm");
      await until(() => document.querySelector('.caliper path[stroke="var(--lit)"]'));
      await put("#mine-over_inner_mm", "2");
      await until(() => document.querySelector("#mine-over_inner_mm-fault:not([hidden])")?.textContent.includes("larger than"));
      await put("#mine-over_inner_mm", "17.58");
      await until(() => /^Side gap 0\.23\smm, give or take 0\.03\smm/.test(document.querySelector(".mine-verdict")?.textContent ?? ""));
      await put("#mine-doubt_mm", "0.2");
      await until(() => /cannot tell/.test(document.querySelector(".mine-verdict")?.textContent ?? ""));
      await put("#mine-pin_mm", "-1");
      await until(() => document.querySelector("#mine-pin_mm-fault:not([hidden])"));
      await put("#mine-pin_mm", "5.94");
      await hand.inside(() => document.querySelector("dialog.mine .primary").click());
      await until(() => !document.querySelector("dialog.mine") && /on=own/.test(location.hash));
      assert.equal(await hand.inside(() => document.querySelector("#scenario").selectedOptions[0].textContent), words["mine.name"]);
      await undo();
      assert.equal(await hash(), before);
      assert.deepEqual(hand.complaints(), []);
    });

    test("a question of the worker has A's sentence under its own", async () => {
      await narrow();
      await click("#questions li:nth-child(3) button");
      await hand.settled();
      await until(() => /runs free/.test(document.querySelector(".beside:not(.waiting) .beside-answer")?.textContent ?? ""));
      assert.match(await said("answer"), /rubs/);
    });

    test("swapped, undone, dropped and kept over a reload", async () => {
      await narrow();
      const narrowed = await hash();
      await press("compare.swap");
      await beside("▲ 0.22 mm");
      assert.doesNotMatch(await hash(), /outer_spacing_mm=17/, "the narrower one is now held");
      await undo();
      await beside("▼ 0.22 mm");
      assert.equal(await hash(), narrowed);
      await hand.reload();
      await beside("▼ 0.22 mm");
      assert.equal(await hash(), narrowed);
      await press("compare.drop");
      assert.doesNotMatch(await hash(), /[&#]a=/);
      await undo();
      await beside("▼ 0.22 mm");
    });

    test("all answers stand in one table, with the figures of both and what has changed", async () => {
      const limits = JSON.stringify([{ dimension: "outer_spacing_mm", minus: 0.05, plus: 0.05 }]);
      await open(`#v=1&on=ferry-winch&outer_spacing_mm=${NARROWER}&part.limits=${encodeURIComponent(limits)}&a=${encodeURIComponent('{"on":"ferry-winch"}')}`);
      await beside("0.12 mm");
      await press("compare.all");
      await until(() => document.querySelector(".all-told")?.textContent.startsWith("8 "));
      const table = await hand.inside(() => [...document.querySelectorAll(".all-table tbody")].map((part) => ({
        ask: part.dataset.ask, said: [...part.querySelectorAll(".said b")].map((each) => each.textContent), rows: part.querySelectorAll(".figure").length,
      })));
      assert.deepEqual(table.map(({ ask }) => ask), ["give", "touch", "line", "fit", "wear", "reach", "surface", "width"]);
      for (const { ask, said: both, rows } of table) {
        assert.ok(both.length === 2 && both.every((each) => each.length > 10) && rows >= 3, `${ask}: ${both}`);
      }
      assert.match(await hand.inside(textOf, '[data-ask="line"]'), /rubs.*runs free/);
      const over = await hand.inside(() => [...document.querySelectorAll(".all-table .over")].map((each) => [each.closest("tbody").dataset.ask, each.parentElement.dataset.label, each.parentElement.textContent]));
      assert.deepEqual(over[0], ["give", words["all.b"], "0.12 mm0.07 mm … 0.17 mm over the limits"], "the limit of the spacing is the side gap's");
      assert.deepEqual([...new Set(over.map(([ask]) => ask))], ["give", "touch", "line", "wear", "reach", "width"], "a rough face feels nothing of it");
      assert.ok(over.every(([, side]) => side === words["all.b"]), "what A leaves open: it has no limits");
      await hand.press("Escape");
      assert.equal(await hand.inside(() => document.querySelector("dialog.all")), null);
    });

    test("the key A holds the chain while the drawing is in hand", async () => {
      await press("compare.drop");
      await hand.inside(focusOn, "#sheet");
      await hand.press("a");
      await until(() => document.querySelector(".beside-answer:not([hidden])"));
      assert.match(await hash(), /[&#]a=/);
    });

    test("what an address holds as A and cannot be built is said, and nothing is held", async () => {
      for (const a of ['{"on":"no-such-chain"}', '{"on":"ferry-winch","chain":{"pin_diameter_mm":99}}', '[1]', '{"on":3}']) {
        await open(`#v=1&on=ferry-winch&ask=give&how=turn&at=1&a=${encodeURIComponent(a)}`);
        await until((words) => document.querySelector(".beside .fault:not([hidden])")?.textContent.startsWith(words), words["compare.refused"]);
        assert.doesNotMatch(await hash(), /[&#]a=/);
        assert.notEqual(await said("answer"), "");
      }
    });
  });
}
