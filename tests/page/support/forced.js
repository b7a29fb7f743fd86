// In forced colours, where the reader's system chooses every colour: what touches, what is chosen and what has the focus
// are still told apart; and for those who want nothing to move, nothing does.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { ASKED, fragmentOf } from "./asked.js";
import { focusOn } from "./inside.js";
import { standing } from "./standing.js";

/** In the page: how many pixels of the drawing have each of these colours, laid on the first of them where they are seen through. */
const painted = (colours) => {
  const canvas = document.querySelector("#drawing");
  const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
  const [ground, ...others] = colours.map((colour) => colour.match(/[\d.]+/g).map(Number));
  const laid = [ground, ...others.map(([r, g, b, a = 1]) => [r, g, b].map((each, i) => each * a + ground[i] * (1 - a)))];
  const near = (at, colour) => [0, 1, 2].every((i) => Math.abs(data[at + i] - colour[i]) <= 2);
  const count = laid.map(() => 0);
  for (let at = 0; at < data.length; at += 4) laid.forEach((colour, i) => near(at, colour) && count[i]++);
  return count;
};
/** In the page: the colours that the system has for these names. */
const system = (names) => {
  const probe = document.createElement("span");
  probe.className = "probe";
  document.body.append(probe);
  const found = names.map((name) => {
    probe.style.color = name;
    return getComputedStyle(probe).color;
  });
  probe.remove();
  return found;
};
/** In the page: how the first of each selector looks that is chosen, and one that is not. */
const looks = (chosen, other) => [chosen, other].map((found) => {
  const { backgroundColor, color, borderColor, outlineStyle } = getComputedStyle(document.querySelector(found));
  return [backgroundColor, color, borderColor, outlineStyle].join(" ");
});

/**
 * @param {string} engine
 * @param {(scheme: "light"|"dark") => Promise<any>} openForced whose system chooses the colours
 * @param {() => Promise<any>} openStill who wants nothing to move
 */
export function forcedSuite(engine, openForced, openStill) {
  for (const colorScheme of /** @type {const} */ (["light", "dark"])) {
    describe(`forced colours, in ${engine}, ${colorScheme}`, () => {
      const hand = standing({}, () => openForced(colorScheme));

      test("the drawing is in the system's colours, what touches in that of what is marked", async () => {
        await hand.open("#v=1&on=ferry-winch&how=turn&at=1");
        const [ground, ink, marked] = await hand.inside(system, ["Canvas", "CanvasText", "Highlight"]);
        assert.equal(new Set([ground, ink, marked]).size, 3);
        const there = await hand.inside(painted, [ground, ink, marked]);
        assert.ok(there.every((pixels) => pixels > 100), String(there));
        await hand.open("#v=1&on=ferry-winch&how=turn&at=0");
        const free = await hand.inside(painted, [ground, ink, marked]);
        assert.ok(there[2] > free[2] + 50, `${there[2]} px marked where faces touch, ${free[2]} where none does`);
      });

      test("what is chosen looks otherwise than what is not", async () => {
        await hand.open("#v=1&on=ferry-winch&how=turn&at=1");
        await hand.inside(() => document.querySelector("#touching .row").click());
        await hand.settled();
        for (const [chosen, other] of [
          [".question[aria-current]", ".question:not([aria-current])"],
          [".modes [aria-pressed=true]", ".modes [aria-pressed=false]"],
          ["#touching .row[aria-pressed=true]", "#touching .row[aria-pressed=false]"],
        ]) {
          const [one, two] = await hand.inside(looks, chosen, other);
          assert.notEqual(one, two, chosen);
        }
      });

      test("what has the focus has an outline that is not of its ground's colour", async () => {
        await hand.inside(focusOn, "#scrub");
        await hand.press("Tab");
        const [style, colour, ground] = await hand.inside(() => {
          const { outlineStyle, outlineColor } = getComputedStyle(document.activeElement);
          return [outlineStyle, outlineColor, getComputedStyle(document.body).backgroundColor];
        });
        assert.equal(style, "solid");
        assert.notEqual(colour, ground);
      });
    });
  }

  describe(`reduced motion, in ${engine}`, () => {
    const hand = standing({}, openStill);
    before(() => hand.open());
    for (const id of Object.keys(ASKED)) {
      test(`nothing moves of itself under ${id}`, async () => {
        await hand.go(fragmentOf(id));
        const [running, frames] = await hand.inside(async () => {
          const canvas = document.querySelector("#drawing");
          const before = canvas.toDataURL();
          for (let frame = 0; frame < 12; frame++) await new Promise((next) => requestAnimationFrame(next));
          return [document.getAnimations().length, canvas.toDataURL() === before];
        });
        assert.deepEqual([running, frames], [0, true]);
      });
    }
  });
}
