// What a suite stands on, the page served and a browser open, and what every suite does there.

import assert from "node:assert/strict";
import { after, before } from "node:test";
import { openChromium } from "./hand.js";
import { answered, focusOn, opened, textOf, twoFrames, until } from "./inside.js";
import { startPage } from "./server.js";

/** The page, served while the suite that calls this runs. */
export function serving() {
  /** @type {Awaited<ReturnType<typeof startPage>>} */
  let page;
  before(async () => (page = await startPage()));
  after(() => page?.stop());
  return {
    get address() {
      return page.address;
    },
  };
}

/**
 * The page served and one browser before it while the suite that calls this runs: the hand of that browser, and more.
 * @param {object} [wishes] what the visitor prefers
 * @param {(wishes: object) => Promise<any>} [openHand]
 */
export function standing(wishes = {}, openHand = openChromium) {
  /** @type {Awaited<ReturnType<typeof openChromium>>} */
  let hand;
  after(() => hand?.close()); // said first, so that the browser goes before the server
  const site = serving();
  before(async () => (hand = await openHand(wishes)));
  /** @type {Pick<import("./hand.js").Hand, "inside" | "press" | "type" | "drag" | "goTo" | "back" | "complaints">} */
  const passed = {
    inside: (work, ...values) => hand.inside(work, ...values),
    press: (key) => hand.press(key),
    type: (text) => hand.type(text),
    drag: (path) => hand.drag(path),
    goTo: (address) => hand.goTo(address),
    back: () => hand.back(),
    complaints: () => hand.complaints(),
  };
  const own = actions(passed);
  return {
    ...passed,
    ...own,
    get address() {
      return site.address;
    },
    /** Playwright's page, for what only Chromium can be asked. */
    get page() {
      return hand.page;
    },
    /** Makes the window so large. */
    resize: (/** @type {import("./hand.js").Size} */ size) => hand.resize(size),
    /** Opens the page anew at a fragment, with its answer. */
    async open(fragment = "") {
      await hand.goTo("about:blank");
      await hand.goTo(site.address + fragment);
      await own.arrived();
    },
    /** Reloads the page and waits as for one that is opened. */
    async reload() {
      await hand.reload();
      await own.arrived();
    },
  };
}

/**
 * What a suite does and asks by a hand.
 * @param {Pick<import("./hand.js").Hand, "inside" | "type" | "complaints">} hand
 */
function actions({ inside, type, complaints }) {
  /** What is asked has its answer, and the answer is painted. */
  const settled = async () => {
    await inside(answered);
    await inside(twoFrames);
  };
  const click = async (selector) => {
    await inside((found) => document.querySelector(found).click(), selector);
    await inside(twoFrames);
  };
  return {
    settled,
    click,
    /** The page has opened and has its answer. */
    async arrived() {
      assert.equal(await inside(opened), "", complaints().join("\n"));
      await settled();
    },
    /** Goes to a fragment as a link within the page does: nothing is loaded anew. */
    async go(fragment) {
      await inside(`(wanted) => { if (location.hash !== wanted) location.hash = wanted; }`, fragment);
      await inside(until((ask) => history.state?.ask === ask && document.body.dataset.ask === ask), new URLSearchParams(fragment.slice(1)).get("ask"));
      await settled();
    },
    async undo() {
      await click("#undo");
      await settled();
    },
    /** Types into a field and waits for the answer. */
    async put(field, text) {
      await inside(focusOn, field);
      await type(text);
      await settled();
    },
    /** Waits, frame by frame, until a function of the page holds of these values; fails when it never does. */
    until: (holds, ...values) => inside(until(holds), ...values),
    said: (id) => inside(textOf, `#${id}`),
    value: (selector) => inside((found) => document.querySelector(found).value, selector),
    hash: () => inside(() => location.hash),
  };
}
