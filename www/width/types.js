// What the kernel says of a chain's width. Lengths in mm, stresses in MPa.

/** @typedef {import("../kernel.js").Answer} Answer */
/** A part cut across the chain: its class, and its path in mm, the second axis down. @typedef {{role: string, d: string}} Shape */
/** A layer, right of the middle. @typedef {{key: string, from_mm: number, to_mm: number, width_mm: number, before_mm: number}} Stretch */
/** @typedef {{at_mm: number, left_mm: number}} Left */
/** @typedef {{key: string, modulus_mpa: number, yield_mpa: number, pull_fraction: number, press_fraction: number, mass_ratio: number}} Row */
/**
 * @typedef {object} WidthState
 * @property {Answer[]} answers
 * @property {Record<string, any>} section
 * @property {Record<string, any>} before
 * @property {number} most_gaps_mm
 * @property {number} most_plates_mm
 * @property {number} press_mm
 * @property {number} swelling_mm
 * @property {number} decay_mm
 * @property {number} clearance_mm
 * @property {Stretch[]} stretches
 * @property {Shape[]} shapes
 * @property {number} half_height_mm
 * @property {Left[]} profile
 * @property {[number, number]} bearing_mm
 * @property {Row[]} rows
 */

export {};
