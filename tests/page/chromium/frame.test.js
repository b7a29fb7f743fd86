// The stage alone in the frame of a course page that lies on another host.

import assert from "node:assert/strict";
import { createServer } from "node:http";
import { after, before, describe, test } from "node:test";
import { openChromium } from "../support/hand.js";
import { opened, pictureMark } from "../support/inside.js";
import { plainHost } from "../support/plain.js";
import { serving } from "../support/standing.js";

const FRAGMENT = "?stage=alone#v=1&on=ferry-trike&ask=give&how=turn&at=1";

describe("the stage in a frame, in Chromium", () => {
  const [host, served] = [plainHost(), serving()];
  const shown = { address: "" };
  const course = createServer((_, answer) => answer.writeHead(200, { "content-type": "text/html" }).end(`<!doctype html><iframe width=720 height=560 src="${shown.address}"></iframe>`));
  before(() => new Promise((done) => course.listen(0, "127.0.0.1", () => done(true))));
  after(() => course.close());
  /** What stands in the frame of the course page. */
  const framed = async (address, look) => {
    shown.address = address;
    const hand = await openChromium({});
    try {
      await hand.goTo(`http://localhost:${/** @type {any} */ (course.address()).port}/`);
      await look(hand.page.frames()[1]);
    } finally {
      await hand.close();
    }
  };

  test("a written site lets any page frame it, works there, and is not kept there", () => framed(host.address + FRAGMENT, async (frame) => {
    const inside = (work) => frame.evaluate(`(${work})()`);
    assert.equal(await inside(opened), "");
    assert.match(await inside(() => document.querySelector("#answer").textContent), /^It turns/);
    assert.ok((await inside(pictureMark)).colours > 8);
    assert.equal(await inside(() => document.querySelector("link[rel=manifest]")), null);
  }));

  test("what cargo page serves on this machine lets no other page frame it", () => framed(served.address + FRAGMENT, async (frame) => {
    assert.match(frame.url(), /^chrome-error:/);
  }));
});
