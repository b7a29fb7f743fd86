// What wear adds: by slider, number and keyboard, on the chart, undone, reloaded, refused.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { picturesInWords, refusesEntered } from "../support/given.js";
import { focusOn, pictureMark, readingOf } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

const FIELD = ".wear-given input[inputmode=decimal]";
const SLIDER = ".wear-given input[type=range]";
const MARKER = ".wear .graph-marker[role=slider]";

describe("wear, in Chromium", () => {
  const hand = standing();
  const { open, put, undo, settled, said, value } = hand;
  beforeEach(() => open("#v=1&on=tired-trike&ask=wear"));

  const reading = (word) => hand.inside(readingOf, ".wear-readings", words[word]);
  const set = (mm) => put(FIELD, mm);

  test("more wear is longer by as much as it says, and a gauge reads more than a rule", async () => {
    await set("0.254");
    assert.equal(await reading("wear.read.longer"), 2);
    const [rule, gauge] = [await reading("wear.read.rule"), await reading("wear.read.gauge")];
    assert.ok(gauge > rule && rule > 2, `${rule} ${gauge}`);
    assert.match(await said("surprise"), /13\.21 mm/);
  });

  test("past the tips the answer says that the chain jumps, and the picture is drawn true", async () => {
    await set("0.5");
    assert.match(await said("answer"), /jumps off the tips/);
    const badges = await hand.inside(() => [...document.querySelectorAll(".wear-badge")].map((each) => each.textContent));
    assert.ok(badges.includes(words["wear.wheel.past"].replace("{teeth}", "44")), badges.join());
  });

  test("a new joint is round and a worn one is not", async () => {
    const bores = () => hand.inside(() => [...document.querySelectorAll(".wear-picture .bush")].map((each) => each.getAttribute("d")));
    const [fresh, worn] = await bores();
    assert.notEqual(fresh, worn);
    await set("0");
    const [round, same] = await bores();
    assert.equal(round, same);
  });

  test("the drawing stands worn while wear is asked about, as new or always where that is chosen", async () => {
    const badge = () => said("badge");
    const stand = async (choice) => {
      await hand.click(`[data-stand=${choice}]`);
      await settled();
    };
    await open("#v=1&on=ferry-winch&ask=wear");
    await hand.inside(focusOn, "#scrub");
    await hand.press("End");
    const [worn, turned] = [await badge(), await said("now")];
    assert.match(worn, /worn by 0\.10 mm/);
    const { mark } = await hand.inside(pictureMark);
    await set("0.2");
    assert.notEqual((await hand.inside(pictureMark)).mark, mark, "the drawing follows");
    assert.match(await badge(), /worn by 0\.20 mm/);
    assert.ok(parseFloat(await said("now")) > parseFloat(turned), "deeper wear turns further");
    await stand("new");
    assert.doesNotMatch(await badge(), /worn by/);
    assert.ok(parseFloat(await said("now")) < parseFloat(turned));
    await stand("always");
    await hand.click("#questions li:first-child :is(a, button)");
    await settled();
    assert.match(await badge(), /worn by 0\.20 mm/);
    await hand.reload();
    assert.match(await badge(), /worn by 0\.20 mm/);
    await open("#v=1&on=ferry-winch&ask=give");
    assert.doesNotMatch(await badge(), /worn by/);
  });

  test("what changes while the drawing and the lists are away is on them when they are back", async () => {
    const shown = () => hand.inside(() => ["#touching", "#open", "#room", "#now", "#lens-gap"].map((place) => document.querySelector(place).textContent));
    const drawn = async () => (await hand.inside(pictureMark)).mark;
    await open("#v=1&on=tired-trike&ask=give");
    const before = [await shown(), await drawn()];
    await open("#v=1&on=tired-trike&ask=width");
    await put("#gaps input[inputmode=decimal]", "0.1");
    await hand.click("#questions li:first-child :is(a, button)");
    await settled();
    const back = [await shown(), await drawn()];
    assert.notDeepEqual(back[0], before[0]);
    assert.notEqual(back[1], before[1]);
    await hand.reload();
    assert.deepEqual([await shown(), await drawn()], back);
  });

  test("keys move the slider and the marker of the chart alike, and undo takes it back", async () => {
    const before = Number(await value(FIELD));
    await hand.inside(focusOn, SLIDER);
    await hand.press("ArrowRight");
    await settled();
    const moved = Number(await value(FIELD));
    assert.ok(moved > before, `${before} ${moved}`);
    await hand.inside(focusOn, MARKER);
    await hand.press("ArrowRight");
    await settled();
    assert.ok(Number(await value(FIELD)) > moved);
    assert.match(await hand.inside((found) => document.querySelector(found).getAttribute("aria-valuetext"), MARKER), /longer/);
    await undo();
    assert.equal(Number(await value(FIELD)), moved);
  });

  test("wear that leaves no metal is refused beside its field, and the last good chain stays", async () => {
    await refusesEntered(hand, ".wear-given", ["9", "-1"]);
  });

  test("a reload keeps the wear, and the pictures can be read", async () => {
    await set("0.2");
    const answer = await said("answer");
    await hand.reload();
    assert.equal(await said("answer"), answer);
    const lines = await picturesInWords(hand, ".wear");
    assert.ok(lines.length >= 6 && lines.every((line) => line && !/[{}]|undefined|NaN/.test(line)), lines.join("\n"));
    assert.deepEqual(hand.complaints(), []);
  });
});
