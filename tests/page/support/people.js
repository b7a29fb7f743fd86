// Three people do what they came for, from the first screen to the end, on a phone by finger or at a desk: the same in every
// engine. And whatever a finger can press on a phone is as large as a fingertip.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { ASKED, fragmentOf } from "./asked.js";
import { textOf } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

export const PHONE = { width: 390, height: 844 };
const DESK = { width: 1280, height: 900 };
const HALL = { width: 1920, height: 1080 };
const QUESTIONS = Object.keys(ASKED);
const LESSONS = 7;
/** As tall as a fingertip, px, less what a browser rounds. */
const FINGER = 43.5;

/** In the page: where a finger finds what it means to press, and whether it does find it. */
const found = async (selector, text) => {
  const element = [...document.querySelectorAll(selector)].find((each) => each.checkVisibility() && (!text || each.textContent.includes(text)));
  if (!element) return null;
  element.scrollIntoView({ block: "center", behavior: "instant" });
  await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
  const { x, y, width, height } = element.getBoundingClientRect();
  const at = { x: x + width / 2, y: y + height / 2 };
  return { ...at, free: element.contains(document.elementFromPoint(at.x, at.y)) };
};

/** In the page: whether a fold opens within half a second. */
const opens = async (selector) => {
  const fold = document.querySelector(selector);
  for (let frames = 0; frames < 30 && !fold.open; frames++) await new Promise(requestAnimationFrame);
  return fold.open;
};

/** In the page: everything unfolded that can be pressed and is smaller than a fingertip, but links within a sentence. */
const small = (least) => [...document.querySelectorAll("button:not(.link), select, summary, input, textarea")]
  .filter((each) => each.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
  .map((each) => ({ each, box: each.getBoundingClientRect() }))
  .filter(({ each, box }) => box.width > 1 && box.height > 1 && Math.max(box.height, each.closest("label")?.getBoundingClientRect().height ?? 0) < least)
  .map(({ each, box }) => `${each.localName}.${each.getAttribute("class")} ${each.id} ${Math.round(box.width)} × ${Math.round(box.height)}`);

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand one with a finger
 */
export function peopleSuite(engine, openHand) {
  describe(`what people come for, in ${engine}`, () => {
    const hand = standing({ viewport: PHONE, hasTouch: true }, openHand);
    const { until, settled, said } = hand;
    const beginIn = async (/** @type {{width: number, height: number}} */ size, fragment = "") => {
      await hand.resize(size);
      await hand.open(fragment);
    };
    const tap = async (/** @type {string} */ selector, text = "") => {
      await until((wanted, part) => [...document.querySelectorAll(wanted)].some((each) => each.checkVisibility() && each.textContent.includes(part)), selector, text);
      const at = await hand.inside(found, selector, text);
      assert.ok(at?.free, `${selector} “${text}”: ${JSON.stringify(at)}`);
      await hand.page.touchscreen.tap(at.x, at.y);
    };
    /** Taps a fold until it is open: what comes late above it may move it from under the finger. */
    const unfold = async (/** @type {string} */ fold) => {
      for (let open = false; !open; open = await hand.inside(opens, fold)) await tap(`${fold} > summary`);
    };
    const ask = async (/** @type {string} */ id) => {
      await tap(`#questions li:nth-child(${1 + QUESTIONS.indexOf(id)}) button`);
      await until((wanted) => document.body.dataset.ask === wanted, id);
      await settled();
    };
    const choose = async (/** @type {string} */ chain) => {
      await hand.inside((wanted) => {
        const menu = document.querySelector("#scenario");
        menu.value = wanted;
        menu.dispatchEvent(new Event("change", { bubbles: true }));
      }, chain);
      await settled();
    };
    const type = async (/** @type {string} */ field, /** @type {string} */ text) => {
      await tap(field);
      await until((wanted) => document.activeElement?.matches(wanted), field);
      await hand.type(text);
    };
    const fits = () => hand.inside(() => document.documentElement.scrollWidth <= innerWidth);

    test("a rider on a phone asks of crossed gears, wear and the chain in hand, and sends it on", async () => {
      await beginIn(PHONE);
      assert.match(await said("answer"), /It turns 0\.25°/);
      await choose("ferry-trike");
      await ask("line");
      assert.match(await said("answer"), /times as hard|runs free/);
      await unfold("#line-gears");
      await until(() => document.querySelectorAll('[data-which="a"] .pair').length === 11);
      await type("#gears-a-back", "34 24 18 13");
      await until(() => document.querySelectorAll('[data-which="a"] .pair').length === 4 && !document.querySelector('[data-which="a"][data-busy]'));
      const before = await said("answer");
      await tap('[data-which="a"] tbody tr:first-child .pair');
      await settled();
      await until((was) => document.querySelector("#answer").textContent.replaceAll("\u00a0", " ") !== was, before);
      await ask("wear");
      assert.match(await said("answer"), /longer/);
      await hand.back();
      await until(() => document.body.dataset.ask === "line");
      await tap("#compare");
      await tap(".beside button", words["compare.mine"]);
      await until(() => document.querySelector("dialog.mine[open] .mine-verdict")?.textContent.length > 10);
      await tap("#mine-over_inner_mm");
      await hand.inside(() => /** @type {HTMLInputElement} */ (document.activeElement).select());
      for (const letter of "4.3") await hand.page.keyboard.press(letter);
      await tap("dialog.mine .primary"); // straight from the field
      await until(() => !document.querySelector("dialog.mine") && /on=own/.test(location.hash));
      await settled();
      assert.match(await said("answer"), /At 5\.85 mm aside/, "the wheels are still those of the rider");
      assert.equal(await fits(), true);
      const link = await hand.hash();
      const answer = await said("answer");
      await beginIn(PHONE, link);
      assert.equal(await said("answer"), answer, "whoever gets the link reads the same");
    });

    test("an engineer at a desk narrows a chain, sees what it costs beside the old one, and prints it", async () => {
      await beginIn(DESK);
      await choose("ferry-thousand");
      await ask("fit");
      assert.match(await said("answer"), /do not fit/);
      await tap("#compare");
      await tap(".beside button", words["compare.hold"]);
      await until(() => document.querySelector(".beside-answer:not([hidden])")?.textContent.length > 20);
      await ask("give");
      await type(await hand.inside((label) => `#${[...document.querySelectorAll("#gaps label")].find((each) => each.textContent === label)?.getAttribute("for")}`, words["gap.side_gap_mm"]), "0.12");
      await settled();
      await ask("fit");
      await until(() => document.querySelector(".beside:not(.waiting) .beside-pairs")?.textContent.includes("▼"));
      await tap(".beside button", words["compare.all"]);
      await until(() => document.querySelector(".all-told")?.textContent.startsWith("8 "));
      assert.ok((await hand.inside(() => document.querySelectorAll(".all-table .figure.less").length)) > 3);
      await hand.press("Escape");
      await tap("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
      await tap("dialog.keep button", words["keep.sheet.open"]);
      await until(() => document.querySelector(".review .primary:not([disabled])"));
      const sheet = await hand.inside(textOf, ".review-paper");
      for (const part of ["do not fit", "Side gap", "h6", "Beside A", words["left.fingers"], "SHA-256"]) assert.ok(sheet.includes(part), part);
      await hand.press("Escape");
    });

    test("an instructor in a hall walks all seven lessons by a clicker, each guess answered with its reason", async () => {
      await beginIn(HALL);
      const square = await hand.inside(() => (({ width, height }) => [width, height])(document.querySelector("#lens")));
      assert.equal(square[0], square[1], "the magnifier is round");
      for (let lesson = 1; lesson <= LESSONS; lesson++) {
        await hand.open();
        await tap("#lessons");
        await until(() => document.querySelectorAll(".lesson-list button").length > 6);
        await tap(`.lesson-list li:nth-child(${lesson}) button`);
        let [steps, guesses, title] = [0, 0, ""];
        for (let last = false; !last;) {
          await until((before) => document.querySelector(".lesson-count")?.textContent !== before && document.querySelector(".lesson:not([hidden]) .lesson-say:not(.reckoning)")?.textContent.length > 9, title);
          await settled();
          title = await hand.inside(() => document.querySelector(".lesson-count").textContent);
          steps += 1;
          if (steps === 1) await hand.press("h");
          if (await hand.inside(() => document.querySelector(".lesson-guess fieldset") !== null)) {
            guesses += 1;
            assert.equal(await hand.inside(textOf, ".lesson-because"), "", "not before it is asked for");
            await hand.press(".");
            assert.ok((await hand.inside(textOf, ".lesson-because")).length > 20, title);
            assert.equal(await hand.inside(() => document.querySelectorAll(".lesson .right").length), 1);
          }
          const told = await hand.inside(() => ["#answer", ".lesson-say", ".lesson-guess"].map((each) => document.querySelector(each).textContent).join("\n"));
          assert.doesNotMatch(told, /[{}]|NaN|undefined/, title);
          last = /(\d+) of \1\b/.test(title);
          if (!last) await hand.press("PageDown");
        }
        assert.ok(steps >= 5 && steps <= 9 && guesses >= 2, `${title}: ${steps} steps, ${guesses} guesses`);
        await hand.press("Escape");
      }
    });

    describe("by finger", () => {
      before(() => beginIn(PHONE));
      for (const id of QUESTIONS) {
        test(`${id}: whatever can be pressed is as tall as a fingertip, and nothing sticks out`, async () => {
          await beginIn(PHONE, fragmentOf(id));
          await hand.inside(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));
          await settled();
          await until(() => !document.querySelector("[data-busy]"));
          assert.deepEqual(await hand.inside(small, FINGER), []);
          assert.equal(await fits(), true);
        });
      }

      test("a planted button for a needle's point is found", async () => {
        await hand.inside(() => document.querySelector("#stage").append(Object.assign(document.createElement("button"), { textContent: "x", style: "min-height: 0; height: 20px" })));
        assert.equal((await hand.inside(small, FINGER)).length, 1);
      });
      for (const [id, open] of /** @type {const} */ ([["keep", "dialog.keep[open]"], ["lessons", "dialog.lessons[open]"]])) {
        test(`${id}: so is what is pressed over the page`, async () => {
          await beginIn(PHONE);
          await tap(`#${id}`);
          await until((selector) => document.querySelector(selector), open);
          assert.deepEqual(await hand.inside(small, FINGER), []);
        });
      }
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
