// Lessons: step by step, a guess before the answer, left and come back to, in the hall, and what to say in step; the same in every engine.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { focusOn, textOf } from "./inside.js";
import { standing } from "./standing.js";

const NEXT = ".lesson-next:not([hidden])";

/**
 * @param {string} engine
 * @param {() => Promise<import("./hand.js").Hand>} openHand
 */
export function teachingSuite(engine, openHand) {
  describe(`a lesson, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open, click, until, hash } = hand;
    const told = () => until(() => /^(?!Working).{9}/.test(document.querySelector(".lesson:not([hidden]) .lesson-say")?.textContent ?? ""));
    /** The sentence comes to hold this, however long its step takes to arrive. @param {string} part */
    const tells = (part) => until((wanted) => document.querySelector(".lesson:not([hidden]) .lesson-say")?.textContent.replaceAll("\u00a0", " ").includes(wanted), part);
    const step = (number) => `#v=1&on=lesson-why-so-little-${number}&ask=give&how=turn&at=${number === 1 ? 0 : 1}`;
    beforeEach(() => open(""));

    test("it is chosen from the first screen and walked by its buttons, the address following", async () => {
      await click("#lessons");
      await until(() => document.querySelector(".lesson-list button"));
      await click(".lesson-list li:nth-child(2) button");
      await tells("ferry’s chain");
      assert.match(await hash(), /on=lesson-why-so-little-1&/);
      await click(NEXT);
      assert.match(await hash(), /on=lesson-why-so-little-1&/, "the answer comes first");
      assert.notEqual(await hand.inside(textOf, ".lesson-because"), "");
      await click(NEXT);
      await tells("It turns 0.25°"); // the number is the kernel's
      assert.match(await hash(), /on=lesson-why-so-little-2&/);
      await hand.inside(() => history.back());
      await tells("ferry’s chain");
    });

    test("an answer that is not shown is nowhere in the address or in the words", async () => {
      await open(step(1));
      await told();
      assert.equal(await hand.inside(() => document.querySelectorAll(".lesson .right").length), 0);
      assert.equal(await hand.inside(textOf, ".lesson-because"), "");
      const unanswered = await hash();
      await click(".lesson-choice");
      assert.equal(await hash(), unanswered);
      assert.equal(await hand.inside(textOf, ".lesson .right .number"), "2");
    });

    test("one leaves it, tries something and comes back to the step", async () => {
      await open(step(2));
      await told();
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      assert.equal(await hand.inside(() => document.querySelector(".lesson-next").hidden), true);
      await click(".lesson-again");
      await told();
      assert.equal(await hand.inside(() => document.querySelector(".lesson-again").hidden), true);
      assert.match(await hash(), /on=lesson-why-so-little-2&.*at=1/);
      await click(".lesson-close");
      await until(() => document.querySelector(".lesson").hidden);
      assert.match(await hash(), /on=ferry-winch&/);
    });

    test("the hall is worked by keys and clickers, and hands stay through the answer", async () => {
      await open(step(1));
      await told();
      await hand.press("h");
      assert.equal(await hand.inside(() => document.body.hasAttribute("data-hall")), true);
      await click(".lesson-count-hands button:last-child");
      await hand.inside(() => /** @type {HTMLElement} */ (document.activeElement).blur());
      await hand.press(".");
      assert.equal(await hand.inside(textOf, ".lesson-hands"), "1");
      assert.notEqual(await hand.inside(textOf, ".lesson-because"), "");
      await hand.press("ArrowRight");
      await tells("It turns");
      await hand.press("PageUp");
      await tells("ferry’s chain");
      assert.equal(await hand.inside(textOf, ".lesson-hands"), "1");
      const size = await hand.inside(() => parseFloat(getComputedStyle(document.querySelector(".lesson-say")).fontSize) / innerHeight);
      assert.ok(size >= 1 / 40, `a fortieth of the height, not ${size}`);
      await hand.press("Escape");
      assert.equal(await hand.inside(() => document.body.hasAttribute("data-hall")), false);
    });

    test("the list names the faces of the chain that lies there", async () => {
      await open("#v=1&on=lesson-inside-one-link-7&ask=touch&how=turn&at=1");
      await told();
      assert.match(await hand.said("touching"), /bush/);
      await click(".lesson-back");
      await tells("collar of its own");
      assert.match(await hand.said("touching"), /collar/);
      assert.doesNotMatch(await hand.said("touching"), /bush/);
    });

    test("while a guess is open nothing beside it tells the answer", async () => {
      await open("#v=1&on=lesson-a-thousand-from-the-press-1&ask=fit&how=aside&at=1");
      await told();
      const seen = () => hand.inside(() => [".own", "#sheet", ".found"].map((each) => document.querySelector(each).checkVisibility()));
      assert.deepEqual(await seen(), [false, true, false], "the chain itself is drawn");
      await click(NEXT);
      assert.equal((await seen())[0], true);
    });

    test("in the hall every letter is a fortieth of the height or more", async () => {
      const small = () => hand.inside(() => {
        const least = innerHeight / 40;
        const says = (element) => [...element.childNodes].some((each) => each.nodeType === Node.TEXT_NODE && each.textContent.trim());
        const shown = [...document.querySelectorAll(".stage *")].filter((each) => says(each) && each.checkVisibility() && !each.closest(".hush, select, option"));
        const sizeOf = (each) => each instanceof SVGElement ? each.getBoundingClientRect().height / 1.1 : parseFloat(getComputedStyle(each).fontSize) * (each.currentCSSZoom ?? 1);
        const tooSmall = shown.filter((each) => sizeOf(each) < least - 0.5);
        return [shown.length > 4, tooSmall.map((each) => `${each.localName}.${each.getAttribute("class")}: ${each.textContent.slice(0, 30)} ${sizeOf(each)}`)];
      });
      for (const at of ["#v=1&on=lesson-why-so-little-2&ask=give&how=turn&at=1", "#v=1&on=lesson-wear-you-can-measure-2&ask=wear&how=turn&at=0", "#v=1&on=lesson-where-the-oil-goes-4&ask=reach&how=turn&at=0"]) {
        await open(at);
        await told();
        await hand.press("h");
        await hand.press(".");
        await hand.settled();
        assert.deepEqual(await small(), [true, []], at);
      }
    });

    test("what to say is told to a second window in step", async () => {
      await open(step(2));
      await told();
      const heard = await hand.inside(() => new Promise((done) => {
        const channel = new BroadcastChannel("lightgap.lesson");
        channel.addEventListener("message", ({ data }) => data.say && done(data));
        channel.postMessage("here");
      }));
      assert.match(heard.say, /It turns 0\.25°/);
      assert.match(heard.next, /twice as wide/);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
