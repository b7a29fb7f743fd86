// The page turned from one language to the other: nothing that was opened, counted or chosen is lost. And what stands in
// windows, files and on paper of its own, in German.

import assert from "node:assert/strict";
import { test } from "node:test";
import { focusOn, textOf, until as untilHolds } from "./inside.js";
import { wordsOf } from "./words.js";

const [english, german] = [wordsOf("en"), wordsOf("de")];
const STEP = "#v=1&on=lesson-why-so-little-1&ask=give&how=turn&at=0";

/** @typedef {ReturnType<typeof import("./standing.js").standing>} Stand */

/** In the page: the folds that are open, by their ids, and the hands that were counted. */
const stands = () => ({
  folds: [...document.querySelectorAll("details[id][open]")].map(({ id }) => id),
  hands: [...document.querySelectorAll(".lesson-hands")].map((each) => each.textContent),
  answered: document.querySelector(".lesson-because")?.textContent !== "" && document.querySelectorAll(".lesson .right").length === 1,
});

/** In the page: the fields that refuse what they hold, by what they hold and what is said of it. */
const refusals = () => [...document.querySelectorAll("input[aria-invalid=true]")].map((each) => {
  const says = (each.getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)).find((told) => told?.matches(".fault:not([hidden])"));
  return [each.value, says?.textContent ?? ""];
});
/** In the page: types a text into a field and leaves it. */
const typeInto = (selector, text) => {
  const field = document.querySelector(selector);
  field.value = text;
  field.dispatchEvent(new Event("change", { bubbles: true }));
};

/**
 * @param {Stand} hand
 * @param {(wanted: string) => Promise<void>} choose turns the page
 */
export function turnedTests(hand, choose) {
  const { open, click, until, inside } = hand;
  const told = () => until(() => /^(?!Working|Wird).{9}/.test(document.querySelector(".lesson:not([hidden]) .lesson-say")?.textContent ?? ""));
  /** Folds come back when all of them are there, the focus last. */
  const back = () => until(() => document.activeElement?.id === "language");

  test("turned to another language it keeps open folds, hands that were counted and an answer that was shown", async () => {
    await open(STEP);
    await told();
    for (let hands = 0; hands < 2; hands++) await click(".lesson-count-hands button:last-child");
    await inside(() => { for (const id of ["sizes-fold", "work-fold"]) document.getElementById(id).open = true; });
    const before = await inside(stands);
    assert.deepEqual([before.folds, before.hands[0], before.answered], [["sizes-fold", "work-fold"], "2", false]);
    await hand.press("h");
    await choose("de");
    await told();
    await until((word) => document.body.hasAttribute("data-hall") && document.querySelector(".lesson-hall").textContent === word, german["lesson.hall.out"]);
    await until(`(wanted) => JSON.stringify((${stands})()) === wanted`, JSON.stringify(before));
    await hand.press("Escape");
    await until(() => !document.body.hasAttribute("data-hall"));
    await click(".lesson-next:not([hidden])");
    assert.equal((await inside(stands)).answered, true);
    await choose("en");
    await told();
    await back();
    assert.deepEqual(await inside(stands), { ...before, answered: true });
    await click(".lesson-close");
    await until(() => document.querySelector(".lesson").hidden);
  });

  test("turned to another language it keeps what is chosen within a question, and a comparison that is open", async () => {
    await open("#v=1&on=ferry-winch&ask=line");
    await click('[data-show="watts"]');
    await click("#compare");
    await until(() => document.querySelector(".beside:not([hidden])"));
    await inside(() => { document.querySelector(".crooked .graph-fold").open = true; });
    await choose("de");
    await back();
    await until(() => document.querySelector(".beside:not([hidden])") && document.querySelector('[data-show="watts"]').getAttribute("aria-pressed") === "true");
    assert.ok(await inside(() => document.querySelector(".crooked .graph-fold").open));
    await choose("en");
    await back();
  });

  test("turned to another language it keeps what was typed and refused, and says why in that language", async () => {
    await open("#v=1&on=tired-trike&ask=wear");
    const pin = `#${await inside((label) => [...document.querySelectorAll("#sizes label")].find((each) => each.textContent === label).getAttribute("for"), english["size.pin_diameter_mm"])}`;
    await inside(typeInto, pin, "-3.5");
    await inside(typeInto, ".wear-given input[inputmode]", "deep");
    const [before, address] = [await inside(refusals), await hand.hash()];
    assert.deepEqual(before.map(([text]) => text).sort(), ["-3.5", "deep"]);
    await choose("de");
    await until((count) => document.querySelectorAll("input[aria-invalid=true]").length === count, before.length);
    const after = await inside(refusals);
    assert.deepEqual(after.map(([text]) => text), before.map(([text]) => text));
    for (const [text, says] of after) {
      const [field, rule] = text === "deep" ? [german["wear.given"], "fault.not_a_number"] : [german["size.pin_diameter_mm"], "fault.positive"];
      assert.ok(says.includes(field) && german[rule].split(/\{\w+\}/).every((part) => says.includes(part)), `${text}: ${says}`);
    }
    assert.equal(await hand.hash(), address, "and the chain is as it was");
    await choose("en");
    await back();
  });
}

/**
 * @param {Stand} hand
 * @param {(what: string) => Promise<void>} nothing holds that no English is seen
 * @param {() => Promise<import("./hand.js").Hand>} another a second window
 */
export function germanTests(hand, nothing, another) {
  const { open, until, inside } = hand;

  test("the window of what to say speaks German, and follows", async () => {
    await open(STEP);
    await until(() => /^(?!Wird).{9}/.test(document.querySelector(".lesson-say")?.textContent ?? ""));
    const [says, asks] = [await inside(textOf, ".lesson-say"), await inside(textOf, ".lesson legend")];
    const tab = await another();
    await tab.goTo(new URL("say.html", hand.address).href);
    await tab.inside(untilHolds(() => document.querySelector("#say .next")));
    const [lang, title, text] = await tab.inside(() => [document.documentElement.lang, document.title, document.querySelector("#say").textContent]);
    await tab.close();
    assert.deepEqual([lang, title], ["de", `lightgap: ${german["lesson.notes"]}`]);
    for (const part of [says, asks, german["lesson.answer"]]) assert.ok(text.includes(part), part);
    assert.match(text, /Schritt 1 von/);
  });

  test("it is installed by its German name card", async () => {
    const card = await inside(async () => (await fetch(document.querySelector("link[rel=manifest]").href)).json());
    assert.equal(card.lang, "de");
    assert.match(card.description, /Rollenkette/);
  });

  test("the review sheet is told of in German, and numbers with points are announced", async () => {
    await open("#v=1&on=ferry-trike");
    await hand.click("#keep");
    await until(() => document.querySelector("dialog.keep[open]"));
    assert.ok((await inside(textOf, "dialog.keep")).includes(german["keep.numbers.hint"]));
    await inside((word) => [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === word).click(), german["keep.sheet.open"]);
    await until(() => document.querySelector(".review .primary:not([disabled])"));
    assert.equal(await inside(textOf, ".review-told"), german["sheet.ready"]);
    assert.equal(await inside(() => document.querySelector(".review").getAttribute("aria-label")), german["sheet.title"]);
    await inside(focusOn, "#review-size");
    await nothing("the review sheet");
    await hand.press("Escape");
    await until(() => !document.querySelector(".review"));
  });
}
