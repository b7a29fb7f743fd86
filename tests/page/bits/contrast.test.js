// The colours of both themes as the style sheet has them: words can be read and marks told apart.
// WCAG 2.2, success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (graphics 3 : 1); its definitions of contrast ratio and relative luminance.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { ROOT } from "../support/server.js";

const STYLE = readFileSync(join(ROOT, "www/style.css"), "utf8");
const BODIES = ["held", "next", "inner", "inner-near", "roller"];

/** The variables of the rule that begins with a text. @param {string} begins @returns {Record<string, string>} */
function coloursOf(begins) {
  const rule = STYLE.slice(STYLE.indexOf(begins)).split("}")[0];
  return Object.fromEntries([...rule.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map(([, name, colour]) => [name, colour]));
}

/** @param {string} colour */
function luminance(colour) {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** @param {string} one @param {string} other */
function contrast(one, other) {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const GROUNDS = ["desk", "sheet", "card"];
const FILLS = BODIES.map((body) => `fill-${body}`);
/** What is written, and on what. @type {[string, string[]][]} */
const TEXTS = [
  ["ink", [...GROUNDS, "warn", ...FILLS]], ["ink-soft", GROUNDS], ["accent", GROUNDS], ["on-accent", ["accent"]],
  ["touch", GROUNDS], ["rub", GROUNDS],
];
/** What is drawn, and on what. @type {[string, string[]][]} */
const MARKS = [
  ["edge", GROUNDS], ["warn-edge", ["warn"]], ["overlap", ["sheet"]], ["touch", ["sheet", ...FILLS]], ["rub", ["sheet"]],
  ...BODIES.map((body) => /** @type {[string, string[]]} */ ([`edge-${body}`, ["sheet", `fill-${body}`]])),
];

describe("the colours of both themes", () => {
  const themes = { light: coloursOf(":root {"), dark: coloursOf(':root[data-theme="dark"]') };

  test("the dark colours are the same whether chosen or preferred", () =>
    assert.deepEqual(coloursOf(':root:not([data-theme="light"])'), themes.dark));

  test("black on white is 21 : 1, and both themes name the same colours", () => {
    assert.equal(contrast("#000000", "#ffffff"), 21);
    assert.deepEqual(Object.keys(themes.dark).sort(), Object.keys(themes.light).sort());
    assert.ok(Object.keys(themes.light).length > 20);
  });

  for (const [name, colours] of Object.entries(themes)) {
    for (const [what, least, pairs] of /** @type {const} */ ([["words", 4.5, TEXTS], ["marks", 3, MARKS]])) {
      test(`${what} in ${name} have a contrast of ${least} : 1`, () => {
        const weak = pairs.flatMap(([mark, grounds]) =>
          grounds.map((on) => ({ mark, on, ratio: contrast(colours[mark], colours[on]) })).filter(({ ratio }) => !(ratio >= least)));
        assert.deepEqual(weak.map(({ mark, on, ratio }) => `${mark} on ${on}: ${ratio.toFixed(2)}`), []);
      });
    }
  }
});
