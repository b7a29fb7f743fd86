// The page for those who do not see it, point at it, or want it to move.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { focusOn, textOf } from "../support/inside.js";
import { broken, CONTRAST } from "../support/rules.js";
import { standing } from "../support/standing.js";

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe("access, in Chromium", () => {
  const hand = standing({ colorScheme: "light" });
  before(() => hand.open());

  test("no accessibility rule is broken in light; no colour breaks one in dark, with more contrast, in forced colours", async () => {
    assert.deepEqual(await broken(hand), []);
    for (const wishes of /** @type {const} */ ([{ colorScheme: "dark" }, { contrast: "more" }, { forcedColors: "active" }])) {
      await hand.page.emulateMedia(wishes);
      await hand.settled();
      assert.deepEqual(await broken(hand, CONTRAST), [], JSON.stringify(wishes));
      await hand.page.emulateMedia({ colorScheme: "light", contrast: null, forcedColors: null });
    }
  });

  test("the drawing has a name, and its numbers stand beside it in words that follow it", async () => {
    const canvas = await hand.inside(() => {
      const drawing = document.querySelector("#drawing");
      return { role: drawing.getAttribute("role"), name: drawing.getAttribute("aria-label") };
    });
    assert.equal(canvas.role, "img");
    assert.match(canvas.name ?? "", /\w{3}/);
    await hand.page.locator("#twin li").first().waitFor({ state: "attached" });
    const last = await hand.inside(textOf, "#twin");
    assert.match(last, /\d/);
    await hand.inside(focusOn, "#scrub");
    await hand.press("Home");
    await hand.until((old) => document.querySelector("#twin").textContent.replaceAll("\u00a0", " ") !== old, last);
  });

  test("a screen reader hears the answer once it has settled", async () => {
    await hand.until(() => {
      const [live, answer] = ["#live", "#answer"].map((id) => document.querySelector(id).textContent);
      return answer !== "" && live.startsWith(answer);
    });
    assert.equal(await hand.inside(() => document.querySelector("#live").getAttribute("aria-live")), "polite");
  });

  test("whatever can be used shows when it has the focus", async () => {
    await hand.open();
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
  });

  test("on a phone no rule is broken, and targets are large enough for a finger", () =>
    visit(hand.address, PHONE, async (phone) => {
      const small = await phone.inside(() =>
        [...document.querySelectorAll("button, select, summary, [role=slider]")]
          .filter((each) => each.checkVisibility())
          .map((each) => ({ each, box: each.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(({ each, box }) => `${each.tagName} ${each.id} ${box.width}x${box.height}`));
      assert.deepEqual(small, []);
      assert.deepEqual(await broken(phone), []);
    }));

  test("the rules are awake: planted faults are found", async () => {
    await hand.inside(() => {
      document.documentElement.removeAttribute("lang");
      const pale = document.createElement("p");
      pale.textContent = "pale words on a white ground";
      pale.style.setProperty("color", "#ddd");
      pale.style.setProperty("background", "#fff");
      document.querySelector("main").append(pale, document.createElement("input"));
    });
    const found = (await broken(hand)).map((line) => line.split(":")[0]);
    for (const rule of ["html-has-lang", "color-contrast", "label"]) assert.ok(found.includes(rule), `${rule} in ${found}`);
    assert.ok((await broken(hand, CONTRAST)).some((line) => line.startsWith("color-contrast")), "asked alone too");
  });
});
