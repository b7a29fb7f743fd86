// The canvas and the SVG document get the same drawing: every path, line and letter of every scenario.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { before, describe, test } from "node:test";
import { svgOf } from "../../../www/keep/svg.js";
import { openBench } from "../support/bench.js";
import { CanvasRenderingContext2D, marksOf } from "../support/recorder.js";
import { ROOT } from "../support/server.js";

/** @typedef {import("../support/recorder.js").Mark} Mark */

/** Rounding of a coordinate in a document, px, with the rounding of an arc's end. */
const ROUNDING = 0.00051;
const THEME = { sheet: "#ffffff", touch: "#cc0044", "fill-inner": "#ffeecc" };
const WAYS = ["turn", "aside", "lean", "twist", "bend"];

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
const scenarios = read("index.json").map((/** @type {{file: string}} */ { file }) => file);

/**
 * @param {Mark} drawn
 * @param {Mark} written
 */
function same(drawn, written) {
  const { path = [], width = 0, dash = [], font = "", ...rest } = drawn;
  const { path: figures = [], width: wide = 0, dash: dashes = [], font: letters = "", ...others } = written;
  assert.deepEqual(rest, others);
  assert.ok(font.startsWith(letters), `${font} is not ${letters}`);
  const [one, other] = [[...path, width, ...dash], [...figures, wide, ...dashes]];
  assert.equal(one.length, other.length, JSON.stringify([drawn, written]));
  one.forEach((figure, i) => assert.ok(Math.abs(figure - other[i]) <= ROUNDING, `${figure} is not ${other[i]}`));
}

describe("one drawing on canvas and in SVG", () => {
  /** @type {any} */
  let bench;
  before(async () => {
    Object.assign(globalThis, { CanvasRenderingContext2D });
    bench = await openBench();
    bench.layout(820, 600, 13, false);
  });

  for (const file of scenarios) {
    test(`every mark of ${file}, in every movement`, () => {
      assert.deepEqual(bench.load(read(file)), []);
      bench.widen(bench.state().factor.start);
      for (const way of WAYS) {
        bench.show(way);
        bench.scrub(0.8);
        const canvas = new CanvasRenderingContext2D();
        bench.paint(canvas, THEME, { lit: null, hide: ["grips"] });
        const written = marksOf(svgOf(bench, { theme: THEME, caption: [] }));
        assert.ok(written.length > 50, `${written.length} marks`);
        assert.equal(canvas.marks.length, written.length);
        canvas.marks.forEach((mark, i) => same(mark, written[i]));
        assert.equal(canvas.saved.length, 0, "the canvas is left as it was");
      }
    });
  }

  test("the page's document is, byte for byte, the one that cargo solve writes", () => {
    const folder = mkdtempSync(join(tmpdir(), "lightgap-drawing-"));
    const colours = readFileSync(join(ROOT, "www", "style.css"), "utf8").split("}")[0];
    const theme = Object.fromEntries([...colours.matchAll(/--([\w-]+): (#\w+);/g)].map(([, name, colour]) => [name, colour]));
    for (const file of scenarios) {
      const into = join(folder, file.replace("json", "svg"));
      execFileSync("cargo", ["solve", join(ROOT, "scenarios", file), "--svg", into], { cwd: ROOT, stdio: "pipe" });
      const native = readFileSync(into, "utf8");
      const [, said] = /** @type {string[]} */ (native.match(/<rect[^>]*>\n((?:<text .*\n)*)/));
      const caption = marksOf(said).map(({ text = "" }) => text);
      assert.deepEqual(bench.load(read(file)), []);
      bench.layout(1200, 900, 15, false);
      bench.show("turn");
      bench.scrub(1);
      assert.equal(svgOf(bench, { caption, theme }), native);
    }
    rmSync(folder, { recursive: true });
  });

  test("a caption is broken into lines that the sheet has room for, its first sentence bold", () => {
    bench.layout(400, 300, 16, false);
    const texts = marksOf(svgOf(bench, { caption: ["one two three four five six seven eight nine ten", "and so on"] })).filter(({ text }) => text);
    assert.deepEqual(texts.slice(0, 3).map(({ text, font }) => [text, font]),
      [["one two three four five six seven", "700 16px"], ["eight nine ten", "700 16px"], ["and so on", "400 16px"]]);
  });

  test("another pose is another drawing", () => {
    assert.deepEqual(bench.load(read(scenarios[0])), []);
    const canvas = new CanvasRenderingContext2D();
    bench.paint(canvas, THEME, { lit: null, hide: ["grips"] });
    bench.scrub(0.7);
    const written = marksOf(svgOf(bench, { theme: THEME, caption: [] }));
    assert.throws(() => canvas.marks.forEach((mark, i) => same(mark, written[i])));
  });

  test("a canvas that fails is an error that can be caught, and another bench works", async () => {
    class Lost extends CanvasRenderingContext2D {
      stroke() {
        throw new Error("lost");
      }
    }
    const hurt = await openBench();
    assert.throws(() => hurt.paint(new Lost(), THEME, {}), /lost/);
    const canvas = new CanvasRenderingContext2D();
    (await openBench()).paint(canvas, THEME, {});
    assert.ok(canvas.marks.length > 50);
  });

  test("a title that holds a script is letters and nothing else", () => {
    const scenario = { ...read(scenarios[0]), title: '</title><script>alert(1)</script>"' };
    assert.deepEqual(bench.load(scenario), []);
    const document = svgOf(bench, { caption: ["<b onload='x'>&"] });
    assert.ok(!document.includes("<script") && !document.includes("<b "));
    assert.ok(document.includes("&lt;/title&gt;&lt;script&gt;alert(1)&lt;/script&gt;&quot;"));
  });
});
