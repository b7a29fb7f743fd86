// What the first screen loads, compressed as a server would send it.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { gzipSync } from "node:zlib";
import { SITE } from "../support/bench.js";
import { ROOT } from "../support/server.js";

/** A thousand bytes. */
const KB = 1000;
/** The goal is 140; this guard keeps what is reached from growing unseen. */
const MOST_KB = 262;

test(`the first screen loads at most ${MOST_KB} kB`, (t) => {
  const files = ["www", "www/words", "scenarios"].flatMap((folder) =>
    readdirSync(join(ROOT, folder)).filter((name) => /\.(html|css|js|json|svg)$/.test(name)).map((name) => join(ROOT, folder, name)));
  files.push(join(SITE, "lightgap_wasm.js"), join(SITE, "lightgap_wasm_bg.wasm"));
  const sizes = files.map((file) => gzipSync(readFileSync(file), { level: 9 }).length / KB);
  const all = sizes.reduce((sum, size) => sum + size, 0);
  t.diagnostic(`${all.toFixed(0)} kB in ${files.length} files, the kernel ${sizes[sizes.length - 1].toFixed(0)} kB of it`);
  assert.ok(files.length > 10 && all > 50, "the files are there");
  assert.ok(all <= MOST_KB, `${all.toFixed(1)} kB`);
});
