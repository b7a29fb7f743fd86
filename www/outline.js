// The outline of the room to move on paper: where a pose stands on the chart, axes, edges and their names.

import { draw } from "./dom.js";
import { angle, gap } from "./figures.js";
import { contactName, has, say, variant } from "./words.js";

/** @typedef {import("./kernel.js").Pose} Pose */
/** @typedef {import("./kernel.js").Room} Room */
/** A stretch of the outline that one contact makes. @typedef {{by: string, points: number[][]}} Edge */

export const BOX = { width: 300, height: 210, left: 46, right: 12, top: 14, bottom: 36 };
const WIDTH = BOX.width - BOX.left - BOX.right;
const HEIGHT = BOX.height - BOX.top - BOX.bottom;
const MID = { x: BOX.left + WIDTH / 2, y: BOX.top + HEIGHT / 2 };
const MARGIN = 1.22;
const LEAST = 1e-6;
const NEAR_MIDDLE = 40;

export class Outline {
  /** @param {Room} room */
  constructor(room) {
    this.room = room;
    const most = (/** @type {keyof Pose} */ key) => Math.max(LEAST, ...room.outline.map((corner) => Math.abs(corner[key])));
    this.edge = { offset_mm: most("offset_mm"), yaw_rad: most("yaw_rad") };
    this.reach = { offset_mm: this.edge.offset_mm * MARGIN, yaw_rad: this.edge.yaw_rad * MARGIN };
  }

  /**
   * Where a pose stands on the chart.
   * @param {Pose} pose
   */
  pointOf(pose) {
    return [
      MID.x + ((pose.offset_mm / this.reach.offset_mm) * WIDTH) / 2,
      MID.y - ((pose.yaw_rad / this.reach.yaw_rad) * HEIGHT) / 2,
    ];
  }

  /**
   * The pose at a point of the chart.
   * @param {number} x
   * @param {number} y
   */
  poseAt(x, y) {
    return {
      offset_mm: ((x - MID.x) / (WIDTH / 2)) * this.reach.offset_mm,
      yaw_rad: ((MID.y - y) / (HEIGHT / 2)) * this.reach.yaw_rad,
    };
  }

  /** The stretches of the outline, each with the contact that makes it. */
  edges() {
    const { outline } = this.room;
    /** @type {Edge[]} */
    const edges = [];
    outline.forEach((corner, i) => {
      const [a, b] = [this.pointOf(corner), this.pointOf(outline[(i + 1) % outline.length])];
      const last = edges.at(-1);
      if (last?.by === corner.by) last.points.push(b);
      else edges.push({ by: corner.by, points: [a, b] });
    });
    if (edges.length > 1 && edges[0].by === edges.at(-1)?.by) {
      const last = /** @type {Edge} */ (edges.pop());
      edges[0].points.unshift(...last.points.slice(0, -1));
    }
    return edges;
  }

  axes() {
    const [right, bottom] = [BOX.width - BOX.right, BOX.height - BOX.bottom];
    const { offset_mm, yaw_rad } = this.edge;
    const [far, high] = this.pointOf(this.edge);
    const [near, low] = this.pointOf({ offset_mm: -offset_mm, yaw_rad: -yaw_rad });
    const text = (/** @type {number} */ x, /** @type {number} */ y, /** @type {string} */ said, anchor = "middle") =>
      draw("text", { x, y, "text-anchor": anchor, class: "tick" }, said);
    return [
      draw("path", { class: "axis", d: `M${BOX.left} ${MID.y}H${right}M${MID.x} ${BOX.top}V${bottom}` }),
      draw("path", { class: "frame", d: `M${BOX.left} ${BOX.top}V${bottom}H${right}` }),
      text(near, bottom + 14, gap(-offset_mm)), text(far, bottom + 14, gap(offset_mm)), text(MID.x, bottom + 14, "0"),
      text(BOX.left - 5, high + 4, angle(yaw_rad), "end"), text(BOX.left - 5, low + 4, angle(-yaw_rad), "end"),
      text(BOX.left - 5, MID.y + 4, "0", "end"),
      text(MID.x, BOX.height - 5, say("room.x")), text(BOX.left + 4, BOX.top + 4, say("room.y"), "start"),
    ];
  }

  /**
   * The outline itself; `light` is called with the contact of an edge that is pointed at.
   * @param {string} construction
   * @param {(id: string|null) => void} light
   */
  drawing(construction, light) {
    const inside = this.room.outline.map((corner) => this.pointOf(corner).map((at) => at.toFixed(2)).join(","));
    const edges = this.edges().flatMap(({ by, points }) => {
      const d = `M${points.map((point) => point.map((at) => at.toFixed(2)).join(" ")).join("L")}`;
      const { who, where } = contactName(partsOf(by), construction);
      return [
        draw("path", { class: "edge", "data-by": partsOf(by).kind, d }),
        draw("path", { class: "edge-reach", d, onpointerenter: () => light(by), onpointerleave: () => light(null) }, draw("title", {}, `${who}, ${where}`)),
      ];
    });
    return [draw("polygon", { class: "inside", points: inside.join(" ") }), ...edges, ...this.names(construction)];
  }

  /**
   * One name for each kind of contact, at the longest edge that it makes.
   * @param {string} construction
   */
  names(construction) {
    /** @type {Map<string, {length: number, x: number, y: number}>} */
    const longest = new Map();
    for (const { by, points } of this.edges()) {
      const [a, b] = [points[0], /** @type {number[]} */ (points.at(-1))];
      const length = Math.hypot(a[0] - b[0], a[1] - b[1]);
      const word = variant(`edge.${partsOf(by).kind}`, construction);
      if (!has(word) || length <= (longest.get(word)?.length ?? 0)) continue;
      longest.set(word, { length, x: (a[0] + b[0]) / 2, y: (a[1] + b[1]) / 2 });
    }
    return [...longest].map(([word, { x, y }]) => {
      const anchor = Math.abs(x - MID.x) < NEAR_MIDDLE ? "middle" : x > MID.x ? "end" : "start";
      return draw("text", { x, y: y + (y < MID.y ? -6 : 14), "text-anchor": anchor, class: "by" }, say(word));
    });
  }
}

/**
 * The parts of a contact's id, such as `first.pin-bore.far.right`.
 * @param {string} id
 */
function partsOf(id) {
  const [joint, kind, end, side] = id.split(".");
  return { id, joint, kind, end, side };
}
