// The drive from above: both wheels, the strand link by link, the line of the pull, every joint by its multiple.

import { amend, draw } from "../amend.js";
import { draw as drawn, dress, make, write } from "../dom.js";
import { decimal } from "../figures.js";
import { say } from "../words.js";
import { widthOf } from "../wide.js";

/** @typedef {import("./types.js").LineState} LineState */
/** @typedef {import("./types.js").LineView} LineView */
/** Where a point of the plan lies in the picture. @typedef {(x_mm: number, y_mm: number) => [number, number]} Place */

/** Height of the picture: at least, and as a share of its width. */
const [LEAST_HEIGHT, HEIGHT_SHARE] = [270, 0.32];
const MARGIN = { x: 12, top: 66, bottom: 40 };
/** A joint is marked from this multiple on: up to it the plates carry the slope of the pull. */
const MARKED = 1.05;

export class Plan {
  picture = drawn("svg", { class: "crooked-plan", role: "img" });
  scale = make("span");

  /** @param {LineState} line @param {LineState|null} [a] that of the chain which is held */
  show(line, a = null) {
    const width = Math.max(280, Math.round(widthOf(this.picture.parentElement)));
    const height = Math.max(LEAST_HEIGHT, Math.round(width * HEIGHT_SHARE));
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": say("line.plan", { ...line }) });
    const { view } = line;
    if (!view) {
      amend(this.picture, words(width / 2, height / 2, say("line.no_view"), "middle"));
      write(this.scale, "");
      return;
    }
    const { place, times } = layOut(view, line.to_mm, width, height);
    write(this.scale, say("line.scale", { times }));
    amend(this.picture,
      ...strand(a?.view ?? null, view, place), ...pins(view, place), thrust(view, place), ...wheel(view.driver, place, "driver"), ...wheel(view.driven, place, "driven"),
      ...links(view, place), ...marks(view, place), ...labels(view, place, width));
  }
}

/**
 * One scale along, a whole number of times as much across, the same for every offset.
 * @param {LineView} view
 * @param {number} to_mm
 * @param {number} width
 * @param {number} height
 * @returns {{place: Place, times: number}}
 */
function layOut(view, to_mm, width, height) {
  const left = view.driver.x_mm - view.driver.pitch_radius_mm;
  const right = view.driven.x_mm + view.driven.pitch_radius_mm;
  const along = (width - 2 * MARGIN.x) / (right - left);
  const across = to_mm + view.half_bearing_mm;
  const times = Math.max(1, Math.floor((height - MARGIN.top - MARGIN.bottom) / across / along));
  const base = height - Math.max(MARGIN.bottom, 6 + view.half_bearing_mm * along * times);
  return { place: (x, y) => [MARGIN.x + (x - left) * along, base - y * along * times], times };
}

/** @param {[number, number]} at */
const at = ([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`;

/**
 * @param {number} x
 * @param {number} y
 * @param {string} text
 * @param {string} anchor
 */
const words = (x, y, text, anchor) => draw("text", { x, y, "text-anchor": anchor }, text);

/**
 * A wheel seen on its edge, with its shaft.
 * @param {LineView["driver"]} wheel
 * @param {Place} place
 * @param {string} which
 */
function wheel({ x_mm, y_mm, pitch_radius_mm, teeth }, place, which) {
  const [x, y] = place(x_mm, y_mm);
  const reach = place(x_mm + pitch_radius_mm, y_mm)[0] - x;
  const [below, anchor] = which === "driver" ? [26, "start"] : [-42, "end"];
  const text = draw("text", { class: "wheel-name", x: anchor === "end" ? x + reach : x, y: y + below, "text-anchor": anchor }, say(`line.${which}`, { teeth }));
  return [
    draw("rect", { class: "wheel", x: x - reach, y: y - 4, width: 2 * reach, height: 8, rx: 3 }),
    draw("path", { class: "shaft", d: `M${x} ${y - 20}V${y + 14}` }), text,
  ];
}

/**
 * The strand of the chain that is held as A, where it does not run as this one does.
 * @param {LineView|null} a
 * @param {LineView} view
 * @param {Place} place
 */
function strand(a, view, place) {
  const way = (/** @type {LineView} */ { joints }) => `M${joints.map(({ x_mm, y_mm }) => at(place(x_mm, y_mm))).join("L")}`;
  return a && way(a) !== way(view) ? [draw("path", { class: "of-a", d: way(a) })] : [];
}

/**
 * The width that bears on each pin: the joint is held once the line of the pull leaves it.
 * @param {LineView} view
 * @param {Place} place
 */
const pins = (view, place) => view.joints.map(({ x_mm, y_mm, eccentricity_mm }) => draw("path", {
  class: Math.abs(eccentricity_mm) > view.half_bearing_mm ? "bearing left" : "bearing",
  d: `M${at(place(x_mm, y_mm - view.half_bearing_mm))}L${at(place(x_mm, y_mm + view.half_bearing_mm))}`,
}));

/**
 * @param {LineView} view
 * @param {Place} place
 */
const links = (view, place) => view.joints.slice(1).map((to, index) => {
  const from = view.joints[index];
  return draw("path", {
    class: index % 2 ? "link outer" : "link inner", d: `M${at(place(from.x_mm, from.y_mm))}L${at(place(to.x_mm, to.y_mm))}`,
  });
});

/**
 * @param {LineView} view
 * @param {Place} place
 */
const thrust = ({ joints, thrust: { start_y_mm, end_y_mm } }, place) =>
  draw("path", { class: "thrust", d: `M${at(place(joints[0].x_mm, start_y_mm))}L${at(place(joints[joints.length - 1].x_mm, end_y_mm))}` });

/**
 * A ring for a joint as in a straight line; a filled disc, the larger the more, for one that presses harder.
 * @param {LineView} view
 * @param {Place} place
 */
const marks = (view, place) => view.joints.map(({ x_mm, y_mm, friction_multiple }) => {
  const times = friction_multiple ?? 1;
  const [cx, cy] = place(x_mm, y_mm);
  const hard = times > MARKED;
  return draw("circle", { class: hard ? "joint hard" : "joint", cx, cy, r: hard ? Math.min(9, 2 + 2 * times) : 2 });
});

/**
 * The multiples of the two joints that fold, and the name of the line of the pull.
 * @param {LineView} view
 * @param {Place} place
 * @param {number} width
 */
function labels(view, place, width) {
  const [first, last] = [view.joints[0], view.joints[view.joints.length - 1]];
  const name = (/** @type {typeof first} */ joint, /** @type {string} */ anchor) => {
    if (joint.friction_multiple === null) return [];
    const [x, y] = place(joint.x_mm, joint.y_mm);
    const text = draw("text", { class: "times", x, y: y - 24, "text-anchor": anchor }, say("line.times", { times: decimal(joint.friction_multiple, 2) }));
    return [text];
  };
  return [
    ...name(first, "start"), ...name(last, "end"),
    draw("path", { class: "thrust", d: `M${MARGIN.x} 14h26` }), words(MARGIN.x + 32, 18, say("line.thrust"), "start"),
    draw("circle", { class: "joint hard", cx: width - 8, cy: 14, r: 5 }), words(width - 18, 18, say("line.hard"), "end"),
  ];
}
