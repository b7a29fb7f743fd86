// What the first screen loads, compressed as `cargo page` hands it out: the page, its style, its modules and no other
// question's.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { gzipSync } from "node:zlib";
import { ROOT } from "../support/server.js";

/** A thousand bytes. */
const KB = 1000;
/** By brotli, as browsers are served. The goal is 140; this guard keeps what is reached from growing unseen. */
const MOST_KB = 186;
/** What is fetched before anything shows, beside the modules that main.js imports. */
const FIRST = ["index.html", "style.css", "icon.svg", "words/en/first.json", "scenarios/index.json", "lightgap_stage_bg.wasm"];

/** @type {string} */
let site;
before(() => {
  site = mkdtempSync(join(tmpdir(), "lightgap-site-"));
  execFileSync("cargo", ["page", "--write", site], { cwd: ROOT, stdio: "pipe" });
});
after(() => rmSync(site, { recursive: true }));

/**
 * A module and all that it imports before it runs.
 * @param {string} name
 * @param {Set<string>} [found]
 */
function withImports(name, found = new Set()) {
  if (found.has(name)) return found;
  found.add(name);
  for (const [, other] of readFileSync(join(site, name), "utf8").matchAll(/^import\b[^;]*?"\.\/([^"]+)";/gm)) withImports(other, found);
  return found;
}

test(`the first screen loads at most ${MOST_KB} kB`, (t) => {
  const first = readdirSync(join(site, "scenarios")).includes("ferry-winch.json") ? ["scenarios/ferry-winch.json"] : [];
  const files = [...FIRST, ...first, ...withImports("main.js")];
  const packed = (/** @type {string} */ name) => {
    const file = join(site, `${name}.br`);
    return statSync(existsSync(file) ? file : join(site, name)).size / KB;
  };
  const plain = (/** @type {string} */ name) => gzipSync(readFileSync(join(site, name)), { level: 9 }).length / KB;
  const sum = (/** @type {string[]} */ names, /** @type {(name: string) => number} */ of) => names.map(of).reduce((all, each) => all + each, 0);
  for (const [kind, those] of Object.entries({ wasm: /\.wasm$/, glue: /lightgap_.*\.js$/, modules: /^(?!lightgap_).*\.js$/, rest: /\.(html|css|svg|json)$/ })) {
    const names = files.filter((name) => those.test(name));
    t.diagnostic(`${kind}: ${sum(names, packed).toFixed(1)} kB in ${names.length} files`);
  }
  t.diagnostic(`${sum(files, packed).toFixed(1)} kB by brotli, ${sum(files, plain).toFixed(1)} kB by gzip, in ${files.length} files`);
  assert.ok(files.length > 25, "the files are there");
  assert.ok(!files.some((name) => /\/.*\.js$|worker|labour|chart/.test(name)), "nothing of a later question");
  assert.ok(sum(files, packed) <= MOST_KB, `${sum(files, packed).toFixed(1)} kB`);
});
