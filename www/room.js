// Room to move: where the inner link can go, aside and turned, with the pose as a dot that can be taken hold of.

import { byId, draw, dress, make } from "./dom.js";
import { angle, decimal, degreesOf, fieldOf, gap, mmOf, radOf, unitInUse } from "./figures.js";
import { poseOf } from "./work.js";
import { has, say, variant } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Pose} Pose */
/** @typedef {import("./kernel.js").Room} Room */

const BOX = { width: 300, height: 210, left: 46, right: 12, top: 14, bottom: 36 };
const MARGIN = 1.22;
const KEY_STEPS = 25;
const ARROWS = /** @type {Record<string, [number, number]>} */ ({
  ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1],
});

/** @param {Session} session */
export function startRoom(session) {
  const chart = new Chart(session);
  session.listen((what) => chart.show(what.has("chain") || what.has("unit")));
}

class Chart {
  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.reach = { offset_mm: 1, yaw_rad: 1 };
    this.picture = draw("svg", { viewBox: `0 0 ${BOX.width} ${BOX.height}`, class: "chart", role: "group" });
    this.back = draw("g", {});
    this.dot = draw("g", { class: "dot", tabindex: 0, role: "slider", "aria-orientation": "horizontal" },
      draw("circle", { class: "reach", r: 22 }), draw("circle", { class: "point", r: 7 }));
    this.picture.append(this.back, this.dot);
    this.offset = this.field("room.offset", (text) => ({ offset_mm: mmOf(text) }));
    this.yaw = this.field("room.yaw", (text) => ({ yaw_rad: radOf(Number(text)) }));
    byId("room").append(this.picture, make("div", { class: "pair" }, this.offset.element, this.yaw.element));
    this.listen();
  }

  /**
   * @param {string} word
   * @param {(text: string) => Partial<Pose>} read
   */
  field(word, read) {
    const input = make("input", { type: "number", step: 0.01, inputmode: "decimal" });
    const unit = make("span", { class: "unit" });
    input.addEventListener("change", () => {
      const pose = { ...poseOf(this.session.bench.room()), ...read(input.value) };
      if (Object.values(pose).every(Number.isFinite)) this.put(pose, true);
      else this.show();
    });
    return { input, unit, element: make("label", {}, make("span", {}, say(word)), input, unit) };
  }

  listen() {
    this.dot.addEventListener("pointerdown", (event) => {
      this.dot.setPointerCapture(event.pointerId);
      event.preventDefault();
      this.dot.focus();
    });
    this.dot.addEventListener("pointermove", (event) => {
      if (this.dot.hasPointerCapture(event.pointerId)) this.put(this.poseAt(event), false);
    });
    this.dot.addEventListener("pointerup", () => this.session.commit());
    this.picture.addEventListener("click", (event) => {
      if (!this.dot.contains(/** @type {Node} */ (event.target))) this.put(this.poseAt(event), true);
    });
    this.dot.addEventListener("keydown", (event) => {
      const arrow = ARROWS[event.key];
      if (!arrow) return;
      event.preventDefault();
      const dot = poseOf(this.session.bench.room());
      const step = (/** @type {"offset_mm"|"yaw_rad"} */ key) => this.reach[key] / KEY_STEPS;
      this.put({
        offset_mm: dot.offset_mm + arrow[0] * step("offset_mm"), yaw_rad: dot.yaw_rad + arrow[1] * step("yaw_rad"),
      }, true);
    });
  }

  /**
   * @param {Pose} pose
   * @param {boolean} done
   */
  put(pose, done) {
    this.session.move({ held: pose }, false);
    this.session.work.held = poseOf(this.session.bench.room());
    this.session.work.at = this.session.bench.live().amplitude;
    if (done) this.session.commit();
  }

  /** @param {MouseEvent} event */
  poseAt(event) {
    const frame = this.picture.getBoundingClientRect();
    const x = ((event.clientX - frame.left) / frame.width) * BOX.width;
    const y = ((event.clientY - frame.top) / frame.height) * BOX.height;
    const { width, height, mid } = area();
    return {
      offset_mm: ((x - mid.x) / (width / 2)) * this.reach.offset_mm,
      yaw_rad: ((mid.y - y) / (height / 2)) * this.reach.yaw_rad,
    };
  }

  /** @param {Pose} pose */
  pointOf(pose) {
    const { width, height, mid } = area();
    return [
      mid.x + ((pose.offset_mm / this.reach.offset_mm) * width) / 2,
      mid.y - ((pose.yaw_rad / this.reach.yaw_rad) * height) / 2,
    ];
  }

  /** @param {boolean} [anew] draws the outline again, not the dot alone */
  show(anew = false) {
    if (!this.session.state.fits) return;
    const room = this.session.bench.room();
    if (anew) this.drawBack(room);
    const [x, y] = this.pointOf(room);
    dress(this.dot, {
      transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`, "aria-label": say("room.dot"),
      "aria-valuenow": decimal(degreesOf(room.yaw_rad), 3).replace("\u2212", "-"),
      "aria-valuemin": -90, "aria-valuemax": 90, "aria-valuetext": say("room.at", room),
    });
    this.fill(room);
  }

  /** @param {Room} room */
  drawBack(room) {
    const most = (/** @type {"offset_mm"|"yaw_rad"} */ key) => Math.max(...room.outline.map((p) => Math.abs(p[key])), 1e-6);
    this.reach = { offset_mm: most("offset_mm") * MARGIN, yaw_rad: most("yaw_rad") * MARGIN };
    this.back.replaceChildren(...this.axes(), this.outline(room), ...this.names(room));
    dress(this.picture, { "aria-label": say("room.title") });
  }

  /** @param {Pose} dot */
  fill(dot) {
    this.offset.unit.textContent = say(unitInUse() === "in" ? "unit.inch" : "unit.mm");
    this.yaw.unit.textContent = "°";
    if (document.activeElement !== this.offset.input) this.offset.input.value = fieldOf(dot.offset_mm);
    if (document.activeElement !== this.yaw.input) this.yaw.input.value = degreesOf(dot.yaw_rad).toFixed(3);
  }

  axes() {
    const { mid } = area();
    const [right, bottom] = [BOX.width - BOX.right, BOX.height - BOX.bottom];
    const edge = { offset_mm: this.reach.offset_mm / MARGIN, yaw_rad: this.reach.yaw_rad / MARGIN };
    const [far, high] = this.pointOf(edge);
    const [near, low] = this.pointOf({ offset_mm: -edge.offset_mm, yaw_rad: -edge.yaw_rad });
    const text = (/** @type {number} */ x, /** @type {number} */ y, /** @type {string} */ said, anchor = "middle") =>
      draw("text", { x, y, "text-anchor": anchor, class: "tick" }, said);
    return [
      draw("path", { class: "axis", d: `M${BOX.left} ${mid.y}H${right}M${mid.x} ${BOX.top}V${bottom}` }),
      draw("path", { class: "frame", d: `M${BOX.left} ${BOX.top}V${bottom}H${right}` }),
      text(near, bottom + 14, gap(-edge.offset_mm)), text(far, bottom + 14, gap(edge.offset_mm)), text(mid.x, bottom + 14, "0"),
      text(BOX.left - 5, high + 4, angle(edge.yaw_rad), "end"), text(BOX.left - 5, low + 4, angle(-edge.yaw_rad), "end"),
      text(BOX.left - 5, mid.y + 4, "0", "end"),
      text(mid.x, BOX.height - 5, say("room.x")), text(BOX.left + 4, BOX.top + 4, say("room.y"), "start"),
    ];
  }

  /** @param {Room} room */
  outline(room) {
    const points = room.outline.map((corner) => this.pointOf(corner));
    const edges = points.map((point, i) => {
      const next = points[(i + 1) % points.length];
      return draw("path", { class: "edge", "data-by": kindOf(room.outline[i].by), d: `M${point}L${next}` });
    });
    return draw("g", {}, draw("polygon", { class: "inside", points: points.join(" ") }), ...edges);
  }

  /**
   * One name on the longest edge of each kind, inside the outline where there is room for it.
   * @param {Room} room
   */
  names(room) {
    /** @type {Map<string, {length: number, x: number, y: number}>} */
    const longest = new Map();
    const { construction } = this.session.state;
    room.outline.forEach((corner, i) => {
      const [a, b] = [this.pointOf(corner), this.pointOf(room.outline[(i + 1) % room.outline.length])];
      const length = Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
      const word = variant(`kind.${kindOf(corner.by)}`, construction);
      if (!(length <= (longest.get(word)?.length ?? 0))) longest.set(word, { length, x: (a[0] + b[0]) / 2, y: (a[1] + b[1]) / 2 });
    });
    const { mid } = area();
    return [...longest].filter(([word]) => has(word)).map(([word, { x, y }]) => {
      const upper = y < mid.y;
      const anchor = Math.abs(x - mid.x) < 40 ? "middle" : x > mid.x ? "end" : "start";
      return draw("text", { x, y: y + (upper ? -6 : 14), "text-anchor": anchor, class: "by" }, say(word));
    });
  }
}

/**
 * The kind of the contact that makes an edge: `first.pin-bore.far.right` is of kind `pin-bore`.
 * @param {string} by
 */
const kindOf = (by) => by.split(".")[1] ?? by;

function area() {
  const width = BOX.width - BOX.left - BOX.right;
  const height = BOX.height - BOX.top - BOX.bottom;
  return { width, height, mid: { x: BOX.left + width / 2, y: BOX.top + height / 2 } };
}
