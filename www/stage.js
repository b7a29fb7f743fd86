// The drawing: one canvas the kernel paints, redrawn only when something changed.

import { byId, onceAFrame } from "./dom.js";
import { theme } from "./theme.js";

/** A drawing that is narrower is laid out for a phone. */
export const NARROW_PX = 560;
const TEXT_SHARE = 0.84;
const SMALL = 2;

/** The page's text, in CSS pixels. */
const pageTextPx = () => parseFloat(getComputedStyle(document.documentElement).fontSize);
/** The drawing's text, in CSS pixels: of the page's. */
export const textPx = () => pageTextPx() * TEXT_SHARE;

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Spot} Spot */

export class Stage {
  canvas = /** @type {HTMLCanvasElement} */ (byId("drawing"));
  sheet = byId("sheet");
  field = byId("field");
  /** As large as the page lays it out, and the page's letters, in CSS pixels: a browser that is asked for them lays out the page. */
  width = 0;
  height = 0;
  text = 0;
  /** @type {(() => void)[]} */
  afterPaint = [];
  /** The time of the frame that was painted last. @type {CSSNumberish|null} */
  painted = null;
  /** Whether the page shows it: a question may have its own parts in its place. What is not seen is not painted. */
  seen = false;

  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    this.context = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d"));
    this.redraw = onceAFrame(() => this.paint());
    new ResizeObserver(() => this.fit()).observe(this.field);
    this.watchRatio();
    session.listenFirst((what) => {
      if (!this.seen) return;
      if (what.has("chain") || what.has("look")) this.lay();
      this.draw();
    });
    session.listen(() => this.settle(), false);
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
    const { clientWidth, clientHeight } = this.field;
    this.seen = clientWidth >= SMALL && clientHeight >= SMALL;
    if (!this.seen) return;
    [this.width, this.height, this.text] = [clientWidth, clientHeight, pageTextPx()];
    this.canvas.width = Math.round(clientWidth * devicePixelRatio);
    this.canvas.height = Math.round(clientHeight * devicePixelRatio);
    this.lay();
    this.paint();
    this.settle();
  }

  /** Lets the kernel lay out the views. */
  lay() {
    this.session.bench.layout(this.width, this.height, this.text * TEXT_SHARE, this.width < NARROW_PX);
  }

  /** Paints at once; what changes once more in the same frame, in the next. */
  draw() {
    const now = document.timeline.currentTime;
    if (now === this.painted) return this.redraw();
    this.painted = now;
    this.paint();
  }

  /** What stands on the drawing goes to its places. */
  settle() {
    if (!this.seen) return;
    for (const each of this.afterPaint) each();
  }

  paint() {
    const ratio = devicePixelRatio;
    this.context.setTransform(ratio, 0, 0, ratio, 0, 0);
    this.context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    this.session.bench.paint(this.context, theme(), { lit: this.session.lit, hide: this.session.hidden });
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
    const place = this.session.bench.views().find((each) => each.view === view);
    if (!place) return null;
    return { view, x_mm: (px - place.x_px) / place.px_per_mm, y_mm: (place.y_px - py) / place.px_per_mm };
  }
}
