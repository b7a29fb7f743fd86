// The round magnifier: the true gap beside a thing that people know, where the pointer or the focus is.

import { byId, make } from "./dom.js";
import { gap, unitInUse } from "./figures.js";
import { theme } from "./theme.js";
import { contactName, say } from "./words.js";

/** @typedef {import("./stage.js").Stage} Stage */
/** @typedef {import("./kernel.js").Spot} Spot */

/** Sizes of the magnifier on the drawing, in CSS pixels. */
const LEAST_PX = 130;
const MOST_PX = 300;
const EDGE_PX = 12;
/** What is written under it, and chosen there. */
const CAPTION_REM = 7.8;
const BESIDE_PX = 14;
const HIGH = 0.9;
/** A pointer that moves less between down and up has clicked. */
const STILL_PX = 4;

export class Lens {
  figure = byId("lens-figure");
  canvas = /** @type {HTMLCanvasElement} */ (byId("lens"));
  menu = /** @type {HTMLSelectElement} */ (byId("lens-thing"));
  /** @type {Spot|null} */
  pointed = null;
  /** @type {string|null} the contact that is shown */
  shown = null;
  pressed = [0, 0];

  /** Where the sections lay when it was seated. */
  seated = "";
  /** What the choice of things was made of. */
  offered = "";
  /** As wide as the page lays it out, in CSS pixels: read when that changes, since to read it is to lay the page out. */
  size = 0;

  /** @param {Stage} stage */
  constructor(stage) {
    this.stage = stage;
    const { session } = stage;
    this.session = session;
    this.context = /** @type {CanvasRenderingContext2D} */ (this.canvas.getContext("2d"));
    for (const kind of /** @type {const} */ (["pointermove", "pointerdown"])) {
      stage.canvas.addEventListener(kind, (event) => this.point(stage.spotOf(event)));
    }
    stage.canvas.addEventListener("pointerleave", () => this.point(null));
    stage.canvas.addEventListener("pointerdown", ({ clientX, clientY }) => (this.pressed = [clientX, clientY]));
    stage.canvas.addEventListener("click", (event) => this.choose(event));
    this.session.listenFirst((what) => {
      if (what.has("lit")) this.pointed = null;
      this.show();
    });
    stage.afterPaint.push(() => this.seat());
    new ResizeObserver(() => this.fit()).observe(this.canvas);
    this.things = session.bench.catalogue().things;
    this.menu.addEventListener("change", () => session.move({ beside: this.menu.value }, true));
  }

  /** The things that may lie beside the gap, in the unit in use, and where their sizes come from. */
  offer() {
    const { beside } = this.session.work;
    const now = `${unitInUse()} ${beside}`;
    if (now === this.offered) return;
    this.offered = now;
    const texts = this.things.map(({ key, thing_mm }) => say("lens.thing", { thing: say(`thing.${key}`), thing_mm }));
    if (this.menu.options[0]?.text !== texts[0]) {
      this.menu.replaceChildren(...this.things.map(({ key }, i) => make("option", { value: key }, texts[i])));
    }
    this.menu.value = beside;
    byId("lens-note").textContent = say(`thing.${beside}.source`);
  }

  /** @param {Spot|null} spot */
  point(spot) {
    this.pointed = spot;
    this.show();
  }

  /**
   * A click that is no drag lights the face that the magnifier shows.
   * @param {MouseEvent} event
   */
  choose(event) {
    const [x, y] = this.pressed;
    if (Math.hypot(event.clientX - x, event.clientY - y) > STILL_PX || !this.pointed || !this.shown) return;
    this.session.light(this.session.lit === this.shown ? null : this.shown);
  }

  /** Stands on the drawing where the section across leaves room above it, else beside the lists. */
  seat() {
    const places = this.session.bench.views();
    const now = JSON.stringify([places, this.stage.width]);
    if (now === this.seated) return;
    this.seated = now;
    const side = places.find(({ view }) => view === "elevation");
    const across = side && places.find(({ view }) => view === "end");
    const plan = places.find(({ view }) => view === "plan");
    const room = across && plan ? this.roomOver(across, plan) : 0;
    const home = room < LEAST_PX || !plan || !across ? byId("lens-home") : this.stage.sheet;
    if (this.figure.parentElement !== home) home.append(this.figure);
    this.figure.classList.toggle("on-sheet", home === this.stage.sheet);
    this.canvas.style.setProperty("--size", home === this.stage.sheet ? `${Math.round(room)}px` : "11rem");
    if (!plan || !across) return;
    this.figure.style.setProperty("left", `${across.x_px}px`);
    this.figure.style.setProperty("top", `${plan.y_px}px`);
  }

  /**
   * How wide it can be above the section across: to the sheet's edge on the right, to the figures of the plan on the
   * left, and with what stands under it no higher than the plan.
   * @param {import("./kernel.js").Place} across
   * @param {import("./kernel.js").Place} plan
   */
  roomOver(across, plan) {
    const { bench } = this.session;
    let half = this.stage.width - across.x_px - EDGE_PX;
    while (half > LEAST_PX / 2 && bench.view_at(across.x_px - half + BESIDE_PX, across.y_px)?.view !== "end") half -= BESIDE_PX;
    const caption = CAPTION_REM * this.stage.text;
    return Math.min(2 * half, HIGH * (across.y_px - plan.y_px), 2 * (plan.y_px - EDGE_PX) - caption, MOST_PX);
  }

  /** What it is held at when nothing is pointed at: the lit face, or the first that touches. */
  chosen() {
    const { contacts, lit } = this.session;
    return contacts.find(({ id }) => id === lit) ?? contacts.find(({ mark }) => mark !== "open") ?? contacts[0] ?? null;
  }

  fit() {
    this.size = this.canvas.clientWidth || this.size;
    this.show();
  }

  show() {
    const { session, canvas, size } = this;
    if (size === 0) return;
    const pixels = Math.round(size * devicePixelRatio);
    if (canvas.width !== pixels || canvas.height !== pixels) canvas.width = canvas.height = pixels;
    this.context.setTransform(devicePixelRatio, 0, 0, devicePixelRatio, 0, 0);
    this.context.clearRect(0, 0, size, size);
    const hold = (/** @type {string|Spot} */ at) => session.bench.lens(this.context, size, theme(), at, session.work.beside);
    const seen = (this.pointed && hold(this.pointed)) ?? hold(this.chosen()?.id ?? "");
    this.figure.hidden = !seen;
    this.shown = seen?.id ?? null;
    session.magnified = null;
    if (seen) this.tell(seen);
  }

  /** @param {import("./kernel.js").Magnified} seen */
  tell(seen) {
    const { session, canvas } = this;
    const contact = session.contacts.find(({ id }) => id === seen.id);
    const { who, where } = contact ? contactName(contact, session.state.construction) : { who: "", where: "" };
    const open = contact?.mark === "open";
    const what = say("lens.of", { who, where });
    session.magnified = { what, touches: !open, seen };
    byId("lens-gap").textContent = open ? say("lens.gap", { gap_mm: seen.gap_mm }) : say("lens.touch");
    byId("lens-what").textContent = what;
    const thing = say(`thing.${session.work.beside}`);
    canvas.setAttribute("aria-label", say("lens.name", { ...seen, what, thing, gap: open ? gap(seen.gap_mm) : say("lens.touch") }));
    this.offer();
  }
}
