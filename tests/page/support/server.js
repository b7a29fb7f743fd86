// Starts the page as a visitor does and gives its address.

import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { createInterface } from "node:readline";

export const ROOT = fileURLToPath(new URL("../../..", import.meta.url));

/**
 * `cargo page` on any free port.
 * @returns {Promise<{address: string, stop: () => Promise<void>}>}
 */
export async function startPage() {
  const server = spawn("cargo", ["page", "--port", "0"], { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
  const ended = new Promise((done) => server.once("exit", done));
  const address = await new Promise((found, lost) => {
    createInterface({ input: server.stdout }).once("line", found);
    server.once("error", lost);
    ended.then((code) => lost(new Error(`cargo page ended with ${code} before it served`)));
  });
  const stop = async () => {
    server.kill();
    await ended;
  };
  return { address, stop };
}
