// The sheet of a chart: where a value lies on it, and everything that is drawn there and cannot be taken hold of.

import { draw } from "./amend.js";
import { placed, ticksOf, widthOf } from "./ticks.js";

const FOOT_PX = 40;
const HEAD_PX = 22;
const ROW_PX = 15;
const EDGE_PX = 12;
let count = 0;

export class Sheet {
  clip = `graph-${++count}`;

  /**
   * @param {import("./chart.js").Content} content
   * @param {number} width
   * @param {number} height
   */
  constructor(content, width, height) {
    this.content = content;
    const { x, y, marks = [] } = content;
    this.tick = { x: x.tick ?? x.write, y: y.tick ?? y.write };
    this.rows = ticksOf({ ...y, write: this.tick.y }, height - FOOT_PX - HEAD_PX, 2 * ROW_PX);
    const left = Math.max(...this.rows.map((value) => widthOf(this.tick.y(value))), 0) + EDGE_PX;
    this.inside = { left, right: width - EDGE_PX, top: HEAD_PX, bottom: height - FOOT_PX };
    this.marks = marks.filter(({ at }) => at >= x.from && at <= x.to);
    this.names = placed(this.marks.map(({ name, at }) => ({ x: this.x(at), width: widthOf(name) })), width);
    this.inside.top += ROW_PX * this.names.reduce((most, { row }) => Math.max(most, row + 1), 0);
  }

  drawing() {
    const { lines = [], bands = [], bars = [], ranges = [] } = this.content;
    const drawn = [...bands.map((band) => this.band(band)), ...bars.flatMap((each) => this.bars(each)), ...lines.map((line) => this.line(line))];
    return [
      draw("clipPath", { id: this.clip }, draw("rect", this.frame())), ...ranges.map((range) => this.range(range)), ...this.ground(),
      draw("g", { "clip-path": `url(#${this.clip})` }, ...drawn), ...this.marks.map((mark, index) => this.stem(mark, this.names[index])),
      ...this.marks.map((mark, index) => this.name(mark, this.names[index])),
    ];
  }

  /** @param {number} value */
  x(value) {
    const { left, right } = this.inside;
    const { from, to } = this.content.x;
    return left + ((value - from) / (to - from)) * (right - left);
  }

  /** @param {number} value */
  y(value) {
    const { top, bottom } = this.inside;
    const { from, to } = this.content.y;
    return bottom - ((value - from) / (to - from)) * (bottom - top);
  }

  frame() {
    const { left, right, top, bottom } = this.inside;
    return { x: left, y: top, width: right - left, height: bottom - top };
  }

  ground() {
    const { left, right, top, bottom } = this.inside;
    const { x, y } = this.content;
    const text = (/** @type {object} */ where, /** @type {string} */ words) => draw("text", where, words);
    const columns = ticksOf({ ...x, write: this.tick.x }, right - left);
    return [
      ...this.rows.flatMap((value) => [
        draw("path", { class: "grid", d: `M${left} ${this.y(value)}H${right}` }),
        text({ x: left - 6, y: this.y(value) + 4, "text-anchor": "end" }, this.tick.y(value)),
      ]),
      draw("path", { class: "frame", d: `M${left} ${top}V${bottom}H${right}` }),
      ...columns.flatMap((value) => [
        draw("path", { class: "frame", d: `M${this.x(value)} ${bottom}v4` }),
        text({ x: this.x(value), y: bottom + 17, "text-anchor": "middle" }, this.tick.x(value)),
      ]),
      text({ class: "axis-name", x: (left + right) / 2, y: bottom + 34, "text-anchor": "middle" }, x.name),
      text({ class: "axis-name", x: 0, y: 12 }, y.name),
    ];
  }

  /** @param {import("./chart.js").At[]} points */
  path(points) {
    return points.map(([x, y]) => `${this.x(x).toFixed(1)} ${this.y(y).toFixed(1)}`).join("L");
  }

  /** @param {import("./chart.js").Line} line */
  line({ look, points }) {
    return draw("path", { class: `curve ${look}`, d: points.length > 1 ? `M${this.path(points)}` : "" });
  }

  /** @param {import("./chart.js").Band} band */
  band({ look = "", low, high }) {
    const around = [...low, ...[...high].reverse()];
    return draw("path", { class: `band ${look}`, d: around.length > 2 ? `M${this.path(around)}Z` : "" });
  }

  /** @param {import("./chart.js").Bars} bars */
  bars({ look = "main", bars }) {
    const foot = this.inside.bottom;
    return bars.map((bar) => {
      const [left, right, top] = [this.x(bar.from), this.x(bar.to), this.y(bar.height)];
      return draw("rect", { class: `bar ${bar.look ?? look}`, x: left, y: top, width: Math.max(0.5, right - left - 0.5), height: Math.max(0, foot - top) });
    });
  }

  /** @param {import("./chart.js").Range} range */
  range({ look, from, to }) {
    const { x } = this.content;
    const [left, right] = [this.x(Math.max(from, x.from)), this.x(Math.min(to, x.to))];
    const { top, bottom } = this.inside;
    return draw("rect", { class: `range ${look}`, x: left, y: top, width: Math.max(0, right - left), height: bottom - top });
  }

  /**
   * @param {import("./chart.js").Mark} mark
   * @param {import("./ticks.js").Placed} name
   */
  stem({ look = "plain" }, { row, x }) {
    const { top, bottom } = this.inside;
    return draw("path", { class: `mark ${look}`, d: `M${x} ${top - (row + 1) * ROW_PX + 4}V${bottom}` });
  }

  /**
   * A name lies over every stem, with the sheet around its letters: where one must run through it, it stops before them.
   * @param {import("./chart.js").Mark} mark
   * @param {import("./ticks.js").Placed} placed
   */
  name({ name, look = "plain" }, { row, anchor, x }) {
    const y = this.inside.top - row * ROW_PX - 4;
    return draw("text", { class: `mark-name ${look}`, x: anchor === "start" ? x + 5 : x - 5, y, "text-anchor": anchor }, name);
  }
}
