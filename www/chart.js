// A small chart for every question: lines, bands, bars, shaded ranges, named marks, and a marker that can be slid.
// It draws what it is told and knows no chain; its colours and strokes are classes of chart.css.
//
//   const chart = new Chart();
//   figure.append(chart.picture, chart.key, chart.table(say("fit.table")));
//   chart.show({ label, x: { name, from: 0, to: 20, write: gap }, y: { name, from: 1, to: 3, write }, lines: [{ name, look: "main", points }] });

import { amend, draw } from "./amend.js";
import { tableOf, keyOf } from "./chart-words.js";
import { Sheet } from "./chart-sheet.js";
import { draw as drawn, dress, make } from "./dom.js";
import { unitInUse } from "./figures.js";
import { widthIn } from "./wide.js";

/** @typedef {[number, number]} At a value of the lower axis and one of the upright axis */
/**
 * One axis. Ticks stand at round values, as many as their texts have room for.
 * @typedef {object} Axis
 * @property {string} name what is read along it, with its unit
 * @property {number} from
 * @property {number} to
 * @property {(value: number) => string} write the text of a value, in the table
 * @property {(value: number) => string} [tick] the shorter text at a tick, where the name of the axis has the unit
 * @property {number} [round] ticks are round in this many: 25.4 for inches where values are mm
 */
/** A line; `look` is one of main, second, third, fine, dashed, dashdot, dotted. @typedef {{name: string, look: string, points: At[]}} Line */
/** What lies between two lines. @typedef {{name: string, look?: string, low: At[], high: At[]}} Band */
/** Bars side by side, from the foot of the chart: a histogram. `look`: main, second (an outline over others), out. @typedef {{name: string, look?: string, bars: {from: number, to: number, height: number, look?: string}[]}} Bars */
/** A shaded stretch of the lower axis: `free`, or `out` for what is not allowed. @typedef {{name?: string, look: string, from: number, to: number}} Range */
/** An upright line with its name over it; `look`: plain, limit, accent. @typedef {{name: string, look?: string, at: number}} Mark */
/**
 * Where things stand now; with `slide` it is a slider for pointer and keyboard.
 * @typedef {object} Marker
 * @property {number} at
 * @property {number|null} [value] a dot on the upright axis
 * @property {string} name what is slid
 * @property {string} text its value in words
 * @property {number} [step] what an arrow key goes
 * @property {(at: number, done: boolean) => void} [slide]
 */
/**
 * Everything a chart shows. What lies outside the axes is cut off.
 * @typedef {object} Content
 * @property {string} label the chart in one sentence, for those who do not see it
 * @property {Axis} x
 * @property {Axis} y
 * @property {Line[]} [lines] later ones lie on top
 * @property {Band[]} [bands]
 * @property {Bars[]} [bars]
 * @property {Range[]} [ranges]
 * @property {Mark[]} [marks]
 * @property {Marker|null} [marker]
 * @property {number} [height] px; 260 without it
 */

const HEIGHT = 260;
const NARROWEST = 280;
/** What Page keys go, in steps of an arrow key. */
const LEAP = 10;

export class Chart {
  picture = drawn("svg", { class: "graph", role: "group" });
  key = make("ul", { class: "graph-key" });
  back = drawn("g", { "aria-hidden": "true" });
  thumb = drawn("g", { class: "graph-marker" });
  /** @type {Sheet|null} */
  sheet = null;
  /** What was drawn last, as text: where only the marker goes on, the rest stays. */
  drawn = "";
  /** @type {HTMLDetailsElement|null} */
  fold = null;

  constructor() {
    this.picture.append(this.back, this.thumb);
    for (const kind of ["pointerdown", "pointermove", "pointerup"]) {
      this.picture.addEventListener(kind, (event) => this.point(/** @type {PointerEvent} */ (event)));
    }
    this.thumb.addEventListener("keydown", (event) => this.press(/** @type {KeyboardEvent} */ (event)));
  }

  /**
   * The chart as a table under a fold, kept in step with it.
   * @param {string} title
   */
  table(title) {
    this.fold = make("details", { class: "fold graph-fold" }, make("summary", {}, title));
    this.fold.addEventListener("toggle", () => this.fill());
    return this.fold;
  }

  /** Draws it as wide as its parent is now. @param {Content} content */
  show(content) {
    const room = widthIn(this.picture.parentElement, () => this.sheet && this.show(this.sheet.content));
    const [width, height] = [Math.max(NARROWEST, Math.round(room)), content.height ?? HEIGHT];
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": content.label });
    this.picture.classList.toggle("slides", content.marker?.slide !== undefined);
    const wanted = JSON.stringify([width, height, unitInUse(), { ...content, label: "", marker: null }]);
    if (this.sheet && wanted === this.drawn) this.sheet.content = content;
    else this.redraw(new Sheet(content, width, height));
    this.drawn = wanted;
    this.mark(/** @type {Sheet} */ (this.sheet));
  }

  /** @param {Sheet} sheet */
  redraw(sheet) {
    this.sheet = sheet;
    amend(this.back, ...sheet.drawing());
    amend(this.key, ...keyOf(sheet.content));
    this.fill();
  }

  /** @param {Sheet} sheet */
  mark(sheet) {
    const { marker, x, y } = sheet.content;
    const on = marker && marker.at >= x.from && marker.at <= x.to;
    const slides = on && marker.slide !== undefined;
    dress(this.thumb, {
      tabindex: slides ? 0 : null, role: slides ? "slider" : null, "aria-label": slides ? marker.name : null,
      "aria-valuemin": slides ? x.from : null, "aria-valuemax": slides ? x.to : null,
      "aria-valuenow": slides ? marker.at : null, "aria-valuetext": slides ? marker.text : null,
    });
    if (!on) return amend(this.thumb);
    const { top, bottom } = sheet.inside;
    const [left, value] = [sheet.x(marker.at), marker.value];
    const dot = typeof value === "number" ? [draw("circle", { class: "here", cx: left, cy: sheet.y(Math.min(y.to, Math.max(y.from, value))), r: 6 })] : [];
    amend(this.thumb,
      draw("path", { class: "ring", d: `M${left - 9} ${top}h18V${bottom}h-18z` }), draw("path", { class: "here-line", d: `M${left} ${top}V${bottom}` }), ...dot);
  }

  fill() {
    if (this.fold?.open && this.sheet) amend(this.fold, /** @type {Node} */ (this.fold.firstChild), tableOf(this.sheet.content));
  }

  /** A press on the chart takes the marker there. @param {PointerEvent} event */
  point(event) {
    const { sheet } = this;
    if (!sheet || (event.type === "pointermove" && !(event.buttons & 1))) return;
    const frame = this.picture.getBoundingClientRect();
    const { left, right } = sheet.inside;
    const px = (event.clientX - frame.left) * (this.picture.clientWidth / frame.width);
    const { from, to } = sheet.content.x;
    this.slide(from + ((px - left) / (right - left)) * (to - from), event.type === "pointerup");
  }

  /** @param {KeyboardEvent} event */
  press(event) {
    const content = this.sheet?.content;
    const marker = content?.marker;
    if (!content || !marker) return;
    const steps = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -LEAP, PageUp: LEAP, Home: -Infinity, End: Infinity }[event.key];
    if (steps === undefined) return;
    event.preventDefault();
    this.slide(marker.at + steps * (marker.step ?? (content.x.to - content.x.from) / 100), true);
  }

  /**
   * @param {number} wanted
   * @param {boolean} done
   */
  slide(wanted, done) {
    const content = this.sheet?.content;
    if (!content?.marker?.slide) return;
    const { from, to } = content.x;
    const { step } = content.marker;
    const at = Math.min(to, Math.max(from, wanted));
    content.marker.slide(step ? Number((Math.round(at / step) * step).toFixed(9)) : at, done);
  }
}
