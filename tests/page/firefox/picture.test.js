// Pictures that leave the page, in a second engine: the document is the canvas, what is saved is whole and says what it shows.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { before, describe, test } from "node:test";
import { openFirefox } from "../support/hand.js";
import { compare, cutOff, dots, handedOver, SIZE } from "../support/pictures.js";
import { ROOT } from "../support/server.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

/** Two dots differ when a channel does by more than this; so large a share of them may: edges and letters are softened otherwise. */
const [CHANNEL, SHARE] = [96, 0.004];
/** Another pose differs by at least this share, or the comparison could not fail. */
const OTHER_POSE = 0.01;
const CASES = [["ferry-winch.json", "turn"], ["ferry-trike.json", "twist"], ["tired-trike.json", "aside"]];

describe("pictures, in Firefox", () => {
  const hand = standing({}, openFirefox);
  before(() => hand.open("#v=1&on=tired-trike&ask=wear&how=turn&at=1"));
  const handed = (word) => hand.inside(handedOver, words[word]);

  test("canvas and SVG show the same", async (t) => {
    for (const [file, how] of CASES) {
      const { size, same, other } = await hand.inside(compare, JSON.parse(readFileSync(join(ROOT, "scenarios", file), "utf8")), how, SIZE, CHANNEL);
      t.diagnostic(`${file}: ${(100 * same).toFixed(3)} % of the dots differ, ${(100 * other).toFixed(3)} % from another pose`);
      assert.deepEqual(size, [SIZE.width, SIZE.height]);
      assert.ok(same < SHARE, `${file} ${how}: ${same}`);
      assert.ok(other > Math.max(OTHER_POSE, 3 * same), `${file} ${how}: ${other}`);
    }
  });

  test("what is saved of a worn joint is whole: as wide as was chosen, its wear and its sentence on it", async () => {
    await hand.click("#keep");
    await hand.until(() => document.querySelector("dialog.keep[open]"));
    const svg = Buffer.from((await handed("keep.svg")).bytes, "base64").toString();
    const [answer, badge] = [await hand.said("answer"), await hand.said("badge")];
    assert.match(badge, /worn by/);
    assert.match(svg, /<svg [^>]*width="1600"/);
    for (const part of [badge, answer.split(":")[0], words["keep.caption"].split(";")[0]]) assert.ok(svg.replaceAll("\u00a0", " ").includes(part), part);
    const png = dots(Buffer.from((await handed("keep.png")).bytes, "base64"));
    assert.equal(png.width, 1600);
    assert.deepEqual(cutOff(png, CHANNEL), []);
  });

  test("the square and the strip are of their sizes and cut nothing off", async () => {
    for (const [word, width] of /** @type {const} */ ([["keep.square", 1080], ["keep.strip", 1920]])) {
      const picture = dots(Buffer.from((await handed(word)).bytes, "base64"));
      assert.equal(picture.width, width, word);
      assert.deepEqual(cutOff(picture, CHANNEL), [], word);
    }
  });

  test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
});
