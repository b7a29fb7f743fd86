// A canvas that draws nothing and writes down what it is told, in the words of an SVG document.

/** @typedef {{path?: number[], text?: string, fill: string, stroke?: string, width?: number, dash?: number[], font?: string, align?: string}} Mark */

const UNSET = { fillStyle: "#000", strokeStyle: "#000", lineWidth: 1, font: "", textAlign: "start", dash: /** @type {number[]} */ ([]) };

/** The browser's class by name: the glue asks what it is given whether it is one. */
export class CanvasRenderingContext2D {
  /** @type {Mark[]} */
  marks = [];
  clips = 0;
  /** @type {number[]} */
  path = [];
  state = { ...UNSET };
  /** @type {(typeof UNSET)[]} */
  saved = [];

  save() {
    this.saved.push({ ...this.state });
  }

  restore() {
    this.state = this.saved.pop() ?? { ...UNSET };
  }

  beginPath() {
    this.path = [];
  }

  /** @param {number} x @param {number} y */
  moveTo(x, y) {
    this.path.push(x, y);
  }

  /** @param {number} x @param {number} y */
  lineTo(x, y) {
    this.path.push(x, y);
  }

  /**
   * As SVG writes an arc: radii, flags and the end; from half a turn on, in two.
   * @param {number} x @param {number} y @param {number} radius @param {number} start @param {number} end @param {boolean} back
   */
  arc(x, y, radius, start, end, back) {
    const pieces = Math.abs(end - start) < Math.PI ? 1 : 2;
    for (let piece = 1; piece <= pieces; piece++) {
      const turn = start + ((end - start) * piece) / pieces;
      this.path.push(radius, radius, 0, 0, back ? 0 : 1, x + radius * Math.cos(turn), y + radius * Math.sin(turn));
    }
  }

  closePath() {}

  clip() {
    this.clips += 1;
  }

  /** @param {string} rule */
  fill(rule) {
    if (rule !== "evenodd") throw new Error(`filled by the rule ${rule}`);
    this.marks.push({ path: this.path, fill: this.state.fillStyle });
  }

  stroke() {
    const { strokeStyle: stroke, lineWidth: width, dash } = this.state;
    const last = this.marks.at(-1);
    const filled = last?.path === this.path && this.path.length > 0;
    const mark = filled ? /** @type {Mark} */ (last) : { path: this.path, fill: "none" };
    Object.assign(mark, { stroke, width, ...(dash.length ? { dash } : {}) });
    if (!filled) this.marks.push(mark);
  }

  /** @param {number} x @param {number} y @param {number} width @param {number} height */
  fillRect(x, y, width, height) {
    if (x !== 0 || y !== 0) throw new Error("the sheet begins in the corner");
    this.marks.push({ path: [width, height], fill: this.state.fillStyle });
  }

  /** @param {string} text @param {number} x @param {number} y */
  fillText(text, x, y) {
    const { fillStyle: fill, font, textAlign: align } = this.state;
    this.marks.push({ text, path: [x, y], fill, font, align });
  }

  /** @param {number[]} dash */
  setLineDash(dash) {
    this.state.dash = dash;
  }
}

for (const name of /** @type {const} */ (["fillStyle", "strokeStyle", "lineWidth", "font", "textAlign"])) {
  Object.defineProperty(CanvasRenderingContext2D.prototype, name, {
    /** @this {CanvasRenderingContext2D} @param {never} value */
    set(value) {
      this.state[name] = value;
    },
  });
}

const ALIGNED = /** @type {Record<string, string>} */ ({ middle: "center", end: "right" });

/**
 * The marks of an SVG document, in the same form.
 * @param {string} document
 * @returns {Mark[]}
 */
export function marksOf(document) {
  const unescaped = (/** @type {string} */ text) =>
    text.replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&quot;/g, '"').replace(/&amp;/g, "&");
  const elements = document.matchAll(/<(rect|path|text)((?: [\w-]+="[^"]*")*)(?:\/>|>([^<]*)<\/text>)/g);
  return [...elements].map(([, kind, listed, letters]) => {
    const of = Object.fromEntries([...listed.matchAll(/ ([\w-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]));
    if (kind === "rect") return { path: [Number(of.width), Number(of.height)], fill: of.fill };
    if (kind === "text") {
      const font = `${of["font-weight"] ?? "400"} ${of["font-size"]}px`;
      const align = ALIGNED[of["text-anchor"]] ?? "left";
      return { text: unescaped(letters), path: [Number(of.x), Number(of.y)], fill: of.fill, font, align };
    }
    const figures = (/** @type {string} */ data) => data.split(/[A-Z ]/).filter(Boolean).map(Number);
    const { stroke, "stroke-width": width, "stroke-dasharray": dash } = of;
    const line = stroke ? { stroke, width: Number(width), ...(dash ? { dash: figures(dash) } : {}) } : {};
    return { path: figures(of.d), fill: of.fill, ...line };
  });
}
