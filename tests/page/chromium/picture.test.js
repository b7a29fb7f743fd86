// One walk, two painters: the canvas of the page and the SVG of a file are the same picture.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { visit } from "../support/hand.js";
import { compare, SIZE } from "../support/pictures.js";
import { ROOT } from "../support/server.js";
import { serving } from "../support/standing.js";
import { scenarioFiles } from "../support/words.js";

/** Two pixels differ when a channel does by more than this: softened edges fall a little differently. */
const CHANNEL = 64;
/** So large a share of pixels may: letters are set by two parts of the browser (the most seen is 0.0012). */
const SHARE = 0.002;
/** Another pose differs by at least this share, or the comparison could not fail. */
const OTHER_POSE = 0.01;

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
