// The charts of a rough face: the profile with what a particle feels of it, two faces, and how much of them touches.

import { NBSP, decimal } from "../figures.js";
import { say } from "../words.js";
import { bare, share, short } from "../reach/written.js";

/** @typedef {import("./types.js").RoughState} RoughState */
/** @typedef {import("../chart.js").Content} Content */
/** @typedef {import("../chart.js").At} At */

/** Charts leave this much room over and under the heights. */
const ROOM = 1.15;
const um = (/** @type {number} */ value) => `${short(value)}${NBSP}µm`;
const along = (/** @type {RoughState} */ { step_um, heights_um }) => ({ name: say("surface.x"), from: 0, to: step_um * (heights_um.length - 1), write: um, tick: bare });
const points = (/** @type {number[]} */ heights, /** @type {number} */ step) => heights.map((height, i) => /** @type {At} */ ([i * step, height]));

/**
 * Stretches of the face where something holds, as ranges of a chart; only the first has a name.
 * @param {RoughState} state
 * @param {(i: number) => boolean} holds
 * @param {string} look
 * @param {string} name
 */
function stretches({ heights_um, step_um }, holds, look, name) {
  /** @type {import("../chart.js").Range[]} */
  const found = [];
  heights_um.forEach((_, i) => {
    if (!holds(i)) return;
    const last = found[found.length - 1];
    if (last && holds(i - 1)) last.to = i * step_um;
    else found.push({ look, from: i * step_um, to: (i + 0.5) * step_um, ...(found.length ? {} : { name }) });
  });
  return found;
}

/** @param {RoughState} state */
const touches = ({ answers }) => answers.find(({ id }) => id === "surface.touching")?.numbers.touching_fraction ?? 0;

/** What each chart tells, in a line of words. @param {RoughState} state */
export const underCharts = (state) => ({
  profile: say("surface.profile.name", { share: share(state.told.seated_fraction) }),
  faces: say("surface.faces.name", { spots: state.spots }),
  touching: say("surface.touching.name", { share: share(touches(state)) }),
});

/** @param {RoughState} state @returns {Content} */
export function profileOf(state) {
  const { heights_um, closed_um, step_um, peaks_um, particle_um } = state;
  const highest = ROOM * Math.max(...heights_um, peaks_um);
  const lowest = ROOM * Math.min(...heights_um);
  const x = along(state);
  const seated = (/** @type {number} */ i) => closed_um[i] + particle_um / 2 < peaks_um;
  return {
    label: underCharts(state).profile, x,
    y: { name: say("surface.y"), from: lowest, to: highest, write: um, tick: bare },
    ranges: stretches(state, seated, "free", say("surface.key.seated")),
    lines: [
      { name: say("surface.key.peaks"), look: "dashed", points: [[x.from, peaks_um], [x.to, peaks_um]] },
      { name: say("surface.key.closed"), look: "second", points: points(closed_um, step_um) },
      { name: say("surface.key.profile"), look: "main", points: points(heights_um, step_um) },
    ],
  };
}

/** @param {RoughState} state @returns {Content} */
export function facesOf(state) {
  const { heights_um, depths_um, step_um, distance_um } = state;
  const upper = depths_um.map((depth) => distance_um - depth);
  const x = along(state);
  return {
    label: underCharts(state).faces, x,
    y: { name: say("surface.y"), from: ROOM * Math.min(...heights_um, ...upper), to: ROOM * Math.max(...upper, ...heights_um), write: um, tick: bare },
    ranges: stretches(state, (i) => heights_um[i] > upper[i], "out", say("surface.key.touching")),
    lines: [
      { name: say("surface.key.upper"), look: "third", points: points(upper, step_um) },
      { name: say("surface.key.lower"), look: "main", points: points(heights_um, step_um) },
    ],
  };
}

/** @param {RoughState} state @param {(ratio: number, done: boolean) => void} slide @returns {Content} */
export function touchingOf(state, slide) {
  const { touching, film_ratio, told } = state;
  const now = touches(state);
  const [first] = touching[0];
  const [last] = touching[touching.length - 1];
  return {
    label: underCharts(state).touching, height: 200,
    x: { name: say("surface.ratio"), from: first, to: last, write: (ratio) => decimal(ratio, 1) },
    y: { name: say("surface.touching.y"), from: 0, to: 60, write: (per) => decimal(per, 0) },
    lines: [{ name: say("surface.key.share"), look: "main", points: touching.map(([ratio, fraction]) => [ratio, 100 * fraction]) }],
    marks: [{ name: say("surface.mark.first"), at: told.first_touch_ratio }],
    marker: { at: film_ratio, value: 100 * now, name: say("surface.ratio"), text: say("surface.touching.text", { ratio: decimal(film_ratio, 1), share: share(now) }), step: 0.1, slide },
  };
}
