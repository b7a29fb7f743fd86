// The drawing as one SVG document, the one that `cargo solve --svg` writes: a canvas that writes down what the kernel paints.

/** @typedef {import("../kernel.js").BenchLike} BenchLike */
/** @typedef {{title?: string, about?: string, caption?: string[], width_px?: number, theme?: Record<string, string>}} Asked */

/** The letters of pictures; the kernel's too. */
export const LETTERS = "system-ui, -apple-system, 'DejaVu Sans', sans-serif";
/** What is kept for a letter, in its size: the drawing keeps as much. */
export const LETTER_EM = 0.62;
/** Decimals of a coordinate: a thousandth of a pixel. */
const DECIMALS = 3;
/** No picture is wider, px. */
const MOST_PX = 1e5;
/** The caption, em: its margin, its first baseline under the sheet, from line to line, above and below its lines. */
const CAPTION = { margin: 1, first: 1.2, line: 1.4, room: 0.6 };
/** The ink of print, where a theme has none. */
export const INK = "#1b2430";
const ANCHORS = /** @type {Record<string, string|undefined>} */ ({ center: "middle", right: "end" });
const SIGNS = /** @type {Record<string, string>} */ ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" });

/** Letters that can be nothing but letters; what XML has no place for becomes U+FFFD. @param {string} text */
export const safe = (text) => text.replace(/[&<>"]/g, (sign) => SIGNS[sign]).replace(/[\0-\x08\v\f\x0e-\x1f\ufffe\uffff]/g, "\ufffd");
/** A coordinate without idle zeros, and nothing below nothing. @param {number} value */
const short = (value) => String(Number(value.toFixed(DECIMALS)) + 0);
/** @param {Record<string, string|number|undefined>} given */
const attributes = (given) => Object.entries(given).flatMap(([name, value]) =>
  value === undefined ? [] : ` ${name}="${typeof value === "number" ? short(value) : safe(value)}"`).join("");

/** Breaks a sentence into lines. @param {string} text @param {number} most letters in a line */
export function linesOf(text, most) {
  /** @type {string[]} */
  const lines = [];
  for (const word of text.split(/\s+/u).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && [...last].length + 1 + [...word].length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Takes what a canvas takes, as far as the kernel uses one. */
class Pen {
  size = { width: 0, height: 0 };
  sheet = "";
  circle = {};
  /** @type {string[]} */
  body = [];
  clips = 0;
  clipped = false;
  path = "";
  /** The path that was filled last, and with what, until its line is known. @type {string|null} */
  filled = null;
  fillStyle = "";
  strokeStyle = "";
  lineWidth = 1;
  font = "";
  textAlign = "left";
  /** @type {number[]} */
  dashes = [];

  save() {}

  restore() {
    this.settle();
    if (this.clipped) this.body.push("</g>\n");
    this.clipped = false;
  }

  /** @param {number[]} dashes */
  setLineDash(dashes) {
    this.dashes = [...dashes];
  }

  /** @param {number} _x @param {number} _y @param {number} width @param {number} height */
  fillRect(_x, _y, width, height) {
    this.size = { width, height };
    this.sheet = this.fillStyle;
  }

  beginPath() {
    this.settle();
    this.path = "";
  }

  /** @param {number} x @param {number} y */
  moveTo(x, y) {
    this.path += `M${short(x)} ${short(y)}`;
  }

  /** @param {number} x @param {number} y */
  lineTo(x, y) {
    this.path += `L${short(x)} ${short(y)}`;
  }

  /**
   * SVG names an arc by its ends, which says nothing of a whole turn: from half a turn on, an arc goes in two.
   * @param {number} x @param {number} y @param {number} radius @param {number} start @param {number} end @param {boolean} back
   */
  arc(x, y, radius, start, end, back) {
    const pieces = Math.abs(end - start) < Math.PI ? 1 : 2;
    this.circle = { cx: x, cy: y, r: radius };
    for (let piece = 1; piece <= pieces; piece++) {
      const turn = start + ((end - start) * piece) / pieces;
      this.path += `A${short(radius)} ${short(radius)} 0 0 ${back ? 0 : 1} ${short(x + radius * Math.cos(turn))} ${short(y + radius * Math.sin(turn))}`;
    }
  }

  closePath() {
    this.path += "Z";
  }

  clip() {
    const id = `clip-${this.clips++}`;
    this.body.push(`<clipPath id="${id}"><circle${attributes({ ...this.circle })}/></clipPath>\n<g clip-path="url(#${id})">\n`);
    this.clipped = true;
  }

  fill() {
    this.filled = this.fillStyle;
  }

  stroke() {
    const { strokeStyle: stroke, lineWidth, dashes } = this;
    this.write({ stroke, "stroke-width": lineWidth, "stroke-dasharray": dashes.map(short).join(" ") || undefined });
  }

  /** Writes a path that was filled and got no line. */
  settle() {
    if (this.filled !== null) this.write({});
  }

  /** @param {Record<string, string|number|undefined>} line */
  write(line) {
    if (this.path) this.body.push(`<path${attributes({ d: this.path, fill: this.filled ?? "none", ...line })}/>\n`);
    this.filled = null;
  }

  /** @param {string} letters @param {number} x @param {number} y */
  fillText(letters, x, y) {
    this.settle();
    const [weight, size] = this.font.split(" ");
    this.body.push(textAt(letters, { x, y, size: parseFloat(size), bold: weight === "700", anchor: ANCHORS[this.textAlign], fill: this.fillStyle }));
  }
}

/** @param {string} letters @param {{x: number, y: number, size: number, bold: boolean, anchor?: string, fill: string}} writing */
const textAt = (letters, { x, y, size, bold, anchor, fill }) =>
  `<text${attributes({ x, y, "font-size": size, "font-weight": bold ? "700" : undefined, "text-anchor": anchor, fill })}>${safe(letters)}</text>\n`;

/**
 * The drawing on a bench as it is laid out, without its grips. The first sentence of a caption is bold.
 * @param {BenchLike} bench
 * @param {Asked} asked
 */
export function svgOf(bench, { title, about, caption = [], width_px, theme = {} }) {
  const pen = new Pen();
  bench.paint(/** @type {any} */ (pen), theme, { lit: null, hide: ["grips"] });
  const [em, { width, height }] = [bench.text_px(), pen.size];
  const most = Math.max(1, Math.floor((width / em - 2 * CAPTION.margin) / LETTER_EM));
  const broken = (/** @type {string} */ sentence) => (sentence.trim() ? linesOf(sentence, most) : [""]);
  const lines = caption.flatMap((sentence, place) => broken(sentence).map((letters) => ({ letters, bold: place === 0 })));
  const tall = height + (lines.length > 0 ? em * (CAPTION.room + CAPTION.line * lines.length) : 0);
  const zoom = width_px && width_px >= 1 && width_px < MOST_PX ? width_px / width : 1;
  const root = attributes({ width: zoom * width, height: zoom * tall, role: "img", "font-family": LETTERS, "stroke-linejoin": "round", "fill-rule": "evenodd" });
  const foot = lines.map(({ letters, bold }, row) =>
    textAt(letters, { x: em * CAPTION.margin, y: height + em * (CAPTION.first + CAPTION.line * row), size: em, bold, fill: theme.ink ?? INK }));
  const told = bench.scenario();
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${short(tall)}"${root}>
<title>${safe(title ?? told.title)}</title>
<desc>${safe(about ?? told.about ?? "")}</desc>
<rect${attributes({ width, height: tall, fill: pen.sheet })}/>
${foot.join("")}${pen.body.join("")}</svg>
`;
}
