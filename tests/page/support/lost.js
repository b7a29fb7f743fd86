// Nothing is lost: files in links, undo over files, the last state, the stage alone. The same in every engine that is asked.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { focusOn, opened, textOf, until } from "./inside.js";
import { ROOT } from "./server.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

const read = (/** @type {string} */ name) => JSON.parse(readFileSync(join(ROOT, "scenarios", name), "utf8"));
/** In the page: a file let fall on it. */
const drop = (/** @type {string} */ text) => {
  const data = new DataTransfer();
  data.items.add(new File([text], "brought.json", { type: "application/json" }));
  dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
};
const told = until((/** @type {string} */ id) => document.querySelector(`[data-notice='${id}']`));
const isTold = (/** @type {string} */ id) => document.querySelector(`[data-notice='${id}']`) !== null;
const press = (/** @type {string} */ found) => /** @type {HTMLElement} */ (document.querySelector(found)).click();

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 */
export function lostSuite(engine, openHand) {
  /** @type {any} */
  let real;
  describe(`nothing is lost, in ${engine}`, () => {
    const hand = standing({}, async (wishes) => (real = await openHand(wishes)));
    const { inside, said, hash } = hand;
    const bring = async (/** @type {object} */ scenario) => {
      const before = await hash();
      await inside(drop, JSON.stringify(scenario));
      await hand.until((/** @type {string} */ old) => location.hash !== old, before);
      await hand.settled();
    };
    const elsewhere = async (/** @type {string} */ address, /** @type {(tab: any) => Promise<void>} */ work) => {
      const tab = await real.another();
      await tab.goTo(address);
      assert.equal(await tab.inside(opened), "", tab.complaints().join("\n"));
      await work(tab);
      await tab.close();
    };
    const wide = { ...read("wide-gap.json"), title: "Brought by hand" };

    test("a link carries the file that was opened, to a browser that has never seen it", async () => {
      await hand.open();
      await bring(wide);
      assert.match(await hash(), /on=own&.*file=[\w-]+$/);
      const [address, answer] = [await hash(), await said("answer")];
      await elsewhere(hand.address + address, async (tab) => {
        assert.deepEqual([await tab.inside(textOf, "#answer"), await tab.inside(textOf, "#about b")], [answer, "Brought by hand"]);
        assert.equal(await tab.inside(() => location.hash), address);
      });
    });

    test("undo and redo go from one opened file to the other", async () => {
      await hand.open();
      const seen = [];
      for (const scenario of [wide, read("tired-trike.json"), read("stiff-link.json")]) {
        await bring(scenario);
        seen.push(await said("answer"));
      }
      assert.equal(new Set(seen).size, 3);
      for (const answer of [seen[1], seen[0]]) {
        await hand.click("#undo");
        await hand.until((/** @type {string} */ wanted) => document.querySelector("#answer")?.textContent.replaceAll("\u00a0", " ") === wanted, answer);
      }
      await hand.click("#redo");
      await hand.until((/** @type {string} */ wanted) => document.querySelector("#answer")?.textContent.replaceAll("\u00a0", " ") === wanted, seen[1]);
    });

    test("a file too long for a link is named by it, kept over a reload and missed elsewhere", async () => {
      await hand.open();
      const noise = (/** @type {number} */ from) => Array.from({ length: 180 }, (_, at) => Math.sin(from + at).toString(36).slice(3, 13)).join(" ");
      await bring({ ...wide, about: noise(0), source: noise(500) });
      assert.match(await hash(), /file=long\./);
      await hand.reload();
      assert.equal(await inside(textOf, "#about b"), "Brought by hand");
      await elsewhere(hand.address + (await hash()), async (tab) => {
        await tab.inside(told, "notice.file.long");
        assert.equal(await tab.inside(textOf, "#about b"), read("ferry-winch.json").title);
      });
    });

    test("a link whose file is no file, or no chain, shows the first chain and says so", async () => {
      const first = read("ferry-winch.json").title;
      await elsewhere(`${hand.address}#v=1&on=own&ask=give&how=turn&at=1&file=AAAA`, async (tab) => {
        await tab.inside(told, "notice.file.unread");
        assert.equal(await tab.inside(textOf, "#about b"), first);
      });
      await hand.open();
      const bad = await inside(async (text) => (await import(new URL("keep/carry.js", document.baseURI).href)).pack(text), JSON.stringify({ ...wide, chain: { pitch_mm: -1 } }));
      await elsewhere(`${hand.address}#v=1&on=own&ask=give&how=turn&at=1&file=${bad}`, async (tab) => {
        await tab.inside(told, "notice.refused");
        assert.equal(await tab.inside(textOf, "#about b"), first);
      });
      const bomb = await inside(async () => (await import(new URL("keep/carry.js", document.baseURI).href)).pack("a".repeat(990_000)).then((packed) => packed.length));
      assert.ok(bomb < 4000, "what is small here and large there");
    });

    test("a reload says that all is as it was, and undo goes on", async () => {
      await hand.open("#v=1&on=ferry-winch&ask=give&how=turn&at=1");
      await inside(focusOn, "#scrub");
      await hand.press("Home");
      const [address, now] = [await hash(), await said("now")];
      await hand.reload();
      await inside(told, "notice.restored");
      assert.match(await inside(textOf, "[data-notice] p"), /can be undone: 1/);
      assert.deepEqual([await hash(), await said("now")], [address, now]);
      await hand.undo();
      assert.notEqual(await said("now"), now);
      assert.equal(await inside(isTold, "notice.restored"), false, "the line goes with the next change");
    });

    test("the bare address offers to go on where one was, and forgets it when asked to", async () => {
      await hand.open("#v=1&on=ferry-trike&ask=give&how=turn&at=1");
      await inside(focusOn, "#scrub");
      await hand.press("Home");
      const [address, answer] = [await hash(), await said("answer")];
      await elsewhere(hand.address, async (tab) => {
        await tab.inside(told, "notice.last");
        assert.notEqual(await tab.inside(() => location.hash), address);
        await tab.inside(press, "[data-notice='notice.last'] button");
        await tab.inside(until((/** @type {string} */ wanted) => location.hash === wanted), address);
        await tab.inside(until((/** @type {string} */ wanted) => document.querySelector("#answer")?.textContent.replaceAll("\u00a0", " ") === wanted), answer);
      });
      await elsewhere(hand.address, async (tab) => {
        await tab.inside(told, "notice.last");
        await tab.inside(press, "[data-notice='notice.last'] button:nth-of-type(2)");
        assert.equal(await tab.inside(() => localStorage.getItem("lightgap.last")), null);
      });
    });

    test("the stage alone is drawing, answer, badge, words and a way to the whole page", async () => {
      await elsewhere(`${hand.address}?stage=alone#v=1&on=ferry-trike&ask=give&how=turn&at=1`, async (tab) => {
        const seen = await tab.inside(() => [".bar", "#questions", "#change", "#found", "#unit", "#drawing", "#answer", "#badge", "#twin", "#scrub", ".alone-whole"].filter((each) => {
          const found = document.querySelector(each);
          found?.closest("details")?.setAttribute("open", "");
          return found && found.getClientRects().length > 0;
        }));
        assert.deepEqual(seen, ["#drawing", "#answer", "#badge", "#twin", "#scrub", ".alone-whole"]);
        await tab.inside(focusOn, "#scrub");
        await tab.press("Home");
        await tab.inside(focusOn, ".alone-whole");
        const way = await tab.inside(() => /** @type {HTMLAnchorElement} */ (document.querySelector(".alone-whole")).href);
        assert.equal(way, hand.address + (await tab.inside(() => location.hash)));
        assert.equal(await tab.inside(textOf, ".alone-whole"), words["alone.whole"]);
      });
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
