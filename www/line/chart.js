// Times as much as straight, against the offset: the answer, its bounds, the band of stiffness, other side gaps.

import { draw, dress, make } from "../dom.js";
import { decimal, gap } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("./types.js").Curve} Curve */

const HEIGHT = 260;
const EDGE = { left: 34, right: 10, top: 30, bottom: 38 };
/** The chart ends at this many times however hard rigid joints would press. */
const MOST = 5;
const LINES = ["tighter", "wider", "hinged", "rigid", "elastic"];

export class Chart {
  picture = draw("svg", { class: "crooked-chart", role: "img" });
  key = make("ul", { class: "crooked-key" });
  width = 600;
  most = 2;
  to_mm = 1;

  /** @param {(mm: number, done: boolean) => void} slide */
  constructor(slide) {
    this.slide = slide;
    this.step_mm = 1;
    for (const kind of ["pointerdown", "pointermove", "pointerup"]) {
      this.picture.addEventListener(kind, (event) => this.point(/** @type {PointerEvent} */ (event)));
    }
    const sample = (/** @type {string} */ kind) =>
      draw("svg", { class: "crooked-chart sample", viewBox: "0 0 28 12", width: 28, height: 12, "aria-hidden": "true" },
        kind === "band" ? draw("rect", { class: "band", width: 28, height: 12 }) : draw("path", { class: `curve ${kind}`, d: "M1 6H27" }));
    this.key.append(...["elastic", "rigid", "hinged", "band", "wider", "tighter"].map((kind) =>
      make("li", {}, sample(kind), say(`line.key.${kind}`))));
  }

  /** A press on the chart takes the offset there. @param {PointerEvent} event */
  point(event) {
    if (event.type === "pointermove" && !(event.buttons & 1)) return;
    const frame = this.picture.getBoundingClientRect();
    const share = ((event.clientX - frame.left) * (this.width / frame.width) - EDGE.left) / (this.width - EDGE.left - EDGE.right);
    const steps = Math.round((Math.min(1, Math.max(0, share)) * this.to_mm) / this.step_mm);
    this.slide(Number((steps * this.step_mm).toFixed(6)), event.type === "pointerup");
  }

  /** @param {number} mm */
  x(mm) {
    return EDGE.left + (mm / this.to_mm) * (this.width - EDGE.left - EDGE.right);
  }

  /** @param {number} times */
  y(times) {
    return HEIGHT - EDGE.bottom - ((times - 1) / (this.most - 1)) * (HEIGHT - EDGE.top - EDGE.bottom);
  }

  /**
   * @param {LineState} line
   * @param {Curve[]} curves
   */
  show(line, curves) {
    this.width = Math.max(280, Math.round(this.picture.parentElement?.clientWidth ?? 600));
    [this.to_mm, this.step_mm] = [line.to_mm, line.step_mm];
    const elastic = curves.find(({ variant }) => variant === "elastic");
    const top = Math.max(...(elastic?.samples ?? []).map((each) => each.friction_multiple ?? 1), 1.5);
    this.most = Math.min(MOST, Math.ceil(2 * top + 0.2) / 2);
    dress(this.picture, { viewBox: `0 0 ${this.width} ${HEIGHT}`, height: HEIGHT, "aria-label": say("line.chart.name", { ...line }) });
    const of = (/** @type {string} */ variant) => curves.find((curve) => curve.variant === variant);
    this.picture.replaceChildren(
      ...this.ground(line), ...this.band(of("softer"), of("stiffer")),
      ...LINES.flatMap((variant) => this.curve(of(variant))), ...this.marks(line, of("rigid")), ...this.here(line));
    this.key.hidden = curves.length === 0;
  }

  /** @param {LineState} line */
  ground({ free_mm, to_mm }) {
    const [bottom, right] = [HEIGHT - EDGE.bottom, this.width - EDGE.right];
    const text = (/** @type {object} */ where, /** @type {string} */ words) => draw("text", where, words);
    const rows = Array.from({ length: Math.floor((this.most - 1) / 0.5) + 1 }, (_, row) => 1 + row * 0.5);
    return [
      draw("rect", { class: "free", x: EDGE.left, y: EDGE.top, width: this.x(free_mm) - EDGE.left, height: bottom - EDGE.top }),
      ...rows.flatMap((times) => [
        draw("path", { class: "grid", d: `M${EDGE.left} ${this.y(times)}H${right}` }),
        text({ x: EDGE.left - 5, y: this.y(times) + 4, "text-anchor": "end" }, decimal(times, 1)),
      ]),
      draw("path", { class: "frame", d: `M${EDGE.left} ${EDGE.top}V${bottom}H${right}` }),
      text({ x: EDGE.left, y: bottom + 16 }, "0"), text({ x: right, y: bottom + 16, "text-anchor": "end" }, gap(to_mm)),
      text({ x: (EDGE.left + right) / 2, y: HEIGHT - 5, "text-anchor": "middle" }, say("line.x")),
    ];
  }

  /**
   * The samples of a curve that lie on the chart.
   * @param {Curve} curve
   */
  seen({ samples }) {
    const seen = samples.filter((each) => each.friction_multiple !== null);
    const over = seen.findIndex((each) => Number(each.friction_multiple) > this.most);
    return seen.slice(0, over < 0 ? seen.length : over);
  }

  /** @param {import("./types.js").Sample[]} samples */
  points(samples) {
    return samples.map((each) => `${this.x(each.offset_mm).toFixed(1)} ${this.y(Number(each.friction_multiple)).toFixed(1)}`);
  }

  /**
   * @param {Curve|undefined} softer
   * @param {Curve|undefined} stiffer
   */
  band(softer, stiffer) {
    if (!softer || !stiffer) return [];
    const [low, high] = [this.seen(softer), this.seen(stiffer)];
    const both = (/** @type {import("./types.js").Sample[]} */ others) => new Set(others.map(({ offset_mm }) => offset_mm));
    const [ofLow, ofHigh] = [both(low), both(high)];
    const around = [
      ...this.points(low.filter(({ offset_mm }) => ofHigh.has(offset_mm))),
      ...this.points(high.filter(({ offset_mm }) => ofLow.has(offset_mm))).reverse(),
    ];
    return around.length > 2 ? [draw("path", { class: "band", d: `M${around.join("L")}Z` })] : [];
  }

  /** @param {Curve|undefined} curve */
  curve(curve) {
    const points = curve ? this.points(this.seen(curve)) : [];
    return curve && points.length > 1 ? [draw("path", { class: `curve ${curve.variant}`, d: `M${points.join("L")}` })] : [];
  }

  /**
   * @param {LineState} line
   * @param {Curve|undefined} rigid
   */
  marks({ free_mm, reach_mm, to_mm }, rigid) {
    const mark = (/** @type {number|null|undefined} */ mm, /** @type {string} */ word, /** @type {number} */ row) => {
      if (mm === null || mm === undefined || mm > to_mm) return [];
      const x = this.x(mm);
      const anchor = x < this.width * 0.3 ? "start" : x > this.width * 0.7 ? "end" : "middle";
      return [draw("path", { class: "mark", d: `M${x} ${row + 4}V${HEIGHT - EDGE.bottom}` }), draw("text", { class: "mark-name", x, y: row, "text-anchor": anchor }, say(word))];
    };
    return [...mark(free_mm, "line.mark.free", 11), ...mark(rigid?.onset_mm, "line.mark.onset", 25), ...mark(reach_mm, "line.mark.end", 11)];
  }

  /** @param {LineState} line */
  here({ offset_mm, to_mm, answers }) {
    const multiple = answers[0].numbers.multiple ?? null;
    if (offset_mm > to_mm) return [];
    const x = this.x(offset_mm);
    const dot = multiple === null ? [] : [draw("circle", { class: "here", cx: x, cy: this.y(Math.min(this.most, multiple)), r: 6 })];
    return [draw("path", { class: "here-line", d: `M${x} ${EDGE.top}V${HEIGHT - EDGE.bottom}` }), ...dot];
  }
}
