// A film with outlines that is laid over a drawing: its lines stop before the drawing's letters, and its own letter stands clear.

import { dress, draw } from "../dom.js";
import { Paper } from "../leaves.js";
import { meet } from "./letters.js";

/** @typedef {import("../leaves.js").Leaves} Leaves */
/** @typedef {import("../leaves.js").Leaf} Leaf */
/** @typedef {import("./letters.js").Place} Place */

/** How far a letter looks for a free place: so many steps to the left, of its own width, and up or down, of its height. */
const [STEPS, ROWS] = [14, [0, -1, 1, -2, 2]];
const [WIDE, TALL] = [0.7, 1.1];
let count = 0;

export class Film {
  paper = new Paper("ghost");
  id = `film-${++count}`;
  mask = draw("mask", { id: this.id, maskUnits: "userSpaceOnUse", x: 0, y: 0 });

  constructor() {
    this.paper.picture.prepend(this.mask);
    dress(this.paper.sheet, { mask: `url(#${this.id})` });
  }

  /**
   * @param {Leaves} leaves
   * @param {string} label
   * @param {Place[]} letters where the drawing has its own
   */
  show(leaves, label, letters) {
    const { width, height } = leaves;
    dress(this.mask, { width, height });
    this.mask.replaceChildren(draw("rect", { width, height, fill: "#fff" }), ...letters.map((place) => draw("rect", { ...place, fill: "#000" })));
    this.paper.show({ ...leaves, leaves: leaves.leaves.map((leaf) => (leaf.letters ? moved(leaf, letters) : leaf)) }, label);
  }

  /** @param {HTMLElement} drawing under it */
  lay(drawing) {
    if (this.paper.picture.previousElementSibling !== drawing) drawing.after(this.paper.picture);
  }

  remove() {
    this.paper.picture.remove();
  }

  /**
   * The film as part of an SVG document of the same size.
   * @param {Record<string, string>} theme
   */
  written(theme) {
    const copy = /** @type {SVGElement} */ (this.paper.picture.cloneNode(true));
    const [, , width, height] = (copy.getAttribute("viewBox") ?? "").split(" ");
    dress(copy, { width, height, class: null, role: null, "aria-label": null });
    for (const letter of copy.querySelectorAll("text")) dress(letter, { "paint-order": "stroke", stroke: theme.sheet, "stroke-width": 4, "stroke-linejoin": "round" });
    return new XMLSerializer().serializeToString(copy).replace(/var\(--([\w-]+)\)/g, (_, ink) => theme[ink]);
  }
}

/** A letter at the nearest place that is free; where none is, it stays. @param {Leaf} leaf @param {Place[]} letters */
function moved(leaf, letters) {
  const { at: [x, y], size } = leaf;
  const [wide, tall] = [WIDE * size, TALL * size];
  const free = (/** @type {[number, number]} */ [right, foot]) => !letters.some((place) => meet(place, { x: right - wide, y: foot - size, width: wide, height: tall }));
  const places = ROWS.flatMap((row) => Array.from({ length: STEPS }, (_, step) => /** @type {[number, number]} */ ([x - step * wide, y + row * tall])));
  return { ...leaf, at: places.find(free) ?? leaf.at };
}
