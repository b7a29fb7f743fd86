// One hand for three engines: the few things a visitor does, the few things a test asks.

import assert from "node:assert/strict";
import { chromium } from "playwright-core";
import puppeteer from "puppeteer-core";
import { opened, spaced, twoFrames } from "./inside.js";

export const CHROMIUM_FLAGS = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", "--force-color-profile=srgb",
];
export const CHROMIUM = { executablePath: "/usr/bin/chromium", args: CHROMIUM_FLAGS };

/**
 * @typedef {object} Hand
 * @property {(address: string) => Promise<unknown>} goTo
 * @property {(work: Function|string, ...values: unknown[]) => Promise<any>} inside runs a function, or the text of one, in the page
 * @property {(key: string) => Promise<void>} press
 * @property {(text: string) => Promise<void>} type replaces what the focused field holds and leaves it
 * @property {(path: {x: number, y: number}[]) => Promise<void>} drag presses at the first point; a path of one is a click
 * @property {() => Promise<unknown>} reload
 * @property {() => Promise<unknown>} back
 * @property {() => Promise<unknown>} front brings its tab before the others: one that nobody sees gets hardly a frame, and waits by frames
 * @property {() => string[]} complaints what the console said, where the engine lets us hear it
 * @property {() => Promise<void>} close
 */

/** A window, px. @typedef {{width: number, height: number}} Size */

/**
 * A function with its values as text to be evaluated.
 * @param {Function|string} work
 * @param {unknown[]} values
 */
const call = (work, values) => `(${work})(...${JSON.stringify(values)})`;

/** How a browser says that what was being fetched is not wanted any more. */
const CUT_SHORT = /NetworkError when attempting|error loading dynamically imported|operation was aborted/;

/**
 * What Playwright's and puppeteer's pages have in common.
 * @param {any} page
 * @param {() => Promise<void>} close
 * @returns {Hand}
 */
function handOf(page, close) {
  /** @type {string[]} */
  const complaints = [];
  page.on("console", (said) => ["error", "warning", "warn"].includes(said.type()) && complaints.push(said.text()));
  let leaving = false;
  page.on("pageerror", (error) => !(leaving && CUT_SHORT.test(String(error))) && complaints.push(String(error)));
  /** Goes to an address; what a page that is left for none was still fetching is no fault of it. @param {string} address */
  const goTo = async (address) => {
    leaving = address === "about:blank";
    await page.goto(address);
    leaving = false;
  };
  const inside = async (work, ...values) => spaced(await page.evaluate(call(work, values)));
  const press = async (key) => {
    await page.keyboard.press(key);
    await inside(twoFrames);
  };
  return {
    goTo,
    inside,
    press,
    async type(text) {
      await inside(() => /** @type {HTMLInputElement} */ (document.activeElement).select());
      await page.keyboard.type(text);
      await press("Tab");
    },
    async drag([from, ...path]) {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      for (const { x, y } of path) await page.mouse.move(x, y);
      await page.mouse.up();
      await inside(twoFrames);
    },
    reload: () => page.reload(),
    back: () => page.goBack(),
    front: () => page.bringToFront(),
    complaints: () => complaints,
    close,
  };
}

/**
 * Another tab; when it is closed the first one is in front again, since a browser gives no frames to what nobody sees.
 * @param {any} page
 * @param {() => Promise<any>} open
 */
async function besides(page, open) {
  const other = await open();
  return handOf(other, async () => {
    await other.close();
    await page.bringToFront();
  });
}

/**
 * Chromium by Playwright, with what a visitor may prefer. A browser keeps nothing for use without a network unless asked to.
 * @param {object & {keeps?: boolean}} [wishes] viewport, colour scheme, touch, whether the page is kept
 * @param {string[]} [flags] more of its switches
 */
export async function openChromium({ keeps = false, ...wishes } = {}, flags = []) {
  const browser = await chromium.launch({ ...CHROMIUM, args: [...CHROMIUM_FLAGS, ...flags] });
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 }, reducedMotion: "reduce", ...wishes,
  });
  if (!keeps) await context.addInitScript(() => Object.defineProperty(Navigator.prototype, "serviceWorker", { value: undefined }));
  const page = await context.newPage();
  const another = () => besides(page, () => context.newPage());
  const resize = (/** @type {Size} */ size) => page.setViewportSize(size);
  return { page, context, another, resize, ...handOf(page, () => browser.close()) };
}

/**
 * Opens an address in Chromium as a visitor with these wishes, does the work, closes.
 * @param {string} address
 * @param {object} wishes
 * @param {(hand: Awaited<ReturnType<typeof openChromium>>) => Promise<void>} work
 */
export async function visit(address, wishes, work) {
  const hand = await openChromium(wishes);
  try {
    await hand.goTo(address);
    assert.equal(await hand.inside(opened), "", hand.complaints().join("\n"));
    await work(hand);
  } finally {
    await hand.close();
  }
}

/**
 * Firefox by puppeteer over its own protocol: no driver in between.
 * @param {{keeps?: boolean}} [wishes]
 * @param {object} [prefs] more of its preferences
 * @param {{hasTouch?: boolean, deviceScaleFactor?: number}} [viewport]
 */
export async function openFirefox({ keeps = false } = {}, prefs = {}, viewport = {}) {
  const browser = await puppeteer.launch({
    browser: "firefox", executablePath: "/usr/bin/firefox-esr", headless: true,
    defaultViewport: { width: 1280, height: 900, ...viewport },
    extraPrefsFirefox: {
      "ui.prefersReducedMotion": 1, "security.fileuri.strict_origin_policy": true, "dom.serviceWorkers.enabled": keeps, ...prefs,
    },
  });
  const page = await browser.newPage();
  /** A Firefox of long support does not know how to turn its screen; its window has the size all the same. @param {Size} size */
  const resize = (size) => page.setViewport({ ...size, ...viewport }).catch((/** @type {unknown} */ fault) => {
    if (!/setScreenOrientationOverride/.test(String(fault))) throw fault;
  });
  return { page, resize, ...handOf(page, () => browser.close()), another: () => besides(page, () => browser.newPage()) };
}
