// A web server that knows nothing of the page: files of a folder under a sub-path, no header but the media type.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { after, before } from "node:test";
import { ROOT } from "./server.js";

/** Where the site lies on its host. */
const UNDER = "/course/chains/";
const MEDIA = /** @type {Record<string, string>} */ ({
  ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".json": "application/json", ".wasm": "application/wasm",
  ".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json",
});

/** The site as `cargo page --write` lays it out, handed out by a plain server while the suite that calls this runs. */
export function plainHost() {
  const folder = mkdtempSync(join(tmpdir(), "lightgap-host-"));
  const host = { folder: join(folder, "one"), asked: /** @type {string[]} */ ([]), address: "", stop: () => {}, start: async () => {}, newer: newer };
  const server = () => createServer((request, answer) => {
    const path = new URL(request.url ?? "", "http://host").pathname;
    host.asked.push(path);
    try {
      const name = path.slice(UNDER.length) || "index.html";
      if (!path.startsWith(UNDER)) throw new Error("elsewhere");
      const bytes = readFileSync(join(host.folder, name));
      answer.writeHead(200, { "content-type": MEDIA[extname(name)] ?? "application/octet-stream" }).end(bytes);
    } catch {
      answer.writeHead(404).end();
    }
  });
  /** @type {import("node:http").Server} */
  let running;
  let port = 0;
  host.start = () => new Promise((done) => {
    running = server().listen(port, "127.0.0.1", () => {
      port = /** @type {import("node:net").AddressInfo} */ (running.address()).port;
      host.address = `http://127.0.0.1:${port}${UNDER}`;
      done();
    });
  });
  host.stop = () => {
    running.close();
    running.closeAllConnections();
  };
  before(async () => {
    execFileSync("cargo", ["page", "--write", host.folder], { cwd: ROOT, stdio: "pipe" });
    await host.start();
  });
  after(() => {
    host.stop();
    rmSync(folder, { recursive: true });
  });

  /**
   * Hands out a newer version from now on: one sentence is another, and its list of files says so, or does not.
   * @param {string} name
   * @param {string} word
   * @param {string} sentence
   * @param {boolean} [listed]
   */
  function newer(name, word, sentence, listed = true) {
    const next = `${host.folder}-${name.replace(/\W/g, "-")}-${listed}`;
    cpSync(host.folder, next, { recursive: true });
    const file = join(next, name);
    const last = readFileSync(file);
    const changed = JSON.stringify({ ...JSON.parse(last.toString()), [word]: sentence });
    writeFileSync(file, changed);
    const mark = (/** @type {string|Buffer} */ text) => createHash("sha256").update(text).digest("hex").slice(0, 16);
    const script = readFileSync(join(next, "keeper.js"), "utf8");
    const told = listed ? script.replace(`"${name}":"${mark(last)}"`, `"${name}":"${mark(changed)}"`) : script;
    writeFileSync(join(next, "keeper.js"), told.replace(/^const VERSION = ".*?"/, `const VERSION = "${mark(next)}"`));
    host.folder = next;
  }
  return host;
}
