// What the worker answers to "How smooth is smooth?".

/** @typedef {[number, number]} At */
/** @typedef {{ra_um: number, rq_um: number, rz_um: number, skewness: number, kurtosis: number, seated_fraction: number, film_ratio: number, first_touch_ratio: number}} Told */
/**
 * @typedef {object} RoughState
 * @property {Told} told
 * @property {import("../kernel.js").Answer[]} answers
 * @property {number} step_um
 * @property {number[]} heights_um
 * @property {number[]} closed_um
 * @property {number[]} depths_um
 * @property {number} peaks_um
 * @property {number} particle_um
 * @property {At[]} touching
 * @property {number} film_ratio
 * @property {number} distance_um
 * @property {number} spots
 * @property {number} radial_gap_mm
 * @property {import("../reach/types.js").Metal[]} pieces
 * @property {At} spot_mm
 * @property {At[]} line_mm
 * @property {number} seat_mm
 * @property {number} particle_mm
 * @property {number} pitch_mm
 */

export {};
