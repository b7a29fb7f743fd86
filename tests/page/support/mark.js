// The mark of a step's link, the same in every engine: read back by a decoder of others, and only where others can follow.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import jsqr from "jsqr";
import { opened, twoFrames, until } from "./inside.js";
import { ROOT } from "./server.js";

/** A name that is no machine of the network; the browsers are told where it is. */
export const HOST = "ferry.test";
const STEP = "#v=1&on=lesson-why-so-little-1&ask=give&how=turn&at=0";
const TYPES = { html: "text/html", js: "text/javascript", css: "text/css", json: "application/json", wasm: "application/wasm", svg: "image/svg+xml" };

/** A plain server of a written site, as any host of static files is. */
function served(site) {
  const server = createServer((asked, answer) => {
    const name = decodeURIComponent(new URL(asked.url ?? "/", "http://x").pathname).replace(/\/$/, "/index.html");
    try {
      const bytes = readFileSync(join(site, name));
      answer.writeHead(200, { "content-type": TYPES[name.split(".").pop()] ?? "application/octet-stream" }).end(bytes);
    } catch {
      answer.writeHead(404).end();
    }
  });
  return new Promise((done) => server.listen(0, "127.0.0.1", () => done(server)));
}

/** The mark on the page as pixels, each square so many wide. */
const pixels = () => {
  const svg = document.querySelector(".lesson-mark");
  const [low, , side] = svg.getAttribute("viewBox").split(" ").map(Number);
  const zoom = 6;
  const context = new OffscreenCanvas(side * zoom, side * zoom).getContext("2d");
  context.scale(zoom, zoom);
  context.translate(-low, -low);
  for (const part of svg.children) {
    context.fillStyle = part.getAttribute("fill");
    const { x, y, width, height } = part.getBBox();
    if (part.localName === "rect") context.fillRect(x, y, width, height);
    else context.fill(new Path2D(part.getAttribute("d")));
  }
  const { data, width, height } = context.getImageData(0, 0, side * zoom, side * zoom);
  return { data: [...data], width, height };
};

/**
 * @param {string} engine
 * @param {() => Promise<import("./hand.js").Hand>} openHand one that finds HOST on this machine
 */
export function markSuite(engine, openHand) {
  describe(`the mark of a step's link, in ${engine}`, () => {
    let hand, server, site;
    before(async () => {
      site = mkdtempSync(join(tmpdir(), "lightgap-mark-"));
      execFileSync("cargo", ["page", "--write", site], { cwd: ROOT, stdio: "pipe" });
      server = await served(site);
      hand = await openHand();
    });
    after(async () => {
      await hand?.close();
      server?.close();
      if (site) rmSync(site, { recursive: true });
    });
    const addressAt = (host) => `http://${host}:${server.address().port}/`;
    const link = async (host) => {
      await hand.goTo("about:blank");
      await hand.goTo(addressAt(host) + STEP);
      assert.equal(await hand.inside(opened), "", hand.complaints().join("\n"));
      await hand.inside(until(() => /ferry/.test(document.querySelector(".lesson-say")?.textContent ?? "")));
      await hand.inside(() => document.querySelector(".lesson-link").click());
      await hand.inside(until(() => document.querySelector("dialog.lesson-link-dialog[open]")));
      return hand.inside(() => document.querySelector(".lesson-link-dialog input").value);
    };

    test("a decoder of others reads the step's address from it", async () => {
      const address = await link(HOST);
      assert.equal(address, addressAt(HOST) + STEP);
      await hand.inside(until(() => document.querySelector(".lesson-mark")));
      const { data, width, height } = await hand.inside(pixels);
      assert.equal(jsqr(Uint8ClampedArray.from(data), width, height)?.data, address);
    });

    test("an answer that has been shown changes nothing of it", async () => {
      const before = await link(HOST);
      await hand.inside(() => document.querySelector(".lesson-link-dialog .primary").click());
      await hand.inside(() => document.querySelectorAll(".lesson-choice")[1].click());
      await hand.inside(twoFrames);
      assert.equal(await hand.inside(() => document.querySelectorAll(".lesson .right").length), 1, "it is shown");
      await hand.inside(() => document.querySelector(".lesson-link").click());
      assert.equal(await hand.inside(() => document.querySelector(".lesson-link-dialog input").value), before);
      await hand.inside(() => document.querySelector(".lesson-link-dialog .primary").click());
      await hand.goTo("about:blank");
      await hand.goTo(before);
      await hand.inside(until(() => /ferry/.test(document.querySelector(".lesson-say")?.textContent ?? "")));
      assert.equal(await hand.inside(() => document.querySelectorAll(".lesson .right, .lesson-because:not([hidden])").length), 0, "whoever follows it guesses");
    });

    test("this machine's own address has a link and no mark, and the reason", async () => {
      assert.equal(await link("127.0.0.1"), addressAt("127.0.0.1") + STEP);
      await hand.inside(twoFrames);
      assert.match(await hand.inside(() => document.querySelector(".lesson-link-told").textContent), /this machine alone/);
      assert.equal(await hand.inside(() => document.querySelectorAll(".lesson-mark").length), 0);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
