// What stands of a chain that is held in what a question has folded away, and on the review sheet: one scale for both, or the
// numbers of both and why no more. The same in every engine.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { focusOn, textOf, until } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** The page at a question, with this held as A. */
const at = (/** @type {string} */ on, /** @type {string} */ ask, /** @type {object} */ a) => `#v=1&on=${on}&ask=${ask}&how=turn&at=1&a=${encodeURIComponent(JSON.stringify(a))}`;
const NARROW = { on: "ferry-trike", chain: { outer_spacing_mm: 4.46 } };
const EIGHT = { on: "ferry-thousand", chain: { outer_spacing_mm: 4.63 }, parts: { matching: { dimension_a: "inner_plate_mm", dimension_b: "outer_spacing_mm", classes: 8 } } };
const WINCH = { on: "ferry-winch" };
/** Another chain, of another pitch. */
const UNLIKE = { on: "ferry-trike" };

/** Waits until a part shows what it was asked. */
const worked = until((part) => !document.querySelector(`${part}[data-busy], ${part} [data-busy]`), 5);

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function besideSuite(engine, openHand) {
  describe(`a chain that is held, in the parts of the questions, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open } = hand;
    const unfold = async (/** @type {string} */ part) => {
      await hand.inside(focusOn, `${part} > summary`);
      await hand.inside((found) => { document.querySelector(found).open = true; }, part);
      await hand.inside(worked, part);
    };
    const press = (/** @type {string} */ word) => hand.inside((text) => [...document.querySelectorAll(".beside button")].find((each) => each.textContent === text && !each.hidden).click(), words[word]);
    const seen = (/** @type {string} */ selector) => hand.until((found) => document.querySelector(found)?.checkVisibility(), selector);
    const none = (/** @type {string} */ selector) => hand.until((found) => !document.querySelector(found), selector);

    test("my gears have its numbers in every pair and its line where it runs a pair otherwise", async () => {
      await open(`${at("ferry-trike", "line", NARROW)}&outer_spacing_mm=4.75`);
      await unfold("#line-gears");
      const table = '[data-which="a"] .gears-table';
      await seen(`${table} .of-a-cell`);
      const cells = () => hand.inside((found) => [...document.querySelectorAll(`${found} td`)].map((cell) => [[...(cell.querySelector(".pair")?.children ?? [])].map((part) => part.textContent).join(", "), cell.querySelector(".of-a-cell")?.textContent ?? null]), table);
      const before = await cells();
      const free = (/** @type {string|null} */ text) => /free/.test(text ?? "");
      assert.ok(before.some(([own, a]) => free(own) && a !== null && !free(a)), `wider gaps run more pairs free: ${before}`);
      assert.match(before[0].join(), /^[\d.]+ ×, [\d.]+ W,A [\d.]+ ×, [\d.]+ W$/);
      const lines = await hand.inside(() => document.querySelectorAll('[data-which="a"] .gears-fan .of-a').length);
      assert.ok(lines > 0 && lines <= before.length, `${lines} lines`);
      assert.match(await hand.inside(textOf, '[data-which="a"] .of-a-note'), /^A .*pairs.*Wheels and steps are the same/);
      await press("compare.swap");
      const first = (before[0][1] ?? "").replace("A ", "").replace(",", "");
      await hand.until((found, wanted) => document.querySelector(`${found} td .pair`)?.textContent.replaceAll("\u00a0", " ") === wanted && document.querySelector(`${found} .of-a-cell`), table, first);
      const swapped = await cells();
      assert.deepEqual(swapped.map(([own, a]) => [a?.replace("A ", "") ?? own, own]), before.map(([own, a]) => [own, a?.replace("A ", "") ?? own]), "each has the other's");
      await press("compare.drop");
      await none("#line-gears :is(.of-a, .of-a-note, .of-a-cell)");
    });

    test("on its side it bows beside the present one, to one scale", async () => {
      await open(at("ferry-trike", "line", NARROW));
      await unfold("#line-bow");
      await seen(".bow .of-a");
      const bowed = (/** @type {string} */ said) => Number((said.match(/by ([\d.]+) mm when the links|by ([\d.]+) mm when every[^]*?by ([\d.]+) mm/) ?? []).filter(Boolean).at(-1));
      const [own, other] = [await hand.inside(textOf, ".bow-part > p"), await hand.inside(textOf, ".bow-part .of-a-note")].map(bowed);
      assert.ok(own > other && other > 1, `${own} and ${other} mm`);
      const [high, low] = await hand.inside(() => {
        const base = Number(/M\S+ (\S+)H/.exec(document.querySelector(".bow .edge").getAttribute("d"))[1]);
        const rise = (selector) => base - Math.min(...[...document.querySelectorAll(selector)].flatMap((path) => [...path.getAttribute("d").matchAll(/[ML]\S+ ([\d.]+)/g)].map(([, y]) => Number(y))));
        return [rise(".bow .link"), rise(".bow .of-a")];
      });
      assert.ok(Math.abs(low / high - other / own) < 0.02, `${low} px of ${high}, ${other} mm of ${own}`);
      assert.match(await hand.inside(textOf, ".bow-table"), /A \d/);
      await press("compare.swap");
      await hand.until((wanted) => document.querySelector(".bow-part .of-a-note")?.textContent.includes(wanted), String(own.toFixed(1)));
      await press("compare.drop");
      await none("#line-bow :is(.of-a, .of-a-note, .of-a-cell)");
    });

    test("a joint followed round has its work in the chart, its sums in words, and why it is not in the pictures", async () => {
      await open(at("ferry-trike", "line", { ...NARROW, drive: { offset_mm: 20 } }));
      await unfold("#line-run");
      await seen(".run .graph .of-a");
      assert.match(await hand.inside(textOf, ".run .of-a-note"), /^A In a whole circuit [\d.]+ N mm.*the chain on the bench alone/);
      await press("compare.drop");
      await none("#line-run :is(.of-a, .of-a-note)");
    });

    test("sorted parts have its bars, its bins and its counts, and why its parts are not among those being sorted", async () => {
      await open(at("ferry-thousand", "fit", EIGHT));
      const sorted = ".fit-block[data-look=sorted]";
      await seen(`${sorted} .fit-three .of-a`);
      await seen(`${sorted} .fit-three .of-a-note`);
      const walls = (/** @type {string} */ look) => hand.inside((found) => document.querySelectorAll(found).length, `${sorted} > figure .${look}`);
      await hand.until((found) => document.querySelectorAll(found).length > 4, `${sorted} > figure .of-a`);
      assert.equal(await walls("wall"), 2 * 5);
      assert.match(await hand.inside(textOf, `${sorted} > figure .of-a-note`), /8 bins/);
      await hand.inside((found) => { [...document.querySelectorAll(`${found} details`)].at(-1).open = true; }, sorted);
      await hand.until(() => document.querySelector("#fit-sort"));
      await hand.inside(() => {
        const slider = document.querySelector("#fit-sort").nextElementSibling;
        slider.value = slider.max;
        slider.dispatchEvent(new Event("input"));
      });
      const rows = await hand.inside((found) => [...document.querySelectorAll(`${found} .fit-table tbody tr`)].map((row) => [...row.cells].slice(1).map((cell) => [cell.firstChild.textContent, cell.querySelector(".of-a-cell")?.textContent.replace("A", "").trim() ?? cell.firstChild.textContent])), sorted);
      assert.equal(rows.length, 8, "as many rows as the finer sorting has bins");
      const sum = (/** @type {number} */ side) => rows.map((row) => Number(row[0][side]) || 0).reduce((all, each) => all + each, 0);
      assert.equal(sum(0), sum(1), "as many parts of either chain lie in bins");
      assert.match(await hand.inside(textOf, `${sorted} details`), /bins stand side by side by number/);
      await press("compare.drop");
      await none(`${sorted} :is(.of-a, .of-a-note, .of-a-cell)`);
    });

    test("a chain that sorts no parts, or others, is told of in words alone", async () => {
      const others = { ...EIGHT, chain: {}, parts: { matching: { dimension_a: "pin_diameter_mm", dimension_b: "bore_mm", classes: 4 } } };
      for (const [a, why] of /** @type {const} */ ([[others, "fit.match.of.a.other"], [{ on: "ferry-thousand", parts: { matching: null } }, "fit.match.of.a.none"]])) {
        await open(at("ferry-thousand", "fit", a));
        await hand.until((wanted) => document.querySelector(".fit-block[data-look=sorted]")?.textContent.includes(wanted), words[why]);
        assert.equal(await hand.inside(() => document.querySelectorAll(".fit-block[data-look=sorted] .of-a").length), 0, why);
      }
    });

    test("on the review sheet its outlines lie on the drawing, and every figure that differs stands beside", async () => {
      const narrower = { on: "ferry-winch", chain: { outer_spacing_mm: 17.5952 } };
      const { picture, caption, beside } = await sheetOf(at("ferry-winch", "give", narrower));
      assert.match(picture, /<mask[^]*stroke-dasharray/);
      assert.match(caption, /^Section A-A from above, section B-B from the side(, section C-C along the chain)?, all at one scale.*A, in thin lines: Ferry winch/);
      assert.match(beside, /Side gap0\.34 mm▲ 0\.22 mm0\.12 mm/);
      assert.match(beside, /How far can it give\?/);
      const same = await sheetOf(at("ferry-winch", "give", WINCH));
      assert.doesNotMatch(same.picture, /<mask/);
      assert.match(same.beside, new RegExp(words["sheet.beside.same"]));
      const without = await sheetOf("#v=1&on=ferry-winch&ask=give&how=turn&at=1");
      assert.equal(without.beside, "");
      assert.doesNotMatch(without.caption, /thin lines/);
    });

    test("a chain of another pitch has its numbers and no outlines, and the reason, on the page and on the sheet", async () => {
      await open(at("ferry-winch", "give", UNLIKE));
      await hand.until((why) => [...document.querySelectorAll(".beside .hint")].some((each) => each.checkVisibility() && each.textContent === why), words["compare.apart"]);
      assert.equal(await hand.inside(() => document.querySelectorAll("svg.ghost path").length), 0);
      const { picture, caption, beside } = await sheetOf(at("ferry-winch", "give", UNLIKE));
      assert.doesNotMatch(picture, /<mask/);
      assert.ok(caption.includes(words["compare.apart"]), caption);
      assert.match(beside, /Side gap/);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));

    /** The review sheet: its drawing, what is said under it, what stands of A. @param {string} fragment */
    async function sheetOf(fragment) {
      await open(fragment);
      await hand.inside(() => {
        const address = URL.createObjectURL.bind(URL);
        URL.createObjectURL = (blob) => (blob.text().then((text) => (window.handed = text)), address(blob));
      });
      if (fragment.includes("&a=")) await hand.until(() => document.querySelector(".beside-answer")?.textContent.length > 20);
      if (fragment.includes("17.5952")) await seen("svg.ghost");
      await hand.click("#keep");
      await hand.until(() => document.querySelector("dialog.keep[open]"));
      await hand.inside((word) => [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click(), words["keep.sheet.open"]);
      await hand.until(() => document.querySelector(".review .primary:not([disabled])"));
      await hand.until(() => window.handed);
      const picture = await hand.inside(() => window.handed);
      return { picture, caption: await hand.inside(textOf, ".review-picture figcaption"), beside: await hand.inside(textOf, ".sheet-beside") };
    }
  });
}
