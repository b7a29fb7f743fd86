// What the kernel says of many chains of one drawing. Values of a demand have the unit of its quantity.

/** @typedef {import("../kernel.js").Answer} Answer */
/** @typedef {{dimension: string, nominal_mm: number, minus_mm: number, plus_mm: number, half_mm: number, law: string}} LimitView */
/** @typedef {{dimension: string, slope: number, half_mm: number, reach: number, share: number}} PartView */
/** @typedef {{quantity: string, at_least: number|null, at_most: number|null, middle: number|null, worst_low: number|null, worst_high: number|null, halves: [string, number][], rss_sd: number, parts: PartView[], answers: Answer[]}} DemandView */
/** @typedef {{dimension: string, half_mm: (number|null)[], cost: (number|null)[]}} PriceView */
/** @typedef {{demand: number, total: number, halved: number, tightened: number|null, parts: PriceView[], least: (number|null)[], answers: Answer[]}} MoneyView */
/** @typedef {{limits: LimitView[], demands: DemandView[], block_sets: number, sets: number, money: MoneyView|null, paired: number|null, classes: number|null}} FitState */
/** Value and standard error. @typedef {[number, number]} Uncertain */
/** Lower end, upper end, count. @typedef {[number, number, number]} Bar */
/** @typedef {{yield_fraction: Uncertain, mean: Uncertain, sd: Uncertain, percentiles: [number, number, number][], histogram: Bar[], worst: [number, number, number][]}} DemandChance */
/** @typedef {{sets: number, apart: number, yield_fraction: Uncertain, demands: DemandChance[], answers: Answer[]}} ChanceView */
/** @typedef {{demand: DemandView, chance: DemandChance, fails_fraction: number}} TriedView */
/** A dimension, and how far below and above its size, mm. @typedef {[string, [number, number]]} Bought */
/** @typedef {{yield_fraction: number, leftover_fraction: number, sd: number, chains: number, histogram: Bar[]}} WayView */
/** Size, the partner's place or -1, the class. @typedef {[number, number, number]} Dot */
/** @typedef {{demand: number, dimensions: string[], alike: boolean, classes: number, firsts: number[], seconds: number[], ways: WayView[], dots: Dot[][], ends_mm: [number, number][]}} MatchView */

export {};
