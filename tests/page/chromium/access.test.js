// The page for those who do not see it, point at it, or want it to move.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { focusOn, textOf } from "../support/inside.js";
import { broken } from "../support/rules.js";
import { serving } from "../support/standing.js";

/** @typedef {Parameters<Parameters<typeof visit>[2]>[0]} Hand */

describe("access, in Chromium", () => {
  const page = serving();

  /** @type {(wishes: object, work: (hand: Hand) => Promise<void>) => Promise<void>} */
  const come = (wishes, work) => visit(page.address, wishes, work);

  for (const [name, wishes] of Object.entries({
    "in light": { colorScheme: "light" },
    "in dark": { colorScheme: "dark" },
    "with more contrast": { contrast: "more" },
    "in forced colours": { forcedColors: "active" },
    "on a phone": { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  })) {
    test(`no accessibility rule is broken ${name}`, () =>
      come(wishes, async (hand) => assert.deepEqual(await broken(hand), [])));
  }

  test("the rules are awake: planted faults are found", () =>
    come({}, async (hand) => {
      await hand.inside(() => {
        document.documentElement.removeAttribute("lang");
        const pale = document.createElement("p");
        pale.textContent = "pale words on a white ground";
        pale.setAttribute("style", "");
        pale.style.setProperty("color", "#ddd");
        pale.style.setProperty("background", "#fff");
        document.querySelector("main").append(pale, document.createElement("input"));
      });
      const found = (await broken(hand)).map((line) => line.split(":")[0]);
      for (const rule of ["html-has-lang", "color-contrast", "label"]) assert.ok(found.includes(rule), `${rule} in ${found}`);
    }));

  test("the drawing has a name, and its numbers stand beside it in words that follow it", () =>
    come({}, async (hand) => {
      const canvas = await hand.inside(() => {
        const drawing = document.querySelector("#drawing");
        return { role: drawing.getAttribute("role"), name: drawing.getAttribute("aria-label") };
      });
      assert.equal(canvas.role, "img");
      assert.match(canvas.name ?? "", /\w{3}/);
      await hand.page.locator("#twin li").first().waitFor({ state: "attached" });
      const before = await hand.inside(textOf, "#twin");
      assert.match(before, /\d/);
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      await hand.page.waitForFunction((old) => document.querySelector("#twin").textContent !== old, before);
    }));

  test("a screen reader hears the answer once it has settled", () =>
    come({}, async (hand) => {
      await hand.page.waitForFunction(() => {
        const [live, answer] = ["#live", "#answer"].map((id) => document.querySelector(id).textContent);
        return answer !== "" && live.startsWith(answer);
      });
      const polite = await hand.inside(() => document.querySelector("#live").getAttribute("aria-live"));
      assert.equal(polite, "polite");
    }));

  test("whatever can be used shows when it has the focus", () =>
    come({}, async (hand) => {
      const bare = [];
      for (let steps = 0; steps < 60; steps++) {
        await hand.page.keyboard.press("Tab");
        const seen = await hand.inside(() => {
          const at = document.activeElement;
          if (!at || at === document.body) return "";
          const look = () =>
            JSON.stringify([at, ...at.querySelectorAll("*")].map((each) => {
              const { outline, boxShadow, stroke, strokeWidth, borderColor, backgroundColor, top } = getComputedStyle(each);
              return [outline, boxShadow, stroke, strokeWidth, borderColor, backgroundColor, top];
            }));
          const focused = look();
          at.blur();
          return look() !== focused ? "" : `${at.tagName} ${at.id} ${at.getAttribute("class")}`;
        });
        if (seen) bare.push(seen);
      }
      assert.deepEqual(bare, []);
    }));

  test("targets are large enough for a finger on a phone", () =>
    come({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }, async (hand) => {
      const small = await hand.inside(() =>
        [...document.querySelectorAll("button, select, summary, [role=slider]")]
          .filter((each) => each.checkVisibility())
          .map((each) => ({ each, box: each.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(({ each, box }) => `${each.tagName} ${each.id} ${box.width}x${box.height}`));
      assert.deepEqual(small, []);
    }));
});
