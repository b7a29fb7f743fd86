// One walk, two painters: the canvas of the page and the SVG of a file are the same picture.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { ROOT } from "../support/server.js";
import { serving } from "../support/standing.js";
import { scenarioFiles } from "../support/words.js";

const SIZE = { width: 1000, height: 750, text: 14 };
/** Two pixels differ when a channel does by more than this: softened edges fall a little differently. */
const CHANNEL = 64;
/** So large a share of pixels may: letters are set by two parts of the browser (the most seen is 0.0012). */
const SHARE = 0.002;
/** Another pose differs by at least this share, or the comparison could not fail. */
const OTHER_POSE = 0.01;

/**
 * Paints a scenario on a canvas and as an SVG, both at a share of the way, and compares the pixels.
 * Runs in the page.
 */
const compare = async (scenario, how, size, limit) => {
  const { openKernel } = await import(new URL("kernel.js", document.baseURI).href);
  const { theme } = await import(new URL("theme.js", document.baseURI).href);
  const { svgOf } = await import(new URL("keep/svg.js", document.baseURI).href);
  const words = await (await fetch("words/en/first.json")).json();
  const { bench } = await openKernel(words);
  if (bench.load(scenario).length > 0) throw new Error("refused");
  bench.show(how);
  bench.layout(size.width, size.height, size.text, false);
  const sheet = () => new OffscreenCanvas(size.width, size.height).getContext("2d", { willReadFrequently: true });
  const pixels = (pen) => pen.getImageData(0, 0, size.width, size.height).data;
  const painted = (share) => {
    bench.scrub(share);
    const pen = sheet();
    bench.paint(pen, theme(), { lit: null, hide: ["grips"] });
    return pixels(pen);
  };
  const still = painted(0);
  const canvas = painted(1);
  const drawn = new Image();
  drawn.src = URL.createObjectURL(new Blob([svgOf(bench, { theme: theme(), caption: [] })], { type: "image/svg+xml" }));
  await drawn.decode();
  const pen = sheet();
  pen.drawImage(drawn, 0, 0);
  const differing = (a, b) => {
    let count = 0;
    for (let at = 0; at < a.length; at += 4) {
      if ([0, 1, 2, 3].some((channel) => Math.abs(a[at + channel] - b[at + channel]) > limit)) count++;
    }
    return count / (size.width * size.height);
  };
  return { size: [drawn.naturalWidth, drawn.naturalHeight], same: differing(canvas, pixels(pen)), other: differing(still, pixels(pen)) };
};

describe("the picture, in Chromium", () => {
  const page = serving();

  for (const colorScheme of ["light", "dark"]) {
    test(`canvas and SVG show the same in ${colorScheme}, for every scenario and movement`, () =>
      visit(page.address, { colorScheme }, async (hand) => {
        const far = [];
        let told = false;
        for (const file of scenarioFiles()) {
          const scenario = JSON.parse(readFileSync(join(ROOT, "scenarios", file), "utf8"));
          for (const how of ["turn", "aside", "twist", "bend"]) {
            const { size, same, other } = await hand.inside(compare, scenario, how, SIZE, CHANNEL);
            assert.deepEqual(size, [SIZE.width, SIZE.height]);
            if (same > SHARE) far.push(`${file} ${how}: ${(100 * same).toFixed(3)} %`);
            told ||= other > OTHER_POSE;
          }
        }
        assert.deepEqual(far, []);
        assert.ok(told, "another pose is told apart");
      }));
  }
});
