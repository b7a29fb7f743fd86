// Pictures that leave the page: caught as they are handed over, and compared dot by dot.

import pngjs from "pngjs";

export const SIZE = { width: 1000, height: 750, text: 14 };

/** @param {Buffer} bytes */
export const dots = (bytes) => pngjs.PNG.sync.read(bytes);

/**
 * Paints a scenario on a canvas and as an SVG, both at a share of the way, and compares the pixels.
 * Runs in the page.
 */
export const compare = async (scenario, how, size, limit) => {
  const { openKernel } = await import(new URL("kernel.js", document.baseURI).href);
  const { theme } = await import(new URL("theme.js", document.baseURI).href);
  const { svgOf } = await import(new URL("keep/svg.js", document.baseURI).href);
  const words = await (await fetch("words/en/first.json")).json();
  const { bench } = await openKernel(words);
  if (bench.load(scenario).length > 0) throw new Error("refused");
  bench.show(how);
  bench.layout(size.width, size.height, size.text, false);
  const sheet = () => new OffscreenCanvas(size.width, size.height).getContext("2d", { willReadFrequently: true });
  const pixels = (pen) => pen.getImageData(0, 0, size.width, size.height).data;
  const painted = (share) => {
    bench.scrub(share);
    const pen = sheet();
    bench.paint(pen, theme(), { lit: null, hide: ["grips"] });
    return pixels(pen);
  };
  const still = painted(0);
  const canvas = painted(1);
  const drawn = new Image();
  drawn.src = URL.createObjectURL(new Blob([svgOf(bench, { theme: theme(), caption: [] })], { type: "image/svg+xml" }));
  await drawn.decode();
  const pen = sheet();
  pen.drawImage(drawn, 0, 0);
  const differing = (a, b) => {
    let count = 0;
    for (let at = 0; at < a.length; at += 4) {
      if ([0, 1, 2, 3].some((channel) => Math.abs(a[at + channel] - b[at + channel]) > limit)) count++;
    }
    return count / (size.width * size.height);
  };
  return { size: [drawn.naturalWidth, drawn.naturalHeight], same: differing(canvas, pixels(pen)), other: differing(still, pixels(pen)) };
};

/** In the page: what a button of the dialog hands over, its bytes in base 64. */
export const handedOver = (found) => new Promise((done) => {
  let kept = new Blob();
  const address = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob) => address((kept = blob));
  HTMLAnchorElement.prototype.click = async function caught() {
    done({ name: this.download, bytes: btoa(Array.from(new Uint8Array(await kept.arrayBuffer()), (byte) => String.fromCharCode(byte)).join("")) });
  };
  [...document.querySelectorAll("dialog.keep button")].find((each) => each.textContent === found).click();
});

/**
 * The rows in which something stands at a side of a picture.
 * @param {{width: number, height: number, data: Buffer}} picture
 * @param {number} limit what a dot may differ from the sheet
 */
export function cutOff({ width, height, data }, limit) {
  const sheet = data.subarray(0, 3);
  const differs = (/** @type {number} */ x, /** @type {number} */ y) => [0, 1, 2].some((channel) => Math.abs(data[4 * (y * width + x) + channel] - sheet[channel]) > limit);
  return [...Array(height).keys()].filter((y) => differs(1, y) || differs(width - 2, y));
}
