// The page in German, the same in every engine: asked for, preferred, chosen on the page; commas shown and read; no English
// left; and the page from right to left.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { before, describe, test } from "node:test";
import { centreOf, fieldState, focusOn, pictureMark } from "./inside.js";
import { germanTests, turnedTests } from "./turned.js";
import { ROOT } from "./server.js";
import { standing } from "./standing.js";
import { wordsOf } from "./words.js";

const [words, german] = [wordsOf("en"), wordsOf("de")];
const GRIP = "#grips button:not([hidden])";
const QUESTIONS = { give: "ferry-winch", touch: "ferry-winch", line: "ferry-trike", fit: "ferry-thousand", wear: "tired-trike", reach: "oiled-winch", surface: "dusty-trike", width: "ferry-trike" };
/** Shorter than this a piece of a sentence is no sign of a language. */
const TELLING = 12;
/** Names of standards, addresses and versions have points. */
const POINTED = /\b[A-Z]\d+\.\d+|https?:\S+|\b\d+\.\d+\.\d+/g;

/** Pieces of English sentences, between their places, that German does not say as well. */
const ENGLISH = [
  ...Object.entries(words).filter(([id, text]) => german[id] !== text).flatMap(([, text]) => text.split(/\{\w+\}/)),
  ...readdirSync(join(ROOT, "scenarios")).filter((name) => /^[a-z-]+\.json$/.test(name) && !/index|schema/.test(name)).flatMap((name) => {
    const { title, about } = JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
    return [title, about];
  }),
].map((piece) => piece.trim()).filter((piece) => piece.length >= TELLING && / /.test(piece));

/** In the page: every text that is seen or heard, folds opened. */
const texts = () => {
  for (const fold of document.querySelectorAll("details")) fold.open = true;
  const all = [document.body.innerText];
  for (const each of document.querySelectorAll("[aria-label], [title], [aria-valuetext], [placeholder]")) {
    for (const name of ["aria-label", "title", "aria-valuetext", "placeholder"]) all.push(each.getAttribute(name) ?? "");
  }
  return all.join("\n");
};

/**
 * What is English in a text, or a number with a point.
 * @param {string} text
 */
const foreign = (text) => [
  ...ENGLISH.filter((piece) => text.includes(piece)),
  ...(text.replace(POINTED, "").match(/.{0,20}\d\.\d.{0,10}/g) ?? []),
];

/**
 * @param {string} engine
 * @param {(wishes?: object) => Promise<any>} openHand
 * @param {() => Promise<any>} openGerman a browser whose user prefers German
 * @param {number[]} widths of the window, px: those that this driver can have, the usual one last
 */
export function tonguesSuite(engine, openHand, openGerman, widths) {
  const tongue = () => [document.documentElement.lang, document.documentElement.dir];

  describe(`German in ${engine}, where a browser prefers English`, () => {
    const hand = standing({}, openHand);
    const { open, said, put, undo, hash } = hand;

    /** Chooses a language on the page and waits for the page in it. */
    const choose = async (wanted) => {
      await hand.inside((value) => {
        const menu = document.querySelector("#language");
        menu.value = value;
        setTimeout(() => menu.dispatchEvent(new Event("change")), 20);
      }, wanted);
      const there = () => hand.inside((lang) => document.documentElement.lang === lang && document.body.classList.contains("ready"), wanted).catch(() => false);
      for (let tries = 0; tries < 200 && !(await there()); tries++) await new Promise((next) => setTimeout(next, 50));
      await hand.arrived();
    };
    const field = (of) => hand.inside((label) => `#${[...document.querySelectorAll("#sizes label")].find((each) => each.textContent === label).getAttribute("for")}`, of["size.pin_diameter_mm"]);

    test("an address asks for it, and the next one need not", async () => {
      await open("?lang=de");
      assert.deepEqual(await hand.inside(tongue), ["de", "ltr"]);
      assert.match(await said("answer"), /^Sie schwenkt um \d,\d+°/);
      await open("?lang=xx");
      assert.deepEqual(await hand.inside(tongue), ["en", "ltr"]);
      assert.match(await said("answer"), /^It turns \d\.\d+°/);
      assert.ok(foreign(await hand.inside(texts)).length > 60, "an English page is known as one");
    });

    test("chosen on the page it keeps everything that was done, and is remembered", async () => {
      await open("#v=1&on=ferry-trike&ask=touch&how=turn&at=0.5");
      await put(await field(words), "3.5");
      const [address, drawn] = [await hash(), (await hand.inside(texts)).match(/Touching\n(\d+)/)?.[1]];
      await choose("de");
      assert.equal(await hash(), address);
      assert.equal((await hand.inside(texts)).match(/Berührt\n(\d+)/)?.[1], drawn);
      assert.equal((await hand.inside(fieldState, await field(german))).value, "3,50");
      await undo();
      assert.notEqual(await hash(), address, "the change from before can be taken back");
      await open();
      assert.deepEqual(await hand.inside(tongue), ["de", "ltr"], "another visit speaks it too");
      await choose("en");
      assert.match(await said("answer"), /^It turns/);
    });

    turnedTests(hand, choose);

    test("a comma is read, a point too, and what is no number is refused with the way to write one", async () => {
      await open("?lang=de");
      const pin = await field(german);
      for (const [typed, shown] of [["5,9", "5,90"], ["5.8", "5,80"], ["0 005,75", "5,75"]]) {
        await put(pin, typed);
        assert.equal((await hand.inside(fieldState, pin)).value, shown);
      }
      const address = await hash();
      assert.match(address, /pin_diameter_mm=5\.75/, "an address has no language");
      await put(pin, "1.234,5");
      const refused = await hand.inside(fieldState, pin);
      assert.deepEqual([refused.value, refused.invalid, await hash()], ["1.234,5", "true", address]);
      assert.equal(refused.fault, german["fault.not_a_number"].replace("{field}", german["size.pin_diameter_mm"]).replace("{value}", "1.234,5"));
      await put(pin, "-3");
      assert.match((await hand.inside(fieldState, pin)).fault, /Bolzendurchmesser.*−3,00 mm/);
      await put(pin, "5,75");
      await hand.inside(focusOn, pin);
      await hand.press("ArrowUp");
      assert.equal((await hand.inside(fieldState, pin)).value, "5,76", "an arrow key goes on");
    });

    /** The page from right to left. */
    const turn = () => hand.inside(() => { document.documentElement.dir = "rtl"; dispatchEvent(new Event("resize")); });

    test(`from right to left nothing overflows and the drawing is the same, ${widths.join(" and ")} px wide`, async () => {
      await open("?lang=de");
      for (const [ask, on] of Object.entries(QUESTIONS)) {
        await hand.go(`#v=1&on=${on}&ask=${ask}&how=turn&at=1`);
        for (const width of widths) {
          await resize(hand.page, width);
          await hand.settled();
          const before = await hand.inside(pictureMark);
          await turn();
          await hand.settled();
          assert.ok((await hand.inside(() => document.documentElement.scrollWidth - innerWidth)) <= 0, `${ask} is too wide at ${width}`);
          assert.deepEqual(await hand.inside(pictureMark), before, `${ask} is mirrored at ${width}`);
          await hand.inside(() => { document.documentElement.dir = "ltr"; });
        }
      }
    });

    test("from right to left the grip lies on its link", async () => {
      await open("?lang=de");
      await turn();
      await hand.inside(focusOn, "#scrub");
      await hand.press("Home");
      const [low, from] = [await said("now"), await hand.inside(centreOf, GRIP)];
      await hand.drag([from, { x: from.x, y: from.y - 60 }, { x: from.x, y: Math.max(4, from.y - 160) }]);
      assert.notEqual(await said("now"), low);
      await hand.click('#modes [data-how="aside"]');
      assert.match(await said("answer"), new RegExp(`^${german["answer.aside.face"].split(" {")[0]}`));
    });

    test("there was no complaint", () => {
      const left = /NetworkError when attempting to fetch|error loading dynamically imported module/; // what was still asked for when a page was left
      assert.deepEqual(hand.complaints().filter((said) => !left.test(said)), []);
    });
  });

  describe(`German in ${engine}, where a browser prefers it`, () => {
    /** @type {any} */
    let real;
    const hand = standing({}, async () => (real = await openGerman()));
    const { open, click, until } = hand;
    before(() => open());
    const nothing = async (what) => assert.deepEqual(foreign(await hand.inside(texts)), [], what);

    for (const [ask, on] of Object.entries(QUESTIONS)) {
      test(`no English is left in the question ${ask}`, async () => {
        await hand.go(`#v=1&on=${on}&ask=${ask}`);
        assert.deepEqual(await hand.inside(tongue), ["de", "ltr"]);
        await hand.inside(texts); // folds are filled when they open
        await hand.settled();
        await until(() => document.body.innerText.length > 400);
        await nothing(ask);
      });
    }

    test("nor in what stands over the page: keeping, lessons, comparing, the review sheet", async () => {
      await open();
      for (const [button, dialog] of [["#keep", "dialog.keep"], ["#lessons", "dialog.lessons"]]) {
        await click(button);
        await until((found) => document.querySelector(`${found}[open] button`), dialog);
        await nothing(button);
        await hand.inside((found) => document.querySelector(found).close(), dialog);
      }
      await click("#compare");
      await until(() => document.querySelector(".beside:not([hidden])"));
      await nothing("#compare");
      await open("#v=1&on=ferry-trike");
      await click("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
      await hand.inside((word) => [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click(), german["keep.sheet.open"]);
      await until(() => document.querySelector(".review-paper"));
      await nothing("the review sheet");
      assert.match(await hand.inside(() => document.querySelector(".review-date").textContent), /\d{1,2}\. \p{L}+ \d{4}/u);
    });

    germanTests(hand, nothing, () => real.another());

    test("a table goes to a spreadsheet with commas and semicolons, and comes back", async () => {
      await open("#v=1&on=ferry-thousand&ask=fit");
      await hand.inside(texts);
      const press = (word) => hand.inside((text) => [...document.querySelectorAll(".fit-block button")].find((each) => each.textContent === text).click(), german[word]);
      await press("fit.sheet.copy");
      await until(() => document.querySelector(".fit-block textarea").value !== "");
      const table = await hand.value(".fit-block textarea");
      assert.match(table, /^dimension;size_mm;/);
      assert.match(table, /pin_diameter_mm;3,6;0,008;/);
      const paste = async (text) => {
        await hand.inside((table) => { document.querySelector(".fit-block textarea").value = table; }, text);
        await press("fit.sheet.take");
      };
      for (const [text, told] of [["", /^Es ist nichts eingefügt: erwartet wird/], ["dimension;minus_mm;plus_mm\nbore_mm;0,004", /^Zeile 1: Das Abmaß nach oben fehlt: die Zeile endet mit Zelle 2,/]]) {
        await paste(text);
        await until((start) => new RegExp(start).test(document.querySelector("#fit-rows").textContent), told.source);
      }
      await paste("dimension;size_mm;minus_mm;plus_mm\nbore_mm;3,625;0,004;0,0045");
      await until(() => document.querySelectorAll(".fit-limits tbody tr:not(.fault-row)").length === 1);
      assert.equal(await hand.inside(() => document.querySelector('[data-at="bore_mm.2"]').value), "0,0045");
    });

    test("a lesson is told in German from its first step to its last, its numbers with commas", async () => {
      await open("#v=1&on=lesson-why-so-little-1");
      await until((title) => document.querySelector(".lesson-count")?.textContent.includes(title), "Warum");
      for (let step = 1; ; step++) {
        await until((wait) => ![wait, ""].includes(document.querySelector(".lesson-say").textContent), german["lesson.reckoning"]);
        await nothing(`step ${step}`);
        const on = await hand.hash();
        await click(".lesson-next");
        await click(".lesson-next");
        await hand.settled();
        if ((await hand.hash()) === on) break;
        assert.ok(step < 12);
      }
    });

    test("the stage alone and a picture to hand on speak German", async () => {
      await open("?stage=alone");
      await nothing("alone");
      assert.equal(await hand.inside(() => document.querySelector(".alone-whole").textContent), german["alone.whole"]);
      const svg = await hand.inside(async () => {
        const { drawing } = await import("./keep/picture.js");
        const { openKernel } = await import("./kernel.js");
        const { loadWords } = await import("./words.js");
        const { newWork } = await import("./work.js");
        await loadWords("keep");
        const { bench } = await openKernel(await loadWords("first"));
        bench.load(await (await fetch("scenarios/ferry-winch.json")).json());
        bench.show("turn");
        bench.scrub(1);
        bench.layout(900, 700, 14, false);
        return drawing({ bench, state: bench.state(), stood_worn_mm: 0, work: newWork("ferry-winch") }, 900);
      });
      assert.ok(svg.includes("0,25°") && svg.includes(german["draw.name.inner"]), "the drawing");
      assert.deepEqual(foreign(svg.replace(/<[^>]*>/g, "\n").replace(/<title>[^]*?<\/title>|<desc>[^]*?<\/desc>/g, "")).filter((piece) => !/winch|Marlhythe/.test(piece)), []);
    });
    test("there was no complaint", () => assert.deepEqual(hand.complaints(), []));
  });
}

/** The window as wide; one driver has no other than the usual. @param {any} page @param {number} width */
const resize = (page, width) => page.setViewportSize?.({ width, height: 900 });
