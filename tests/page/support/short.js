// The shorter suite, the same in every engine: load, drag, keyboard, list, refusal, reload, back.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { count, differences, golden } from "./golden.js";
import { centreOf, makeSmaller, fieldLabelled, fieldState, focusOn, pictureMark, textOf, widthsOf } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

const GRIP = "#grips button:not([hidden])";
const OTHER_QUESTION = "#questions :is(a, button):not([aria-current])";
/** What the drawing keeps for a letter, in em, and how much more for the widest: as the kernel's scene does. */
const [CHARACTER_EM, WIDEST] = [0.64, 1.55];
/** What adding up a share for each letter may round away, em. */
const ROUNDING = 1e-9;
/** Names in the magnifier and sizes are never bold. */
const PLAIN = ["bush", "paper", "hair", "sand", "bristle", "dust", "1234567890"];
const FIGURES = ["0.15", "0.008", "12.70 mm", "0.25°", "−10.4°", "0.0118 in", "1234567890"];
/** So many reports are asked for in one call: a driver gives each call half a minute. */
const AT_ONCE = 4;
/** The pointer stays this far inside the window, px. */
const EDGE = 4;

/**
 * @param {string} engine
 * @param {() => Promise<import("./hand.js").Hand>} open
 */
export function shortSuite(engine, open) {
  describe(`the page in ${engine}`, () => {
    const hand = standing({}, open);
    const { put, said, hash } = hand;
    beforeEach(() => hand.open());
    const now = () => said("now");
    const scrubTo = async (key) => {
      await hand.inside(focusOn, "#scrub");
      await hand.press(key);
    };

    test("the first screen stands, drawn, without a complaint", async () => {
      assert.notEqual(await said("answer"), "");
      assert.ok((await hand.inside(pictureMark)).colours > 8, "the canvas holds a drawing");
      assert.equal(await hand.inside(() => document.querySelector("#failure").hidden), true);
      assert.deepEqual(hand.complaints(), []);
    });

    test("the keyboard moves the chain by its slider, and the reading follows", async () => {
      await scrubTo("End");
      const [end, drawn] = [await now(), await hand.inside(pictureMark)];
      assert.match(end, /\d/);
      for (let steps = 0; steps < 10; steps++) await hand.press("ArrowLeft");
      assert.notEqual(await now(), end);
      assert.notEqual((await hand.inside(pictureMark)).mark, drawn.mark);
      assert.equal(await hand.inside(() => document.querySelector("#scrub").getAttribute("aria-valuetext")), await now());
    });

    test("a link dragged aside stops at the metal, and what stops it is named", async () => {
      await scrubTo("End");
      const limit = await now();
      await scrubTo("Home");
      const from = await hand.inside(centreOf, GRIP);
      const rise = (by) => ({ x: from.x, y: Math.max(EDGE, from.y - by) });
      await hand.drag([from, rise(40), rise(120), rise(240), rise(300)]);
      assert.equal(await now(), limit);
      assert.ok(Number(await said("touching-count")) > 0);
      await hand.drag([await hand.inside(centreOf, GRIP), rise(400)]);
      assert.equal(await now(), limit, "a second pull gives nothing more");
    });

    test("a row of the list lights its face in the drawing", async () => {
      await scrubTo("End");
      const dark = await hand.inside(pictureMark);
      await hand.drag([await hand.inside(centreOf, "#touching button")]);
      const pressed = await hand.inside(() => document.querySelector("#touching button").getAttribute("aria-pressed"));
      assert.equal(pressed, "true");
      assert.notEqual((await hand.inside(pictureMark)).mark, dark.mark);
    });

    test("a size that cannot be built is refused beside its field, and the last good chain stays", async () => {
      const field = await hand.inside(fieldLabelled, words["size.pin_diameter_mm"]);
      const [answer, drawn, before] = [
        await said("answer"), await hand.inside(pictureMark), await hand.inside(fieldState, field),
      ];
      assert.equal(before.fault, "");
      await put(field, "-3");
      const refused = await hand.inside(fieldState, field);
      assert.match(refused.fault, /\w/);
      assert.equal(refused.invalid, "true");
      assert.ok(refused.described, "the field names the sentence that refuses it");
      assert.equal(await said("answer"), answer);
      assert.deepEqual(await hand.inside(pictureMark), drawn);
    });

    test("no label of the drawing is wider than the room that is kept for it", async () => {
      const labels = Object.keys(words).filter((id) => id.startsWith("draw.") && !id.startsWith("draw.cut."));
      const texts = labels.map((id) => words[id]);
      const all = [...texts, ...FIGURES];
      const widths = await hand.inside(widthsOf, all, PLAIN);
      const kept = (text) => [...text].map((letter) => CHARACTER_EM * (/[mwMW]/.test(letter) ? WIDEST : 1)).reduce((a, b) => a + b);
      const wide = all.filter((text, at) => !(widths[at] > 0 && widths[at] <= kept(text) + ROUNDING));
      assert.deepEqual(wide, []);
    });

    test("the page's own worker gives every report that is kept, bit for bit", async () => {
      const kept = golden();
      const reports = [];
      for (let from = 0; from < kept.length; from += AT_ONCE) {
        const some = kept.slice(from, from + AT_ONCE).map(({ scenario }) => scenario);
        reports.push(...JSON.parse(await hand.inside(reportsOf, some)));
      }
      for (const [index, { name, report }] of kept.entries()) {
        assert.ok(count(report) > 7, `${name} holds numbers`);
        assert.deepEqual(differences(reports[index], report), [], name);
      }
    });

    test("a reload keeps the state", async () => {
      await makeSmaller(hand, await hand.inside(fieldLabelled, words["size.pin_diameter_mm"]));
      const [address, answer, reading] = [await hash(), await said("answer"), await now()];
      assert.notEqual(address, "");
      await hand.reload();
      assert.deepEqual([await hash(), await said("answer"), await now()], [address, answer, reading]);
    });

    test("the questions of wear, reach, surface and width answer, draw, and refuse", async () => {
      const asked = { wear: ".wear-given input[inputmode=decimal]", reach: "#reach-bristle_mm", surface: "#surface-rz_um", width: ".width input[inputmode=decimal]" };
      for (const [ask, field] of Object.entries(asked)) {
        await hand.open(`#v=1&ask=${ask}`);
        const answer = await said("answer");
        assert.match(answer, /\d/, ask);
        assert.ok((await hand.inside(() => document.querySelectorAll(".own svg path").length)) > 0, `${ask} draws`);
        await put(field, "-3");
        assert.equal(await hand.inside((found) => document.querySelector(found).getAttribute("aria-invalid"), field), "true", ask);
        assert.equal(await said("answer"), answer);
      }
      assert.deepEqual(hand.complaints(), []);
    });

    test("back leaves the question and keeps the work", async () => {
      const first = await hand.inside(textOf, "#questions [aria-current]");
      await hand.drag([await hand.inside(centreOf, OTHER_QUESTION)]);
      assert.notEqual(await hand.inside(textOf, "#questions [aria-current]"), first);
      const field = await hand.inside(fieldLabelled, words["size.pin_diameter_mm"]);
      await makeSmaller(hand, field);
      const changed = (await hand.inside(fieldState, field)).value;
      await hand.back();
      await hand.arrived();
      assert.equal(await hand.inside(textOf, "#questions [aria-current]"), first);
      assert.equal((await hand.inside(fieldState, field)).value, changed, "the changed size is still there");
    });
  });
}

/** In the page: the worker's reports of scenarios, as text, since a driver may write numbers in its own way. */
const reportsOf = async (scenarios) => {
  const { labour } = await import("./labour.js");
  const reports = [];
  for (const scenario of scenarios) reports.push(await labour("kept", "report", scenario, {}));
  return JSON.stringify(reports);
};
