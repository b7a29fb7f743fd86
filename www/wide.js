// How wide elements are, without asking in the middle of a frame's work: a browser that is asked lays out all that has
// been written until then, once for each picture. It tells by itself when a width has changed.

/** @typedef {{outer: number, inner: number, changed: () => void}} Known */
/** @type {WeakMap<Element, Known>} */
const known = new WeakMap();
const watcher = new ResizeObserver((entries) => {
  for (const { target } of entries) {
    const last = known.get(target);
    if (!last) continue;
    const now = measured(target);
    known.set(target, { ...last, ...now });
    if (now.outer > 0 && now.outer !== last.outer) last.changed();
  }
});

/** @param {Element} element */
function measured(element) {
  const { paddingLeft, paddingRight } = getComputedStyle(element);
  const outer = element.clientWidth;
  return { outer, inner: outer - parseFloat(paddingLeft) - parseFloat(paddingRight) };
}

/** A place to a hundredth of a pixel: what moves by less stands where it was. @param {number} value */
export const px = (value) => Math.round(value * 100) / 100;

const NONE = { outer: 0, inner: 0 };

/**
 * Its widths now. An element that had none is asked: it may have come into the page since.
 * @param {Element|null} element
 * @param {() => void} changed called when it has become wider or narrower; the first one given stays
 */
function widths(element, changed) {
  if (!element?.isConnected) return NONE;
  const last = known.get(element);
  if (last && last.outer > 0) return last;
  const now = { changed, ...last, ...measured(element) };
  known.set(element, now);
  if (!last) watcher.observe(element);
  return now;
}

/**
 * With its padding, CSS pixels.
 * @param {Element|null} element none, and one out of the page, has no width
 * @param {() => void} [changed]
 */
export const widthOf = (element, changed = () => {}) => widths(element, changed).outer;

/**
 * Without its padding.
 * @param {Element|null} element none, and one out of the page, has no width
 * @param {() => void} [changed]
 */
export const widthIn = (element, changed = () => {}) => widths(element, changed).inner;
