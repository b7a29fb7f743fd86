// A metre of chain laid flat on its side beside a straight edge: how far it bows, with both numbers.

import { dress, draw, make } from "../dom.js";
import { angle, decimal, gap } from "../figures.js";
import { say } from "../words.js";
import { Steady } from "../steady.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").BowView} BowView */

/** About how long the strand is, mm: a metre, or the next even number of links. */
const REACH_MM = 1000;
const EDGE = { side: 14, top: 26, bottom: 26 };
/** Where along the strand its two dimension lines stand. */
const AT = { yaw: 0.48, play: 0.52 };

export class Bow {
  picture = draw("svg", { class: "bow", role: "img" });
  said = make("p", { class: "gears-summary", "aria-live": "polite" });
  table = make("dl", { class: "bow-table" });

  constructor() {
    /** @type {Steady<BowView>} */
    this.steady = new Steady("line.bow", "line", () => this.draw());
    this.element = make("div", { class: "bow-part" }, this.said, this.picture, this.table, make("p", { class: "hint" }, say("line.bow.how")));
  }

  /** @param {{chain: object, format: number, title: string}} scenario */
  show({ format, title, chain }) {
    this.steady.want({ format, title, chain }, { bow_mm: REACH_MM });
    this.draw();
  }

  draw() {
    const bow = this.steady.answer;
    this.element.toggleAttribute("data-busy", this.steady.stale);
    if (!bow) {
      this.said.textContent = this.steady.failure;
      return;
    }
    const { links, length_mm, yaw_mm, with_play_mm, turn_rad, slide_mm, radius_mm } = bow;
    this.said.textContent = say(radius_mm === null ? "line.bow.straight" : "line.bow.said", { links, length_mm, yaw_mm, with_play_mm });
    const row = (/** @type {string} */ word, /** @type {string} */ value) => [make("dt", {}, say(word)), make("dd", {}, value)];
    this.table.replaceChildren(
      ...row("line.bow.turn", angle(turn_rad)), ...row("line.bow.slide", gap(slide_mm)),
      ...row("line.bow.radius", radius_mm === null ? "–" : say("line.bow.metres", { m: decimal(radius_mm / 1000, 2) })));
    this.sketch(bow);
  }

  /** To one scale along and across: nothing is drawn too big. @param {BowView} bow */
  sketch(bow) {
    const width = Math.max(260, Math.round(widthOf(this.picture.parentElement)));
    const per_mm = (width - 2 * EDGE.side) / bow.length_mm;
    const height = Math.round(EDGE.top + EDGE.bottom + bow.with_play_mm * per_mm + 40);
    const base = height - EDGE.bottom;
    const at = (/** @type {[number, number]} */ [x, y]) => [EDGE.side + x * per_mm, base - y * per_mm];
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": say("line.bow.picture", { ...bow }) });
    const path = (/** @type {[number, number][]} */ ends) => `M${ends.map((end) => at(end).map((px) => px.toFixed(1)).join(" ")).join("L")}`;
    const links = bow.play.flatMap((from, index) => (index % 2 ? [] : [draw("path", { class: index % 4 ? "link inner" : "link outer", d: path([from, bow.play[index + 1]]) })]));
    const teeth = Array.from({ length: Math.floor((width - 2 * EDGE.side) / 12) }, (_, index) => `M${EDGE.side + 10 + index * 12} ${base + 1}l-8 9`).join("");
    this.picture.replaceChildren(
      draw("path", { class: "edge", d: `M${EDGE.side} ${base}H${width - EDGE.side}` }), draw("path", { class: "edge-hatch", d: teeth }),
      draw("path", { class: "by-yaw", d: path(bow.yaw) }), ...links,
      ...this.measure(bow.yaw, AT.yaw, at, "end", say("line.bow.by_yaw", { yaw_mm: bow.yaw_mm })),
      ...this.measure(bow.play, AT.play, at, "start", say("line.bow.by_play", { with_play_mm: bow.with_play_mm })));
  }

  /**
   * A dimension line from the edge to the strand, its number above.
   * @param {[number, number][]} ends
   * @param {number} share
   * @param {(end: [number, number]) => number[]} at
   * @param {string} anchor
   * @param {string} text
   */
  measure(ends, share, at, anchor, text) {
    const [x, y] = at(ends[Math.round(share * (ends.length - 1))]);
    const [top, [, base]] = [16, at([0, 0])];
    const tip = (/** @type {number} */ to, /** @type {number} */ way) => `M${x} ${to}l-3 ${7 * way}h6z`;
    return [
      draw("path", { class: "leader", d: `M${x.toFixed(1)} ${base}V${top + 5}` }), draw("path", { class: "tip", d: tip(y, 1) + tip(base, -1) }),
      draw("text", { x: x + (anchor === "end" ? 4 : -4), y: top, "text-anchor": anchor }, text),
    ];
  }
}
