// Keep and hand over: link, picture, numbers, scenario; a file opened, refused, and kept over a reload.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { beforeEach, describe, test } from "node:test";
import { textOf } from "./inside.js";
import { ROOT } from "./server.js";
import { standing } from "./standing.js";
import { words } from "./words.js";

/**
 * @param {string} engine
 * @param {() => Promise<any>} openHand
 */
export function keepSuite(engine, openHand) {
  describe(`keeping and handing over, in ${engine}`, () => {
    const hand = standing({}, openHand);
    const { open, click, until, said, hash } = hand;
    beforeEach(async () => {
      await open();
      await click("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
    });
    /** What a button of the dialog hands over: its file's name and text, and the drawing it was made of. */
    const handed = (word) => hand.inside((found) => new Promise((done) => {
      let [drawn, kept] = [new Blob(), new Blob()];
      const address = URL.createObjectURL.bind(URL);
      URL.createObjectURL = (blob) => {
        if (blob.type === "image/svg+xml") drawn = blob;
        return address((kept = blob));
      };
      HTMLAnchorElement.prototype.click = async function caught() {
        done({ name: this.download, type: kept.type, size: kept.size, text: await kept.text(), drawn: await drawn.text() });
      };
      [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === found).click();
    }), words[word]);
    /** Drops a file on the page and waits until the page has said or done something about it. */
    const drop = async (text) => {
      const before = await hash();
      await hand.inside((content) => {
        const data = new DataTransfer();
        data.items.add(new File([content], "brought.json", { type: "application/json" }));
        document.querySelector("dialog.keep .fault").hidden = true;
        dispatchEvent(new DragEvent("drop", { dataTransfer: data, cancelable: true }));
      }, text);
      await until((old) => document.querySelector("dialog.keep .fault:not([hidden])") || location.hash !== old, before);
      return hand.inside(textOf, "dialog.keep .fault:not([hidden])");
    };

    test("the link is the address", async () => {
      assert.equal(await hand.inside(() => document.querySelector("#keep-link").value === location.href), true);
    });

    test("picture, numbers and scenario are handed over whole and honest", async () => {
      const svg = await handed("keep.svg");
      assert.match(svg.text, /^<svg[^]*drawn \d+× too big[^]*certifies nothing/);
      const png = await handed("keep.png");
      assert.deepEqual([png.name, png.type, png.size > 10_000], ["ferry-winch.png", "image/png", true]);
      const [json, csv, scenario] = [await handed("keep.json"), await handed("keep.csv"), await handed("keep.scenario")];
      const turn = JSON.parse(json.text).play.turn_limit_rad;
      assert.ok(csv.text.includes(`\r\nplay.turn_limit_rad,${turn}\r\n`), "every figure of the report is kept");
      const file = JSON.parse(await readFile(`${ROOT}/scenarios/ferry-winch.json`, "utf8"));
      assert.deepEqual(Object.keys(JSON.parse(scenario.text).chain).sort(), Object.keys(file.chain).sort());
    });

    test("pictures that are laid out anew stand worn where the stage does", async () => {
      /** What is drawn on each picture, without its words: the badge tells of wear even where the drawing does not. */
      const taken = async (how) => {
        await open(`#v=1&on=ferry-winch&ask=wear&times=10${how}`);
        await click("#keep");
        await until(() => document.querySelector("dialog.keep[open]"));
        const drawn = [];
        for (const word of ["keep.square", "keep.strip"]) drawn.push((await handed(word)).drawn.replace(/<text[^]*?<\/text>|<title>.*?<\/title>/g, ""));
        return drawn.map((svg) => createHash("sha256").update(svg).digest("hex"));
      };
      const [worn, fresh, again] = [await taken(""), await taken("&own.worn=0"), await taken("&own.worn=0")];
      assert.deepEqual(fresh, again, "the same stage gives the same picture");
      assert.ok(worn.every((mark, at) => mark !== fresh[at]), JSON.stringify([worn, fresh]));
    });

    test("a file that is no scenario is refused in words and the chain stays", async () => {
      const before = await hash();
      assert.match(await drop("{"), /cannot be read as JSON; what is on the bench stays/);
      assert.match(await drop("[]"), /^brought\.json is refused; what is on the bench stays\. The file should be an object, not a list\.$/);
      assert.match(await drop('{"format": 1, "title": "x", "chain": {"pitch_mm": -1}}'), /Pitch: −1\.00 mm; it must be larger than nothing/);
      assert.match(await drop('{"format": 1, "__proto__": {"x": 1}, "title": "<img src=x onerror=alert(1)>", "chain": 5}'), /refused/);
      assert.equal(await hash(), before);
      assert.equal(await hand.inside(() => document.querySelectorAll("img").length), 0);
    });

    test("a scenario that was brought is on the bench, after a reload too", async () => {
      const text = await readFile(`${ROOT}/scenarios/wide-gap.json`, "utf8");
      assert.equal(await drop(text.replace("More side gap", "Brought by hand")), "");
      assert.match(await hash(), /on=own&/);
      await hand.reload();
      assert.equal(await hand.inside(() => document.querySelector("#scenario").selectedOptions[0].textContent), "Brought by hand");
      assert.match(await said("about"), /Brought by hand/);
    });

    test("a file with steps opens as a lesson", async () => {
      assert.equal(await drop(await readFile(`${ROOT}/scenarios/lessons/inside-one-link.json`, "utf8")), "");
      await until(() => /^This is one pitch/.test(document.querySelector(".lesson-say")?.textContent ?? ""));
      assert.match(await hash(), /on=lesson-own-1&/);
    });

    test("a file that is no scenario is refused in German too", async () => {
      await open("?lang=de");
      await click("#keep");
      await until(() => document.querySelector("dialog.keep[open]"));
      assert.match(await drop("[]"), /Die Datei: hier sollte ein Objekt stehen, nicht eine Liste\.$/);
    });

    test("nothing complains", () => assert.deepEqual(hand.complaints(), []));
  });
}
