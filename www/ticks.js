// Where the ticks of an axis stand, and where the names of marks go so that none lies on another.

const STEPS = [1, 2, 5];
/** What a letter of a chart takes, px, where nothing has been measured; and what is left between two texts. */
export const LETTER_PX = 7;
const APART_PX = 10;
/** What the shortest text takes along an axis, px: closer ticks are not worth writing. */
const LEAST_PX = LETTER_PX + 2 * APART_PX;
const SMALL = 1e-9;

/** @param {string} text */
export const widthOf = (text) => text.length * LETTER_PX;

/**
 * The round steps from small to large: 1, 2, 5, 10, ... times `round`.
 * @param {number} least
 * @param {number} round
 */
function* steps(least, round) {
  const power = Math.floor(Math.log10(Math.max(least, Number.MIN_VALUE) / round));
  for (let decade = power; ; decade++) for (const step of STEPS) yield step * 10 ** decade * round;
}

/**
 * Round values between two ends, as close as their texts allow.
 * @param {{from: number, to: number, round?: number, write: (value: number) => string}} axis `round`: ticks are round in this many
 * @param {number} px how long the axis is
 * @param {number} [across_px] what a tick takes at least; without it, what the widest of their texts takes
 * @returns {number[]}
 */
export function ticksOf({ from, to, round = 1, write }, px, across_px) {
  const span = to - from;
  if (!(span > 0) || !(px > 0)) return [from];
  for (const step of steps(span / 100, round)) {
    const first = Math.ceil(from / step - SMALL);
    const count = Math.floor(to / step + SMALL) - first + 1;
    if (count > 1 && (step / span) * px < (across_px ?? LEAST_PX)) continue;
    const values = Array.from({ length: Math.max(0, count) }, (_, index) => (first + index) * step);
    const room = across_px ?? Math.max(...values.map((value) => widthOf(write(value))), LETTER_PX) + 2 * APART_PX;
    if ((step / span) * px >= room || count < 2) return values;
  }
  return [from];
}

/** @typedef {{x: number, width: number}} Wanted */
/** @typedef {{row: number, anchor: "start"|"end", left: number, right: number, x: number}} Placed */

/**
 * Rows for the names of upright marks: row 0 is nearest to the picture. A name stands beside the stem that leads down
 * from it, after it where there is room; no name lies on another, nor on a stem, as long as there is a way.
 * @param {Wanted[]} marks
 * @param {number} width
 * @returns {Placed[]} in the order of the marks
 */
export function placed(marks, width) {
  const usual = marks.map((mark) => fits(mark, true, width) || mark.x < width / 2);
  let best = arranged(marks, usual, width);
  if (marks.length > MOST_SIDED) return best.names;
  for (let turned = 1; turned < 2 ** marks.length && best.clashes > 0; turned++) {
    const sides = usual.map((start, index) => start !== Boolean((turned >> index) & 1));
    if (!sides.every((start, index) => start === usual[index] || fits(marks[index], start, width))) continue;
    const other = arranged(marks, sides, width);
    if (other.clashes < best.clashes) best = other;
  }
  return best.names;
}

/** More marks than this all stand as usual: so few can be tried on every side. */
const MOST_SIDED = 6;

/** Whether a name has room on a side of its stem. @param {Wanted} mark @param {boolean} start @param {number} width */
const fits = ({ x, width: long }, start, width) => (start ? x + APART_PX / 2 + long <= width : x - APART_PX / 2 - long >= 0);

/**
 * The names in rows, each on its side of its stem, and how many lie on a stem all the same.
 * @param {Wanted[]} marks
 * @param {boolean[]} sides true where a name starts at its stem
 * @param {number} width
 */
function arranged(marks, sides, width) {
  const sided = marks.map(({ x, width: long }, index) => {
    const start = sides[index];
    const left = start ? x : Math.max(0, x - APART_PX / 2 - long);
    return { index, x, row: 0, anchor: /** @type {"start"|"end"} */ (start ? "start" : "end"), left, right: start ? Math.min(width, x + APART_PX / 2 + long) : x };
  });
  const order = [
    ...sided.filter(({ anchor }) => anchor === "start").sort((a, b) => b.x - a.x || a.index - b.index),
    ...sided.filter(({ anchor }) => anchor === "end").sort((a, b) => a.x - b.x || a.index - b.index),
  ];
  /** @type {typeof sided} */
  const done = [];
  let clashes = 0;
  for (const each of order) {
    const free = (/** @type {typeof clash} */ meets) => {
      const rows = Array.from({ length: marks.length }, (_, row) => row);
      return rows.find((row) => !done.some((other) => meets({ ...each, row }, other)));
    };
    const clear = free(clash);
    if (clear === undefined) clashes++;
    each.row = clear ?? free(overlap) ?? 0;
    done.push(each);
  }
  return { names: sided, clashes };
}

/**
 * Whether two names meet.
 * @param {Placed} a
 * @param {Placed} b
 */
const overlap = (a, b) => a.row === b.row && a.left < b.right + APART_PX && b.left < a.right + APART_PX;

/**
 * Whether two names meet, or the stem of one runs through the other.
 * @param {Placed} a
 * @param {Placed} b
 */
function clash(a, b) {
  if (a.row === b.row) return overlap(a, b);
  const [above, below] = a.row > b.row ? [a, b] : [b, a];
  return above.x > below.left - 1 && above.x < below.right + 1 && above.x !== below.x;
}
