// Rollers on the teeth: every second one rides higher up its flank.

import { draw, make } from "../amend.js";
import { gap } from "../figures.js";
import { say } from "../words.js";
import { px } from "../wide.js";

/** @typedef {import("./types.js").WheelView} WheelView */

const NARROWEST = 260;
/** What is in sight, in distances of two rollers: to each side, above and below the pitch circle. */
const [SIDEWAYS, ABOVE, BELOW] = [2.55, 0.95, 1.05];

/** How high every second roller has risen. @param {WheelView} view */
export function wheelInWords({ teeth, rollers }) {
  const [low_mm, high_mm] = [false, true].map((up) => rollers.find(({ high }) => high === up)?.rise_mm ?? 0);
  return say("wear.wheel.label", { teeth, low_mm, high_mm });
}

/**
 * @param {WheelView} view
 * @param {number} room_px
 */
export function wheelPicture(view, room_px) {
  const width = Math.max(NARROWEST, Math.min(room_px, 760));
  const { rollers } = view;
  const middle = Math.floor(rollers.length / 2);
  const apart_mm = Math.hypot(rollers[middle + 1].x_mm - rollers[middle].x_mm, rollers[middle + 1].y_mm - rollers[middle].y_mm);
  const scale = width / (2 * SIDEWAYS * apart_mm);
  const height = (ABOVE + BELOW) * apart_mm * scale;
  const [x, y] = [width / 2, ABOVE * apart_mm * scale];
  const place = (/** @type {{x_mm: number, y_mm: number}} */ at) => [px(x + at.x_mm * scale), px(y + at.y_mm * scale)];
  const group = (/** @type {import("../amend.js").Wanted[]} */ ...inside) => draw("g", { transform: `translate(${x} ${y}) scale(${scale})` }, ...inside);
  const links = rollers.slice(1).map((to, index) => {
    const [[x1, y1], [x2, y2]] = [place(rollers[index]), place(to)];
    const inner = (index % 2 === 0) === view.inner_first;
    return draw("path", { class: inner ? "link inner" : "link outer", d: `M${x1} ${y1}L${x2} ${y2}` });
  });
  const discs = rollers.map((each) => {
    const [cx, cy] = place(each);
    return draw("circle", { class: each.high ? "roller high" : "roller", cx, cy, r: view.roller_mm * scale });
  });
  const names = [rollers[middle - 1], rollers[middle + 2]].map((each) => {
    const [tx, ty] = place(each);
    return draw("text", { x: tx, y: ty - view.roller_mm * scale - 8, "text-anchor": "middle", class: each.high ? "name" : "" }, say("wear.wheel.rise", { rise: gap(each.rise_mm) }));
  });
  const picture = draw("svg", { class: "wear-picture", role: "img", "aria-label": wheelInWords(view), viewBox: `0 0 ${width} ${height}`, height },
    group(...view.shapes.map(({ role, d }) => draw("path", { class: `part ${role}`, d }))), ...discs, ...links, ...names);
  const badge = view.past_tip ? "wear.wheel.past" : view.times > 1 ? "wear.wheel.times" : "wear.true";
  return [picture, key(), make("p", { class: "wear-badge" }, say(badge, { times: view.times, teeth: view.teeth }))];
}

function key() {
  const entry = (/** @type {string} */ kind, /** @type {string} */ word) => make("li", {}, draw("svg", { class: "wear-picture sample", viewBox: "0 0 28 12", "aria-hidden": "true" },
    draw("path", { class: `link ${kind}`, d: "M2 6H26" })), say(word));
  return make("ul", { class: "graph-key" }, entry("inner", "wear.wheel.inner"), entry("outer", "wear.wheel.outer"));
}
