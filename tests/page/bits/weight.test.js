// What the first screen loads, compressed as `cargo page` hands it out: the page, its style, its modules in one file
// and no other question's.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { gzipSync } from "node:zlib";
import { ROOT } from "../support/server.js";

/** A thousand bytes. */
const KB = 1000;
/** By brotli, as browsers are served. This guard keeps what is reached from growing unseen. */
const MOST_KB = 140;
/** What is fetched before anything shows. */
const FIRST = ["main.js", "first.js", "index.html", "style.css", "icon.svg", "words/en/first.json", "scenarios/index.json", "lightgap_stage_bg.wasm"];

/** @type {string} */
let site;
before(() => {
  site = mkdtempSync(join(tmpdir(), "lightgap-site-"));
  execFileSync("cargo", ["page", "--write", site], { cwd: ROOT, stdio: "pipe" });
});
after(() => rmSync(site, { recursive: true }));

test(`the first screen loads at most ${MOST_KB} kB`, (t) => {
  const first = readdirSync(join(site, "scenarios")).includes("ferry-winch.json") ? ["scenarios/ferry-winch.json"] : [];
  const files = [...FIRST, ...first];
  const modules = [...readFileSync(join(site, "first.js"), "utf8").matchAll(/\bexport const ([a-z$]+)\$=/g)].map(([, name]) => name);
  const packed = (/** @type {string} */ name) => {
    const file = join(site, `${name}.br`);
    return statSync(existsSync(file) ? file : join(site, name)).size / KB;
  };
  const plain = (/** @type {string} */ name) => gzipSync(readFileSync(join(site, name)), { level: 9 }).length / KB;
  const sum = (/** @type {string[]} */ names, /** @type {(name: string) => number} */ of) => names.map(of).reduce((all, each) => all + each, 0);
  for (const [kind, those] of Object.entries({ wasm: /\.wasm$/, modules: /\.js$/, rest: /\.(html|css|svg|json)$/ })) {
    const names = files.filter((name) => those.test(name));
    t.diagnostic(`${kind}: ${sum(names, packed).toFixed(1)} kB in ${names.length} files`);
  }
  t.diagnostic(`${sum(files, packed).toFixed(1)} kB by brotli, ${sum(files, plain).toFixed(1)} kB by gzip, in ${files.length} files`);
  assert.ok(modules.length > 25 && modules.includes("lightgap$stage"), "the modules are there");
  assert.ok(!modules.some((name) => /worker|labour|chart/.test(name)), "nothing of a later question");
  const asked = (/** @type {string} */ name) => readFileSync(join(site, name), "utf8").match(/(?:^|;)import\b[^(]*?;|import\.meta/gm) ?? [];
  assert.deepEqual([asked("main.js").length, asked("first.js").filter((line) => line !== "import.meta")], [1, []], "one file of modules");
  assert.ok(sum(files, packed) <= MOST_KB, `${sum(files, packed).toFixed(1)} kB`);
});

test("no program names a folder of the machine that built it", () => {
  for (const name of readdirSync(site).filter((each) => each.endsWith(".wasm"))) {
    assert.ok(!readFileSync(join(site, name)).includes(homedir()), name);
  }
});
