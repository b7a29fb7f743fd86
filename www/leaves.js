// Paints what the kernel drew elsewhere: a list of leaves becomes an SVG whose elements are kept from picture to picture.

import { dress, draw } from "./dom.js";

/** One painted path or line of letters; inks are named as in the style sheet. @typedef {{d: string, fill: string|null, line: string|null, width: number, dash: string, clip: number|null, letters: string, at: [number, number], anchor: string, size: number, bold: boolean}} Leaf */
/** @typedef {{width: number, height: number, clips: [number, number, number][], leaves: Leaf[]}} Leaves */

let count = 0;

export class Paper {
  /** @type {SVGElement[]} */
  painted = [];
  id = `paper-${++count}`;
  clips = draw("defs");
  sheet = draw("g");

  /** @param {string} name its class */
  constructor(name) {
    this.picture = draw("svg", { class: `leaves ${name}`, role: "img" }, this.clips, this.sheet);
  }

  /**
   * @param {Leaves} leaves
   * @param {string} label
   */
  show({ width, height, clips, leaves }, label) {
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, "aria-label": label });
    this.clips.replaceChildren(...clips.map(([cx, cy, r], index) =>
      draw("clipPath", { id: `${this.id}-${index}` }, draw("circle", { cx, cy, r }))));
    const next = leaves.map((leaf, index) => this.paint(leaf, this.painted[index]));
    const same = next.length === this.painted.length && next.every((element, index) => element === this.painted[index]);
    this.painted = next;
    if (!same) this.sheet.replaceChildren(...next);
  }

  /**
   * @param {Leaf} leaf
   * @param {SVGElement|undefined} last
   */
  paint(leaf, last) {
    const tag = leaf.letters ? "text" : "path";
    const element = last?.tagName === tag ? last : draw(tag);
    const ink = (/** @type {string|null} */ name) => (name ? `var(--${name})` : "none");
    const clip = leaf.clip === null ? null : `url(#${this.id}-${leaf.clip})`;
    dress(element, { fill: ink(leaf.fill), "clip-path": clip });
    if (leaf.letters) {
      const [x, y] = leaf.at;
      dress(element, { x, y, "text-anchor": leaf.anchor, "font-size": leaf.size, "font-weight": leaf.bold ? 700 : null });
      if (element.textContent !== leaf.letters) element.textContent = leaf.letters;
    } else {
      dress(element, { stroke: ink(leaf.line), "stroke-width": leaf.width, "stroke-dasharray": leaf.dash || null });
      if (element.getAttribute("d") !== leaf.d) element.setAttribute("d", leaf.d);
    }
    return element;
  }
}
