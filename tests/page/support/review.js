// The review sheet printed to a file, read and looked at: the same in every engine that prints.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, describe, test } from "node:test";
import { textOf, until } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** Width and height, points of 1/72 inch. */
const PAPERS = { a4: { format: "A4", points: [595, 842] }, letter: { format: "Letter", points: [612, 792] } };
const ROOM = 1.5;
const MOST_PAGES = 4;
/** A printed page looked at so closely, dots an inch; and the margin of the sheet less what a browser rounds, dots. */
const [DPI, EDGE] = [60, 24];
const WHITE = 250;

const startsSheet = (/** @type {string} */ word) =>
  /** @type {HTMLElement} */ ([...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word)).click();

/** The text of a printed file, its lines run together. @param {string} file */
const textIn = (file) => execFileSync("pdftotext", ["-layout", file, "-"]).toString().normalize("NFKC").replace(/\s+/g, " ");

/** Whether anything is printed within the margins of any page. @param {string} file @param {string} folder */
function inkInMargins(file, folder) {
  execFileSync("pdftoppm", ["-r", String(DPI), "-gray", file, join(folder, "page")]);
  const pages = execFileSync("ls", [folder]).toString().split("\n").filter((name) => name.endsWith(".pgm"));
  const dark = pages.map((name) => darkIn(readFileSync(join(folder, name))));
  for (const name of pages) rmSync(join(folder, name));
  return { margins: dark.map(({ margins }) => margins), inside: dark.map(({ inside }) => inside > 0) };
}

/** Dark dots of a picture in PGM, in its margins and inside them. @param {Buffer} bytes */
function darkIn(bytes) {
  const [head, wide, high] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString("latin1")) ?? [];
  const [width, height] = [Number(wide), Number(high)];
  const dots = bytes.subarray(head.length);
  const found = { margins: 0, inside: 0 };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (dots[y * width + x] >= WHITE) continue;
      found[Math.min(x, y, width - 1 - x, height - 1 - y) < EDGE ? "margins" : "inside"] += 1;
    }
  }
  return found;
}

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 * @param {(hand: any, file: string, format: string) => Promise<unknown>} print
 */
export function reviewSuite(engine, openHand, print) {
  describe(`the review sheet, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const folder = mkdtempSync(join(tmpdir(), "lightgap-sheet-"));
    after(() => rmSync(folder, { recursive: true }));
    const sheetOf = async (/** @type {string} */ fragment) => {
      await hand.open(fragment);
      await hand.click("#keep");
      await hand.until(() => document.querySelector("dialog.keep[open]"));
      await hand.inside(startsSheet, words["keep.sheet.open"]);
      await hand.until(() => document.querySelector(".review .primary:not([disabled])"));
    };

    test("every question is answered on it, and the page is left as it was", async () => {
      await hand.open("#v=1&on=ferry-thousand&ask=wear&how=turn&at=0.5&part.sampling=%7B%22seed%22%3A77%2C%22sets%22%3A2000%7D");
      await hand.until(() => document.querySelector("#over")?.textContent);
      const [of, ...figures] = await hand.inside(() => [...document.querySelectorAll("#over > *")].map((each) => each.textContent.trim()));
      const over = `${of} ${figures.join("; ")}.`;
      const before = [await hand.hash(), await hand.said("answer"), await hand.said("now")];
      await sheetOf(before[0]);
      const said = await hand.inside(() => [...document.querySelectorAll(".sheet-answers dd b")].map((each) => each.textContent));
      assert.equal(said.length, 11, "four ways to give, and seven questions more");
      const text = await hand.inside(textOf, ".review-paper");
      for (const part of [before[1], over, "from memory", "certifies nothing", "Over the limits it turns", "h6", words["left.fingers"], "cargo solve ferry-thousand.json"]) assert.ok(text.includes(part), part);
      const ranges = words["over.both"];
      assert.equal(text.split(ranges).length - 1, 6, "six questions tell what the limits leave open, the others in their own sentences");
      assert.equal(await hand.inside(textOf, ".review-seed"), "77");
      assert.match(await hand.inside(textOf, ".review-version"), /^\d+\.\d+\.\d+/);
      const [scenario, fingerprint] = [await hand.inside(async () => {
        let kept;
        URL.createObjectURL = (blob) => (kept = blob) && "about:blank#";
        HTMLAnchorElement.prototype.click = () => {};
        document.querySelectorAll("dialog.keep button").forEach((each) => /scenario/.test(each.textContent) && each.click());
        await Promise.resolve();
        return kept.text();
      }), await hand.inside(textOf, ".review-fingerprint")];
      assert.equal(createHash("sha256").update(scenario).digest("hex"), fingerprint, "the fingerprint is that of the saved file");
      await hand.press("Escape");
      assert.equal(await hand.inside(() => document.querySelector(".review") === null && !document.querySelector("main").inert), true);
      assert.deepEqual([await hand.hash(), await hand.said("answer"), await hand.said("now")], before);
    });

    for (const [paper, { format, points }] of Object.entries(PAPERS)) {
      test(`on ${format} it is a few whole pages with nothing cut off`, async () => {
        await sheetOf("#v=1&on=ferry-winch&ask=give&how=turn&at=1");
        await hand.inside((id) => {
          const size = /** @type {HTMLSelectElement} */ (document.querySelector("#review-size"));
          size.value = id;
          size.dispatchEvent(new Event("change"));
        }, paper);
        const file = join(folder, `${paper}.pdf`);
        await print(hand, file, format);
        const info = execFileSync("pdfinfo", [file]).toString();
        const [wide, high] = (/Page size:\s+([\d.]+) x ([\d.]+)/.exec(info) ?? []).slice(1).map(Number);
        assert.ok(Math.abs(wide - points[0]) < ROOM && Math.abs(high - points[1]) < ROOM, info);
        const pages = Number(/Pages:\s+(\d+)/.exec(info)?.[1]);
        assert.ok(pages >= 2 && pages <= MOST_PAGES, `${pages} pages`);
        const text = textIn(file);
        for (const part of ["The ferry winch", "It turns 0.25°", "Chosen, fixed by no standard", "SHA-256", "cargo solve ferry-winch.json", words["left.lifting"], "Checked"]) assert.ok(text.includes(part), part);
        assert.ok(!text.includes(words["over.both"]), "without limits nothing is left open");
        assert.ok(!text.includes(words["keep.copy"]) && !text.includes(words["sheet.print"]), "nothing of the page's controls");
        const { margins, inside } = inkInMargins(file, folder);
        assert.deepEqual(margins, Array(pages).fill(0), "nothing runs into the margins");
        assert.deepEqual(inside, Array(pages).fill(true), "no page is empty");
      });
    }

    test("the page itself prints as a page", async () => {
      await hand.open("#v=1&on=ferry-winch&ask=give&how=turn&at=1");
      const file = join(folder, "plain.pdf");
      await print(hand, file, "A4");
      const text = textIn(file);
      for (const part of [await hand.said("answer"), "certifies nothing", words["touching.title"]]) assert.ok(text.includes(part), part);
      assert.ok(Number(/Pages:\s+(\d+)/.exec(execFileSync("pdfinfo", [file]).toString())?.[1]) <= 3);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
