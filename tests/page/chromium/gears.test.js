// What question 3 has folded away: my gears, and the strand on its side; by pointer and keyboard, refused, reloaded.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { centreOf, focusOn, textOf, until } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

/** Waits until a part shows what it was asked. */
const worked = until((part) => !document.querySelector(`${part}[data-busy], ${part} [data-busy]`), 5);

describe("the parts of the crooked line, in Chromium", () => {
  const hand = standing();
  const { open, click, undo, settled, said, value } = hand;
  beforeEach(() => open("#v=1&on=ferry-trike&ask=line"));

  const unfold = async (part) => {
    await hand.inside(focusOn, `${part} > summary`);
    await hand.inside((found) => { document.querySelector(found).open = true; }, part);
    await hand.inside(worked, part);
  };
  const A = '[data-which="a"]';
  const pairs = () => hand.inside((a) => [...document.querySelectorAll(`${a} .pair`)].map((each) => each.textContent), A);
  const type = async (field, text) => {
    await hand.inside(focusOn, field);
    await hand.type(text);
    await hand.inside(worked, "#line-gears");
  };

  test("a pair is taken into the drive by a press and by the keyboard, and undone", async () => {
    await unfold("#line-gears");
    await hand.drag([await hand.inside(centreOf, `${A} tbody tr:first-child .pair`)]);
    await settled();
    const set = () => hand.inside(() => [document.querySelector("#drive-driven_teeth").value, Number(document.querySelector("#drive-offset_mm").value)]);
    assert.deepEqual(await set(), ["11", 19.5]);
    await hand.inside(focusOn, `${A} tbody tr:last-child .pair`);
    await hand.press("Enter");
    await settled();
    assert.deepEqual(await set(), ["42", -19.5]);
    assert.ok(await hand.inside(() => document.activeElement.matches(".pair[aria-pressed=true]")), "focus stays where it was");
    await undo();
    assert.deepEqual(await set(), ["11", 19.5]);
  });

  test("what cannot be is refused beside its field, and the last good arrangement stays", async () => {
    await unfold("#line-gears");
    const before = await pairs();
    for (const [field, text] of [["front", "x"], ["front", " "], ["back", "2 3"], ["back", "11.5"], ["guides", "-4"], ["guides", "∞"], ["front_step_mm", " "], ["back_step_mm", "many"], ["back_step_mm", "1e999"], ["aside_mm", "5000"]]) {
      await type(`#gears-a-${field}`, text);
      const fault = await hand.inside(textOf, `#gears-a-${field}-fault`);
      assert.ok(fault.startsWith(words[`line.gears.field.${field}`]), `${field} ${text}: ${fault}`);
      if (text === "1e999") assert.match(fault, /: 1e999 is beyond the numbers/);
      if (field === "front" && text === " ") assert.match(fault, /^Teeth, front wheels: nothing is given here\.$/);
      assert.equal(await hand.inside((found) => document.querySelector(found).getAttribute("aria-invalid"), `#gears-a-${field}`), "true");
      assert.deepEqual(await pairs(), before, `${field} ${text}`);
      await click("#undo");
      await hand.inside(worked, "#line-gears");
    }
    assert.equal(await said("gears-a-front-fault"), "");
  });

  test("a reload keeps what was typed", async () => {
    await unfold("#line-gears");
    await type("#gears-b-front", "34 50");
    await hand.reload();
    await unfold("#line-gears");
    assert.equal(await value("#gears-b-front"), "34 50");
  });

  const run = "#line-run";
  const saidOf = (selector) => hand.inside(textOf, `${run} ${selector}`);
  const press = async (selector) => {
    await hand.drag([await hand.inside(centreOf, `${run} ${selector}`)]);
    await hand.inside(worked, run);
  };
  const work = async () => Number((await saidOf(".run-sum")).match(/far: ([\d.]+)/)[1]);
  const drawn = () => hand.inside((part) => [...document.querySelectorAll(`${part} .leaves`)].map((each) => each.innerHTML), run);

  test("a joint is followed by steps, by its slider and from fold to fold, and its work never falls", async () => {
    await unfold(run);
    assert.match(await saidOf(".run-said"), /Fold 1, onto the driver/);
    const [first, before] = [await work(), await drawn()];
    await press('[data-run="on"]');
    assert.ok((await work()) > first);
    const after = await drawn();
    assert.ok(after.every((picture, index) => picture !== before[index]));
    await hand.inside(focusOn, `${run} .run-slider input`);
    await hand.press("End");
    await hand.inside(worked, run);
    await hand.press("Home");
    await hand.inside(worked, run);
    assert.match(await saidOf(".run-said"), /tight strand/);
    assert.equal(await work(), 0);
    const seen = [];
    for (const fold of [1, 2, 3, 4]) {
      await hand.inside(focusOn, `${run} .run-folds tbody tr:nth-child(${fold}) button`);
      await hand.press("Enter");
      await hand.inside(worked, run);
      assert.match(await saidOf(".run-said"), new RegExp(`Fold ${fold},`));
      seen.push(await work());
    }
    assert.ok(seen.every((each, index) => index === 0 || each > seen[index - 1]), seen.join(" "));
  });

  test("stuck rollers slide on their teeth and take more, and the neighbour turns the other link", async () => {
    await unfold(run);
    const loss = async () => Number((await saidOf(".run-sum")).match(/lose ([\d.]+)/)[1]);
    const free = await loss();
    await press('[data-key="stuck"][data-value="true"]');
    assert.ok((await loss()) > free);
    assert.match(await saidOf(".run-said"), /outer link turns/);
    await press('[data-key="joint"][data-value="1"]');
    assert.match(await saidOf(".run-said"), /inner link turns/);
    assert.match(await saidOf(".run-contacts"), /Tooth on roller \d+ N, slides/);
  });

  test("it plays, and rests when it is told to", async () => {
    await unfold(run);
    const before = await work();
    await hand.inside(focusOn, `${run} .run-buttons button`);
    await hand.press("Enter");
    await hand.until((from) => Number(document.querySelector("#line-run .run-sum").textContent.match(/far: ([\d.]+)/)[1]) > from, before);
    await hand.press("Enter");
    await hand.inside(worked, run);
    const rested = await work();
    await hand.inside(worked, run);
    assert.equal(await work(), rested);
  });

  test("the chart tells watts in place of multiples", async () => {
    const heads = () => hand.inside(textOf, ".crooked-title");
    const times = await heads();
    await hand.inside(focusOn, '[data-show="watts"]');
    await hand.press("Enter");
    assert.notEqual(await heads(), times);
    assert.match(await heads(), /watts of 100/);
  });

  test("the strand on its side tells both bows, and more with a wider pin gap", async () => {
    await unfold("#line-bow");
    const bows = async () => (await hand.inside(textOf, "#line-bow .bow-part p")).match(/([\d.]+) mm/g).map(Number.parseFloat);
    const before = await bows();
    assert.equal(before.length, 3);
    assert.ok(before[2] > before[1] && before[1] > 1);
    await hand.inside(() => document.querySelector("#questions li button").focus());
    await hand.goTo(`${hand.address}#v=1&on=ferry-trike&ask=line&bore_mm=3.66`);
    await hand.arrived();
    await unfold("#line-bow");
    assert.ok((await bows())[1] > before[1]);
    assert.deepEqual(hand.complaints(), []);
  });
});
