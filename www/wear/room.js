// The room to move of a joint, as new and worn: how far aside and how far turned, one over the other.

import { draw, make } from "../amend.js";
import { angle, gap } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").WearState} WearState */
/** @typedef {import("./types.js").Corner} Corner */

const [NARROWEST, WIDEST, HEIGHT] = [260, 560, 190];
const MARGIN = { x: 70, y: 24 };

/**
 * @param {WearState} state
 * @param {number} room_px
 * @param {WearState|null} [a] that of the chain which is held: its room, worn
 */
export function roomPicture({ rooms, section }, room_px, a = null) {
  const width = Math.max(NARROWEST, Math.min(room_px, WIDEST));
  const most = (/** @type {(corner: Corner) => number} */ of) => Math.max(1e-9, ...[...rooms, a?.rooms[1] ?? []].flat().map(of));
  const [aside, turn] = [most((each) => each.offset_mm), most((each) => each.yaw_rad)];
  const x = (/** @type {number} */ mm) => width / 2 + (mm / aside) * (width / 2 - MARGIN.x);
  const y = (/** @type {number} */ rad) => HEIGHT / 2 - (rad / turn) * (HEIGHT / 2 - MARGIN.y);
  const way = (/** @type {Corner[]} */ corners) =>
    `${corners.map(({ offset_mm, yaw_rad }, i) => `${i ? "L" : "M"}${x(offset_mm).toFixed(1)} ${y(yaw_rad).toFixed(1)}`).join("")}Z`;
  const outline = (/** @type {Corner[]} */ corners, /** @type {string} */ kind) => draw("path", { class: kind, d: way(corners) });
  const text = (/** @type {number} */ tx, /** @type {number} */ ty, /** @type {string} */ words, anchor = "middle") => draw("text", { x: tx, y: ty, "text-anchor": anchor }, words);
  const label = say("wear.room.label", { new_rad: section.turn_limit_new_rad, worn_rad: section.turn_limit_worn_rad, aside_mm: aside });
  const picture = draw("svg", { class: "wear-picture", role: "img", "aria-label": label, viewBox: `0 0 ${width} ${HEIGHT}`, height: HEIGHT },
    outline(rooms[1], "allowed worn"), outline(rooms[0], "allowed new"), ...(a && way(a.rooms[1]) !== way(rooms[1]) ? [outline(a.rooms[1], "of-a")] : []),
    draw("path", { class: "axis", d: `M${MARGIN.x / 2} ${HEIGHT / 2}H${width - MARGIN.x / 2}M${width / 2} ${MARGIN.y / 2}V${HEIGHT - MARGIN.y / 2}` }),
    text(width / 2 + 6, 14, say("wear.room.turn", { turn: angle(turn) }), "start"), text(width - 4, HEIGHT / 2 - 6, gap(aside), "end"), text(4, HEIGHT / 2 - 6, say("wear.room.aside"), "start"));
  const entry = (/** @type {string} */ kind) => make("li", {}, draw("svg", { class: "wear-picture sample", viewBox: "0 0 28 12", "aria-hidden": "true" },
    draw("rect", { class: `allowed ${kind}`, x: 2, y: 2, width: 24, height: 8 })), say(`wear.joint.${kind}`));
  return [picture, make("ul", { class: "graph-key" }, entry("new"), entry("worn"))];
}
