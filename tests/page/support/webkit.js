// WebKitGTK by its own driver under a virtual screen: it has no headless mode.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync } from "node:fs";
import { createServer } from "node:net";
import { createInterface } from "node:readline";
import { Builder, Capabilities, Key, Origin } from "selenium-webdriver";
import { spaced, twoFrames } from "./inside.js";

/** A port nobody uses now. */
async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = /** @type {import("node:net").AddressInfo} */ (server.address());
  server.close();
  await once(server, "close");
  return port;
}

/** The browser is kept in a folder named after the machine's kind. */
function browserPath() {
  const folders = readdirSync("/usr/lib").filter((name) => name.includes("-linux-gnu"));
  const found = folders.map((name) => `/usr/lib/${name}/webkit2gtk-4.1/MiniBrowser`);
  return found[0] ?? "MiniBrowser";
}

/** A virtual screen; it names itself when it is ready. */
async function startScreen() {
  const screen = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "1400x1000x24", "-nolisten", "tcp"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  const lines = createInterface({ input: /** @type {import("node:stream").Readable} */ (screen.stdio[3]) });
  const [name] = await once(lines, "line");
  return { screen, display: `:${name}` };
}

/**
 * The driver, as soon as it answers.
 * @param {string} display
 */
async function startDriver(display) {
  const port = await freePort();
  const driver = spawn("WebKitWebDriver", [`--port=${port}`, "--host=127.0.0.1"], {
    stdio: "ignore", env: { ...process.env, DISPLAY: display, GDK_BACKEND: "x11", WEBKIT_DISABLE_COMPOSITING_MODE: "1" },
  });
  const address = `http://127.0.0.1:${port}`;
  for (let tries = 0; tries < 2000; tries++) {
    const answer = await fetch(`${address}/status`).catch(() => null);
    if (answer?.ok) return { driver, address };
    await new Promise((next) => setImmediate(next));
  }
  throw new Error("WebKitWebDriver does not answer");
}

const KEYS = {
  ArrowRight: Key.ARROW_RIGHT, ArrowLeft: Key.ARROW_LEFT, ArrowUp: Key.ARROW_UP, ArrowDown: Key.ARROW_DOWN,
  Home: Key.HOME, End: Key.END, Tab: Key.TAB, Enter: Key.ENTER, Escape: Key.ESCAPE,
};

/** @returns {Promise<import("./hand.js").Hand>} */
export async function openWebkit() {
  const { screen, display } = await startScreen();
  const { driver, address } = await startDriver(display);
  const wanted = new Capabilities({
    browserName: "MiniBrowser",
    "webkitgtk:browserOptions": { binary: browserPath(), args: ["--automation"] },
  });
  const window = await new Builder().usingServer(address).withCapabilities(wanted).build();
  const inside = async (work, ...values) => {
    const text = `const done = arguments[arguments.length - 1];
      Promise.resolve().then(() => (${work})(...${JSON.stringify(values)}))
        .then((value) => done({ value }), (error) => done({ error: String(error) }));`;
    const { value, error } = await window.executeAsyncScript(text);
    if (error) throw new Error(error);
    return spaced(value);
  };
  const press = async (key) => {
    await window.actions().sendKeys(KEYS[key] ?? key).perform();
    await inside(twoFrames);
  };
  return {
    goTo: (page) => window.get(page),
    inside,
    press,
    async type(text) {
      await inside(() => /** @type {HTMLInputElement} */ (document.activeElement).select());
      await window.actions().sendKeys(text).perform();
      await press("Tab");
    },
    async drag([from, ...path]) {
      const at = ({ x, y }) => ({ x: Math.round(x), y: Math.round(y), origin: Origin.VIEWPORT, duration: 0 });
      let moves = window.actions().move(at(from)).press();
      for (const point of path) moves = moves.move(at(point));
      await moves.release().perform();
      await inside(twoFrames);
    },
    reload: () => window.navigate().refresh(),
    back: () => window.navigate().back(),
    complaints: () => [],
    async close() {
      await window.quit().catch(() => {});
      driver.kill();
      screen.kill();
    },
  };
}
