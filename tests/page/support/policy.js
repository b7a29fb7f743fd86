// What the page's policy refuses, and that nothing is asked of any other machine: the same in every engine.

import assert from "node:assert/strict";
import { createServer } from "node:http";
import { after, before, describe, test } from "node:test";
import { plainHost } from "./plain.js";
import { standing } from "./standing.js";

/** In the page: every way for a text to run as a script, or for a script to fetch from elsewhere; which ones went through. */
const attempts = async (/** @type {string} */ elsewhere) => {
  /** @type {string[]} */
  const through = [];
  Object.assign(globalThis, { through });
  /** @type {Record<string, () => unknown>} */
  const ways = {
    "an inline script": () => document.body.append(Object.assign(document.createElement("script"), { text: "through.push('an inline script')" })),
    "a handler": () => {
      const button = document.body.appendChild(document.createElement("button"));
      button.setAttribute("onclick", "through.push('a handler')");
      button.click();
      button.remove();
    },
    eval: () => (0, eval)("through.push('eval')"),
    "a function of text": () => new Function("through.push('a function of text')")(),
    "a timer of text": () => setTimeout(/** @type {any} */ ("through.push('a timer of text')")),
    "markup": () => (document.body.appendChild(document.createElement("div")).innerHTML = "<img src=x onerror=\"through.push('markup')\">"),
    "a script of data": () => document.body.append(Object.assign(document.createElement("script"), { src: "data:text/javascript,through.push('a script of data')" })),
    "a module of data": () => import("data:text/javascript,through.push('a module of data')"),
    "a script from elsewhere": () => document.body.append(Object.assign(document.createElement("script"), { src: `${elsewhere}a.js` })),
    "a picture from elsewhere": () => new Promise((done) => {
      const picture = new Image();
      picture.onload = () => done(through.push("a picture from elsewhere"));
      picture.onerror = done;
      picture.src = `${elsewhere}a.svg`;
    }),
    "a fetch from elsewhere": () => fetch(`${elsewhere}a.json`).then(() => through.push("a fetch from elsewhere")),
    "a frame from elsewhere": () => new Promise((done) => {
      const frame = document.createElement("iframe");
      addEventListener("message", ({ data }) => data === "framed" && done(through.push("a frame from elsewhere")));
      setTimeout(done, 1500);
      frame.src = `${elsewhere}frame.html`;
      document.body.append(frame);
    }),
    "a form sent elsewhere": () => new Promise((done) => {
      const frame = Object.assign(document.createElement("iframe"), { name: "target" });
      const form = Object.assign(document.createElement("form"), { action: `${elsewhere}form`, target: "target" });
      document.body.append(frame, form);
      form.submit();
      setTimeout(done, 500);
    }),
  };
  // From a timer: what a driver runs in the page is itself let off some rules.
  await new Promise((done) => setTimeout(async () => {
    for (const way of Object.values(ways)) await Promise.resolve().then(way).catch(() => {});
    setTimeout(done, 500);
  }));
  return through;
};

/** Another origin that hands out what is asked of it, and notes it. */
function elsewhere() {
  const asked = /** @type {string[]} */ ([]);
  const files = /** @type {Record<string, [string, string]>} */ ({
    "/a.js": ["text/javascript", "through.push('a script from elsewhere')"],
    "/a.svg": ["image/svg+xml", "<svg xmlns='http://www.w3.org/2000/svg' width='1' height='1'/>"],
    "/a.json": ["application/json", "{}"],
    "/frame.html": ["text/html", "<script>parent.postMessage('framed', '*')</script>"],
    "/bare.html": ["text/html", "<!doctype html><title>no policy</title><body>"],
  });
  const server = createServer(({ url = "" }, answer) => {
    asked.push(url.split("?")[0]);
    const [type, text] = files[url] ?? ["text/plain", ""];
    answer.writeHead(200, { "content-type": type, "access-control-allow-origin": "*" }).end(text);
  });
  before(() => new Promise((done) => server.listen(0, "127.0.0.1", () => done(true))));
  after(() => {
    server.close();
    server.closeAllConnections();
  });
  return { asked, get address() { return `http://127.0.0.1:${/** @type {any} */ (server.address()).port}/`; } };
}

/**
 * @param {string} engine
 * @param {(wishes: object) => Promise<any>} openHand
 */
export function policySuite(engine, openHand) {
  describe(`the policy, in ${engine}`, () => {
    const other = elsewhere();
    const written = plainHost();
    /** @type {any} */
    let real;
    const hand = standing({}, async (wishes) => (real = await openHand(wishes)));
    const ways = [
      "a fetch from elsewhere", "a form sent elsewhere", "a frame from elsewhere", "a function of text", "a handler", "a module of data", "a picture from elsewhere",
      "a script from elsewhere", "a script of data", "a timer of text", "an inline script", "eval", "markup",
    ];
    /** The ways that went through in the page that stands, a form by its trace. @param {Pick<import("./hand.js").Hand, "inside">} tab */
    const through = async (tab) => {
      other.asked.length = 0;
      const found = await tab.inside(attempts, other.address);
      return [...found, ...(other.asked.includes("/form") ? ["a form sent elsewhere"] : [])].sort();
    };

    test("every way goes through where there is no policy", async () => {
      const tab = await real.another(); // its frames go with it
      await tab.goTo(`${other.address}bare.html`);
      assert.deepEqual(await through(tab), ways);
      await tab.close();
    });

    for (const [what, address] of /** @type {[string, () => string][]} */ ([["the served page", () => hand.address], ["a written site", () => written.address]])) {
      test(`none goes through in ${what}, and nothing is asked of the other machine`, async () => {
        await hand.goTo(address());
        await hand.arrived();
        assert.deepEqual(await through(hand), []);
        assert.deepEqual(other.asked, []);
      });
    }
  });
}
