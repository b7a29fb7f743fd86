// Pictures that are handed on: the SVG document drawn by a program that is no browser shows what the stage shows; the square
// and the strip hold their sentences and stay in their bounds.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { cutOff, dots, handedOver, SIZE } from "../support/pictures.js";
import { ROOT } from "../support/server.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

/** Two pixels differ when a channel does by more than this: edges are softened otherwise elsewhere. */
const CHANNEL = 96;
/** So large a share of pixels may: letters are set by another program, edges fall a little differently (the most seen is 0.0006). */
const SHARE = 0.002;
/** Another pose differs by more than this, or the comparison could not fail. */
const OTHER_POSE = 0.01;
const CASES = [["ferry-winch.json", "turn"], ["ferry-trike.json", "twist"], ["tired-trike.json", "aside"]];

/** In the page: a scenario at its stop, on a canvas and as an SVG document, and straight on a canvas. */
const paint = async (scenario, how, size) => {
  const { openKernel } = await import(new URL("kernel.js", document.baseURI).href);
  const { theme } = await import(new URL("theme.js", document.baseURI).href);
  const { svgOf } = await import(new URL("keep/svg.js", document.baseURI).href);
  const { bench } = await openKernel(await (await fetch("words/en/first.json")).json());
  if (bench.load(scenario).length > 0) throw new Error("refused");
  bench.show(how);
  bench.widen(bench.state().factor.start);
  bench.layout(size.width, size.height, size.text, false);
  const canvas = async (share) => {
    bench.scrub(share);
    const pen = new OffscreenCanvas(size.width, size.height).getContext("2d");
    bench.paint(pen, theme(), { lit: null, hide: ["grips"] });
    const bytes = new Uint8Array(await (await pen.canvas.convertToBlob()).arrayBuffer());
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  };
  return { still: await canvas(0), stop: await canvas(1), svg: svgOf(bench, { theme: theme(), caption: [] }) };
};

const drawn = (/** @type {string} */ svg) => dots(execFileSync("rsvg-convert", ["--format", "png"], { input: svg, maxBuffer: 1e8 }));

/** The share of dots that differ. */
function differing(one, other) {
  assert.deepEqual([one.width, one.height], [other.width, other.height]);
  let count = 0;
  for (let at = 0; at < one.data.length; at += 4) {
    if ([0, 1, 2].some((channel) => Math.abs(one.data[at + channel] - other.data[at + channel]) > CHANNEL)) count += 1;
  }
  return count / (one.width * one.height);
}

describe("pictures to hand on, in Chromium", () => {
  const hand = standing();
  const { open, click, until } = hand;
  const handed = (word) => hand.inside(handedOver, words[word]);
  const keeping = async (fragment = "") => {
    await open(fragment);
    await click("#keep");
    await until(() => document.querySelector("dialog.keep[open]"));
  };

  for (const [file, how] of CASES) {
    test(`the document of ${file} (${how}), drawn without a browser, is the stage`, async (t) => {
      await open();
      const { still, stop, svg } = await hand.inside(paint, JSON.parse(readFileSync(join(ROOT, "scenarios", file), "utf8")), how, SIZE);
      const document = drawn(svg);
      const [same, other] = [stop, still].map((png) => differing(dots(Buffer.from(png, "base64")), document));
      t.diagnostic(`${(100 * same).toFixed(3)} % of the dots differ, ${(100 * other).toFixed(3)} % from another pose`);
      assert.ok(same < SHARE, `${same}`);
      assert.ok(other > Math.max(OTHER_POSE, 3 * same), `${other}`);
    });
  }

  test("what is saved as SVG opens elsewhere at the width that was chosen, with its scale and its sentences", async () => {
    await keeping();
    const svg = Buffer.from((await handed("keep.svg")).bytes, "base64").toString();
    assert.equal(drawn(svg).width, 1600);
    for (const part of ["10 mm", "It turns 0.25°", "too big", "certifies nothing"]) assert.ok(svg.includes(part), part);
  });

  test("the square and the strip are pictures of their sizes, and no sentence runs out of them", async () => {
    await keeping("#v=1&on=ferry-trike&ask=give&how=turn&at=1");
    const sizes = {};
    for (const word of ["keep.square", "keep.strip"]) {
      const { name, bytes } = await handed(word);
      const picture = dots(Buffer.from(bytes, "base64"));
      sizes[name] = [picture.width, picture.height];
      assert.deepEqual(cutOff(picture, CHANNEL), [], `${name}: nothing is cut off at its sides`);
    }
    assert.deepEqual(sizes["ferry-trike-square.png"], [1080, 1080]);
    assert.equal(sizes["ferry-trike-strip.png"][0], 1920);
    const strip = await hand.inside(async () => {
      const svgs = [];
      const { Blob: Real } = globalThis;
      globalThis.Blob = class extends Real {
        constructor(parts, options) {
          super(parts, options);
          if (options?.type === "image/svg+xml") svgs.push(parts[0]);
        }
      };
      HTMLAnchorElement.prototype.click = () => {};
      [...document.querySelectorAll("dialog.keep button")].find((each) => /before, stop/.test(each.textContent)).click();
      while (svgs.length === 0) await new Promise((next) => requestAnimationFrame(next));
      return svgs[0];
    });
    assert.ok(drawn(strip).width === 1920, "other programs draw it too");
    for (const part of ["Before: straight.", "At the stop: 0.73°", "Pulled on.", "9× too big", "certifies nothing"]) assert.ok(strip.includes(part), part);
  });

  test("a phone that shares pictures gets the square itself", async () => {
    await keeping();
    const shared = await hand.inside((word) => new Promise((done) => {
      navigator.canShare = () => true;
      navigator.share = async ({ files }) => done([files[0].name, files[0].type, files[0].size > 10_000]);
      [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click();
    }), words["keep.square"]);
    assert.deepEqual(shared, ["ferry-winch-square.png", "image/png", true]);
  });

  test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
});
