//! Random taut strands against a general-purpose conic solver, given the gaps about the pose that our
//! own solver came to, worked out and differentiated here.
//!
//! At a pose in balance no step gains anything: the least of `-T dx_end + K e de` under the gaps made
//! linear is a step of zero, and the multipliers of the gaps are the contact forces.

mod cases;
#[path = "../properties/chains.rs"]
mod chains;
mod clarabel;

use ::clarabel::solver::SolverStatus;
use cases::Case;
use lightgap::chain::{Construction, Sizes};
use lightgap::plane::{Placement, Point};
use lightgap::solve::{Solver, Start, Status};
use lightgap::strand::{Ends, LinkPose, Outcome, Setup, Strand};
use proptest::prelude::*;
use proptest::test_runner::Config;

const TENSION_N: f64 = 300.0;
/// Sums of forces agree to this share of the tension.
const SUMS: f64 = 1e-6;
/// Between two of the five points of a difference, in pitches and in radians: its error is its fourth power.
const NUDGE: f64 = 1e-3;
/// Weight of a step, in tensions over pitches: zero where the step is zero.
const HELD: f64 = 1e-3;

/// Unknowns that a row can couple lie at most so far apart: two links of four and a spring.
const BAND: usize = 8;
/// How far past the largest offset link n is carried, and how far back from it, in pitches.
const CARRIED: [f64; 2] = [0.02, 0.3];
/// The offset of link n at which linear gaps about the pose at the largest one end, from that one, in pitches.
const LARGEST: f64 = 1e-5;

/// A step of the kernel's solver keeps every gap to within this, mm,
const KEPT_MM: f64 = 1e-8;
/// and is as low as the other's, in tensions times pitches.
const AS_LOW: f64 = 1e-8;

/// What moves in a link: one or two slides along it, its place across, its yaw; and the springy yaw of
/// the joint before it.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Motion {
    Slide(Option<usize>),
    Across,
    Yaw,
    Spring,
}

/// A strand as it stands, and its own gaps.
struct Standing {
    sizes: Sizes,
    links: Vec<LinkPose>,
    /// Every motion that is free, by link.
    free: Vec<(usize, Motion)>,
}

/// One pair of faces of a joint: its gap, and whether it is the pin's.
#[derive(Clone, Copy)]
struct Pair {
    joint: usize,
    pin: bool,
    plate: usize,
    side: f64,
    /// Across, from the middle of the bore; of faces, which end.
    across: f64,
    /// Of faces: whether it is the inner plate that ends here.
    inner_ends: bool,
}

fn turned(v: Point, rad: f64) -> Point {
    Point::new(v.x * rad.cos() - v.y * rad.sin(), v.x * rad.sin() + v.y * rad.cos())
}

impl Standing {
    fn new(sizes: &Sizes, links: Vec<LinkPose>, springy: bool) -> Standing {
        let last = links.len() - 1;
        let mut free = Vec::new();
        for link in 1..=last {
            if springy {
                free.push((link, Motion::Spring));
            }
            let split =
                sizes.construction == Construction::Collared && link % 2 == 1 && link < last;
            let slides: &[_] = if split { &[Some(0), Some(1)] } else { &[None] };
            free.extend(slides.iter().map(|&slide| (link, Motion::Slide(slide))));
            if link < last {
                free.extend([(link, Motion::Across), (link, Motion::Yaw)]);
            }
        }
        Standing { sizes: *sizes, links, free }
    }

    /// One of the links, moved.
    fn moved(&self, link: usize, motion: Motion, by: f64) -> LinkPose {
        let mut pose = self.links[link];
        let centre = pose.plate[0].origin();
        for (k, plate) in pose.plate.iter_mut().enumerate() {
            let mut at = plate.origin();
            let mut yaw_rad = plate.yaw_rad;
            match motion {
                Motion::Slide(only) if only.is_none_or(|only| only == k) => {
                    at += by * turned(Point::X, yaw_rad);
                }
                Motion::Across => at.y += by,
                Motion::Yaw => {
                    at = centre + turned(at - centre, by);
                    yaw_rad += by;
                }
                Motion::Slide(_) | Motion::Spring => {}
            }
            *plate = Placement::new(at.x, at.y, yaw_rad);
        }
        if motion == Motion::Spring {
            pose.spring_rad += by;
        }
        pose
    }

    fn pairs(&self) -> Vec<Pair> {
        let s = &self.sizes;
        let r = s.mouth_radius_mm;
        let half = 0.5 * s.inner_link_width_mm();
        let joints = self.links.len() - 1;
        let mut pairs = Vec::new();
        for (joint, end, side) in (0..joints).flat_map(|j| {
            [1.0, -1.0].into_iter().flat_map(move |end| [1.0, -1.0].map(|side| (j, end, side)))
        }) {
            let plate = usize::from(end < 0.0);
            let mouths = match s.construction {
                Construction::Bushed => vec![0.5 * s.bearing_length_mm - r],
                Construction::Collared => vec![half - r, half - s.bearing_length_mm + r],
            };
            let pair = Pair { joint, pin: true, plate, side, across: 0.0, inner_ends: false };
            pairs.extend(mouths.iter().map(|mouth| Pair { across: end * mouth, ..pair }));
            // After an outer link the inner plate ends on the left, before one on the right.
            let inner_ends = (joint % 2 == 0) == (side < 0.0);
            pairs.push(Pair { pin: false, across: end, inner_ends, ..pair });
        }
        pairs
    }

    /// The gap of a pair of faces between the links before and after its joint, mm.
    fn gap_mm(&self, [before, after]: [&LinkPose; 2], pair: &Pair) -> f64 {
        let s = &self.sizes;
        let inner_after = pair.joint.is_multiple_of(2);
        let (inner, outer) = if inner_after { (after, before) } else { (before, after) };
        let (plate, outer) = (&inner.plate[pair.plate], &outer.plate[0]);
        let far_end = Point::new(s.pitch_mm, 0.0);
        let pin = if inner_after && pair.joint > 0 { far_end } else { Point::ZERO };
        let pin = outer.origin() + turned(pin, outer.yaw_rad);
        let bore = if inner_after { Point::ZERO } else { far_end };
        let bore_turn = if inner_after { -after.spring_rad } else { after.spring_rad };
        let in_plane = |inside: Point| plate.origin() + turned(bore + inside, plate.yaw_rad);
        let from_pin = |at: Point| turned(at - pin, -outer.yaw_rad);
        if pair.pin {
            let radius_mm = 0.5 * s.bore_mm + s.mouth_radius_mm;
            let corner = turned(Point::new(pair.side * radius_mm, pair.across), bore_turn);
            let at = from_pin(in_plane(corner));
            pair.side * at.x - s.mouth_radius_mm - 0.5 * s.pin_diameter_mm
        } else if pair.inner_ends {
            let reach_mm = s.inner_overhang_mm - s.edge_chamfer_mm;
            let half_mm = 0.5 * s.inner_link_width_mm();
            let corner = Point::new(pair.side * reach_mm, pair.across * half_mm);
            0.5 * s.outer_spacing_mm - pair.across * from_pin(in_plane(corner)).y
        } else {
            let reach_mm = s.outer_overhang_mm - s.edge_chamfer_mm;
            let corner = Point::new(pair.side * reach_mm, pair.across * 0.5 * s.outer_spacing_mm);
            let at = pin + turned(corner, outer.yaw_rad);
            let inside = turned(at - plate.origin(), -plate.yaw_rad);
            pair.across * inside.y - 0.5 * s.inner_link_width_mm()
        }
    }

    /// How a gap changes with a motion, mm/mm; yaws times pitch.
    fn change(&self, pair: &Pair, link: usize, motion: Motion) -> f64 {
        let p = self.sizes.pitch_mm;
        let nudge = match motion {
            Motion::Yaw | Motion::Spring => NUDGE,
            _ => NUDGE * p,
        };
        let at = |by: f64| {
            let moved = self.moved(link, motion, by);
            let [before, after] = [&self.links[pair.joint], &self.links[pair.joint + 1]];
            let links = if link == pair.joint { [&moved, after] } else { [before, &moved] };
            self.gap_mm(links, pair)
        };
        let [one, two] = [1.0, 2.0].map(|times| at(times * nudge) - at(-times * nudge));
        (8.0 * one - two) / (12.0 * NUDGE * p)
    }

    /// The problem of a step, lengths in mm and forces in tensions; link n is carried so much further
    /// across, mm.
    fn case(&self, stiffness_n_mm: Option<f64>, further_mm: f64) -> Case {
        let p = self.sizes.pitch_mm;
        let last = self.links.len() - 1;
        let mut case = Case::new(self.free.len(), BAND);
        for (i, &(link, motion)) in self.free.iter().enumerate() {
            let stiff = stiffness_n_mm.unwrap_or(0.0) / (TENSION_N * p * p);
            let springs = motion == Motion::Spring;
            case.hessian.push((i, i, HELD / p + if springs { stiff } else { 0.0 }));
            case.gradient[i] = match motion {
                Motion::Spring => stiff * p * self.links[link].spring_rad,
                Motion::Slide(_) if link == last => -1.0,
                _ => 0.0,
            };
        }
        for pair in self.pairs() {
            let near = |link: usize| link == pair.joint || link == pair.joint + 1;
            let touched = self.free.iter().enumerate().filter(|(_, of)| near(of.0));
            let places: Vec<_> = touched.collect();
            let first = places.first().map_or(0, |(i, _)| *i);
            let line: Vec<_> =
                places.iter().map(|(_, of)| self.change(&pair, of.0, of.1)).collect();
            let links = [&self.links[pair.joint], &self.links[pair.joint + 1]];
            let mut gap_mm = self.gap_mm(links, &pair);
            if further_mm != 0.0 && pair.joint + 1 == last {
                gap_mm += further_mm * self.change(&pair, last, Motion::Across);
            }
            case.row(first, &line, gap_mm);
        }
        case
    }
}

impl Standing {
    /// How far link n gets, mm, of the way that it is to be carried further: the last unknown, the only
    /// thing that this problem weighs.
    fn reach(&self, further_mm: f64) -> Case {
        let last = self.links.len() - 1;
        let mut case = self.case(None, 0.0);
        let reach = case.unknowns;
        case.unknowns += 1;
        case.hessian = vec![(reach, reach, 1.0)];
        case.gradient = vec![0.0; reach];
        case.gradient.push(-further_mm);
        for (pair, row) in self.pairs().iter().zip(&mut case.rows) {
            if pair.joint + 1 == last {
                row.1.push(self.change(pair, last, Motion::Across));
            }
        }
        case
    }
}

/// What a step makes of that which it lessens, in tensions times mm.
fn height(case: &Case, x: &[f64]) -> f64 {
    let loads: f64 = case.gradient.iter().zip(x).map(|(load, x)| load * x).sum();
    let twice = |i: usize, j: usize| if i == j { 0.5 } else { 1.0 };
    let bends = case.hessian.iter().map(|&(i, j, value)| twice(i, j) * value * x[i] * x[j]);
    loads + bends.sum::<f64>()
}

#[derive(Debug, Clone)]
struct Asked {
    sizes: Sizes,
    joints: usize,
    share: f64,
    stiffness_n_mm: Option<f64>,
}

fn asked() -> impl Strategy<Value = Asked> {
    let springs =
        prop_oneof![Just(None), (5.5..7.5_f64).prop_map(|power| Some(10_f64.powf(power)))];
    let parts = (chains::any(), 4..61_usize, 0.05..0.95_f64, springs);
    parts.prop_map(|(sizes, joints, share, stiffness_n_mm)| Asked {
        sizes,
        joints,
        share,
        stiffness_n_mm,
    })
}

fn strand(asked: &Asked, stiffness_n_mm: Option<f64>) -> Strand {
    let Asked { sizes, joints, .. } = asked;
    let ends = Ends::Held;
    Strand::new(sizes, Setup { joints: *joints, tension_n: TENSION_N, stiffness_n_mm, ends })
}

/// The offset asked for, between the free and the largest rigid one, and the largest, mm.
fn offsets_mm(asked: &Asked) -> [f64; 2] {
    let rigid = strand(asked, None);
    let largest_mm = rigid.largest_offset_mm().expect("rigid");
    let free_mm = rigid.free_offset_mm();
    [free_mm + asked.share * (largest_mm - free_mm), largest_mm]
}

/// 24 cases, the same in every run: a strand of sixty joints is a programme of a thousand rows.
fn few() -> Config {
    Config { cases: 24, ..chains::fixed() }
}

proptest! {
    #![proptest_config(few())]

    #[test]
    fn a_conic_solver_finds_the_same_forces(asked in asked()) {
        let [offset_mm, _] = offsets_mm(&asked);
        let mut strand = strand(&asked, asked.stiffness_n_mm);
        let solution = strand.solve(offset_mm);
        prop_assert_eq!(solution.outcome, Outcome::Solved);
        let springy = asked.stiffness_n_mm.is_some();
        let standing = Standing::new(&asked.sizes, strand.links(), springy);
        let opinion = clarabel::pose(&standing.case(asked.stiffness_n_mm, 0.0)).solve_closely();
        prop_assert_eq!(opinion.status, SolverStatus::Solved);
        let mut sums = vec![[0.0; 2]; asked.joints];
        for (pair, push) in standing.pairs().iter().zip(&opinion.push) {
            sums[pair.joint][usize::from(!pair.pin)] += push * TENSION_N;
        }
        for (joint, [pin_n, face_n]) in sums.into_iter().enumerate() {
            let (pin, face) = (solution.pin_force_n[joint], solution.face_force_n[joint]);
            let within_n = SUMS * TENSION_N;
            prop_assert!((pin_n - pin).abs() <= within_n, "pin {} {} {}", joint, pin_n, pin);
            prop_assert!((face_n - face).abs() <= within_n, "face {} {} {}", joint, face_n, face);
        }
    }
}

proptest! {
    #![proptest_config(few())]

    /// About the pose at the largest offset, link n carried further: no step keeps every gap, say both
    /// solvers, and the strand has no pose. Carried back: a step, and a pose. And how much of the way is
    /// too far is what the strand says.
    #[test]
    fn a_conic_solver_refuses_what_is_too_far(asked in asked(), share in 0.0..1.0_f64) {
        let p = asked.sizes.pitch_mm;
        let mut rigid = strand(&asked, None);
        let largest_mm = rigid.largest_offset_mm().expect("rigid");
        prop_assert_eq!(rigid.solve(largest_mm).outcome, Outcome::Solved);
        let standing = Standing::new(&asked.sizes, rigid.links(), false);
        let by_mm = (CARRIED[0] + share * (CARRIED[1] - CARRIED[0])) * p;
        let room_mm = largest_mm - rigid.free_offset_mm();
        for (further_mm, feasible, refusal, outcome) in [
            (by_mm, false, SolverStatus::PrimalInfeasible, Outcome::NoPose),
            (-by_mm.min(0.5 * room_mm), true, SolverStatus::Solved, Outcome::Solved),
        ] {
            let case = standing.case(None, further_mm);
            let mut solver = Solver::new();
            let report = solver.solve(&case.problem(), Start::Cold);
            let opinion = clarabel::pose(&case).solve_closely();
            prop_assert_eq!(opinion.status, refusal);
            prop_assert_eq!(report.status == Status::Infeasible, !feasible, "{:?}", report);
            if feasible {
                // Whatever it calls its answer, it is as low as the other's and keeps every gap.
                let [ours, theirs] = [solver.x(), &opinion.x].map(|x| height(&case, x));
                prop_assert!(report.worst_gap >= -KEPT_MM, "{:?}", report);
                prop_assert!((ours - theirs).abs() <= AS_LOW * p, "{} {}", ours, theirs);
            }
            prop_assert_eq!(strand(&asked, None).solve(largest_mm + further_mm).outcome, outcome);
        }
        let opinion = clarabel::pose(&standing.reach(by_mm)).solve_closely();
        prop_assert_eq!(opinion.status, SolverStatus::Solved);
        let reached_mm = opinion.x[opinion.x.len() - 1];
        prop_assert!(reached_mm.abs() <= LARGEST * p, "{}", reached_mm);
    }
}
