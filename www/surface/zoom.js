// One picture from the pitch to the micrometre: the same scale along and up at every step, with a bar that says it.

import { amend, draw } from "../amend.js";
import { draw as drawn, dress } from "../dom.js";
import { NBSP } from "../figures.js";
import { say } from "../words.js";
import { hatches, metal } from "../reach/cut.js";
import { bare } from "../reach/written.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").RoughState} RoughState */
/** @typedef {import("./types.js").At} At */

const [LEAST_WIDTH, MOST_WIDTH, HEIGHT_SHARE] = [280, 760, 0.5];
/** The widest window, in pitches; the narrowest, in particles or heights, whichever is larger. */
const [WIDEST, NARROWEST] = [1.1, 6];
/** From so narrow a window on, mm, the straight edge of the drawing gives way to the profile. */
const PROFILE_MM = 0.3;
const [UM_PER_MM, UP] = [1000, 0.42];
/** The bar takes at most this share of the width. */
const BAR_SHARE = 0.3;

/**
 * The window's width at a share of the zoom, mm: equal steps are equal ratios.
 * @param {RoughState} state
 * @param {number} share
 */
export function windowOf({ pitch_mm, particle_mm, told }, share) {
  const widest = WIDEST * pitch_mm;
  const narrowest = Math.min(widest, NARROWEST * Math.max(particle_mm, told.rz_um / UM_PER_MM));
  return widest * (narrowest / widest) ** share;
}

/** @param {number} mm */
export const length = (mm) => (mm >= 0.1 ? `${bare(mm)}${NBSP}mm` : `${bare(mm * UM_PER_MM)}${NBSP}µm`);

/** The longest of 1, 2, 5, 10 ... that is no longer than this. @param {number} mm */
function round(mm) {
  const ten = 10 ** Math.floor(Math.log10(mm));
  return ten * ([5, 2, 1].find((each) => each * ten <= mm) ?? 1);
}

export class Zoom {
  picture = drawn("svg", { class: "zoom", role: "img" });

  /** @param {RoughState} state @param {number} share */
  show(state, share) {
    const width = Math.min(MOST_WIDTH, Math.max(LEAST_WIDTH, widthOf(this.picture.parentElement) - 16));
    const height = Math.round(width * HEIGHT_SHARE);
    const wide_mm = windowOf(state, share);
    const px = width / wide_mm;
    const [x, y] = state.spot_mm;
    /** @param {At} at from the spot, mm @returns {At} */
    const about = ([along, up]) => [width / 2 + px * along, height * UP - px * up];
    const near = wide_mm <= Math.min(PROFILE_MM, state.line_mm.length * state.step_um / UM_PER_MM / 2);
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, width, height, "aria-label": say("surface.zoom.picture", { wide: length(wide_mm) }) });
    const body = near ? [face(state, about, width, height)] : state.pieces.map((piece) => metal(piece, ([a, b]) => about([a - x, b - y]), "zoom"));
    amend(this.picture, hatches("zoom"), ...body, ...spot(state, about, px), bar(wide_mm, px, width, height), ...bounds(near, width, height));
  }
}

/** The profile with metal under it. @param {RoughState} state @param {(at: At) => At} about @param {number} width @param {number} height */
function face({ line_mm }, about, width, height) {
  const points = line_mm.map(about).filter(([px]) => px > -width && px < 2 * width);
  const [first, last] = [points[0], points[points.length - 1]];
  const d = `M${first[0]} ${height + 9}L${points.map((at) => at.map((each) => each.toFixed(2)).join(" ")).join("L")}L${last[0]} ${height + 9}Z`;
  return draw("path", { d, class: "metal inner", fill: "url(#zoom-inner)" });
}

/** The particle where it sits lowest; a ring while it is too small to be seen. @param {RoughState} state @param {(at: At) => At} about @param {number} px */
function spot({ seat_mm, particle_mm }, about, px) {
  const r = (px * particle_mm) / 2;
  const [x, y] = about([0, seat_mm]);
  if (r < 1) return [draw("circle", { class: "zoom-ring", cx: x, cy: y, r: 9 })];
  return [draw("circle", { class: "particle", cx: x, cy: y, r })];
}

/** @param {number} wide_mm @param {number} px @param {number} width @param {number} height */
function bar(wide_mm, px, width, height) {
  const mm = round(BAR_SHARE * wide_mm);
  const [left, right, y] = [width - 16 - mm * px, width - 16, height - 16];
  return draw("g", { class: "zoom-bar" }, draw("rect", { x: left - 10, y: y - 26, width: right - left + 20, height: 36 }),
    draw("path", { d: `M${left} ${y - 6}v12M${right} ${y - 6}v12M${left} ${y}H${right}` }), draw("text", { x: (left + right) / 2, y: y - 9, "text-anchor": "middle" }, length(mm)));
}

/** @param {boolean} near @param {number} width @param {number} height */
const bounds = (near, width, height) => near ? [
  draw("text", { class: "zoom-name", x: width / 4, y: height - 14, "text-anchor": "middle" }, say("reach.part.inner")),
  draw("text", { class: "zoom-name", x: 12, y: 22 }, say("surface.zoom.air")),
] : [];
