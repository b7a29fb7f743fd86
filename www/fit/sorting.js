// Parts being sorted, one after the other: each dot is a part that was drawn, measured and laid in its bin.

import { amend, make as described } from "../amend.js";
import { cellOfA } from "../compare/note.js";
import { draw, dress, make } from "../dom.js";
import { figure } from "../figures.js";
import { say } from "../words.js";
import { button } from "./entry.js";
import { sizeName } from "./names.js";

/** @typedef {import("./types.js").MatchView} MatchView */
/** @typedef {import("./types.js").Dot} Dot */
/** @typedef {{x: number, y: number}} Place */

const [EDGE, PITCH, RADIUS, QUEUE, GAP] = [8, 8, 3.2, 22, 26];
/** Parts of each kind that are sorted in a second. */
const A_SECOND = 12;
const still = matchMedia("(prefers-reduced-motion: reduce)");

export class Sorting {
  picture = draw("svg", { class: "fit-picture", role: "img" });
  now = make("p", { class: "hint" });
  table = make("table", { class: "fit-table" });
  slider = make("input", { type: "range", min: 0, max: 0, step: 1, value: 0, "aria-label": say("fit.sorting.so_far") });
  play = button("fit.sorting.play", () => (this.frame ? this.pause() : this.run()));
  frame = 0;
  /** Parts of each kind that lie in their bins; what is over a whole number is on its way. */
  at = 0;
  /** So many lie as they are drawn and told. */
  done = -1;
  shown = "";
  /** @type {MatchView|null} */
  match = null;
  /** @type {MatchView|null} the same parts of the chain that is held as A */
  a = null;
  ofA = make("p", { class: "hint", hidden: true }, say("fit.sorting.of.a"));
  links = draw("g");
  /** @type {SVGElement[][]} */
  circles = [[], []];
  /** Where each part waits, and where it lies in its bin. @type {{from: Place, to: Place}[][]} */
  places = [];
  size = { width: 0, height: 0, bins: 0 };

  constructor() {
    this.play.id = "fit-sort";
    this.slider.addEventListener("input", () => { this.pause(); this.put(Number(this.slider.value)); });
    this.hint = make("p", { class: "hint" });
    this.element = make("div", {}, this.hint, make("div", { class: "fit-row fit-slider" }, this.play, this.slider), make("figure", {}, this.picture), this.now, this.ofA,
      make("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.sorting") }, this.table));
  }

  get count() {
    return this.match?.dots[0].length ?? 0;
  }

  /** @param {MatchView} match @param {number} width @param {MatchView|null} a */
  show(match, width, a) {
    const now = JSON.stringify([match.dots, match.classes, width]);
    const other = JSON.stringify(a?.dots) !== JSON.stringify(this.a?.dots);
    this.a = a;
    this.ofA.hidden = !a;
    if (now === this.shown && other) this.done = -1; // its counts are told anew
    if (now === this.shown) return void (other && this.put(this.at));
    this.pause();
    [this.shown, this.match] = [now, match];
    this.slider.max = String(this.count);
    this.hint.textContent = say("fit.sorting.hint", { count: this.count });
    this.lay(match, width);
    this.paint(match);
    this.put(still.matches ? this.count : 0);
  }

  /** A bin's parts lie side by side from its floor upwards, in the order in which they came. @param {MatchView} match @param {number} width */
  lay({ dots, classes }, width) {
    const wide = (width - 2 * EDGE) / classes;
    const columns = Math.max(1, Math.floor((wide - 2) / PITCH));
    const most = Math.max(...dots.map((parts) => Math.max(...Array.from({ length: classes }, (_, bin) => parts.filter(([, , kind]) => kind === bin).length))));
    const deep = Math.ceil(most / columns) * PITCH + 4;
    this.size = { width, height: 2 * QUEUE + 2 * deep + GAP, bins: deep };
    this.places = dots.map((parts, row) => {
      const came = Array(classes).fill(0);
      return parts.map(([, , kind], i) => {
        const [column, level] = [came[kind] % columns, Math.floor(came[kind]++ / columns)];
        const floor = row ? QUEUE + deep + GAP : QUEUE + deep;
        const waits = { x: EDGE + ((i + 0.5) / parts.length) * (width - 2 * EDGE), y: row ? this.size.height - 8 : 8 };
        return { from: waits, to: { x: EDGE + kind * wide + (wide - columns * PITCH) / 2 + (column + 0.5) * PITCH, y: floor + (row ? 1 : -1) * (level * PITCH + PITCH / 2 + 1) } };
      });
    });
  }

  run() {
    if (still.matches) return this.put(this.count);
    if (this.at >= this.count) this.put(0);
    let last = performance.now();
    const step = (/** @type {number} */ time) => {
      this.put(Math.min(this.count, this.at + (Math.max(0, time - last) / 1000) * A_SECOND));
      last = time;
      if (this.at < this.count && this.element.isConnected) this.frame = requestAnimationFrame(step);
      else this.pause();
    };
    this.frame = requestAnimationFrame(step);
    this.play.textContent = say("fit.sorting.pause");
  }

  pause() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.play.textContent = say("fit.sorting.play");
  }

  /** So many parts of each kind lie in their bins; of a frame that lays no further one down only what is on its way moves. @param {number} at */
  put(at) {
    const { match } = this;
    if (!match) return;
    this.at = at;
    const done = Math.floor(at);
    if (done !== this.done) this.lie(match, done);
    for (const kind of [0, 1]) this.place(match, kind, done);
  }

  /** Another part lies in its bin, or a few. @param {MatchView} match @param {number} done */
  lie(match, done) {
    this.done = done;
    this.slider.value = String(done);
    const links = match.dots[0].slice(0, done).flatMap(([, partner], i) => {
      const [one, other] = [this.places[0][i], this.places[1][partner]];
      return partner >= 0 && partner < done ? [draw("path", { class: "link", d: `M${one.to.x} ${one.to.y}L${other.to.x} ${other.to.y}` })] : [];
    });
    dress(this.picture, { "aria-label": say("fit.sorting.name", { sorted: done, count: this.count, pairs: links.length }) });
    this.links.replaceChildren(...links);
    match.dots.forEach((parts, kind) => parts.forEach((_, i) => this.place(match, kind, i)));
    this.tell(match, done, links.length);
  }

  /** Draws a part where it waits, is on its way or lies. @param {MatchView} match @param {number} kind @param {number} i */
  place({ dots }, kind, i) {
    const circle = this.circles[kind][i];
    if (!circle) return;
    const [[, partner, bin], { from, to }] = [dots[kind][i], this.places[kind][i]];
    const share = Math.max(0, Math.min(1, this.at - i));
    const look = share === 0 ? "dot-waits" : partner < 0 ? "dot-left" : `dot-paired kind-${bin % 5}`;
    dress(circle, { class: look, cx: from.x + share * (to.x - from.x), cy: from.y + share * (to.y - from.y), r: share === 0 ? RADIUS / 2 : RADIUS });
  }

  /** The bins, empty, and every part, to be placed. @param {MatchView} match */
  paint({ dots, classes }) {
    const { width, height, bins } = this.size;
    const walls = [QUEUE, QUEUE + bins + GAP].flatMap((top) => Array.from({ length: classes + 1 }, (_, i) => EDGE + (i / classes) * (width - 2 * EDGE))
      .map((x) => draw("path", { class: "wall", d: `M${x} ${top}v${bins}` })));
    this.circles = dots.map((parts) => parts.map(() => draw("circle")));
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height });
    this.picture.replaceChildren(...walls, this.links, ...this.circles.flat());
    this.done = -1;
  }

  /** The picture in words: the last part, and what lies in each bin. @param {MatchView} match @param {number} done @param {number} pairs */
  tell({ dots, classes, dimensions }, done, pairs) {
    const [a, b] = dimensions.map((key) => sizeName(key));
    const last = done > 0 ? dots.map((row) => row[done - 1]) : [];
    this.now.textContent = last.length === 0 ? say("fit.sorting.none") : say("fit.sorting.part", {
      part: done, count: this.count, a, b, pairs, a_size: figure("size_mm", last[0][0]), b_size: figure("size_mm", last[1][0]), a_bin: last[0][2] + 1, b_bin: last[1][2] + 1,
    });
    const { a: other } = this;
    const head = [say("fit.sorting.bin"), a, b, say("fit.sorting.pairs")].map((text) => described("th", { scope: "col" }, text));
    const bins = Math.max(classes, other?.classes ?? 0);
    const rows = Array.from({ length: bins }, (_, bin) => {
      const [now, ofA] = [{ dots, classes }, other].map((one) => (one ? countsOf(one, done, bin) : []));
      return described("tr", {}, described("th", { scope: "row" }, String(bin + 1)), ...now.map((count, i) => described("td", {}, count, ...cellOfA(count, ofA[i]))));
    });
    amend(this.table, described("thead", {}, described("tr", {}, ...head)), described("tbody", {}, ...rows));
  }
}

/** What lies in a bin: parts of either kind, and pairs; a dash where there is no such bin. @param {Pick<MatchView, "dots"|"classes">} match @param {number} done @param {number} bin */
function countsOf({ dots, classes }, done, bin) {
  if (bin >= classes) return ["–", "–", "–"];
  const of = (/** @type {Dot[]} */ row) => row.slice(0, done).filter(([, , kind]) => kind === bin);
  const paired = of(dots[0]).filter(([, partner]) => partner >= 0 && partner < done);
  return [of(dots[0]), of(dots[1]), paired].map(({ length }) => String(length));
}
