// Files made to do harm: texts that hold scripts stay letters wherever they are shown, and files of no sense are refused
// in a sentence while the chain stays. The same in every engine that is asked.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, describe, test } from "node:test";
import { textOf } from "./inside.js";
import { ROOT } from "./server.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** A text that runs wherever it is taken for markup, by attribute, element or end of an element. */
const SCRIPT = `"'></title></style></text></svg><script>ran=1</script><img src=x onerror=ran=1><svg onload=ran=1>`;
const trike = JSON.parse(readFileSync(join(ROOT, "scenarios/ferry-trike.json"), "utf8"));
const armed = {
  ...trike, title: `T${SCRIPT}`, about: `A${SCRIPT}`, source: `S${SCRIPT}`,
};
const lesson = { ...armed, lesson: [
  { say: `L${SCRIPT}`, ask: { text: `Q${SCRIPT}`, choices: [`C${SCRIPT}`, `D${SCRIPT}`], answer: 1, because: `B${SCRIPT}` } }, { say: `M${SCRIPT}` },
] };
/** More than any file that is read, bytes. */
const HUGE = 50_000_000;
/** Deeper than any reader that calls itself can go. */
const DEEP = 200_000;

/** In the page: a file let fall on it; `repeat` writes its text so many times. */
const drop = (/** @type {string|number[]} */ content, /** @type {number} */ repeat = 1) => {
  const data = new DataTransfer();
  const parts = typeof content === "string" ? Array(repeat).fill(content) : [new Uint8Array(content)];
  data.items.add(new File(parts, "brought.json", { type: "application/json" }));
  const fault = /** @type {HTMLElement|null} */ (document.querySelector("dialog.keep .fault"));
  if (fault) fault.hidden = true;
  dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
};
/** In the page: what has become markup that was meant as text. */
const alive = () => [
  ...("ran" in globalThis ? ["it ran"] : []),
  ...[...document.querySelectorAll("img:not([src^='blob:']), body script, [onload], [onerror], [onclick]")].map((each) => each.outerHTML.slice(0, 80)),
];
/** What a drawing is made of. */
const DRAWN = ["svg", "g", "path", "line", "text", "tspan", "title", "desc", "rect", "circle"];
const refusal = "dialog.keep .fault:not([hidden])";

/** Bytes of a file in UTF-16 without its mark, by which some engines know it. @param {string} text */
const utf16 = (text) => [...Buffer.from(text, "utf16le")];
const text = (/** @type {object} */ value) => JSON.stringify(value);
const nested = (/** @type {string} */ before, /** @type {string} */ behind) => `${before}${"[".repeat(DEEP)}${"]".repeat(DEEP)}${behind}`;

/** Files that are refused: what they are, their text or bytes, and what the sentence says. @type {[string, string|number[], RegExp][]} */
const REFUSED = [
  ["an archive", [...Buffer.from("PK\u0003\u0004"), ...Array(200).fill(0x9c)], /cannot be read as JSON/],
  ["text in UTF-16", utf16(text(trike)), /cannot be read as JSON/],
  ["bytes that are no text", [0x22, 0xff, 0xfe, 0xc0, 0x80, 0x22], /brought\.json/],
  ["a number that is none", '{"format": NaN}', /cannot be read as JSON/],
  ["an endless number", '{"format": -Infinity}', /cannot be read as JSON/],
  ["a number in hexadecimal", '{"format": 0x1}', /cannot be read as JSON/],
  ["a number too large", text({ ...trike, chain: { ...trike.chain, pitch_mm: 0 } }).replace('"pitch_mm":0', '"pitch_mm":1e999'), /Pitch/],
  ["the name of no number", text({ ...trike, chain: { ...trike.chain, pitch_mm: "NaN" } }), /Pitch/],
  ["a size in words of another script", text({ ...trike, chain: { ...trike.chain, pitch_mm: "１２" } }), /Pitch/],
  ["a title of nothing to see", text({ ...trike, title: "\u2003\u00a0" }), /brought\.json/],
  ["lists in lists", nested("", ""), /brought\.json/],
  ["lists in lists in a scenario", nested('{"format":1,"title":"x","chain":{},"deep":', "}"), /brought\.json/],
  ["lists in lists for a size", nested('{"format":1,"title":"x","chain":{"pitch_mm":', "}}"), /brought\.json/],
];

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 * @param {(hand: any, file: string) => Promise<unknown>} print
 */
export function inertSuite(engine, openHand, print) {
  describe(`files that mean harm, in ${engine}`, () => {
    /** @type {any} */
    let real;
    const hand = standing({}, async (wishes) => (real = await openHand(wishes)));
    const { inside, until, click } = hand;
    const folder = mkdtempSync(join(tmpdir(), "lightgap-inert-"));
    after(() => rmSync(folder, { recursive: true }));
    const inert = async () => assert.deepEqual(await inside(alive), []);
    const bring = async (/** @type {object} */ scenario) => {
      await hand.open();
      const before = await hand.hash();
      await inside(drop, text(scenario));
      await until((/** @type {string} */ old) => location.hash !== old, before);
      await hand.settled();
    };
    const refused = async (/** @type {string|number[]} */ content, /** @type {number} */ repeat = 1) => {
      await inside(drop, content, repeat);
      await until((/** @type {string} */ found) => document.querySelector(found), refusal);
      return inside(textOf, refusal);
    };

    test("a title that holds a script is letters in the page, its lists and its address", async () => {
      await bring(armed);
      const shown = await inside(textOf, "#about");
      for (const letter of ["T", "A", "S"]) assert.ok(shown.includes(letter + SCRIPT), `${letter} in ${shown}`);
      assert.equal(await inside(() => document.querySelector("#scenario").selectedOptions[0].textContent), `T${SCRIPT}`);
      await inert();
      await hand.reload();
      assert.ok((await inside(textOf, "#about")).includes(`T${SCRIPT}`), "after a reload too");
      await inert();
    });

    test("it is letters in the picture that is handed over", async () => {
      await bring(armed);
      await click("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
      const handed = await inside(async (/** @type {string} */ word) => {
        const handed = new Promise((done) => (URL.createObjectURL = (blob) => (done(/** @type {Blob} */ (blob).text()), "about:blank#")));
        HTMLAnchorElement.prototype.click = () => {};
        /** @type {HTMLElement} */ ([...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word)).click();
        return handed;
      }, words["keep.svg"]);
      // The page itself may take no text for markup, so it is read where there is no policy.
      await hand.goTo("about:blank");
      const found = await inside((/** @type {string} */ svg) => {
        const read = new DOMParser().parseFromString(svg, "image/svg+xml");
        const all = [...read.querySelectorAll("*")];
        return {
          names: [...new Set(all.map((each) => each.localName))], text: read.documentElement.textContent,
          acts: all.flatMap((each) => each.getAttributeNames()).filter((name) => /^on|href/.test(name)),
        };
      }, handed);
      assert.ok(found.text.includes(`T${SCRIPT}`), "the title is there");
      assert.deepEqual([found.acts, found.names.filter((/** @type {string} */ name) => !DRAWN.includes(name))], [[], []]);
    });

    test("it is letters on the review sheet, on the screen and printed", async () => {
      await bring(armed);
      await click("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
      await inside((/** @type {string} */ word) => /** @type {HTMLElement} */ ([...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word)).click(), words["keep.sheet.open"]);
      await until(() => document.querySelector(".review .primary:not([disabled])"));
      assert.ok((await inside(textOf, ".review-paper")).includes(`T${SCRIPT}`));
      await inert();
      const file = join(folder, "sheet.pdf");
      await print(real, file);
      const printed = execFileSync("pdftotext", ["-layout", file, "-"]).toString().replace(/\s+/g, "");
      assert.ok(printed.includes("<script>ran=1</script>"), "the letters are printed");
    });

    test("it is letters in every part of a lesson, in the hall and in the window that says what to say", async () => {
      await bring(lesson);
      const seen = async (/** @type {string} */ found, /** @type {string} */ letter) => {
        await until((/** @type {string} */ one, /** @type {string} */ part) => document.querySelector(one)?.textContent?.includes(part), found, letter + SCRIPT.slice(0, 20));
        assert.ok((await inside(textOf, found)).includes(letter + SCRIPT), letter);
      };
      await seen(".lesson-say", "L");
      for (const letter of ["Q", "C", "D"]) await seen(".lesson", letter);
      await click(".lesson-choice");
      await seen(".lesson", "B");
      await inert();
    });

    test("it is letters in the page in one file, opened from a disk", async () => {
      await bring(armed);
      const address = await hand.hash();
      assert.match(address, /file=[\w-]{20,}/);
      const file = join(folder, "one.html");
      execFileSync("cargo", ["page", "--single", file], { cwd: ROOT, stdio: "pipe" });
      await hand.goTo("about:blank");
      await hand.goTo(`file://${file}${address}`);
      await hand.arrived();
      await until((/** @type {string} */ title) => document.querySelector("#about")?.textContent?.includes(title), `T${SCRIPT}`);
      assert.deepEqual((await inside(alive)).filter((/** @type {string} */ found) => !/^<script( type="module")?>/.test(found)), []);
      assert.equal(await inside(() => "ran" in globalThis), false);
    });

    test("a file of no sense is refused in a sentence, and the chain stays", async () => {
      await hand.open();
      const [before, answer] = [await hand.hash(), await hand.said("answer")];
      for (const [what, content, says] of REFUSED) {
        assert.match(await refused(content), says, what);
        assert.deepEqual([await hand.hash(), await hand.said("answer")], [before, answer], what);
      }
      await inert();
    });

    test("a file of fifty megabytes is refused before it is read", async () => {
      await hand.open();
      const before = await hand.hash();
      assert.match(await refused("[1,2,3,4]".padEnd(1000), HUGE / 1000), /larger/);
      assert.equal(await hand.hash(), before);
    });

    test("letters of every kind in a title are shown as they are", async () => {
      const title = "\u202eزنجير \u0e00\u0300\u0489 𝔠𝔥𝔞𝔦𝔫 👩‍🔧 \ufeff\u0007";
      await bring({ ...trike, title });
      assert.ok((await inside(textOf, "#about")).includes(title));
      await hand.reload();
      assert.ok((await inside(textOf, "#about")).includes(title));
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
