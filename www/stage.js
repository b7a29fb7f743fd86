// The drawing: one canvas the kernel paints, redrawn only when something changed.

import { byId, onceAFrame } from "./dom.js";
import { theme } from "./theme.js";

const NARROW_PX = 560;
const TEXT_SHARE = 0.8;
const SMALL = 2;

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Spot} Spot */
/** A view's place on the canvas: px = ox + x k, py = oy - y k.  @typedef {{ox: number, oy: number, k: number}} Place */

export class Stage {
  canvas = /** @type {HTMLCanvasElement} */ (byId("drawing"));
  sheet = byId("sheet");
  /** @type {Map<string, Place>} */
  places = new Map();
  /** @type {(() => void)[]} */
  afterPaint = [];

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.context = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d"));
    this.redraw = onceAFrame(() => this.paint());
    new ResizeObserver(() => this.fit()).observe(this.sheet);
    this.watchRatio();
    session.listen((what) => {
      if (what.has("chain") || what.has("look")) this.lay();
      this.redraw();
    });
    this.sheet.addEventListener("keydown", (event) => this.key(event));
    this.fit();
  }

  /**
   * N and P light the next and the previous contact, Escape puts the light out.
   * @param {KeyboardEvent} event
   */
  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = { n: 1, p: -1 }[event.key.toLowerCase()];
    if (event.key === "Escape") this.session.light(null);
    if (!step) return;
    const ids = this.session.contacts.map((contact) => contact.id);
    const at = ids.indexOf(this.session.lit ?? "");
    this.session.light(ids[(at + step + ids.length + (at < 0 && step < 0 ? 1 : 0)) % ids.length] ?? null);
  }

  /** Follows the screen's pixel ratio, which changes when the page is zoomed or moved. */
  watchRatio() {
    const query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    query.addEventListener("change", () => {
      this.fit();
      this.watchRatio();
    }, { once: true });
  }

  /** Makes the canvas as many device pixels as its room on the page. */
  fit() {
    const { clientWidth, clientHeight } = this.sheet;
    if (clientWidth < SMALL || clientHeight < SMALL) return;
    this.canvas.width = Math.round(clientWidth * devicePixelRatio);
    this.canvas.height = Math.round(clientHeight * devicePixelRatio);
    this.lay();
    this.paint();
  }

  /** Lets the kernel lay out the views, and learns where they came to stand. */
  lay() {
    const { clientWidth, clientHeight } = this.sheet;
    const text = parseFloat(getComputedStyle(document.documentElement).fontSize) * TEXT_SHARE;
    this.session.bench.layout(clientWidth, clientHeight, text, clientWidth < NARROW_PX);
    this.places.clear();
    this.findPlaces(clientWidth, clientHeight);
  }

  /**
   * Reads each view's scale off the kernel's own map, point by point over the canvas.
   * @param {number} width
   * @param {number} height
   */
  findPlaces(width, height) {
    const steps = 24;
    for (let i = 1; i < steps; i++) {
      for (let j = 1; j < steps; j++) {
        const [px, py] = [(width * i) / steps, (height * j) / steps];
        const here = this.session.bench.view_at(px, py);
        if (!here || this.places.has(here.view)) continue;
        const beside = this.session.bench.view_at(px + 1, py);
        if (!beside || beside.view !== here.view) continue;
        const k = 1 / (beside.x_mm - here.x_mm);
        this.places.set(here.view, { ox: px - here.x_mm * k, oy: py + here.y_mm * k, k });
      }
    }
  }

  paint() {
    const ratio = devicePixelRatio;
    this.context.setTransform(ratio, 0, 0, ratio, 0, 0);
    this.context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    this.session.bench.paint(this.context, theme(), { lit: this.session.lit, hide: this.session.hidden });
    for (const each of this.afterPaint) each();
  }

  /**
   * Where a point of a view stands on the canvas.
   * @param {Spot} spot
   */
  pixelsOf(spot) {
    const place = this.places.get(spot.view);
    return place ? { px: place.ox + spot.x_mm * place.k, py: place.oy - spot.y_mm * place.k } : null;
  }

  /**
   * The point of a view under the pointer, beyond the view's own frame too.
   * @param {PointerEvent} event
   * @param {string} [view] the view that holds the pointer; the one under it if none does
   * @returns {Spot|null}
   */
  spotOf(event, view) {
    const frame = this.canvas.getBoundingClientRect();
    const [px, py] = [event.clientX - frame.left, event.clientY - frame.top];
    if (!view) return this.session.bench.view_at(px, py);
    const place = this.places.get(view);
    return place ? { view, x_mm: (px - place.ox) / place.k, y_mm: (place.oy - py) / place.k } : null;
  }
}
