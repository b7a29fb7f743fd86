// Where the page may stand: any width, no other address, one file on a disk.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, describe, test } from "node:test";
import { openChromium, openFirefox, visit } from "../support/hand.js";
import { answered, centreOf, focusOn, opened, pictureMark, textOf, until } from "../support/inside.js";
import { ROOT } from "../support/server.js";
import { serving } from "../support/standing.js";
import { words } from "../support/words.js";

/** How the answer to the third question begins. */
const COST = /^At .* aside/;

describe("the page's place, in Chromium", () => {
  const page = serving();

  for (const width of [320, 360, 768, 1280, 1920]) {
    test(`no sideways scroll at ${width} px`, () =>
      visit(page.address, { viewport: { width, height: 800 } }, async (hand) => {
        const [needed, given] = await hand.inside(() => {
          for (const fold of document.querySelectorAll("details")) fold.open = true;
          const { scrollWidth, clientWidth } = document.documentElement;
          return [scrollWidth, clientWidth];
        });
        assert.ok(needed <= given, `${needed} px wanted, ${given} px there`);
      }));
  }

  test("nothing is asked of any other address, nothing is kept as a cookie", async () => {
    const hand = await openChromium();
    try {
      const asked = requestsOf(hand.context);
      await hand.goTo(page.address);
      assert.equal(await hand.inside(opened), "");
      await hand.drag([await hand.inside(centreOf, "#questions :is(a, button):not([aria-current])")]);
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      const elsewhere = asked.urls.filter((url) => !url.startsWith(page.address) && !/^(blob|data):/.test(url));
      assert.ok(asked.urls.length > 5, `${asked.urls.length} requests seen`);
      assert.deepEqual([elsewhere, asked.failed], [[], []]);
      assert.deepEqual(await hand.context.cookies(), []);
      assert.deepEqual(hand.complaints(), []);
    } finally {
      await hand.close();
    }
  });

  describe("in one file on a disk", () => {
    const folder = mkdtempSync(join(tmpdir(), "lightgap-"));
    const file = join(folder, "lightgap.html");
    const { href } = pathToFileURL(file);
    before(() => execFileSync("cargo", ["page", "--single", file], { cwd: ROOT, stdio: "pipe" }));
    after(() => rmSync(folder, { recursive: true }));

    test("it is the page as served, and asks for nothing", async () => {
      const hand = await openChromium();
      try {
        const asked = requestsOf(hand.context);
        await hand.goTo(href);
        assert.equal(await hand.inside(opened), "", hand.complaints().join("\n"));
        const single = [await hand.inside(textOf, "#answer"), await hand.inside(pictureMark)];
        await hand.inside(focusOn, "#scrub");
        await hand.press("Home");
        assert.notDeepEqual(await hand.inside(pictureMark), single[1], "the chain moves");
        await hand.inside(ask, "line");
        await hand.inside(answered);
        assert.match(await hand.inside(textOf, "#answer"), COST, "a question with a worker is answered");
        assert.match(await sheetOf(hand), /^\d+\.\d+\.\d+/, "the review sheet is made");
        const outside = asked.urls.filter((url) => !/^(data|blob):/.test(url) && url.split("#")[0] !== href);
        assert.deepEqual([outside, asked.failed, hand.complaints()], [[], [], []]);
        await hand.goTo(page.address);
        assert.equal(await hand.inside(opened), "");
        assert.deepEqual([await hand.inside(textOf, "#answer"), await hand.inside(pictureMark)], single);
      } finally {
        await hand.close();
      }
    });

    test("it opens in Firefox too, with the rule for files that a visitor's Firefox has", async () => {
      const hand = await openFirefox();
      try {
        await hand.goTo(href);
        assert.equal(await hand.inside(opened), "", hand.complaints().join("\n"));
        assert.ok((await hand.inside(pictureMark)).colours > 8);
        await hand.inside(ask, "line");
        await hand.inside(answered);
        assert.match(await hand.inside(textOf, "#answer"), COST);
        assert.match(await sheetOf(hand), /^\d+\.\d+\.\d+/, "the review sheet is made");
        assert.deepEqual(hand.complaints(), []);
      } finally {
        await hand.close();
      }
    });
  });
});

/** @param {string} id a question */
const ask = (id) => {
  location.hash = `#v=1&on=ferry-trike&ask=${id}`;
};

/**
 * Makes the review sheet; gives the version on it. Nothing is kept for use without a network: the file is that itself.
 * @param {import("../support/hand.js").Hand} hand
 */
async function sheetOf(hand) {
  assert.equal(await hand.inside(() => document.querySelector("link[rel=manifest]")), null);
  await hand.inside(() => document.querySelector("#keep").click());
  await hand.inside(until(() => document.querySelector("dialog.keep[open]")));
  await hand.inside((word) => [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click(), words["keep.sheet.open"]);
  await hand.inside(until(() => document.querySelector(".review .primary:not([disabled])")));
  return hand.inside(textOf, ".review-version");
}

/**
 * Everything a browser asks for from now on, and what was not there.
 * @param {import("playwright-core").BrowserContext} context
 */
function requestsOf(context) {
  /** @type {{urls: string[], failed: string[]}} */
  const asked = { urls: [], failed: [] };
  context.on("request", (request) => asked.urls.push(request.url()));
  context.on("response", (answer) => answer.status() >= 400 && asked.failed.push(answer.url()));
  return asked;
}
