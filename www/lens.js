// The round magnifier: the true gap beside a sheet of paper, where the pointer or the focus is.

import { byId } from "./dom.js";
import { gap } from "./figures.js";
import { theme } from "./theme.js";
import { contactName, say } from "./words.js";

/** @typedef {import("./stage.js").Stage} Stage */
/** @typedef {import("./kernel.js").Spot} Spot */

/** @param {Stage} stage */
export function startLens(stage) {
  const { session } = stage;
  const canvas = /** @type {HTMLCanvasElement} */ (byId("lens"));
  const context = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d"));
  /** @type {Spot|null} */
  let pointed = null;

  const chosen = () => {
    const { contacts } = session;
    return contacts.find((contact) => contact.id === session.lit) ?? contacts.find((contact) => contact.mark !== "open")
      ?? contacts[0] ?? null;
  };

  const show = () => {
    const size = canvas.clientWidth;
    if (size === 0) return;
    canvas.width = canvas.height = Math.round(size * devicePixelRatio);
    context.setTransform(devicePixelRatio, 0, 0, devicePixelRatio, 0, 0);
    const contact = chosen();
    const seen = session.bench.lens(context, size, theme(), pointed ?? contact?.id ?? "");
    const mm = seen ? seen.gap_mm : null;
    const what = pointed || !contact ? "" : Object.values(contactName(contact, session.state.construction)).join(", ");
    byId("lens-gap").textContent = mm === null ? say("lens.point") : say("lens.gap", { gap_mm: Math.max(0, mm) });
    canvas.setAttribute("aria-label", say("lens.name", { what, gap: mm === null ? "" : gap(mm) }));
  };

  for (const kind of /** @type {const} */ (["pointermove", "pointerdown"])) {
    stage.canvas.addEventListener(kind, (event) => {
      pointed = stage.spotOf(event);
      show();
    });
  }
  stage.canvas.addEventListener("pointerleave", () => {
    pointed = null;
    show();
  });
  session.listen((what) => {
    if (what.has("lit")) pointed = null;
    show();
  });
  new ResizeObserver(show).observe(canvas);
  return show;
}
