// Will every one fit: drawn, watched, stopped, the worst set on the stage, a table with a bad row, sorted parts; by hand and
// by keys alone. One page serves all that leave it as it was.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { crowdTests } from "../support/crowds.js";
import { byKeysAlone } from "../support/fit-keys.js";
import { focusOn, textOf } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

describe("many chains of one drawing, in Chromium", () => {
  const hand = standing();
  const { open, put, click, until, said, hash } = hand;
  const anew = () => open("#v=1&on=ferry-thousand&ask=fit");
  before(anew);

  const choose = (selector, value) => hand.inside((found, wanted) => {
    const select = document.querySelector(found);
    select.value = wanted;
    select.dispatchEvent(new Event("change"));
  }, selector, value);
  const limitField = (part, column) => hand.inside((wanted, at) => {
    const row = [...document.querySelectorAll("#fit-limits-body tr")].find((each) => each.textContent.startsWith(wanted));
    const field = row.querySelectorAll("input")[at];
    field.id = "field-of-the-test";
    return field.value;
  }, part, column);

  test("the answer tells how many fail, who eats the gap, and how well that is known", async () => {
    assert.match(await said("answer"), /About \d+ in \d+ do not fit/);
    assert.ok((await said("surprise")).includes(words["size.inner_plate_mm"]));
    assert.match(await said("slope"), /± [\d.]+ %/);
    assert.equal(await hand.inside(() => document.querySelectorAll(".fit-picture .block").length > 2), true);
  });

  crowdTests(hand);

  test("clearance and tolerance are moved each by itself, and the bench stays as it is", async () => {
    const before = await hash();
    const told = () => hand.inside(() => document.querySelector(".fit-tried").textContent);
    const slide = async (index, value) => {
      const old = await told();
      await hand.inside((at, to) => {
        const input = document.querySelector(".fit-tried").parentElement.querySelectorAll("input[type=range]")[at];
        input.value = to;
        input.dispatchEvent(new Event("input"));
      }, index, value);
      await until((before) => document.querySelector(".fit-tried").textContent.replaceAll("\u00a0", " ") !== before, old);
    };
    const numbers = (text) => /gap is ([\d.]+) mm; .* ± ([\d.]+) mm\. ([\d.]+) % fail/.exec(text).slice(1).map(Number);
    await until(() => /\s% fail/.test(document.querySelector(".fit-tried").textContent));
    const [gap, tolerance] = numbers(await told());
    await slide(0, "0.05");
    const bigger = numbers(await told());
    assert.ok(Math.abs(bigger[0] - gap - 0.05) < 0.0051, `${bigger}`);
    assert.equal(bigger[1], tolerance);
    await slide(1, "2");
    const unsure = numbers(await told());
    assert.equal(unsure[0], bigger[0]);
    assert.ok(Math.abs(unsure[1] - 2 * tolerance) < 0.0051, `${unsure}`);
    assert.ok(unsure[2] > bigger[2], `${unsure}`);
    assert.equal(await hash(), before);
  });

  test("the copied table is one that is taken back, and changes nothing", async () => {
    await hand.inside(() => (document.querySelector(".fit textarea").closest("details").open = true));
    const before = await hand.inside(() => document.querySelector("#fit-limits-body").textContent);
    await hand.inside(() => document.querySelectorAll(".fit textarea ~ .fit-row button")[1].click());
    await until(() => document.querySelector(".fit textarea").value.includes("outer_spacing_mm"));
    const copied = await hand.inside(() => document.querySelector(".fit textarea").value);
    assert.match(copied, /^dimension,size_mm,minus_mm,plus_mm,/);
    assert.equal(await hand.inside(() => document.activeElement.selectionEnd - document.activeElement.selectionStart), copied.length, "selected, to be copied by hand");
    await hand.inside(() => document.querySelectorAll(".fit textarea ~ .fit-row button")[0].click());
    await until(() => document.querySelector("#fit-rows").hidden);
    assert.equal(await hand.inside(() => document.querySelector("#fit-limits-body").textContent), before);
  });

  test("parts are sorted before one's eyes, each where the kernel has it, and told in words", async () => {
    await until(() => document.querySelector(".fit-three .hint").textContent !== "");
    assert.equal(await hand.inside(() => document.querySelector("#fit-sort") === null), true, "fetched when it is opened");
    await hand.page.emulateMedia({ reducedMotion: "no-preference" });
    await hand.inside(() => ([...document.querySelectorAll(".fit-block[data-look=sorted] details")].at(-1).open = true));
    await until(() => document.querySelector("#fit-sort"));
    const sorted = () => hand.inside(() => Number(document.querySelector("#fit-sort").nextElementSibling.value));
    assert.equal(await sorted(), 0, "it waits for whoever wants to watch");
    await hand.inside(() => {
      const part = document.querySelector("#fit-sort").closest("details");
      window.told = { tables: 0, moves: 0 };
      new MutationObserver(() => window.told.tables++).observe(part.querySelector("table"), { childList: true });
      new MutationObserver(() => window.told.moves++).observe(part.querySelector("svg"), { attributes: true, subtree: true });
    });
    await hand.inside(focusOn, "#fit-sort");
    await hand.press("Enter");
    await until(() => Number(document.querySelector("#fit-sort").nextElementSibling.value) > 3);
    await hand.press("Enter"); // it pauses
    const [{ tables, moves }, lie] = [await hand.inside(() => window.told), await sorted()];
    assert.ok(tables <= lie && moves > tables, `${tables} tables told of ${lie} parts that lie, and ${moves} frames moved what was on its way`);
    await hand.page.emulateMedia({ reducedMotion: "reduce" });
    await hand.press("Enter"); // without motion the end is there at once
    assert.equal(await sorted(), Number(await hand.inside(() => document.querySelector("#fit-sort").nextElementSibling.max)));
    const { rows, links, dots, count, classes } = await hand.inside(async () => {
      const { labour } = await import(new URL("labour.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const { dots, classes } = await labour("test", "fit", scenario, { classes: scenario.matching.classes });
      const part = document.querySelector("#fit-sort").closest("details");
      const rows = [...part.querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => Number(cell.textContent)));
      return { rows, links: part.querySelectorAll(".link").length, count: part.querySelectorAll("circle").length, dots, classes };
    });
    const pairs = dots[0].filter(([, partner]) => partner >= 0 && partner < dots[0].length);
    assert.equal(count, dots[0].length + dots[1].length);
    assert.equal(links, pairs.length);
    assert.ok(pairs.length > 50, String(pairs.length));
    const of = (row, bin) => row.filter(([, , kind]) => kind === bin).length;
    assert.deepEqual(rows, Array.from({ length: classes }, (_, bin) => [bin + 1, of(dots[0], bin), of(dots[1], bin), of(pairs, bin)]));
    assert.deepEqual(hand.complaints(), []);
  });

  test("a million sets are drawn with progress, and the page answers meanwhile", async () => {
    await choose("#fit-sets", "1000000");
    await hand.inside(focusOn, "#fit-run");
    await hand.press("Enter");
    const moving = () => Number(document.querySelector(".fit progress").value) > 0 || document.querySelector(".fit-news").textContent.startsWith("1");
    await until(moving);
    await until(() => document.querySelector(".fit-news").textContent.replace(/\D/g, "").startsWith("1000000")); // it ends
    const reading = await hand.inside(textOf, ".fit-readings dd");
    const [yielded, se] = reading.match(/[\d.]+/g).map(Number);
    // The yield of the same laws by quadrature: tests/reference/fit-laws.csv.
    assert.ok(Math.abs(yielded - 96.1702) < 5 * se + 0.05, reading);
    assert.ok(se < 0.03, reading);
  });

  test("the cheapest tolerances are taken over by the kernel's numbers, grades included, and undo brings the old ones back", async () => {
    const before = await limitField(words["size.outer_spacing_mm"], 1);
    await hand.inside(() => document.querySelector("[data-way=worst]").click());
    await until((old) => {
      const row = [...document.querySelectorAll("#fit-limits-body tr")].find((each) => each.querySelector("[data-at^=outer_spacing_mm]"));
      return row.querySelectorAll("input")[1].value !== old;
    }, before);
    await until(() => /Even with every part at its worst limit/.test(document.querySelector("#slope").textContent));
    await click("#undo");
    await until((old) => {
      const row = [...document.querySelectorAll("#fit-limits-body tr")].find((each) => each.querySelector("[data-at^=outer_spacing_mm]"));
      return row.querySelectorAll("input")[1].value === old;
    }, before);
  });

  test("a table with a bad row is refused row by row, an empty one with what is expected, and a good one is taken", async () => {
    const paste = (text) => hand.inside((table) => {
      const sheet = document.querySelector(".fit textarea");
      sheet.closest("details").open = true;
      sheet.value = table;
      sheet.parentElement.querySelector("button").click();
    }, text);
    const rows = async (first) => {
      await until((start) => document.querySelector("#fit-rows li")?.textContent.startsWith(start), first);
      return hand.inside(() => [...document.querySelectorAll("#fit-rows li")].map((each) => each.textContent));
    };
    await paste(" \n");
    assert.deepEqual(await rows("Nothing was pasted"), [words["fit.sheet.table.missing"]]);
    await paste("dimension\tminus_mm\tplus_mm\nbore_mm\t0.01\t0.01\nhole\t0.01\t0.01\nouter_spacing_mm\ta lot\t0.05\npin_diameter_mm\t0.01");
    const refused = await rows("Row 2");
    assert.match(refused[0], /^Row 2: .*hole/);
    assert.match(refused[1], /^Row 3: .*a lot/);
    assert.match(refused[2], /^Row 4: The limit above is missing: the row ends with cell 2,/);
    assert.equal(refused.length, 3);
    await paste("dimension,minus_in,plus_in\nouter_spacing_mm,0.001,0.001");
    await until(() => document.querySelectorAll("#fit-limits-body tr").length === 2); // one dimension is left
    assert.equal(Number(await limitField(words["size.outer_spacing_mm"], 1)), 0.0254);
    assert.equal(await hand.inside(() => document.querySelector("#fit-rows").hidden), true);
  });

  test("a limit that cannot be is refused beside its row; a good one is kept through a reload", async () => {
    await anew();
    await limitField(words["size.bore_mm.collared"], 2);
    await hand.inside(focusOn, "#field-of-the-test");
    await hand.type("500");
    const fault = await hand.inside(() => [...document.querySelectorAll(".fit-limits .fault")].map((each) => each.textContent).join(""));
    assert.notEqual(fault, "");
    await put("#field-of-the-test", "0.002");
    await hand.reload();
    assert.equal(Number(await limitField(words["size.bore_mm.collared"], 2)), 0.002);
  });

  test("by keys alone: a limit by arrows, many drawn and stopped, the worst set on the stage, more bins, a row pasted", () => byKeysAlone(hand));

  test("with limits every question tells what they leave open", async () => {
    await open("#v=1&on=ferry-trike&ask=touch");
    for (const [ask, at, figure] of [["touch", 2, "side_gap_mm"], ["line", 3, "free_aside_mm"], ["wear", 5, "turn_limit_worn_rad"], ["reach", 6, "pumped_mm3_per_cycle"], ["surface", 7, "film_ratio"], ["width", 8, "free_offset_mm"]]) {
      await click(`#questions li:nth-child(${at}) button`);
      const told = new RegExp(`${words[`figure.${figure}`]}: ([\\d.]*\\d)[^;]*? … ([\\d.]*\\d)`);
      await until((figure) => document.querySelector("#over:not([hidden], [aria-busy])")?.textContent.includes(figure), words[`figure.${figure}`]);
      const text = await hand.inside(textOf, "#over");
      const [, tight, loose] = told.exec(text) ?? [];
      assert.ok(Number(tight) < Number(loose), `${ask}: ${text}`);
    }
    await click("#questions li:nth-child(4) button");
    await hand.settled();
    assert.match(await said("slope"), /Over the limits it runs from [\d.]+ mm to [\d.]+ mm/);
    await open("#v=1&on=ferry-winch&ask=line");
    assert.equal(await hand.inside(() => document.querySelector("#over")?.hidden ?? true), true, "nothing without limits");
  });
});
