// What the kernel says of a worn chain. Lengths in mm, angles in rad.

/** @typedef {import("../kernel.js").Answer} Answer */
/** A part of a picture: its class, and its path in mm, the second axis down. @typedef {{role: string, d: string}} Shape */
/** @typedef {{shapes: Shape[], along_drawn_mm: [number, number], across_drawn_mm: [number, number], pin_drawn_mm: number, along_mm: number, across_mm: number}} Section */
/** @typedef {{times: number, outside_mm: number, new: Section, worn: Section}} JointView */
/** @typedef {{x_mm: number, y_mm: number, high: boolean, rise_mm: number}} Seated */
/** @typedef {{times: number, teeth: number, shapes: Shape[], rollers: Seated[], inner_first: boolean, roller_mm: number, pitch_radius_mm: number, past_tip: boolean}} WheelView */
/** @typedef {{times: number, pitches: number, pins_mm: number[], marks_mm: number[], gauge_mm: [number, number], nominal_mm: number, rollers_mm: [number, number], roller_mm: number, rule_over_mm: number, gauge_over_mm: number, rule_true_mm: number, gauge_true_mm: number}} StripView */
/** @typedef {{wear_mm: number, low_mm: number, high_mm: number}} Height */
/** @typedef {{offset_mm: number, yaw_rad: number}} Corner */
/** @typedef {{fixed_mm: number, adjustable_mm: number, rule_mm: number, pass_mm: number, to_mm: number}} Limits */
/** @typedef {{answers: Answer[], section: Record<string, number>, limits: Limits, heights: Height[], joint: JointView, wheel: WheelView, strip: StripView, rooms: [Corner[], Corner[]]}} WearState */

export {};
