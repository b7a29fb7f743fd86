// One joint under load as new and worn, cut square to the pin, side by side.

import { draw, make } from "../amend.js";
import { say } from "../words.js";
import { px } from "../wide.js";

/** @typedef {import("./types.js").JointView} JointView */
/** @typedef {import("./types.js").Section} Section */

const NARROWEST = 150;
/** Room for the arrows of the pull at either side, and for the words above and below, px. */
const [SIDE, ABOVE, BELOW] = [24, 26, 48];
const HATCH = 7;

/**
 * @param {JointView} view
 * @param {number} room_px
 */
export function jointPicture(view, room_px) {
  const width = Math.max(2 * NARROWEST, Math.min(room_px, 760));
  const half = width / 2;
  const scale = (half - 2 * SIDE) / (2 * view.outside_mm);
  const height = 2 * view.outside_mm * scale + ABOVE + BELOW;
  const middle = ABOVE + view.outside_mm * scale;
  const label = say("wear.joint.label", { new_mm: view.new.along_mm, worn_mm: view.worn.along_mm, across_mm: view.worn.across_mm });
  const picture = draw("svg", { class: "wear-picture", role: "img", "aria-label": label, viewBox: `0 0 ${width} ${height}`, height },
    draw("defs", {}, hatch("bush", 45, scale), hatch("pin", 135, scale)),
    ...panel(view.new, half / 2, middle, scale, view.outside_mm, "wear.joint.new"),
    ...panel(view.worn, half + half / 2, middle, scale, view.outside_mm, "wear.joint.worn"));
  return [picture, make("p", { class: "wear-badge" }, say(view.times > 1 ? "wear.times" : "wear.true", { times: view.times }))];
}

/**
 * Section lines, in pixels whatever the scale.
 * @param {string} role
 * @param {number} degrees
 * @param {number} scale
 */
function hatch(role, degrees, scale) {
  const id = `wear-hatch-${role}`;
  const units = { patternUnits: "userSpaceOnUse", width: HATCH, height: HATCH, patternTransform: `scale(${1 / scale}) rotate(${degrees})` };
  return draw("pattern", { id, ...units }, draw("rect", { width: HATCH, height: HATCH, class: id }), draw("path", { class: `${id} line`, d: `M0 0V${HATCH}` }));
}

/**
 * @param {Section} section
 * @param {number} x
 * @param {number} y
 * @param {number} scale
 * @param {number} outside_mm
 * @param {string} word
 */
function panel({ shapes, along_drawn_mm, across_drawn_mm, pin_drawn_mm, along_mm, across_mm }, x, y, scale, outside_mm, word) {
  const at = (/** @type {number} */ x_mm, /** @type {number} */ y_mm) => [px(x + x_mm * scale), px(y - y_mm * scale)];
  const parts = shapes.map(({ role, d }) => draw("g", { transform: `translate(${x} ${y}) scale(${scale})` },
    draw("path", { class: `part ${role}`, d, "fill-rule": "evenodd", ...(role === "was" ? {} : { fill: `url(#wear-hatch-${role})` }) })));
  const text = (/** @type {number} */ tx, /** @type {number} */ ty, /** @type {string} */ words, kind = "", anchor = "middle") =>
    draw("text", { x: tx, y: ty, class: kind, "text-anchor": anchor }, words);
  const [[from, axis], [to]] = [at(along_drawn_mm[0], 0), at(along_drawn_mm[1], 0)];
  const [up, low] = [at(pin_drawn_mm, across_drawn_mm[0]), at(pin_drawn_mm, across_drawn_mm[1])];
  const edge = outside_mm * scale;
  return [
    ...parts,
    draw("path", { class: "axis", d: `M${x - edge - 6} ${axis}H${x + edge + 6}` }),
    draw("path", { class: "dimension", d: `M${from} ${axis}H${to}M${up[0]} ${up[1]}V${low[1]}` }),
    draw("path", { class: "pull", d: `M${x - edge - 4} ${axis}h-12m5 -4l-5 4l5 4M${x + edge + 4} ${axis}h12m-5 -4l5 4l-5 4` }),
    text(x, 16, say(word), "name"),
    text(x, y + edge + 20, say("wear.joint.along", { along_mm })),
    text(x, y + edge + 40, say("wear.joint.clear", { across_mm }), "soft"),
  ];
}
