// Parts measured, sorted and paired: before and after, who is left over, and some of the parts one by one.

import { draw, dress, make } from "../dom.js";
import { decimal, figure } from "../figures.js";
import { say } from "../words.js";
import { percent } from "./demands.js";
import { histogram } from "./histogram.js";
import { fine, Scale } from "./scale.js";
import { sizeName } from "./names.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").MatchView} MatchView */
/** @typedef {import("./types.js").DemandView} DemandView */

const WAYS = ["before", "classes", "rank"];
const MOST_CLASSES = 24;
const DOTS = { height: 172, rows: [48, 128], radius: 3.2, spread: 9 };

export class Match {
  charts = WAYS.map(() => draw("svg", { class: "fit-picture", role: "img" }));
  notes = WAYS.map(() => make("p", { class: "hint" }));
  dots = draw("svg", { class: "fit-picture", role: "img" });
  left = make("p", {});
  fold = make("details", { class: "fold" }, make("summary", {}, say("fit.sorting")));
  /** @type {import("./sorting.js").Sorting|null} */
  sorting = null;
  /** @type {[MatchView, number]|null} */
  last = null;

  /** @param {(classes: number, done: boolean) => void} set */
  constructor(set) {
    this.slider = make("input", { type: "range", min: 2, max: MOST_CLASSES, step: 1, "aria-label": say("fit.classes") });
    this.count = make("output", { class: "fit-count" });
    this.slider.addEventListener("input", () => set(Number(this.slider.value), false));
    this.slider.addEventListener("change", () => set(Number(this.slider.value), true));
    const three = WAYS.map((way, i) => make("figure", {}, make("figcaption", {}, make("b", {}, say(`fit.way.${way}`))), this.charts[i], this.notes[i]));
    this.element = make("section", { class: "fit-block", "data-look": "sorted" }, make("h2", {}, say("fit.match")), make("p", { class: "hint" }, say("fit.match.hint")),
      make("label", { class: "fit-row fit-slider" }, say("fit.classes"), this.slider, this.count),
      make("div", { class: "fit-three" }, ...three), this.left, make("figure", {}, this.dots, make("figcaption", { class: "hint" }, say("fit.dots.hint"))), this.fold);
    this.fold.addEventListener("toggle", () => this.watch());
  }

  /** Parts being sorted are fetched when somebody wants to watch. */
  async watch() {
    if (!this.fold.open || !this.last) return this.sorting?.pause();
    if (!this.sorting) {
      const { Sorting } = await import("./sorting.js");
      this.sorting ??= new Sorting();
      this.fold.append(this.sorting.element);
    }
    this.sorting.show(...this.last);
  }

  /**
   * @param {MatchView|null} match
   * @param {DemandView[]} demands
   * @param {number} width
   */
  show(match, demands, width) {
    this.element.hidden = !match;
    if (!match) return;
    const demand = demands[match.demand];
    if (document.activeElement !== this.slider) this.slider.value = String(match.classes);
    this.count.textContent = String(match.classes);
    dress(this.slider, { "aria-valuetext": say("fit.classes.count", { count: match.classes }) });
    const each = Math.max(220, Math.round(widthOf(this.charts[0].parentElement)) - 16);
    const scale = Scale.ofBars(demand, match.ways[0].histogram, each);
    match.ways.forEach((way, i) => {
      const kept = way.histogram.filter(([low, high]) => scale.shows(low) && scale.shows(high));
      const note = say(`fit.way.note${way.leftover_fraction > 0 ? ".left" : ""}`, { percent: percent(way.yield_fraction), sd: fine(demand.quantity, way.sd, 3), left: decimal(100 * way.leftover_fraction, 0) });
      histogram(this.charts[i], demand, kept, { width: each, height: 170, scale, name: `${say(`fit.way.${WAYS[i]}`)}: ${note}` });
      this.notes[i].textContent = note;
    });
    const [a, b] = match.dimensions.map((key) => sizeName(key));
    const most = Math.max(...match.firsts.map((count, i) => Math.abs(count - match.seconds[i])));
    this.left.textContent = say(match.alike ? "fit.match.alike" : "fit.match.opposite", { a, b, most });
    this.sort(match, width);
    this.last = [match, width];
    this.watch();
  }

  /** The first parts that came, each a dot at its own size; hollow where it has no partner. @param {MatchView} match @param {number} width */
  sort(match, width) {
    const drawn = match.dots.flatMap((parts, row) => {
      const [low, high] = match.ends_mm[row];
      const edge = 0.12 * (high - low);
      const scale = new Scale(low - edge, high + edge, width);
      const y = DOTS.rows[row];
      const walls = Array.from({ length: match.classes + 1 }, (_, i) => scale.x(low + ((high - low) * i) / match.classes));
      const dot = (/** @type {import("./types.js").Dot} */ [mm, partner, kind], /** @type {number} */ i) => draw("circle", {
        class: partner < 0 ? "dot-left" : `dot-paired kind-${kind % 5}`,
        cx: scale.x(Math.min(high + edge, Math.max(low - edge, mm))), cy: y + DOTS.spread * (((i * 7) % 5) - 2), r: DOTS.radius,
      });
      return [...walls.map((x) => draw("path", { class: "wall", d: `M${x} ${y - 24}V${y + 24}` })), ...parts.map(dot),
        draw("text", { class: "tick", x: 12, y: y - 26 }, say("fit.dots.row", { part: sizeName(match.dimensions[row]), low: figure("low_mm", low), high: figure("high_mm", high) }))];
    });
    dress(this.dots, { viewBox: `0 0 ${width} ${DOTS.height}`, height: DOTS.height, "aria-label": say("fit.dots", { count: match.dots[0].length }) });
    this.dots.replaceChildren(...drawn);
  }
}
