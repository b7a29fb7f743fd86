// Making a lesson in the page, the same in every engine: recorded, edited, refused, moved, undone, saved, opened again.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { before, describe, test } from "node:test";
import { standsNarrow } from "./given.js";
import { fieldLabelled, focusOn, textOf } from "./inside.js";
import { ROOT } from "./server.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** A lesson made by the hands of this suite; the kernel's reader and the schema are held to it as well. */
const MADE = `${ROOT}/tests/page/made-lesson.json`;
const RULES = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const SAY = ".making-step textarea";
const FAULT = ".making-step .fault:not([hidden])";

/**
 * @param {string} engine
 * @param {() => Promise<import("./hand.js").Hand>} openHand
 */
export function makingSuite(engine, openHand) {
  describe(`making a lesson, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { inside, click, until, put } = hand;
    const reckoned = () => until((fault) => !fault && document.querySelector("#making-places option")?.value, "");
    const button = (word) => inside((text) => [...document.querySelectorAll(".making button")].find((each) => each.textContent === text && !each.disabled).click(), words[word]);
    const press = async (word) => (await button(word), await until(() => true), await reckoned());
    const write = async (selector, text) => (await put(selector, text), await reckoned());
    const choose = (selector, value) => inside((found, wanted) => {
      const select = document.querySelector(found);
      select.value = wanted;
      select.dispatchEvent(new Event("change"));
    }, selector, value);
    const steps = () => inside(() => [...document.querySelectorAll(".making-list button span:nth-child(2)")].map((each) => each.textContent));
    const preview = async (pattern) => until((source) => new RegExp(source).test(document.querySelector(".lesson-say")?.textContent ?? ""), pattern);
    /** What the page saves, caught at the link. */
    const saved = () => inside((word) => new Promise((done) => {
      const address = URL.createObjectURL.bind(URL);
      let kept = new Blob();
      URL.createObjectURL = (blob) => address((kept = blob));
      HTMLAnchorElement.prototype.click = async function caught() {
        done({ name: this.download, text: await kept.text() });
      };
      [...document.querySelectorAll(".making button")].find((each) => each.textContent === word).click();
    }), words["making.save"]);
    const openFile = (text) => inside((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], "given.json", { type: "application/json" }));
      const input = document.querySelector("#making-file");
      input.files = data.files;
      input.dispatchEvent(new Event("change"));
    }, text);
    const opened = async () => {
      await click("#lessons");
      await until(() => document.querySelector("dialog.lessons[open]"));
      await click(".lessons-make");
      await until(() => document.querySelector(".making:not([hidden])"));
      await reckoned();
    };
    before(async () => {
      await hand.open();
      await opened();
    });

    test("the bench is the first step, its sentence filled with the kernel's number as it will be said", async () => {
      assert.deepEqual(await steps(), [words["making.say.new"]]);
      await write(SAY, "The pin has  of room.");
      await inside((found) => (document.querySelector(found).focus(), document.querySelector(found).setSelectionRange(12, 12)), SAY);
      await choose("#making-places", "geometry.pin_clearance_mm");
      await press("making.put");
      assert.deepEqual(await steps(), ["The pin has {geometry.pin_clearance_mm} of room."]);
      await preview("^The pin has 0\\.04\\smm of room\\.$");
    });

    test("a guess, its choices and its reason are written, and a face is lit", async () => {
      await press("making.ask");
      await write(".making-guess fieldset > .making-text input", "What stops it?");
      await press("making.ask.more");
      for (const [index, choice] of ["The plates", "The pin", "Nothing"].entries()) await write(`.making-choices li:nth-child(${index + 1}) .making-text input`, choice);
      await click(".making-choices li:nth-child(2) input[type=radio]");
      await write(".making-guess fieldset > .making-text textarea", "It bears at both ends after {play.turn_limit_rad}.");
      await choose("#making-light", "first.pin-bore.far.right");
      await reckoned();
      assert.equal(await inside(textOf, ".lesson legend"), "What stops it?");
      assert.equal(await inside(() => document.querySelectorAll(".lesson-choice").length), 3);
    });

    test("what is changed on the bench is recorded as the next step, as what it changes", async () => {
      await put(await inside(fieldLabelled, words["size.outer_spacing_mm"]), "18.15");
      await click('[data-how="aside"]');
      await press("making.record");
      await write(SAY, "Now it slides {play.offset_limit_mm} each way.");
      await write(".making > .making-text input", "Two gaps");
      assert.match(await inside(textOf, ".making-shows"), /Aside.*Spacing of outer plates 18\.15 mm/);
      const { name, text } = await saved();
      assert.equal(name, "two-gaps.json");
      if (process.env.WRITE) await writeFile(MADE, text);
      assert.equal(text, await readFile(MADE, "utf8"));
      assert.deepEqual(JSON.parse(text).lesson[1].set, { "chain.outer_spacing_mm": 18.15 });
    });

    test("what cannot be is refused beside its field and the last good text stays", async () => {
      for (const [wrong, why] of [["", /something must be said/], ["It has {play.luck_mm}.", /no number called play\.luck_mm/], ["{ of room", /brace stands alone/]]) {
        await inside((found, value) => {
          const field = document.querySelector(found);
          field.focus();
          field.value = value;
          field.dispatchEvent(new Event("change"));
        }, SAY, wrong);
        await until(() => true);
        assert.match(await inside(textOf, FAULT), why);
      }
      await write(SAY, "Now it slides {play.offset_limit_mm} each way.");
      assert.equal(await inside(textOf, FAULT), "");
      assert.equal((await steps())[1], "Now it slides {play.offset_limit_mm} each way.");
      await openFile("{");
      await until(() => /cannot be read/.test(document.querySelector("#making-file-fault")?.textContent ?? ""));
      await openFile('{"format": 1, "title": "x", "chain": {"pitch_mm": 12.7}, "lesson": [{"say": ""}]}');
      await until(() => /refused/.test(document.querySelector("#making-file-fault")?.textContent ?? ""));
      assert.equal((await steps()).length, 2);
    });

    test("steps are moved, doubled and deleted, and each change can be taken back", async () => {
      const [first, second] = await steps();
      await press("making.earlier");
      assert.deepEqual(await steps(), [second, first]);
      await press("making.double");
      assert.deepEqual(await steps(), [second, second, first]);
      await press("making.drop");
      await press("making.undo");
      await press("making.undo");
      await press("making.undo");
      assert.deepEqual(await steps(), [first, second]);
      await press("making.redo");
      assert.deepEqual(await steps(), [second, first]);
      await press("making.undo");
    });

    test("a reload keeps the lesson and the panel, and the lesson is tried from its start", async () => {
      const before = await steps();
      await hand.reload();
      await until(() => document.querySelector(".making:not([hidden])"));
      await reckoned();
      assert.deepEqual(await steps(), before);
      await button("making.try");
      await preview("^The pin has 0\\.04\\smm");
      assert.equal(await inside(() => document.querySelector(".making").hidden), true);
      await click(".lesson-next");
      assert.match(await inside(textOf, ".lesson-because"), /after 0\.25°/);
      await click(".lesson-next");
      await preview("slides 0\\.34\\smm each way");
      await click(".lesson-change");
      await until(() => document.querySelector(".making:not([hidden])"));
      await reckoned();
      assert.equal(await inside(textOf, ".making-list [aria-current] .number"), "2");
    });

    test("a saved file is opened again and gives the same file; a lesson of ours can be gone on with", async () => {
      const file = await readFile(MADE, "utf8");
      await openFile(file);
      await until(() => /given\.json is open/.test(document.querySelector(".making-files .making-told")?.textContent ?? ""));
      await reckoned();
      assert.equal((await saved()).text, file);
      await choose("#making-begin", "where-the-oil-goes");
      await press("making.begin.go");
      await until(() => document.querySelectorAll(".making-list li").length > 5);
      await preview("Mud and old oil|brush");
    });

    test("it is worked by the keyboard alone, each field with a name", async () => {
      const nameless = await inside(() => [...document.querySelectorAll(".making :is(input, select, textarea, button)")].filter((each) => {
        const label = each.getAttribute("aria-label") ?? each.labels?.[0]?.textContent ?? each.textContent;
        return !label?.trim();
      }).map((each) => each.outerHTML));
      assert.deepEqual(nameless, []);
      await inside(focusOn, ".making-list li:nth-child(2) button");
      await hand.press("Enter");
      await until(() => document.querySelector(".making-list li:nth-child(2) [aria-current]"));
      await reckoned();
    });

    test("no accessibility rule is broken, and a narrow window needs no sideways scroll", async () => {
      await inside(`() => { ${RULES} }`);
      const broken = await inside(async (tags) => {
        const { violations } = await globalThis.axe.run(".making", { runOnly: tags, resultTypes: ["violations"] });
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
      }, ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]);
      assert.deepEqual(broken, []);
      if (hand.page?.setViewportSize) await standsNarrow(hand);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
