// The only module that knows the generated glue: opens the bench and gives it types.

// @ts-ignore: built beside this file
import init, { Bench } from "./lightgap_stage.js";

/** @typedef {{path: string, value: unknown, rule: string, numbers: Record<string, unknown>}} Fault */
/** @typedef {{format: number, title: string, about?: string, source?: string, chain: Record<string, any>, load?: Record<string, any>, drive?: Record<string, any>, wear?: Record<string, any>, width?: Record<string, any>, motion?: {kind?: string, period_s?: number}, limits?: Record<string, any>[], demands?: Record<string, any>[], matching?: Record<string, any>, cost?: Record<string, any>[], sampling?: Record<string, any>}} Scenario */
/** @typedef {{id: string, kind: string, joint: string, end: string, side: string, gap_mm: number, mark: "touching"|"rubbing"|"open", number: number|null, force_n: number}} Contact */
/** @typedef {{id: string, numbers: Record<string, any>}} Answer */
/** @typedef {{view: string, x_mm: number, y_mm: number}} Spot */
/** What can be taken hold of: a link, or the end of a gap's dimension line. @typedef {Spot & {id: string, gap: string|null, x_px: number, y_px: number}} Grip */
/** A section: px = x_px + x_mm px_per_mm, py = y_px - y_mm px_per_mm. @typedef {{view: string, x_px: number, y_px: number, px_per_mm: number}} Place */
/** @typedef {{offset_mm: number, yaw_rad: number}} Pose */
/** @typedef {Pose & {outline: (Pose & {by: string})[]}} Room */
/**
 * How the chain stands now.
 * @typedef {object} Live
 * @property {number} amplitude the share of the shown movement
 * @property {number} total_rad
 * @property {number} offset_mm
 * @property {number} yaw_rad
 * @property {number} twist_rad
 * @property {number} bend_rad
 * @property {boolean} pin_touches
 * @property {boolean} faces_touch
 * @property {string[]} limited_by
 */
/**
 * @typedef {object} BenchState
 * @property {boolean} fits
 * @property {{between: string, too_little_mm: number}[]} interference
 * @property {string} construction
 * @property {Record<string, number>} sizes
 * @property {string[]} chosen
 * @property {string[]} defaulted
 * @property {Record<string, {value_mm: number, low_mm: number, high_mm: number}>} gaps
 * @property {Record<string, any>} geometry
 * @property {Record<string, any>} play
 * @property {{at: string, ends: {dimension: string, end: string}[]}|null} corner
 * @property {number} worn_mm
 * @property {{value: number, start: number, cap: number}} factor
 * @property {{tension_n: number, side_n: number, moment_n_mm: number, springy: boolean, stiffness_n_mm: number}} load
 */
/** @typedef {{dimensions: {key: string, unit: string, default_rule: string}[], gaps: {key: string, moves: string}[], table: {number: string, pitch_mm: number}[], things: {key: string, thing_mm: number}[]}} Catalogue */
/** @typedef {{id: string, gap_mm: number, thing_mm: number, thing_ratio: number}} Magnified */
/**
 * The bench: one chain, its pose and its drawing. Lengths in mm, angles in rad.
 * @typedef {object} BenchLike
 * @property {(scenario: Scenario) => Fault[]} load
 * @property {() => Scenario} scenario
 * @property {() => Scenario} standing
 * @property {(path: string, value: unknown) => Fault[]} set
 * @property {(quantity: string, value: number) => Fault[]} set_gap
 * @property {(number: string, construction: string) => Fault[]} adopt_size
 * @property {() => Catalogue} catalogue
 * @property {() => BenchState} state
 * @property {() => Answer[]} answers
 * @property {(corner: string) => void} show_corner
 * @property {(mode: string) => void} show
 * @property {(s: number) => void} scrub
 * @property {() => Grip[]} grips
 * @property {(view: string, x_mm: number, y_mm: number) => boolean} grab
 * @property {(x_mm: number, y_mm: number) => void} drag
 * @property {(springy: boolean) => void} set_springy
 * @property {(worn_mm: number) => void} show_worn
 * @property {(contact: string) => boolean} hold_end
 * @property {(dx_mm: number, dy_mm: number) => Fault[]} pull_end
 * @property {() => void} release
 * @property {(steps: number) => void} nudge
 * @property {(share: number, seconds: number) => number} share_after
 * @property {(seconds: number, touching: number) => {share: number, lit: number}} opening
 * @property {() => Place[]} views
 * @property {() => Room} room
 * @property {(offset_mm: number, yaw_rad: number) => void} room_to
 * @property {() => Contact[]} contacts
 * @property {() => Live} live
 * @property {(factor: number) => void} widen
 * @property {(width_px: number, height_px: number, text_px: number, narrow: boolean) => void} layout
 * @property {(px: number, py: number) => Spot|null} view_at
 * @property {(ctx: CanvasRenderingContext2D, theme: Record<string, string>, options: {lit: string|null, hide: string[]}) => void} paint
 * @property {(ctx: CanvasRenderingContext2D, size_px: number, theme: Record<string, string>, at: string|Spot, thing: string) => Magnified|null} lens
 * @property {(inches: boolean) => void} use_inches
 * @property {() => number} text_px
 * @property {() => Answer[]} twin
 */

/**
 * Starts the kernel and puts one bench up.
 * @param {Record<string, string>} words labels for the drawing, by id
 * @returns {Promise<{bench: BenchLike, another: () => BenchLike}>}
 */
export async function openKernel(words) {
  await init();
  return { bench: new Bench(words), another: () => new Bench(words) };
}
