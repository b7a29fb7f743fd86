// How many times too big gaps and tilts are drawn.

import { byId, dress, write } from "./dom.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

/** @param {Session} session */
export function startBadge(session) {
  const slider = /** @type {HTMLInputElement} */ (byId("widen"));
  const badge = byId("badge");
  slider.addEventListener("input", () => session.move({ times: Number(slider.value) }, false));
  slider.addEventListener("change", () => session.move({ times: Number(slider.value) }, true));
  slider.setAttribute("aria-label", say("widen.label"));
  session.listen(() => {
    const { factor, fits, worn_mm } = session.state;
    dress(slider, { max: factor.cap, disabled: factor.cap <= 1, "aria-valuetext": say("widen.times", { count: factor.value }) });
    slider.value = String(factor.value);
    write(byId("widen-cap"), say("widen.times", { count: factor.cap }));
    const scale = factor.value > 1 ? say("badge.wide", { count: factor.value }) : say("badge.true");
    write(badge, worn_mm > 0 ? say("badge.worn", { scale, worn_mm }) : scale);
    badge.dataset.wide = String(factor.value > 1);
    document.body.dataset.fits = String(fits);
  }, false);
}
