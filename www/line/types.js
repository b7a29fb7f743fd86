// What the kernel says of a crooked line. Lengths in mm, forces in N, angles in rad.

/** @typedef {import("../kernel.js").Answer} Answer */
/** One offset of a curve. @typedef {{offset_mm: number, friction_multiple: number|null, loss_fraction: number, loss_w: number, band_w: [number, number]|null}} Sample */
/** @typedef {{variant: string, free_mm: number, onset_mm: number|null, end_mm: number|null, unsettled_mm: number[], samples: Sample[]}} Curve */
/** @typedef {{x_mm: number, y_mm: number, pitch_radius_mm: number, tooth_width_mm: number, teeth: number}} WheelView */
/** @typedef {{x_mm: number, y_mm: number, turn_rad: number, pin_n: number, face_n: number, friction_multiple: number|null, eccentricity_mm: number}} JointView */
/** @typedef {{driver: WheelView, driven: WheelView, joints: JointView[], thrust: {start_y_mm: number, end_y_mm: number}, half_bearing_mm: number}} LineView */
/** @typedef {{offset_mm: number, aside_mm: number, step_mm: number, to_mm: number, free_mm: number, reach_mm: number, joints: number, tight_n: number, pins_rub: boolean, answers: Answer[], view: LineView|null}} LineState */
/** A pair of wheels. @typedef {{front_teeth: number, back_teeth: number, ratio: number, offset_mm: number, free_mm: number, tight_n: number, friction_multiple: number|null, straight_fraction: number, loss_fraction: number|null, missing: string|null, guide_fraction: number, free: boolean, straight_w: number, loss_w: number|null, guide_w: number}} PairView */
/** @typedef {{front_mm: number[], back_mm: number[], range_mm: [number, number], of_w: number, pairs: (PairView|null)[]}} Arrangement */
/** A chain laid on its side: the ends of its links by yaw alone, and with the play across. @typedef {{links: number, length_mm: number, turn_rad: number, slide_mm: number, yaw_mm: number, with_play_mm: number, radius_mm: number|null, yaw: [number, number][], play: [number, number][]}} BowView */
/** Work by surface, N mm. @typedef {{pin_n_mm: number, face_n_mm: number, roller_n_mm: number, total_n_mm: number}} WorkView */
/** One of the four folds of a circuit. @typedef {{wheel: "driver"|"driven", runs_on: boolean, turns: "outer"|"inner", pin_n: number, face_n: number, tooth_push_n: number, articulation_rad: number, roll_rad: number, start_pitches: number, share: number, fold_rad: number, whole: WorkView, so_far: WorkView}} FoldView */
/** @typedef {{pitches: number, centre_distance_mm: number, pitches_per_s: number|null, travel_pitches: number, done_pitches: number, place: "tight"|"driver"|"slack"|"driven", folding: number|null, shown: number, bent_rad: number, pin_n: number, face_n: number, tooth_push_n: number, so_far: WorkView, circuit: WorkView, loss_fraction: number, as_straight: boolean, folds: FoldView[], curve: [number, number][], fold_times: number, drive: import("../leaves.js").Leaves, names: [number, number][], close: import("../leaves.js").Leaves}} RunState */

export {};
