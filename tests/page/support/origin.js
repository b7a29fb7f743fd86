// A whole visit through a proxy that refuses every other origin: what the page asks for is its own, and all works. The
// same in every engine that is asked.

import assert from "node:assert/strict";
import { createServer, request } from "node:http";
import { after, before, describe, test } from "node:test";
import { focusOn, until } from "./inside.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/** Every question, of a chain that can be asked it. */
const ASKED = { give: "ferry-winch", touch: "ferry-winch", line: "ferry-trike", fit: "ferry-thousand", wear: "tired-trike", reach: "oiled-winch", surface: "dusty-trike", width: "ferry-trike" };
const NOWHERE = "http://elsewhere.invalid/";

/** A proxy for one origin alone; it notes what else is asked of it in plain letters. */
function proxy() {
  const asked = /** @type {string[]} */ ([]);
  const only = { host: "" };
  const server = createServer((query, answer) => {
    const url = new URL(query.url ?? "", NOWHERE);
    asked.push(url.href);
    if (url.host !== only.host) return answer.writeHead(403).end();
    query.pipe(request(url, { method: query.method, headers: query.headers }, (given) => {
      answer.writeHead(given.statusCode ?? 502, given.headers);
      given.pipe(answer);
    }));
  });
  server.on("connect", (_, socket) => socket.end("HTTP/1.1 403 Forbidden\r\n\r\n")); // what browsers ask for themselves
  before(() => new Promise((done) => server.listen(0, "127.0.0.1", () => done(true))));
  after(() => {
    server.close();
    server.closeAllConnections();
  });
  return { asked, only, get port() { return /** @type {any} */ (server.address()).port; } };
}

/**
 * @param {string} engine
 * @param {(port: number) => Promise<any>} openHand through the proxy at this port
 */
export function originSuite(engine, openHand) {
  describe(`a visit that may ask nobody else, in ${engine}`, () => {
    const others = proxy();
    /** @type {any} */
    let real;
    /** @type {string[]} */
    const asked = [];
    let planted = 0;
    const hand = standing({}, async () => {
      real = await openHand(others.port);
      real.page.on("request", (/** @type {any} */ made) => asked.push(made.url()));
      return real;
    });
    const { inside, click } = hand;
    before(() => (others.only.host = new URL(hand.address).host));
    const foreign = () => asked.filter((url) => !url.startsWith(hand.address) && !/^(data|blob|about):/.test(url));
    const press = (/** @type {string} */ word) => inside((/** @type {string} */ text) => /** @type {HTMLElement} */ ([...document.querySelectorAll("dialog[open] button")].find((each) => each.textContent === text)).click(), words[word]);

    test("a page that does ask another is noticed, and refused", async () => {
      await hand.goTo(`${hand.address}icon.svg`);
      assert.notEqual(await inside((/** @type {string} */ url) => fetch(url).then(() => "came", () => "refused"), NOWHERE), "came");
      await hand.goTo("about:blank");
      await inside((/** @type {string} */ url) => fetch(url, { mode: "no-cors" }).catch(() => {}), NOWHERE);
      assert.ok(foreign().includes(NOWHERE) && others.asked.includes(NOWHERE));
      asked.length = 0;
      others.asked.length = 0;
      planted = hand.complaints().length;
    });

    for (const [ask, on] of Object.entries(ASKED)) {
      test(`the question ${ask}, and its first slider moved`, async () => {
        await hand.open(`#v=1&on=${on}&ask=${ask}`);
        const answer = await hand.said("answer");
        await inside(focusOn, ask === "give" || ask === "touch" ? "#scrub" : ".own input[type=range]");
        for (const key of ["ArrowRight", "ArrowLeft", "End"]) await hand.press(key);
        await hand.settled();
        assert.notEqual(answer, "");
        assert.deepEqual(foreign(), []);
      });
    }

    test("a lesson, and the hall", async () => {
      await hand.open("#v=1&on=lesson-why-so-little-1&ask=give&how=turn&at=0");
      await inside(until(() => document.querySelector(".lesson:not([hidden]) .lesson-say")?.textContent));
      await click(".lesson-hall");
      await inside(until(() => document.querySelector("[data-hall]")));
      assert.deepEqual(foreign(), []);
    });

    test("the picture, the numbers, the scenario and the review sheet", async () => {
      await hand.open("#v=1&on=ferry-winch&ask=give");
      await inside(() => (HTMLAnchorElement.prototype.click = () => {}));
      await click("#keep");
      await inside(until(() => document.querySelector("dialog.keep[open]")));
      for (const way of ["svg", "png", "json", "csv", "scenario"]) {
        await press(`keep.${way}`);
        await inside(until((/** @type {string} */ done) => document.querySelector(".keep-told")?.textContent === done), words[`keep.${way}.done`]);
      }
      await press("keep.sheet.open");
      await inside(until(() => document.querySelector(".review .primary:not([disabled])")));
      assert.deepEqual(foreign(), []);
    });

    test("all of it came by the proxy, from the page's own origin", () => {
      const those = others.asked.filter((url) => url.startsWith(hand.address));
      assert.ok(those.length > 50, `${those.length} requests`);
      for (const part of ["first.js", "lightgap_stage_bg.wasm", "lightgap_worker_bg.wasm"]) assert.ok(those.some((url) => url.endsWith(part)), part);
      assert.deepEqual(hand.complaints().slice(planted), []);
    });
  });
}
