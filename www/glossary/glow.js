// Lines of the drawing lit: the kernel paints them once more over it, in one colour and with a glow.

import { byId, make } from "../dom.js";
import { theme } from "../theme.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {{layer?: string, view?: string}} Lit */

const LAYERS = ["ground", "metal", "section", "centre", "marks", "dimensions", "labels", "forces", "grips"];
/** How far a glow reaches, and what is left free around a section, px. */
const [GLOW_PX, ROOM_PX] = [5, 10];

export class Glow {
  canvas = make("canvas", { class: "glow", "aria-hidden": "true" });
  /** @type {Lit|null} */
  lit = null;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.field = byId("field");
    new ResizeObserver(() => this.paint()).observe(this.field);
    session.listen(() => this.paint(), false);
  }

  /** @param {Lit|null} lit */
  show(lit) {
    this.lit = lit;
    if (lit) byId("drawing").after(this.canvas);
    else this.canvas.remove();
    this.paint();
  }

  paint() {
    if (!this.lit) return;
    const { bench, lit } = this.session;
    const [{ clientWidth, clientHeight }, ratio] = [this.field, devicePixelRatio];
    [this.canvas.width, this.canvas.height] = [Math.round(clientWidth * ratio), Math.round(clientHeight * ratio)];
    const pen = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d"));
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    const colour = getComputedStyle(this.canvas).color;
    Object.assign(pen, { shadowColor: colour, shadowBlur: GLOW_PX * ratio });
    const layer = this.lit.layer ?? "metal";
    if (this.lit.view) pen.clip(this.around(this.lit.view, clientWidth));
    bench.paint(pen, inks(colour), { lit, hide: LAYERS.filter((each) => each !== layer) });
  }

  /**
   * Where a section lies and how far it reaches up and down, px.
   * @param {string} view
   */
  seat(view) {
    const { bench, state: { sizes } } = this.session;
    const places = bench.views();
    const place = places.find((each) => each.view === view) ?? places[0];
    const high = (Math.max(sizes.inner_plate_height_mm, sizes.outer_plate_height_mm) / 2) * place.px_per_mm + ROOM_PX;
    return { place, high, end: places.find((each) => each.view === "end"), half_mm: sizes.pin_length_mm / 2 };
  }

  /** How far down the drawing a section begins, px. @param {string} view */
  topOf(view) {
    const { place, high } = this.seat(view);
    return place.y_px - high;
  }

  /**
   * The outline of a section's place; another one in the same row is left out.
   * @param {string} view
   * @param {number} width_px
   */
  around(view, width_px) {
    const { place, high, end, half_mm } = this.seat(view);
    const beside = end && Math.abs(end.y_px - place.y_px) < high;
    const path = new Path2D();
    path.rect(0, place.y_px - high, beside ? end.x_px - half_mm * end.px_per_mm - ROOM_PX : width_px, 2 * high);
    return path;
  }
}

/** Every line in one colour, nothing filled. @param {string} colour */
const inks = (colour) => Object.fromEntries(Object.keys(theme()).map((name) => [name, name === "sheet" || name.startsWith("fill") ? "transparent" : colour]));
