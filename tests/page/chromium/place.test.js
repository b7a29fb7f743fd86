// Where the page may stand: any width, no other address, one file on a disk.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { focusOn, opened, pictureMark, textOf } from "../support/inside.js";
import { ROOT, startPage } from "../support/server.js";

describe("the page's place, in Chromium", () => {
  /** @type {Awaited<ReturnType<typeof startPage>>} */
  let page;
  before(async () => (page = await startPage()));
  after(() => page?.stop());

  for (const width of [320, 360, 768, 1280, 1920]) {
    test(`no sideways scroll at ${width} px`, async () => {
      const hand = await openChromium({ viewport: { width, height: 800 } });
      await hand.goTo(page.address);
      assert.equal(await hand.inside(opened), "");
      const [needed, given] = await hand.inside(() => {
        for (const fold of document.querySelectorAll("details")) fold.open = true;
        const { scrollWidth, clientWidth } = document.documentElement;
        return [scrollWidth, clientWidth];
      });
      assert.ok(needed <= given, `${needed} px wanted, ${given} px there`);
      await hand.close();
    });
  }

  test("nothing is asked of any other address, nothing is kept as a cookie", async () => {
    const hand = await openChromium();
    /** @type {string[]} */
    const asked = [];
    /** @type {string[]} */
    const failed = [];
    hand.context.on("request", (request) => asked.push(request.url()));
    hand.context.on("response", (answer) => answer.status() >= 400 && failed.push(answer.url()));
    await hand.goTo(page.address);
    assert.equal(await hand.inside(opened), "");
    await hand.inside(() => document.querySelector("#questions :is(a, button):not([aria-current])").click());
    await hand.inside(focusOn, "#scrub");
    await hand.press("Home");
    const elsewhere = asked.filter((url) => !url.startsWith(page.address) && !/^(blob|data):/.test(url));
    assert.ok(asked.length > 5, `${asked.length} requests seen`);
    assert.deepEqual(elsewhere, []);
    assert.deepEqual(failed, []);
    assert.deepEqual(await hand.context.cookies(), []);
    assert.deepEqual(hand.complaints(), []);
    await hand.close();
  });

  test("one file opened from a disk is the whole page, and asks for nothing", async () => {
    const folder = mkdtempSync(join(tmpdir(), "lightgap-"));
    const file = join(folder, "lightgap.html");
    execFileSync("cargo", ["page", "--single", file], { cwd: ROOT, stdio: "pipe" });
    const hand = await openChromium();
    /** @type {string[]} */
    const asked = [];
    hand.context.on("request", (request) => asked.push(request.url()));
    await hand.goTo(pathToFileURL(file).href);
    assert.equal(await hand.inside(opened), "", hand.complaints().join("\n"));
    const single = [await hand.inside(textOf, "#answer"), await hand.inside(pictureMark)];
    await hand.inside(focusOn, "#scrub");
    await hand.press("Home");
    assert.notDeepEqual(await hand.inside(pictureMark), single[1], "the chain moves");
    const outside = asked.filter((url) => !/^(data|blob):/.test(url) && url !== pathToFileURL(file).href);
    assert.deepEqual(outside, []);
    assert.deepEqual(hand.complaints(), []);
    await hand.goTo(page.address);
    assert.equal(await hand.inside(opened), "");
    assert.deepEqual([await hand.inside(textOf, "#answer"), await hand.inside(pictureMark)], single, "as served");
    await hand.close();
    rmSync(folder, { recursive: true });
  });
});
