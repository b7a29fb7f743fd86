// Fractions as people read them here: per cent, to a hundredth.

import { NBSP, decimal, grouped } from "../figures.js";

const HUNDRED = 100;

/** @param {number} fraction */
export const percent = (fraction) => `${decimal(fraction * HUNDRED, 2)}${NBSP}%`;

/**
 * The numbers of an answer with every fraction written in per cent, and large counts in words of three figures.
 * @param {Record<string, any>} numbers
 */
export const written = (numbers) => Object.fromEntries(Object.entries(numbers).map(([name, value]) => [name, writtenOne(name, value)]));

/**
 * @param {string} name
 * @param {any} value
 */
function writtenOne(name, value) {
  if (typeof value !== "number") return value;
  if (name.endsWith("_fraction")) return percent(value);
  if (name.endsWith("_passes") || name.endsWith("_hours")) return round(value);
  return value;
}

/** Two figures, with thousands apart. @param {number} value */
function round(value) {
  if (value === 0) return "0";
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 1);
  const whole = step >= 1 ? Math.round(value / step) * step : Number(value.toPrecision(2));
  return grouped(whole);
}
