// A chain that is held as A, seen in every question: its outlines on the drawing, its lines in the charts, its numbers under the
// pictures; clear of all letters; and on the pictures that are handed over.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { describe, test } from "node:test";
import pngjs from "pngjs";
import { textOf } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

const NARROWER = { on: "ferry-winch", chain: { outer_spacing_mm: 17.5952 }, parts: { wear: { joint_wear_mm: 0.4 }, surface: { rz_um: 2 } } };
const HELD = encodeURIComponent(JSON.stringify(NARROWER));
const at = (ask) => `#v=1&on=ferry-winch&ask=${ask}&how=turn&at=1&a=${HELD}`;
const ANY = ".of-a, .of-a-note, .of-a-cell, svg.ghost path";
/** What of A stands in the pictures of each question. */
const SEEN = {
  line: [".graph .curve.of-a", ".crooked-readings .of-a-cell"], fit: [".fit-picture .of-a", ".fit-block .of-a-note"], wear: [".wear-picture .of-a", ".wear-readings .of-a-cell", ".wear .of-a-note", "svg.ghost path[stroke-dasharray]"],
  reach: [".reach-list .of-a-cell", ".reach .of-a-note"], surface: [".surface .curve.of-a", ".surface .of-a-note"], width: [".width-picture .of-a", ".width-readings .of-a-cell", ".width .of-a-note"],
};

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function ghostsSuite(engine, openHand) {
  describe(`a chain that is held, in every question, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open, click, until } = hand;
    const go = async (ask) => {
      await click(`#questions li:nth-child(${1 + ["give", "touch", "line", "fit", "wear", "reach", "surface", "width"].indexOf(ask)}) button`);
      await hand.settled();
    };
    const count = (selector) => hand.inside((found) => document.querySelectorAll(found).length, selector);

    test("its lines and numbers stand in the pictures of each, and go with it", async () => {
      await open(at("line"));
      for (const [ask, selectors] of Object.entries(SEEN)) {
        await go(ask);
        for (const selector of selectors) await until((found) => document.querySelector(found)?.checkVisibility(), selector);
      }
      assert.match(await hand.inside(textOf, ".width-picture"), /A: 23\.56 mm/);
      await go("fit");
      await until(() => /A 0\.12\smm in the middle, 0\.03\smm left in the worst case/.test(document.querySelector(".fit .of-a-note")?.textContent ?? ""));
      await hand.inside((word) => [...document.querySelectorAll(".beside button")].find((each) => each.textContent === word).click(), words["compare.drop"]);
      await until((found) => !document.querySelector(found), ANY);
      await go("line");
      assert.equal(await count(ANY), 0);
      assert.deepEqual(hand.complaints(), []);
    });

    test("a chain over itself shows in no picture, and both have all their curves", async () => {
      await open(at("line").replace(HELD, encodeURIComponent('{"on":"ferry-winch"}')));
      await until(() => document.querySelectorAll(".crooked .graph:not(.sample) .curve").length === 5 && document.querySelector(".beside-answer")?.textContent.length > 9);
      for (const ask of Object.keys(SEEN)) {
        await go(ask);
        await until(() => document.querySelector(".beside:not(.waiting) .beside-pairs")?.textContent.length > 9);
        assert.equal(await count(ANY), 0, ask);
      }
    });

    test("worn joints are drawn worn, A's by its own wear", async () => {
      await open(at("wear"));
      await until(() => document.querySelectorAll("svg.ghost path[stroke-dasharray]").length > 3);
      const outlines = () => hand.inside(() => [...document.querySelectorAll("svg.ghost path")].map((path) => path.getAttribute("d")).join());
      const worn = await outlines();
      await click('[data-stand="new"]');
      await until((before) => [...document.querySelectorAll("svg.ghost path")].map((path) => path.getAttribute("d")).join() !== before, worn);
    });

    test("no line of it crosses a letter of the drawing, and its own letter stands clear", async () => {
      await open(at("give"));
      await until(() => document.querySelectorAll("svg.ghost path[stroke-dasharray]").length > 3);
      const found = await hand.inside(async () => {
        const { openKernel } = await import(new URL("kernel.js", document.baseURI).href);
        const { svgOf } = await import(new URL("keep/svg.js", document.baseURI).href);
        const { bench } = await openKernel(await (await fetch("words/en/first.json")).json());
        const { clientWidth: width, clientHeight: height } = document.querySelector("#field");
        bench.load(await (await fetch("scenarios/ferry-winch.json")).json());
        bench.show("turn");
        bench.widen(parseInt(document.querySelector("#badge").textContent.match(/\d+/)[0]));
        bench.layout(width, height, parseFloat(getComputedStyle(document.documentElement).fontSize) * 0.84, width < 560);
        bench.scrub(1);
        const made = (name, given) => {
          const element = document.createElementNS("http://www.w3.org/2000/svg", name);
          for (const [, key, value] of given.matchAll(/([\w-]+)="([^"]*)"/g)) element.setAttribute(key, value);
          return element;
        };
        const svg = svgOf(bench, { caption: [] }); // a policy keeps markup from being read as such
        const box = made("svg", svg.match(/<svg[^>]*/)[0]);
        for (const [, given, letters] of svg.matchAll(/<text([^>]*)>([^<]*)</g)) box.append(Object.assign(made("text", given), { textContent: letters }));
        document.body.append(box);
        const boxOf = (/** @type {SVGGraphicsElement} */ text) => { const { x, y, width: w, height: h } = text.getBBox(); return [x, y, x + w, y + h]; };
        const letters = [...box.querySelectorAll("text")].map((text) => [text.textContent, ...boxOf(text)]);
        box.remove();
        const free = [...document.querySelectorAll("svg.ghost mask rect[fill='#000']")].map((rect) => ["x", "y", "width", "height"].map((name) => Number(rect.getAttribute(name))));
        return { letters, free, own: [...document.querySelectorAll("svg.ghost text")].map(boxOf) };
      });
      assert.ok(found.letters.length > 9 && found.own.length > 0);
      for (const [letters, left, top, right, bottom] of found.letters) {
        const middle = (top + bottom) / 2; // a box of letters has room above and below them
        const kept = found.free.some(([x, y, width, height]) => x <= left + 1.5 && x + width >= right - 1.5 && y < middle && y + height > middle);
        assert.ok(kept, `${letters} at ${left}, ${top}`);
        for (const own of found.own) assert.ok(own[2] < left || right < own[0] || own[3] - 4 < top + 4 || bottom - 4 < own[1] + 4, `A on ${letters}`);
      }
    });

    test("it stands on the pictures that are handed over, with its name and its answer under them, and other programs draw it", async () => {
      const svgOf = () => hand.inside((found) => new Promise((done) => {
        const address = URL.createObjectURL.bind(URL);
        URL.createObjectURL = (blob) => (blob.text().then(done), address(blob));
        HTMLAnchorElement.prototype.click = () => {};
        [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === found).click();
      }), words["keep.svg"]);
      const dots = (/** @type {string} */ svg) => pngjs.PNG.sync.read(execFileSync("rsvg-convert", ["--format", "png", "--width", "800"], { input: svg, maxBuffer: 1e8 }));
      const kept = async (fragment) => {
        await open(fragment);
        if (fragment.includes("&a=")) await until(() => document.querySelector(".beside-answer")?.textContent.length > 20);
        await click("#keep");
        await until(() => document.querySelector("dialog.keep[open]"));
        return svgOf();
      };
      const svg = await kept(at("give"));
      assert.match(svg, /A, in thin lines: Ferry winch/);
      assert.match(svg, /<svg[^>]*><mask[^]*stroke-dasharray/);
      const bare = svg.replace(/(<svg[^>]*>)<mask[^]*<\/svg>(?=<\/svg>)/, "$1</svg>");
      assert.notEqual(bare, svg);
      const [one, other] = [svg, bare].map(dots);
      const apart = one.data.filter((value, index) => Math.abs(value - other.data[index]) > 60).length;
      assert.ok(apart > 500, `${apart} channels of dots differ`);
      assert.match(await kept(at("width")), /A, in thin lines: Ferry winch/, "the drawing of a question that shows none");
      assert.doesNotMatch(await kept(at("give").replace(/&a=.*/, "")), /in thin lines|<mask/);
    });
  });
}
