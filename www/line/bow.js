// A metre of chain laid flat on its side beside a straight edge: how far it bows, with both numbers.

import { amend } from "../amend.js";
import { noteOfA, rowOfA } from "../compare/note.js";
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
/** Where along A's strand its letter stands. */
const LETTER_AT = 0.3;

/** What a chain laid on its side is asked of. @typedef {{chain: object, format: number, title: string}} Laid */

/** @param {Steady<BowView>} steady @param {Laid} scenario */
const want = (steady, { format, title, chain }) => steady.want({ format, title, chain }, { bow_mm: REACH_MM });

/** @param {BowView} bow */
const inWords = ({ links, length_mm, yaw_mm, with_play_mm, radius_mm }) =>
  say(radius_mm === null ? "line.bow.straight" : "line.bow.said", { links, length_mm, yaw_mm, with_play_mm });

/** The numbers under the picture: words and values. @param {BowView} bow */
const readings = ({ turn_rad, slide_mm, radius_mm }) => /** @type {[string, string][]} */ ([
  ["line.bow.turn", angle(turn_rad)], ["line.bow.slide", gap(slide_mm)],
  ["line.bow.radius", radius_mm === null ? "–" : say("line.bow.metres", { m: decimal(radius_mm / 1000, 2) })],
]);

/** A's letter, over its line. @param {[number, number][]} ends @param {(end: [number, number]) => number[]} at */
function letter(ends, at) {
  const [x, y] = at(ends[Math.round(LETTER_AT * (ends.length - 1))]);
  return draw("text", { x, y: y - 7, "text-anchor": "middle", "font-weight": 700 }, say("compare.a"));
}

export class Bow {
  picture = draw("svg", { class: "bow", role: "img" });
  said = make("p", { class: "gears-summary", "aria-live": "polite" });
  table = make("dl", { class: "bow-table" });
  note = make("div");
  held = false;

  constructor() {
    /** @type {Steady<BowView>} */
    this.steady = new Steady("line.bow", "line", () => this.draw());
    /** @type {Steady<BowView>} the same of the chain that is held as A */
    this.ofA = new Steady("line.bow.a", "line", () => this.draw());
    this.element = make("div", { class: "bow-part" }, this.said, this.note, this.picture, this.table, make("p", { class: "hint" }, say("line.bow.how")));
  }

  /** @param {Laid} scenario @param {Laid|null} a that of the chain which is held */
  show(scenario, a) {
    this.held = a !== null;
    want(this.steady, scenario);
    if (a) want(this.ofA, a);
    this.draw();
  }

  /** A's answer, where one is held and it is known. */
  get beside() {
    return this.held ? this.ofA.known : null;
  }

  draw() {
    const bow = this.steady.answer;
    this.element.toggleAttribute("data-busy", this.steady.stale);
    if (!bow) {
      this.said.textContent = this.steady.failure;
      return;
    }
    const { beside } = this;
    this.said.textContent = inWords(bow);
    amend(this.note, ...noteOfA(inWords(bow), beside ? inWords(beside) : ""));
    const others = beside ? readings(beside) : [];
    amend(this.table, ...readings(bow).flatMap(([word, value], at) => rowOfA(say(word), value, others[at]?.[1])));
    this.sketch(bow, beside);
  }

  /** To one scale along and across, and the same for both chains: nothing is drawn too big. @param {BowView} bow @param {BowView|null} a */
  sketch(bow, a) {
    const width = Math.max(260, Math.round(widthOf(this.picture.parentElement)));
    const per_mm = (width - 2 * EDGE.side) / Math.max(bow.length_mm, a?.length_mm ?? 0);
    const height = Math.round(EDGE.top + EDGE.bottom + Math.max(bow.with_play_mm, a?.with_play_mm ?? 0) * per_mm + 40);
    const base = height - EDGE.bottom;
    const at = (/** @type {[number, number]} */ [x, y]) => [EDGE.side + x * per_mm, base - y * per_mm];
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": say("line.bow.picture", { ...bow }) });
    const path = (/** @type {[number, number][]} */ ends) => `M${ends.map((end) => at(end).map((px) => px.toFixed(1)).join(" ")).join("L")}`;
    const links = bow.play.flatMap((from, index) => (index % 2 ? [] : [draw("path", { class: index % 4 ? "link inner" : "link outer", d: path([from, bow.play[index + 1]]) })]));
    const ghosts = a && path(a.play) !== path(bow.play) ? [draw("path", { class: "of-a", d: path(a.play) }), letter(a.play, at)] : [];
    const teeth = Array.from({ length: Math.floor((width - 2 * EDGE.side) / 12) }, (_, index) => `M${EDGE.side + 10 + index * 12} ${base + 1}l-8 9`).join("");
    this.picture.replaceChildren(
      draw("path", { class: "edge", d: `M${EDGE.side} ${base}H${width - EDGE.side}` }), draw("path", { class: "edge-hatch", d: teeth }),
      draw("path", { class: "by-yaw", d: path(bow.yaw) }), ...links, ...ghosts,
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
