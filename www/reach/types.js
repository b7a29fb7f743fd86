// What the worker answers to "What can get in?"; lengths in mm.

/** @typedef {[number, number]} At along the chain, across it */
/** @typedef {{face: string, bristle_fraction: number, particle_fraction: number, liquid: boolean, corner_count: number, fill_time_s?: number, flow_mm3_per_s: number, height_mm: number}} FaceLine */
/** @typedef {{face: string, ends: [At, At], air: At, bristle: [number, number][], particle: [number, number][], liquid: boolean}} WallLine */
/** @typedef {{body: string, loops: At[][]}} Metal */
/** @typedef {{times: number, half_mm: [number, number], pieces: Metal[], walls: WallLine[]}} EnterView */
/** @typedef {{share: number, faces: FaceLine[], pumped_mm3_per_cycle: number, answers: import("../kernel.js").Answer[], view: EnterView}} EnterState */

export {};
