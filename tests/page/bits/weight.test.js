// What the first screen loads, compressed as a server sends it: the page, its style, its modules and no other question's.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { test } from "node:test";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { SITE } from "../support/bench.js";
import { ROOT } from "../support/server.js";

/** A thousand bytes. */
const KB = 1000;
/** The goal is 140; this guard keeps what is reached from growing unseen. */
const MOST_KB = 221;

/**
 * A module and all that it imports before it runs.
 * @param {string} file
 * @param {Set<string>} [found]
 */
function withImports(file, found = new Set()) {
  if (found.has(file)) return found;
  found.add(file);
  for (const [, name] of readFileSync(file, "utf8").matchAll(/^(?:import|export)\b[^;]*?from "(\.[^"]+)"/gm)) {
    const inside = join(dirname(file), name);
    withImports(basename(name).startsWith("lightgap_") ? join(SITE, basename(name)) : inside, found);
  }
  return found;
}

test(`the first screen loads at most ${MOST_KB} kB`, (t) => {
  const scenarios = readdirSync(join(ROOT, "scenarios")).filter((name) => name.endsWith(".json")).map((name) => `scenarios/${name}`);
  const plain = ["www/index.html", "www/style.css", "www/icon.svg", "www/words/en/first.json", ...scenarios].map((name) => join(ROOT, name));
  const files = [...plain, ...withImports(join(ROOT, "www/main.js")), join(SITE, "lightgap_stage_bg.wasm")];
  const size = (how) => (file) => how(readFileSync(file)).length / KB;
  const brotli = size((bytes) => brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }));
  const gzip = size((bytes) => gzipSync(bytes, { level: 9 }));
  const sum = (of) => files.map(of).reduce((all, each) => all + each, 0);
  const kinds = { wasm: /\.wasm$/, glue: /lightgap_.*\.js$/, modules: /www\/.*\.js$/, rest: /\.(html|css|svg|json)$/ };
  for (const [name, kind] of Object.entries(kinds)) {
    const those = files.filter((file) => kind.test(file));
    t.diagnostic(`${name}: ${those.map(brotli).reduce((a, b) => a + b, 0).toFixed(1)} kB in ${those.length} files`);
  }
  t.diagnostic(`${sum(brotli).toFixed(1)} kB by brotli, ${sum(gzip).toFixed(1)} kB by gzip, in ${files.length} files`);
  assert.ok(files.length > 25, "the files are there");
  assert.ok(!files.some((file) => /line\/|worker/.test(file)), "nothing of a later question");
  assert.ok(sum(gzip) <= MOST_KB, `${sum(gzip).toFixed(1)} kB`);
});
