// Taking hold of the end of a dimension line: the gap it measures follows the hand.

import { byId, dress, make } from "./dom.js";
import { tellFaults } from "./field.js";
import { gap } from "./figures.js";
import { poseWork } from "./work.js";
import { say, variant } from "./words.js";

/** @typedef {import("./stage.js").Stage} Stage */
/** @typedef {import("./kernel.js").Grip} Grip */
/** @typedef {import("./kernel.js").Fault} Fault */

/** Steps of an arrow key from one end of a gap's slider to the other, and of a Page key. */
const STEPS = 200;
const COARSE = 10;
/** A pointer that has moved less has not begun to pull. */
const STILL_PX = 2;

export class Ends {
  /** @type {Map<string, HTMLButtonElement>} */
  buttons = new Map();
  /** @type {{id: string, x: number, y: number, px_per_mm: number, begun: boolean}|null} */
  hold = null;
  /** @type {Grip[]} */
  grips = [];

  /** @param {Stage} stage */
  constructor(stage) {
    this.stage = stage;
    this.session = stage.session;
    this.fault = make("p", { class: "fault sheet-fault", role: "alert", hidden: true });
    stage.sheet.append(this.fault);
    this.session.listen((what) => what.has("chain") && this.refuse([]));
  }

  /**
   * Puts a button over every end; one that a hand or the focus is on stays when its line goes.
   * @param {Grip[]} grips
   */
  place(grips) {
    this.grips = grips;
    for (const [id, button] of this.buttons) {
      button.hidden = !grips.some((grip) => grip.id === id) && document.activeElement !== button && this.hold?.id !== id;
    }
    for (const grip of grips) {
      const button = this.buttons.get(grip.id) ?? this.add(grip);
      button.style.setProperty("left", `${grip.x_px}px`);
      button.style.setProperty("top", `${grip.y_px}px`);
      this.speak(button, /** @type {string} */ (grip.gap));
    }
  }

  /** @param {Grip} grip */
  add({ id, gap: key }) {
    const button = make("button", { type: "button", class: "grip end", role: "slider", "aria-orientation": "vertical" });
    button.addEventListener("pointerdown", (event) => this.take(event, button, id));
    button.addEventListener("pointermove", (event) => this.pull(event));
    for (const end of ["pointerup", "pointercancel"]) button.addEventListener(end, () => this.leave());
    button.addEventListener("keydown", (event) => this.key(event, /** @type {string} */ (key)));
    this.buttons.set(id, button);
    byId("grips").append(button);
    return button;
  }

  /**
   * @param {HTMLElement} button
   * @param {string} key
   */
  speak(button, key) {
    const { gaps, construction } = this.session.state;
    const { value_mm, high_mm } = gaps[key];
    const name = say(variant(`gap.${key}`, construction));
    dress(button, {
      "aria-label": say("grip.end", { name }), title: say("grip.end.title", { name }),
      "aria-valuemin": 0, "aria-valuemax": high_mm, "aria-valuenow": value_mm, "aria-valuetext": gap(value_mm),
    });
  }

  /**
   * @param {PointerEvent} event
   * @param {HTMLElement} button
   * @param {string} id
   */
  take(event, button, id) {
    const plan = this.session.bench.views().find(({ view }) => view === "plan");
    if (event.button !== 0 || !plan) return;
    button.setPointerCapture(event.pointerId);
    this.hold = { id, x: event.clientX, y: event.clientY, px_per_mm: plan.px_per_mm, begun: false };
    this.stage.sheet.classList.add("held");
  }

  /** @param {PointerEvent} event */
  pull(event) {
    if (!this.hold) return;
    const { x, y, px_per_mm } = this.hold;
    const [dx, dy] = [event.clientX - x, y - event.clientY];
    if (!this.hold.begun && (Math.hypot(dx, dy) < STILL_PX || !this.begin(this.hold))) return;
    this.refuse(this.session.alter((bench) => bench.pull_end(dx / px_per_mm, dy / px_per_mm), false));
  }

  /**
   * The first move: the drawing keeps its scale of gaps, or what is pulled would not follow.
   * @param {{id: string, begun: boolean}} hold
   */
  begin(hold) {
    this.keepScale();
    this.session.letGo();
    poseWork(this.session.bench, this.session.work);
    hold.begun = this.session.bench.hold_end(hold.id.replace("end.", ""));
    return hold.begun;
  }

  keepScale() {
    this.session.work.times ??= this.session.state.factor.value;
  }

  leave() {
    const begun = this.hold?.begun;
    this.hold = null;
    this.stage.sheet.classList.remove("held");
    if (!begun) return;
    this.session.bench.release();
    this.session.alter(() => [], true);
  }

  /**
   * @param {KeyboardEvent} event
   * @param {string} key
   */
  key(event, key) {
    const steps = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: COARSE, PageDown: -COARSE }[event.key];
    const { value_mm, low_mm, high_mm } = this.session.state.gaps[key];
    const wanted = { Home: 0, End: high_mm }[event.key] ?? (steps ? value_mm + (steps * (high_mm - low_mm)) / STEPS : null);
    if (wanted === null) return;
    event.preventDefault();
    this.keepScale();
    this.refuse(this.session.alter((bench) => bench.set_gap(key, Math.max(0, wanted)), true));
  }

  /** @param {Fault[]} faults */
  refuse(faults) {
    tellFaults(this.fault, faults);
  }
}
