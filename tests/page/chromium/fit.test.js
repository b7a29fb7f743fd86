// Will every one fit: drawn, watched, stopped, the worst set on the stage, a table with a bad row, sorted parts.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, test } from "node:test";
import { focusOn, textOf } from "../support/inside.js";
import { ROOT } from "../support/server.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

describe("many chains of one drawing, in Chromium", () => {
  const hand = standing();
  const { open, put, click, until, said, hash } = hand;
  beforeEach(() => open("#v=1&on=ferry-thousand&ask=fit"));

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

  test("what is being drawn can be stopped, and stays as far as it came", async () => {
    await choose("#fit-sets", "10000000");
    await click("#fit-run");
    await until(() => Number(document.querySelector(".fit progress").value) > 0);
    await click("#fit-stop");
    await until(() => document.querySelector("#fit-stop").hidden && !document.querySelector("#fit-run").hidden);
    const drawn = await hand.inside(() => Number(document.querySelector(".fit-news").textContent.replace(/\D/g, "")));
    assert.ok(drawn > 0 && drawn < 10_000_000, String(drawn));
  });

  test("one, two and seven workers give the same bits as the kernel natively", async () => {
    const [one, two, seven] = await hand.inside(async () => {
      const { Crowd } = await import(new URL("fit/crowd.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const views = [];
      for (const hands of [1, 2, 7]) {
        const crowd = new Crowd(() => {});
        await crowd.run(scenario, Math.ceil(20000 / 2048), hands);
        views.push(JSON.stringify(crowd.view) + crowd.failure);
      }
      return views;
    });
    assert.equal(two, one);
    assert.equal(seven, one);
    // The kept report is the native kernel's, of the same seed and sets.
    const { fit } = JSON.parse(readFileSync(join(ROOT, "tests/golden/ferry-thousand.json"), "utf8")).report;
    const view = JSON.parse(one);
    assert.deepEqual([view.sets, ...view.yield_fraction], [fit.sets, fit.yield_fraction, fit.yield_se]);
    assert.equal(view.demands.length, fit.demands.length);
    view.demands.forEach(({ yield_fraction, mean, sd, percentiles, worst }, i) => {
      const native = fit.demands[i];
      assert.deepEqual([...yield_fraction, ...mean, ...sd], [native.yield_fraction, native.yield_se, native.mean, native.mean_se, native.sd, native.sd_se]);
      assert.deepEqual(percentiles, native.percentiles.map(({ share_fraction, value, se }) => [share_fraction, value, se]));
    });
  });

  test("sets of an older request never overwrite those of a newer one", async () => {
    const [newer, alone, later] = await hand.inside(async () => {
      const { Crowd } = await import(new URL("fit/crowd.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const older = { ...scenario, limits: scenario.limits.map((limit) => ({ ...limit, law: "uniform" })), sampling: { seed: 3, sets: 1000000 } };
      const crowd = new Crowd(() => {});
      const first = crowd.run(older, Math.ceil(1000000 / 2048), 2);
      while (!crowd.view) await new Promise((done) => setTimeout(done, 5)); // the older one is under way
      await crowd.run(scenario, Math.ceil(20000 / 2048), 2);
      const newer = JSON.stringify(crowd.view);
      await first;
      await new Promise((done) => setTimeout(done, 500));
      const fresh = new Crowd(() => {});
      await fresh.run(scenario, Math.ceil(20000 / 2048), 1);
      return [newer, JSON.stringify(fresh.view), JSON.stringify(crowd.view)];
    });
    assert.equal(newer, alone);
    assert.equal(later, alone);
  });

  test("sets of another seed are not taken for those of this one", async () => {
    const [same, other, again] = await hand.inside(async () => {
      const { Drawn } = await import(new URL("fit/drawn.js", document.baseURI).href);
      const scenario = await (await fetch("scenarios/ferry-thousand.json")).json();
      const drawn = new Drawn(() => {});
      drawn.want(scenario);
      drawn.run(scenario, 50000, 2048);
      while (drawn.crowd.share !== null || drawn.stale) await new Promise((done) => setTimeout(done, 10));
      const sets = [drawn.known.sets];
      for (const seed of [5, scenario.sampling.seed]) {
        drawn.want({ ...scenario, sampling: { ...scenario.sampling, seed } });
        sets.push(drawn.known.sets);
      }
      return sets;
    });
    assert.deepEqual([same, other, again], [50000, 20000, 50000]);
  });

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
      await until((before) => document.querySelector(".fit-tried").textContent !== before, old);
    };
    const numbers = (text) => /gap is ([\d.]+) mm; .* ± ([\d.]+) mm\. ([\d.]+) % fail/.exec(text).slice(1).map(Number);
    await until(() => / % fail/.test(document.querySelector(".fit-tried").textContent));
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

  test("the worst set stands on the stage, and undo brings the drawing back", async () => {
    await click(".fit-worst button");
    await until(() => document.body.dataset.ask === "give");
    assert.match(await hash(), /outer_spacing_mm=/);
    const slides = await said("answer");
    await click("#undo");
    await until(() => !location.hash.includes("outer_spacing_mm="));
    assert.notEqual(await said("answer"), slides);
  });

  test("a table with a bad row is refused row by row, and a good one is taken", async () => {
    await hand.inside((text) => {
      const sheet = document.querySelector(".fit textarea");
      sheet.closest("details").open = true;
      sheet.value = text;
      sheet.parentElement.querySelector("button").click();
    }, "dimension\tminus_mm\tplus_mm\nbore_mm\t0.01\t0.01\nhole\t0.01\t0.01\nouter_spacing_mm\ta lot\t0.05");
    await until(() => document.querySelectorAll("#fit-rows li").length === 2);
    const rows = await hand.inside(() => [...document.querySelectorAll("#fit-rows li")].map((each) => each.textContent));
    assert.match(rows[0], /^Row 2: .*hole/);
    assert.match(rows[1], /^Row 3: .*a lot/);
    await hand.inside((text) => {
      const sheet = document.querySelector(".fit textarea");
      sheet.value = text;
      sheet.parentElement.querySelector("button").click();
    }, "dimension,minus_in,plus_in\nouter_spacing_mm,0.001,0.001");
    await until(() => document.querySelectorAll("#fit-limits-body tr").length === 2); // one dimension is left
    assert.equal(Number(await limitField(words["size.outer_spacing_mm"], 1)), 0.0254);
    assert.equal(await hand.inside(() => document.querySelector("#fit-rows").hidden), true);
  });

  test("a limit that cannot be is refused beside its row; a good one is kept through a reload", async () => {
    await limitField(words["size.bore_mm.collared"], 2);
    await hand.inside(focusOn, "#field-of-the-test");
    await hand.type("500");
    const fault = await hand.inside(() => [...document.querySelectorAll(".fit-limits .fault")].map((each) => each.textContent).join(""));
    assert.notEqual(fault, "");
    await put("#field-of-the-test", "0.002");
    await hand.reload();
    assert.equal(Number(await limitField(words["size.bore_mm.collared"], 2)), 0.002);
  });

  test("with limits every question tells what they leave open", async () => {
    for (const [ask, figure] of [["touch", "side_gap_mm"], ["line", "free_aside_mm"], ["wear", "turn_limit_worn_rad"], ["reach", "pumped_mm3_per_cycle"], ["surface", "film_ratio"], ["width", "free_offset_mm"]]) {
      await open(`#v=1&on=ferry-trike&ask=${ask}`);
      await until(() => document.querySelector("#over")?.textContent);
      const text = await hand.inside(textOf, "#over");
      const [, tight, loose] = new RegExp(`${words[`figure.${figure}`]}: ([\\d.]*\\d)[^;]*? … ([\\d.]*\\d)`).exec(text) ?? [];
      assert.ok(Number(tight) < Number(loose), `${ask}: ${text}`);
    }
    await open("#v=1&on=ferry-trike&ask=fit");
    assert.match(await said("slope"), /Over the limits it runs from [\d.]+ mm to [\d.]+ mm/);
    await open("#v=1&on=ferry-winch&ask=line");
    assert.equal(await hand.inside(() => document.querySelector("#over")?.hidden ?? true), true, "nothing without limits");
  });

  test("more bins leave less spread, and whoever is left over is told", async () => {
    const notes = () => hand.inside(() => [...document.querySelectorAll(".fit-three .hint")].map((each) => each.textContent));
    const sd = (note) => Number(/deviation ([\d.]+)/.exec(note)[1]);
    await until(() => document.querySelector(".fit-three .hint").textContent !== "");
    const before = await notes();
    assert.ok(sd(before[1]) < sd(before[0]), before.join("; "));
    assert.match(before[1], /left over/);
    await hand.inside(focusOn, ".fit-slider input");
    for (let i = 0; i < 4; i++) await hand.press("ArrowRight");
    await until(() => document.querySelector(".fit-count").textContent === "8");
    assert.ok(sd((await notes())[1]) < sd(before[1]));
    assert.deepEqual(hand.complaints(), []);
  });

  test("parts are sorted before one's eyes, each where the kernel has it, and told in words", async () => {
    await until(() => document.querySelector(".fit-three .hint").textContent !== "");
    assert.equal(await hand.inside(() => document.querySelector("#fit-sort") === null), true, "fetched when it is opened");
    await hand.inside(() => ([...document.querySelectorAll(".fit-block[data-look=sorted] details")].at(-1).open = true));
    await until(() => document.querySelector("#fit-sort"));
    await hand.inside(focusOn, "#fit-sort");
    await hand.press("Enter");
    await until(() => Number(document.querySelector("#fit-sort").nextElementSibling.value) > 3);
    await hand.press("Enter"); // it pauses
    await hand.inside(() => {
      const slider = document.querySelector("#fit-sort").nextElementSibling;
      slider.value = slider.max;
      slider.dispatchEvent(new Event("input"));
    });
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
});
