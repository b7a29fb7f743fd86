// Taking hold of a link: by the grips that stand on it, by the drawing itself with a mouse, by arrow keys.

import { byId, dress, make } from "./dom.js";
import { Ends } from "./ends.js";
import { poseWork, reading } from "./work.js";
import { say } from "./words.js";

/** @typedef {import("./stage.js").Stage} Stage */
/** @typedef {import("./kernel.js").Spot} Spot */

const COARSE = 5;
/** How many pulls on top of one another an address remembers. */
const MOST_PULLS = 24;

export class Grips {
  layer = byId("grips");
  /** @type {Map<string, HTMLButtonElement>} */
  buttons = new Map();
  /** @type {{view: string, from: number[], to: number[]|null, dx_mm: number, dy_mm: number} | null} */
  hold = null;

  /** @param {Stage} stage */
  constructor(stage) {
    this.stage = stage;
    this.session = stage.session;
    this.ends = new Ends(stage);
    stage.afterPaint.push(() => this.place());
    this.listenTo(stage.canvas, () => null);
  }

  /** Puts a button over every grip of the drawing. */
  place() {
    const { bench } = this.session;
    const all = this.session.state.fits ? bench.grips() : [];
    const grips = all.filter((grip) => !grip.gap);
    for (const [id, button] of this.buttons) {
      if (!grips.some((grip) => grip.id === id)) button.hidden = true;
    }
    for (const grip of grips) {
      const button = this.buttons.get(grip.id) ?? this.add(grip.id);
      button.hidden = false;
      button.style.setProperty("left", `${grip.x_px}px`);
      button.style.setProperty("top", `${grip.y_px}px`);
    }
    this.speak();
    this.ends.place(all.filter((grip) => grip.gap));
  }

  /** @param {string} id */
  add(id) {
    const button = make("button", { type: "button", class: "grip", role: "slider", "aria-orientation": "vertical" });
    button.dataset.id = id;
    button.addEventListener("keydown", (event) => this.key(event));
    this.listenTo(button, () => this.session.bench.grips().find((grip) => grip.id === id) ?? null);
    this.buttons.set(id, button);
    this.layer.append(button);
    return button;
  }

  /** Says where the free link stands. */
  speak() {
    const { live, work } = this.session;
    const text = reading(work.how, live);
    for (const [id, button] of this.buttons) {
      dress(button, {
        "aria-label": say(`grip.${id}`), "aria-valuemin": -100, "aria-valuemax": 100,
        "aria-valuenow": Math.round(live.amplitude * 100), "aria-valuetext": text, title: say("grip.title"),
      });
    }
  }

  /**
   * @param {HTMLElement} target
   * @param {() => Spot|null} at where a grip holds the link; the drawing is held where the pointer is
   */
  listenTo(target, at) {
    target.addEventListener("pointerdown", (event) => this.take(event, target, at()));
    target.addEventListener("pointermove", (event) => this.pull(event));
    for (const end of ["pointerup", "pointercancel"]) target.addEventListener(end, () => this.leave());
  }

  /**
   * @param {PointerEvent} event
   * @param {HTMLElement} target
   * @param {Spot|null} at
   */
  take(event, target, at) {
    const bare = target === this.stage.canvas;
    if (event.button !== 0 || (bare && event.pointerType === "touch")) return;
    const pointer = this.stage.spotOf(event, at?.view);
    if (!pointer || !this.session.state.fits) return;
    const held = at ?? pointer;
    if (!this.session.bench.grab(held.view, held.x_mm, held.y_mm)) return;
    target.setPointerCapture(event.pointerId);
    this.hold = {
      view: held.view, from: [held.x_mm, held.y_mm], to: null,
      dx_mm: held.x_mm - pointer.x_mm, dy_mm: held.y_mm - pointer.y_mm,
    };
    this.session.pulling = true;
    this.stage.sheet.classList.add("held");
    if (bare) event.preventDefault();
  }

  /** @param {PointerEvent} event */
  pull(event) {
    if (!this.hold) return;
    const spot = this.stage.spotOf(event, this.hold.view);
    if (!spot) return;
    this.hold.to = [spot.x_mm + this.hold.dx_mm, spot.y_mm + this.hold.dy_mm];
    this.session.bench.drag(this.hold.to[0], this.hold.to[1]);
    this.session.tell("pose");
  }

  leave() {
    if (!this.hold) return;
    const { view, from, to } = this.hold;
    this.hold = null;
    this.session.bench.release();
    this.session.pulling = false;
    this.stage.sheet.classList.remove("held");
    const { work } = this.session;
    if (to) work.pulls = [...work.pulls, { view, from, to }].slice(-MOST_PULLS);
    poseWork(this.session.bench, work); // as a reload will: at rest, nothing rubs
    this.session.tell("pose");
    this.session.commit();
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: COARSE, PageDown: -COARSE }[event.key];
    const end = { Home: -1, End: 1 }[event.key];
    if (steps === undefined && end === undefined) return;
    event.preventDefault();
    if (end !== undefined) return this.session.move({ at: end, held: null }, true);
    this.session.bench.nudge(steps ?? 0);
    this.session.move({ at: this.session.bench.live().amplitude, held: null }, true);
  }
}

