// Numbers as people read them: one place for decimals, units and signs.

const MM_PER_INCH = 25.4;
const DEGREES_PER_RAD = 180 / Math.PI;
const MINUS = "\u2212";
/** A space at which no line ends: between a number and its unit. */
export const NBSP = "\u00a0";
const UNITS = /(?<=\d(?: N)?) (?=(?:mm|µm|mil|MPa|kg|N|W|%|×)(?![\p{L}\d]))/gu;

/** Every number in a text kept on one line with its unit. @param {string} text */
export const together = (text) => text.replace(UNITS, NBSP);

/** @param {number} inch */
export const mmOfInch = (inch) => inch * MM_PER_INCH;

/** @typedef {"mm"|"in"} Unit */

/** @type {Unit} */
let unit = "mm";

/** @param {Unit} wanted */
export function useUnit(wanted) {
  unit = wanted;
}

/** @returns {Unit} */
export function unitInUse() {
  return unit;
}

const formats = new Map();
/** The language that numbers are written in: the page's. */
const tongue = () => globalThis.document?.documentElement.lang || "en";

/**
 * A number with a fixed count of decimals.
 * @param {number} value
 * @param {number} decimals
 */
export function decimal(value, decimals) {
  if (!formats.has(decimals)) {
    const digits = { minimumFractionDigits: decimals, maximumFractionDigits: decimals, useGrouping: false };
    formats.set(decimals, new Intl.NumberFormat(tongue(), digits));
  }
  const text = formats.get(decimals).format(value).replace("-", MINUS);
  return /^\u2212[0.,]*$/.test(text) ? text.slice(1) : text;
}

let sign = "";
/** The sign before decimals. */
export const point = () => (sign ||= decimal(0.5, 1)[1]);

/** A number as a field holds it, with the figures that it has. @param {number} value */
export const typedOf = (value) => String(value).replace(".", point());

/** The same on the page, with the minus of print. @param {number} value */
export const written = (value) => typedOf(value).replace("-", MINUS);

/** A number with so many figures at most. @param {number} value @param {number} figures */
export const short = (value, figures) => written(Number(value.toPrecision(figures)));

/** A number with its thousands apart, from ten thousand on; a space, since a point or comma stands before decimals. @param {number} value */
export const grouped = (value) =>
  (Number.isInteger(value) && Math.abs(value) >= 1e4 ? written(value).replace(/\B(?=(\d{3})+$)/g, "\u202f") : written(value));

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
/** Where a point stands before decimals: a comma that can only stand between thousands. */
const THOUSANDS = /^[-+]?[1-9]\d{0,2},\d{3}$/;

/**
 * What a text says as a number, NaN where it says none: decimals come after a comma or a point, thousands stand apart.
 * @param {string} text
 */
export function numberOf(text) {
  const plain = text.replace(/\s/g, "").replace(MINUS, "-");
  if (point() === "." && THOUSANDS.test(plain)) return NaN;
  return NUMBER.test(plain.replace(",", ".")) ? Number(plain.replace(",", ".")) : NaN;
}

/**
 * A gap: hundredths of a millimetre, below that micrometres; in inches thousandths (mil).
 * @param {number} mm
 */
export function gap(mm) {
  const size = Math.abs(mm);
  if (unit === "in") {
    if (size >= MM_PER_INCH / 10) return `${decimal(mm / MM_PER_INCH, 3)}${NBSP}in`;
    return `${decimal((mm / MM_PER_INCH) * 1000, size < 0.0254 ? 2 : 1)}${NBSP}mil`;
  }
  if (size >= 0.01 || size < 0.00005) return `${decimal(mm, 2)}${NBSP}mm`;
  return `${decimal(mm * 1000, size < 0.001 ? 1 : 0)}${NBSP}µm`;
}

/**
 * An angle: hundredths of a degree under one, tenths above.
 * @param {number} rad
 */
export function angle(rad) {
  const degrees = rad * DEGREES_PER_RAD;
  return `${decimal(degrees, Math.abs(degrees) < 1 ? 2 : 1)}°`;
}

/**
 * A length as a number field shows it, in the unit in use.
 * @param {number} mm
 */
export function fieldOf(mm) {
  const [whole, part = ""] = String(inUnit(mm)).split(".");
  return `${whole}${point()}${part.padEnd(2, "0")}`;
}

/** @param {number} mm */
const inUnit = (mm) => Number((unit === "in" ? mm / MM_PER_INCH : mm).toFixed(4));

/** A length at a tick, in the unit in use, with no noughts at its end. @param {number} mm */
export const tickOf = (mm) => written(inUnit(mm));

/**
 * What a number field says, in mm; NaN when it is no number.
 * @param {string} text
 */
export function mmOf(text) {
  return numberOf(text) * (unit === "in" ? MM_PER_INCH : 1);
}

/** @param {number} rad */
export const degreesOf = (rad) => rad * DEGREES_PER_RAD;

/** @param {number} degrees */
export const radOf = (degrees) => degrees / DEGREES_PER_RAD;

/**
 * A share of the whole: a tenth of a per cent near nothing and near all, where it matters.
 * @param {number} fraction
 */
function share(fraction) {
  const rest = Math.min(Math.abs(fraction), Math.abs(1 - fraction));
  return `${decimal(fraction * 100, rest < 0.001 || rest >= 0.1 ? 0 : 1)}${NBSP}%`;
}

/**
 * A force or a moment: whole, below ten with a tenth, and nothing as nothing.
 * @param {number} value
 */
function force(value) {
  const size = Math.abs(value);
  return decimal(value, size >= 0.05 && size < 9.95 ? 1 : 0);
}

/**
 * A value by the ending of its name.
 * @param {string} name
 * @param {unknown} value
 * @returns {string}
 */
export function figure(name, value) {
  if (typeof value !== "number") return String(value);
  if (name.endsWith("_n") || name.endsWith("_n_mm")) return force(value);
  if (name.endsWith("_ratio")) return decimal(value, 2);
  if (name.endsWith("_mm") || name.endsWith("_mm_per_m")) return gap(value);
  if (name.endsWith("_per_rad")) return grouped(Number(value.toPrecision(3)));
  if (name.endsWith("_rad")) return angle(value);
  if (name.endsWith("_fraction")) return share(value);
  if (name.endsWith("time_s")) return decimal(value, 0);
  return Number.isInteger(value) ? grouped(value) : decimal(value, 2);
}

/**
 * A value as it was given, with the unit of its name: a refusal must not round what it refuses.
 * @param {string} name
 * @param {number} value
 */
export function exactly(name, value) {
  if (!name.endsWith("_mm")) return figure(name, value);
  return `${fieldOf(value).replace("-", MINUS)}${NBSP}${unit}`;
}
