// Room to move: where the inner link can go, aside and turned, with the pose as a dot that can be taken hold of.

import { byId, draw, dress, make, write } from "./dom.js";
import { decimal, degreesOf, fieldOf, mmOf, numberOf, radOf, unitInUse } from "./figures.js";
import { BOX, Outline } from "./outline.js";
import { numberField } from "./way.js";
import { poseOf } from "./work.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Pose} Pose */
/** @typedef {import("./kernel.js").Room} Room */

const KEY_STEPS = 25;
const ARROWS = /** @type {Record<string, [number, number]>} */ ({
  ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1],
});

/** @param {Session} session */
export function startRoom(session) {
  const chart = new Chart(session);
  session.listen(() => session.listed && chart.show(), false);
}

class Chart {
  /** What the outline was drawn of, as text: what stands already is not drawn again. */
  drawn = "";

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.outline = new Outline({ offset_mm: 0, yaw_rad: 0, outline: [] });
    this.picture = draw("svg", { viewBox: `0 0 ${BOX.width} ${BOX.height}`, class: "chart", role: "group" });
    this.back = draw("g", {});
    this.dot = draw("g", { class: "dot", tabindex: 0, role: "slider", "aria-orientation": "horizontal" },
      draw("circle", { class: "reach", r: 22 }), draw("circle", { class: "point", r: 7 }));
    this.picture.append(this.back, this.dot);
    this.offset = this.field("room.offset", (text) => ({ offset_mm: mmOf(text) }));
    this.yaw = this.field("room.yaw", (text) => ({ yaw_rad: radOf(numberOf(text)) }));
    byId("room").append(this.picture, make("div", { class: "pair" }, this.offset.element, this.yaw.element));
    this.listen();
  }

  /**
   * @param {string} word
   * @param {(text: string) => Partial<Pose>} read
   */
  field(word, read) {
    const input = numberField({ "data-step": 0.01 });
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
      const step = (/** @type {"offset_mm"|"yaw_rad"} */ key) => this.outline.reach[key] / KEY_STEPS;
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
    return this.outline.poseAt(x, y);
  }

  show() {
    if (!this.session.state.fits) return;
    const room = this.session.bench.room();
    this.drawBack(room);
    const [x, y] = this.outline.pointOf(room);
    dress(this.dot, {
      transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`, "aria-label": say("room.dot"),
      "aria-valuenow": degreesOf(room.yaw_rad).toFixed(3),
      "aria-valuemin": -90, "aria-valuemax": 90, "aria-valuetext": say("room.at", room),
    });
    this.fill(room);
  }

  /** @param {Room} room */
  drawBack(room) {
    const drawn = JSON.stringify([room.outline, this.session.state.construction, unitInUse()]);
    if (drawn === this.drawn) return;
    this.drawn = drawn;
    this.outline = new Outline(room);
    const light = (/** @type {string|null} */ id) => this.session.light(id);
    this.back.replaceChildren(...this.outline.axes(), ...this.outline.drawing(this.session.state.construction, light));
    dress(this.picture, { "aria-label": say("room.title") });
  }

  /** @param {Pose} dot */
  fill(dot) {
    write(this.offset.unit, say(unitInUse() === "in" ? "unit.inch" : "unit.mm"));
    write(this.yaw.unit, "°");
    if (document.activeElement !== this.offset.input) this.offset.input.value = fieldOf(dot.offset_mm);
    if (document.activeElement !== this.yaw.input) this.yaw.input.value = decimal(degreesOf(dot.yaw_rad), 3);
  }
}
