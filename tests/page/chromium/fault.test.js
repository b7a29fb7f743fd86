// A kernel that stops, a worker that dies, a part that cannot be fetched: one sentence each, and never a dead page.

import assert from "node:assert/strict";
import { beforeEach, describe, test } from "node:test";
import { comesBackFromFault, opensAnew } from "../support/faults.js";
import { textOf } from "../support/inside.js";
import { standing } from "../support/standing.js";
import { words } from "../support/words.js";

describe("a fault, in Chromium", () => {
  const hand = standing();
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
    await hand.inside(() => setTimeout(() => {
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
    await hand.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await hand.inside(() => setTimeout(() => {
      throw new Error("planted");
    }));
    assert.equal(await told(), words["fault.page"]);
    await pressed("fault.copy");
    await until(() => document.querySelector(".fault-told").textContent !== "");
    assert.match(await hand.inside(() => navigator.clipboard.readText()), /^lightgap [^]*planted/);
    assert.equal(await hand.inside(textOf, ".fault-told"), words["fault.copied"]);
  });
});
