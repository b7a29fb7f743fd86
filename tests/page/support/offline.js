// The page without a network, and when a newer version comes: the same in every engine that is asked.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { opensAnew } from "./faults.js";
import { answered, opened, textOf, until } from "./inside.js";
import { plainHost } from "./plain.js";
import { words as english } from "./words.js";

const kept = until(() => navigator.serviceWorker?.controller);
const ask = (/** @type {string} */ id) => {
  location.hash = `#v=1&on=ferry-trike&ask=${id}`;
};
const NEWER = "This is the newer version.";

/**
 * @param {string} engine
 * @param {(wishes: {keeps: boolean}) => Promise<any>} openHand
 */
export function offlineSuite(engine, openHand) {
  describe(`the page without a network, in ${engine}`, () => {
    const host = plainHost();
    /** @type {any} */
    let hand;
    before(async () => (hand = await openHand({ keeps: true })));
    after(() => hand?.close());
    const visit = async (/** @type {any} */ tab) => {
      await tab.goTo(host.address);
      assert.equal(await tab.inside(opened), "", tab.complaints().join("\n"));
      await tab.inside(kept);
    };
    const asks = async (/** @type {any} */ tab, /** @type {string} */ id) => {
      await tab.inside(ask, id);
      await tab.inside(answered);
      await tab.inside(until((/** @type {string} */ opening) => document.querySelector("#answer")?.textContent !== opening), english["ask.opening"]);
      return tab.inside(textOf, "#answer");
    };

    test("it stands under a sub-path of any host, and is kept on the first visit", async () => {
      await visit(hand);
      assert.match(await asks(hand, "line"), /^At .* aside/);
      assert.deepEqual(host.asked.filter((path) => !path.startsWith("/course/chains/")), []);
      assert.equal(await hand.inside(() => document.querySelector("link[rel=manifest]")?.getAttribute("href")), "lightgap.webmanifest");
    });

    test("with the server gone, what was not asked yet is answered, and a reload opens the page", async () => {
      host.stop();
      assert.match(await asks(hand, "wear"), /\d/);
      await hand.reload();
      assert.equal(await hand.inside(opened), "");
      assert.match(await asks(hand, "width"), /\d/);
      await host.start();
    });

    test("a newer version is told of, and strands no tab that is open", async () => {
      await visit(hand);
      const other = await hand.another();
      await visit(other);
      await hand.front();
      host.newer("words/en/reach.json", "ask.opening.reach", NEWER);
      const renew = async () => (await navigator.serviceWorker.ready).update();
      await hand.inside(renew);
      await hand.inside(until(() => document.querySelector("[data-notice='notice.newer']")));
      const words = async (/** @type {any} */ tab) => tab.inside(async () => (await (await fetch("words/en/reach.json")).json())["ask.opening.reach"] ?? "");
      assert.equal(await words(hand), "", "the old version goes on");
      assert.match(await asks(hand, "reach"), /\w/);
      await opensAnew(hand, () => hand.inside(() => /** @type {HTMLElement} */ (document.querySelector("[data-notice='notice.newer'] button")).click()));
      assert.equal(await hand.inside(opened), "");
      assert.equal(await words(hand), NEWER, "the newer one is used when it is asked for");
      await other.front();
      assert.equal(await words(other), "", "another tab keeps its own");
      assert.match(await asks(other, "surface"), /\w/);
      await opensAnew(other, () => other.reload());
      assert.equal(await words(other), NEWER, "until it is opened anew");
    });

    test("a site that is only half changed is not kept, and the last version goes on", async () => {
      await hand.front();
      host.newer("words/en/fit.json", "half", "x", false);
      const refused = await hand.inside(async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update().catch(() => {});
        const { installing } = registration;
        const gone = (/** @type {() => void} */ done) => installing?.addEventListener("statechange", () => installing.state === "redundant" && done());
        if (installing) await new Promise((done) => gone(() => done(true)));
        return registration.waiting === null;
      });
      assert.equal(refused, true);
      host.stop();
      await hand.reload();
      assert.equal(await hand.inside(opened), "");
      assert.equal(await hand.inside(async () => "half" in (await (await fetch("words/en/fit.json")).json())), false);
      await host.start();
    });
  });
}
