// Parts measured, sorted and paired: before and after, who is left over, and some of the parts one by one.

import { amend, draw } from "../amend.js";
import { noteOfA } from "../compare/note.js";
import { draw as drawn, dress, make, write } from "../dom.js";
import { decimal, figure } from "../figures.js";
import { say } from "../words.js";
import { percent } from "./demands.js";
import { alike, histogram } from "./histogram.js";
import { fine, Scale } from "./scale.js";
import { sizeName } from "./names.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").MatchView} MatchView */
/** @typedef {import("./types.js").DemandView} DemandView */
/** @typedef {import("./types.js").Bar} Bar */
/** The chain that is held: what is sorted of it, if anything is, and what it must keep to. @typedef {{match: MatchView|null, demands: DemandView[]}} OfA */

const WAYS = ["before", "classes", "rank"];
const MOST_CLASSES = 24;
const DOTS = { height: 172, rows: [48, 128], radius: 3.2, spread: 9 };

/** @param {string} quantity @param {import("./types.js").WayView} way */
const wayInWords = (quantity, { yield_fraction, leftover_fraction, sd }) => say(`fit.way.note${leftover_fraction > 0 ? ".left" : ""}`,
  { percent: percent(yield_fraction), sd: fine(quantity, sd, 3), left: decimal(100 * leftover_fraction, 0) });

/** What goes with what, and how uneven the bins are. @param {MatchView} match */
function leftInWords({ dimensions, firsts, seconds, alike: together }) {
  const [a, b] = dimensions.map((key) => sizeName(key));
  const most = Math.max(...firsts.map((count, i) => Math.abs(count - seconds[i])));
  return say(together ? "fit.match.alike" : "fit.match.opposite", { a, b, most });
}

/** @param {MatchView} match @param {number} row */
function rowInWords({ dimensions, ends_mm }, row) {
  const [low, high] = ends_mm[row];
  return say("fit.dots.row", { part: sizeName(dimensions[row]), low: figure("low_mm", low), high: figure("high_mm", high) });
}

/** Where the bins of a kind of part begin and end, mm. @param {MatchView} match @param {number} row */
function wallsOf({ ends_mm, classes }, row) {
  const [low, high] = ends_mm[row];
  return Array.from({ length: classes + 1 }, (_, i) => low + ((high - low) * i) / classes);
}

/** Whether both chains' sorted parts are of the same kinds, judged by the same number: only then they share a scale. @param {MatchView} match @param {DemandView} demand @param {OfA} a */
const sortsAlike = (match, demand, { match: other, demands }) =>
  other !== null && demands[other.demand]?.quantity === demand.quantity && other.dimensions.join() === match.dimensions.join();

export class Match {
  charts = WAYS.map(() => drawn("svg", { class: "fit-picture", role: "img" }));
  notes = WAYS.map(() => make("p", { class: "hint" }));
  notesOfA = WAYS.map(() => make("div"));
  dots = drawn("svg", { class: "fit-picture", role: "img" });
  left = make("p", {});
  leftOfA = make("div");
  dotsOfA = make("div");
  fold = make("details", { class: "fold" }, make("summary", {}, say("fit.sorting")));
  /** @type {import("./sorting.js").Sorting|null} */
  sorting = null;
  /** @type {Parameters<import("./sorting.js").Sorting["show"]>|null} */
  last = null;

  /** @param {(classes: number, done: boolean) => void} set */
  constructor(set) {
    this.slider = make("input", { type: "range", min: 2, max: MOST_CLASSES, step: 1, "aria-label": say("fit.classes") });
    this.count = make("output", { class: "fit-count" });
    this.slider.addEventListener("input", () => set(Number(this.slider.value), false));
    this.slider.addEventListener("change", () => set(Number(this.slider.value), true));
    const three = WAYS.map((way, i) => make("figure", {}, make("figcaption", {}, make("b", {}, say(`fit.way.${way}`))), this.charts[i], this.notes[i], this.notesOfA[i]));
    this.element = make("section", { class: "fit-block", "data-look": "sorted" }, make("h2", {}, say("fit.match")), make("p", { class: "hint" }, say("fit.match.hint")),
      make("label", { class: "fit-row fit-slider" }, say("fit.classes"), this.slider, this.count),
      make("div", { class: "fit-three" }, ...three), this.left, this.leftOfA, make("figure", {}, this.dots, make("figcaption", { class: "hint" }, say("fit.dots.hint")), this.dotsOfA), this.fold);
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
   * @param {OfA|null} [a] what is sorted of the chain that is held
   */
  show(match, demands, width, a = null) {
    this.element.hidden = !match;
    if (!match) return;
    const demand = demands[match.demand];
    if (document.activeElement !== this.slider) this.slider.value = String(match.classes);
    write(this.count, String(match.classes));
    dress(this.slider, { "aria-valuetext": say("fit.classes.count", { count: match.classes }) });
    const each = Math.max(220, Math.round(widthOf(this.charts[0].parentElement)) - 16);
    const other = a?.match && sortsAlike(match, demand, a) ? a.match : null;
    const scale = Scale.ofBars(demand, [match, other].flatMap((one) => one?.ways[0].histogram ?? []), each);
    const shown = (/** @type {Bar[]} */ bars) => bars.filter(([low, high]) => scale.shows(low) && scale.shows(high));
    match.ways.forEach((way, i) => {
      const note = wayInWords(demand.quantity, way);
      const ofA = other?.ways[i];
      const same = JSON.stringify(ofA?.histogram) === JSON.stringify(way.histogram);
      histogram(this.charts[i], demand, shown(way.histogram), {
        width: each, height: 170, scale, name: `${say(`fit.way.${WAYS[i]}`)}: ${note}`, a: ofA && !same ? shown(alike(ofA.histogram, way.histogram)) : [],
      });
      write(this.notes[i], note);
      amend(this.notesOfA[i], ...noteOfA(note, ofA ? wayInWords(demand.quantity, ofA) : ""));
    });
    write(this.left, leftInWords(match));
    const why = a && !other ? say(a.match ? "fit.match.of.a.other" : "fit.match.of.a.none") : "";
    amend(this.leftOfA, ...noteOfA(leftInWords(match), other ? leftInWords(other) : why));
    this.sort(match, width, other);
    this.last = [match, width, other];
    this.watch();
  }

  /** The first parts that came, each a dot at its own size; hollow where it has no partner. @param {MatchView} match @param {number} width @param {MatchView|null} a */
  sort(match, width, a) {
    const rowsDrawn = match.dots.flatMap((parts, row) => {
      const ends = [match, a].flatMap((one) => one?.ends_mm[row] ?? []);
      const [low, high] = [Math.min(...ends), Math.max(...ends)];
      const edge = 0.12 * (high - low);
      const scale = new Scale(low - edge, high + edge, width);
      const y = DOTS.rows[row];
      const [walls, others] = [match, a].map((one) => (one ? wallsOf(one, row).map((mm) => scale.x(mm)) : []));
      const ghosts = others.filter((x) => !walls.some((own) => Math.abs(own - x) < 1));
      const dot = (/** @type {import("./types.js").Dot} */ [mm, partner, kind], /** @type {number} */ i) => draw("circle", {
        class: partner < 0 ? "dot-left" : `dot-paired kind-${kind % 5}`,
        cx: scale.x(Math.min(high + edge, Math.max(low - edge, mm))), cy: y + DOTS.spread * (((i * 7) % 5) - 2), r: DOTS.radius,
      });
      return [...walls.map((x) => draw("path", { class: "wall", d: `M${x} ${y - 24}V${y + 24}` })), ...ghosts.map((x) => draw("path", { class: "of-a", d: `M${x} ${y - 24}V${y + 24}` })),
        ...parts.map(dot), draw("text", { class: "tick", x: 12, y: y - 26 }, rowInWords(match, row))];
    });
    const rows = (/** @type {MatchView} */ one) => [0, 1].map((row) => rowInWords(one, row)).concat(say("fit.classes.count", { count: one.classes })).join("; ");
    amend(this.dotsOfA, ...noteOfA(rows(match), a ? `${rows(a)}. ${say("fit.dots.of.a")}` : ""));
    dress(this.dots, { viewBox: `0 0 ${width} ${DOTS.height}`, height: DOTS.height, "aria-label": say("fit.dots", { count: match.dots[0].length }) });
    amend(this.dots, ...rowsDrawn);
  }
}
