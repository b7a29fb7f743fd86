// Breaks the kernel as a fault of its own would: no way to this leads through anything that the page offers.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { focusOn, opened, textOf, twoFrames, until } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** In the page: whatever the bench is told next runs into memory that is not its own. */
const plant = async () => {
  const { default: init, Bench } = await import(new URL("lightgap_stage.js", document.baseURI).href);
  const program = await init();
  Bench.prototype.scrub = () => program.bench_scrub(0xfffffff0, 0);
};
const shown = until(() => document.querySelector("dialog.fault-box[open]"));
const press = (/** @type {string} */ found) => /** @type {HTMLElement} */ (document.querySelector(found)).click();

/** How often a page that is being left is looked at, at most. */
const LOOKS = 2000;

/**
 * Does what makes the page open anew, and waits until it has.
 * @param {Pick<import("./hand.js").Hand, "inside">} hand
 * @param {() => Promise<unknown>} act
 */
export async function opensAnew({ inside }, act) {
  await inside(() => Object.assign(globalThis, { old: true }));
  await act();
  for (let look = 0; look < LOOKS; look++) {
    const there = await inside(() => !("old" in globalThis) && document.body?.classList.contains("ready")).catch(() => false);
    if (there) return;
  }
  assert.fail("the page does not open anew");
}

/**
 * The kernel stops: one sentence, a report, and a way back to the last finished change.
 * @param {import("./hand.js").Hand} hand
 */
export async function comesBackFromFault(hand) {
  await hand.inside(focusOn, "#scrub");
  for (let steps = 0; steps < 3; steps++) await hand.press("ArrowLeft");
  const [address, now] = [await hand.inside(() => location.href), await hand.inside(textOf, "#now")];
  await hand.inside(plant);
  await hand.inside(focusOn, "#scrub");
  await hand.press("End");
  await hand.inside(shown);
  assert.match(await hand.inside(textOf, "#fault-sentence"), /kernel has stopped/);
  assert.equal(await hand.inside(() => document.querySelector("dialog.fault-box")?.matches(":modal")), true);
  const report = await hand.inside(() => /** @type {HTMLTextAreaElement} */ (document.querySelector(".fault-box textarea")).value);
  for (const part of [/^lightgap \d+\.\d+\.\d+/, /RuntimeError|memory|index out of bounds/i, /bench_scrub|scrub/]) assert.match(report, part);
  assert.ok(report.includes(address), report);
  await opensAnew(hand, () => hand.inside(press, ".fault-box .primary"));
  assert.equal(await hand.inside(opened), "");
  await hand.inside(twoFrames);
  assert.deepEqual([await hand.inside(() => location.href), await hand.inside(textOf, "#now")], [address, now]);
  await hand.inside(focusOn, "#scrub");
  await hand.press("End");
  assert.notEqual(await hand.inside(textOf, "#now"), now, "the kernel works again");
}

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 */
export function faultSuite(engine, openHand) {
  describe(`a fault, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open, until, said } = hand;
    beforeEach(() => open());
    const told = async () => {
      await until(() => document.querySelector("dialog.fault-box[open]"));
      return said("fault-sentence");
    };

    const pressed = (word) => hand.inside((found) => [...document.querySelectorAll(".fault-box button")].find((each) => each.textContent === found).click(), words[word]);

    test("a kernel that stops is told of, and the last finished change comes back", () => comesBackFromFault(hand));

    test("a state that cannot be gone on from can be left for the first chain", async () => {
      await open("#v=1&on=ferry-trike&ask=give&how=turn&at=0.5");
      await hand.inside(() => void setTimeout(() => {
        throw new WebAssembly.RuntimeError("unreachable");
      }));
      assert.equal(await told(), words["fault.kernel"]);
      await opensAnew(hand, () => pressed("fault.afresh"));
      assert.doesNotMatch(await hand.hash(), /ferry-trike/);
    });

    test("a worker that dies twice is told of beside the page, which goes on", async () => {
      await hand.inside(async () => {
        const workers = [];
        globalThis.Worker = class extends Worker {
          constructor(address) {
            super(address);
            workers.push(this);
            queueMicrotask(() => this.dispatchEvent(new ErrorEvent("error")));
          }
        };
        const { labour } = await import("./labour.js");
        await labour("x", "report", {}, {}).catch(() => {});
      });
      assert.equal(await told(), words["fault.worker"]);
      assert.equal(await hand.inside(() => document.querySelector("dialog.fault-box").matches(":modal")), false);
      await pressed("close");
      await hand.inside(() => document.querySelector("#scrub").focus());
      const now = await said("now");
      await hand.press("Home");
      assert.notEqual(await said("now"), now);
    });

    test("the report can be copied", async () => {
      await hand.inside(() => {
        navigator.clipboard.writeText = async (text) => { document.body.dataset.copied = text; };
      });
      await hand.inside(() => void setTimeout(() => {
        throw new Error("planted");
      }));
      assert.equal(await told(), words["fault.page"]);
      await pressed("fault.copy");
      await until(() => document.querySelector(".fault-told").textContent !== "");
      assert.match(await hand.inside(() => document.body.dataset.copied), /^lightgap [^]*planted/);
      assert.equal(await hand.inside(textOf, ".fault-told"), words["fault.copied"]);
    });
  });
}
