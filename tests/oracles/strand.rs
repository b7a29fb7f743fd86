//! The taut strand against a second derivation that shares nothing with it: small angles, relative
//! unknowns, the offset as one equation over all joints, clarabel for every step.
//!
//! With the pose (x, y, t) of each joint's inner link from the pin, turned so that its own far pin
//! lies ahead, and the yaw w of each link: minimise the sum of `T p w^2 / 2 - T x + T w_outer y`
//! under `|x| + |t| B/2 <= c/2`, `|y - t g| <= a/2`, `|y + t g| <= a/2` and
//! `p sum(w) + sum(y) = D`.
//!
//! A collared inner link has a slide for each plate: `c/2 +- (x_k - t y_k)` is the gap of plate k's
//! collar at its two ends y_k, and both plates join the same two pins, so the sum of a plate's slides
//! at its two joints is the same for both.

mod cases;
mod clarabel;

use ::clarabel::solver::SolverStatus;
use cases::{Case, REFERENCE};
use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::strand::{Ends, Outcome, Setup, Strand};

/// Joints of the span; even, so that both ends are outer links.
const JOINTS: usize = 34;
/// Small angles leave out terms of the size of a turn, here up to 6 thousandths, in each number.
const SMALL_ANGLE: f64 = 0.006;
/// A force below this share of the largest is compared to it instead of to itself.
const FLOOR: f64 = 0.02;
/// How two neighbouring joints share a turn between them is decided by second-order terms where
/// neither is at its stop: turns agree to this share of the tilt limit c/B.
const SHARED_TURN: f64 = 0.02;
/// Steps of the offset on the way up, mm.
const GROWTH_MM: f64 = 0.4;
/// Steps end here, mm: far below what small angles leave out.
const STILL_MM: f64 = 1e-5;
/// Steps after which the second derivation gives up.
const MOST_STEPS: u32 = 300;
/// What holds a step of y, in T/p: above 2, the least that makes the step convex.
const HELD: f64 = 2.05;

/// Width of the inner link and length of a collar, mm.
const WIDTH_MM: f64 = 5.0;
const COLLAR_MM: f64 = 1.5;
/// What holds a step of a plate that nothing else holds, in T/p.
const LOOSELY: f64 = 1e-2;

/// x and y of each joint, then p w of each free link, then with springs p e of each joint, then with
/// collars x of the near plate at every joint after an outer link, mm; forces in units of the tension.
/// With collars, x is the far plate's.
struct Second {
    construction: Construction,
    offset_mm: f64,
    /// Yaw stiffness of a joint over the tension, mm/rad.
    stiffness_mm: Option<f64>,
    place: Vec<f64>,
    pin: Vec<f64>,
    face: Vec<f64>,
}

fn y(joint: usize) -> usize {
    2 * joint + 1
}

/// The unknown `p w` of a link, if it is free.
fn yaw(link: usize) -> Option<usize> {
    (1..JOINTS).contains(&link).then(|| 2 * JOINTS + link - 1)
}

/// The unknown `p e` of a springy joint.
fn spring(joint: usize) -> usize {
    3 * JOINTS - 1 + joint
}

/// The outer and the inner link of a joint (from 0, links `joint` and `joint + 1`).
fn outer_inner(joint: usize) -> (usize, usize) {
    if joint.is_multiple_of(2) { (joint, joint + 1) } else { (joint + 1, joint) }
}

impl Second {
    /// The free strand, taut; its joints springy where a stiffness over the tension is given.
    fn free(construction: Construction, stiffness_mm: Option<f64>) -> Second {
        let near = 3 * JOINTS - 1 + if stiffness_mm.is_some() { JOINTS } else { 0 };
        let nears = if construction == Construction::Collared { JOINTS / 2 } else { 0 };
        let mut place = vec![0.0; near];
        place.resize(near + nears, 0.5 * REFERENCE.clearance);
        let free_mm = 0.5 * REFERENCE.side_gap;
        for joint in 0..JOINTS {
            place[2 * joint] = 0.5 * REFERENCE.clearance;
            place[y(joint)] = free_mm;
        }
        let (pin, face) = (vec![0.0; JOINTS], vec![0.0; JOINTS]);
        let offset_mm = free_mm * JOINTS as f64;
        Second { construction, offset_mm, stiffness_mm, place, pin, face }
    }

    /// The first of the near plates' unknowns.
    fn near(&self) -> usize {
        self.place.len() - if self.construction == Construction::Collared { JOINTS / 2 } else { 0 }
    }

    /// How the slide of a plate (0 far, 1 near) at a joint is made of unknowns.
    fn slide(&self, joint: usize, plate: usize) -> Vec<(usize, f64)> {
        let (own, before) = (2 * joint, 2 * joint.saturating_sub(1));
        match (plate, joint % 2) {
            (0, _) => vec![(own, 1.0)],
            (_, 0) => vec![(self.near() + joint / 2, 1.0)],
            _ => vec![(before, 1.0), (own, 1.0), (self.near() + joint / 2, -1.0)],
        }
    }

    /// Every place where a pin can touch at a joint: the plate, and y in axes whose x points to the
    /// inner link's own far pin.
    fn mouths(&self, joint: usize) -> Vec<(usize, f64)> {
        let half = 0.5 * REFERENCE.bearing;
        if self.construction == Construction::Bushed {
            return vec![(0, half), (0, -half)];
        }
        let turned = if joint.is_multiple_of(2) { 1.0 } else { -1.0 };
        let (outside, inside) = (0.5 * WIDTH_MM, 0.5 * WIDTH_MM - COLLAR_MM);
        let of = |plate: usize, side: f64| [outside, inside].map(|y| (plate, turned * side * y));
        [of(0, 1.0), of(1, -1.0)].concat()
    }

    fn grow_to(&mut self, offset_mm: f64) {
        while self.offset_mm < offset_mm {
            self.offset_mm = (self.offset_mm + GROWTH_MM).min(offset_mm);
            let step = (0..MOST_STEPS).find(|_| self.step() <= STILL_MM);
            assert!(step.is_some(), "no rest at {} mm", self.offset_mm);
        }
    }

    /// One quadratic programme about the present place; answers the largest change, mm.
    fn step(&mut self) -> f64 {
        let case = self.about();
        let opinion = clarabel::pose(&case).solve();
        assert_eq!(opinion.status, SolverStatus::Solved);
        let mut largest = 0.0_f64;
        for (place, step) in self.place.iter_mut().zip(&opinion.x) {
            *place += step;
            largest = largest.max(step.abs());
        }
        let pins = 2 * self.mouths(0).len();
        for joint in 0..JOINTS {
            let push = &opinion.push[(pins + 4) * joint..(pins + 4) * (joint + 1)];
            self.pin[joint] = push[..pins].iter().sum();
            self.face[joint] = push[pins..].iter().sum();
        }
        largest
    }

    fn about(&self) -> Case {
        let unknowns = self.place.len();
        let mut case = Case::new(unknowns, unknowns - 1);
        let weight = 1.0 / REFERENCE.pitch;
        for link in (0..=JOINTS).filter_map(yaw) {
            case.hessian.push((link, link, weight));
            case.gradient[link] += weight * self.place[link];
        }
        for joint in 0..JOINTS {
            case.gradient[2 * joint] -= 1.0;
            case.hessian.push((y(joint), y(joint), HELD * weight));
            if let Some(outer) = yaw(outer_inner(joint).0) {
                case.hessian.push((outer, y(joint), weight));
                case.gradient[outer] += weight * self.place[y(joint)];
                case.gradient[y(joint)] += weight * self.place[outer];
            }
            if let Some(stiffness_mm) = self.stiffness_mm {
                let stiff = stiffness_mm * weight * weight;
                case.hessian.push((spring(joint), spring(joint), stiff));
                case.gradient[spring(joint)] += stiff * self.place[spring(joint)];
            }
            self.joint_rows(&mut case, joint);
        }
        for near in self.near()..unknowns {
            case.hessian.push((near, near, LOOSELY * weight));
        }
        let mut sum = vec![0.0; unknowns];
        (0..JOINTS).for_each(|joint| sum[y(joint)] = 1.0);
        (1..JOINTS).filter_map(yaw).for_each(|link| sum[link] = 1.0);
        let now: f64 = sum.iter().zip(&self.place).map(|(a, x)| a * x).sum();
        let opposite: Vec<f64> = sum.iter().map(|value| -value).collect();
        case.row(0, &sum, now - self.offset_mm);
        case.row(0, &opposite, self.offset_mm - now);
        case
    }

    /// Two rows of the pin at every mouth of its bore, four of the faces.
    fn joint_rows(&self, case: &mut Case, joint: usize) {
        let (outer, inner) = outer_inner(joint);
        let mut push = |of: &[(usize, f64)], sign: f64, lever: f64, half_gap: f64| {
            let mut line = vec![0.0; self.place.len()];
            for (unknown, way) in of {
                line[*unknown] = sign * way;
            }
            let across = of[0].0 == y(joint);
            for (link, way) in [(outer, -1.0), (inner, 1.0)] {
                if let Some(unknown) = yaw(link) {
                    line[unknown] += way * lever / REFERENCE.pitch;
                }
            }
            // The bore turns back by the springy yaw: the pin sees less of the turn, the faces all of it.
            if self.stiffness_mm.is_some() && !across {
                line[spring(joint)] = -lever / REFERENCE.pitch;
            }
            let now: f64 = line.iter().zip(&self.place).map(|(a, x)| a * x).sum();
            case.row(0, &line, half_gap + now);
        };
        for (plate, at) in self.mouths(joint) {
            let slide = self.slide(joint, plate);
            for sign in [-1.0, 1.0] {
                push(&slide, sign, -sign * at, 0.5 * REFERENCE.clearance);
            }
        }
        for sign in [-1.0, 1.0] {
            for lever in [-1.0, 1.0] {
                let half_gap = 0.5 * REFERENCE.side_gap;
                push(&[(y(joint), 1.0)], sign, lever * REFERENCE.overhang, half_gap);
            }
        }
    }

    fn turn_rad(&self, joint: usize) -> f64 {
        let of = |link| yaw(link).map_or(0.0, |unknown| self.place[unknown] / REFERENCE.pitch);
        of(joint + 1) - of(joint)
    }
}

fn strand(construction: Construction, stiffness_mm: Option<f64>) -> Strand {
    let bearing_mm = match construction {
        Construction::Bushed => REFERENCE.bearing,
        Construction::Collared => COLLAR_MM,
    };
    let stated = [
        (Dimension::Pitch, REFERENCE.pitch),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 3.0),
        (Dimension::InnerPlate, 1.0),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.6 + REFERENCE.clearance),
        (Dimension::BearingLength, bearing_mm),
        (Dimension::InnerOverhang, REFERENCE.overhang),
        (Dimension::OuterOverhang, REFERENCE.overhang),
        (Dimension::OuterSpacing, WIDTH_MM + REFERENCE.side_gap),
    ];
    let sizes = Sizes::from_stated(construction, &stated);
    let ends = Ends::Held;
    let setup = Setup { joints: JOINTS, tension_n: 1.0, stiffness_n_mm: stiffness_mm, ends };
    Strand::new(&sizes, setup)
}

fn assert_alike(what: &str, got: &[f64], wanted: &[f64]) {
    let largest = wanted.iter().fold(0.0_f64, |largest, value| largest.max(value.abs()));
    for (joint, (got, wanted)) in got.iter().zip(wanted).enumerate() {
        let within = SMALL_ANGLE * wanted.abs().max(FLOOR * largest);
        let off = (got - wanted).abs();
        assert!(off <= within, "{what} of joint {joint}: {got} against {wanted}");
    }
}

#[test]
fn turns_and_forces_are_those_of_the_second_derivation() {
    let bushed = Construction::Bushed;
    let (mut first, mut second) = (strand(bushed, None), Second::free(bushed, None));
    // Nearer to the largest offset, 28 mm, forces grow without bound and so does what small angles
    // leave out of them.
    for offset_mm in [8.0, 10.0, 15.0, 20.0] {
        let solution = first.solve(offset_mm);
        assert_eq!(solution.outcome, Outcome::Solved);
        second.grow_to(offset_mm);
        let turns: Vec<f64> = (0..JOINTS).map(|joint| second.turn_rad(joint)).collect();
        assert_alike("pin force", &solution.pin_force_n, &second.pin);
        assert_alike("face force", &solution.face_force_n, &second.face);
        let limit_rad = REFERENCE.clearance / REFERENCE.bearing;
        for (joint, (got, wanted)) in solution.turn_rad.iter().zip(&turns).enumerate() {
            let within = SHARED_TURN * limit_rad;
            assert!(
                (got - wanted).abs() <= within,
                "turn of joint {joint}: {got} against {wanted}"
            );
        }
    }
}

/// K 6e5 N mm/rad at T 300 N, 20 mm aside: the derivation printed the largest pin sums, in tensions,
/// that stand first here; this second solution, like the kernel, comes to others, so those printed are
/// wrong.
#[test]
fn springy_joints_bear_as_the_second_derivation_says() {
    const STIFFNESS_MM: f64 = 6e5 / 300.0;
    for (printed, construction) in [(1.59, Construction::Bushed), (1.41, Construction::Collared)] {
        let mut first = strand(construction, Some(STIFFNESS_MM));
        let mut second = Second::free(construction, Some(STIFFNESS_MM));
        let solution = first.solve(20.0);
        assert_eq!(solution.outcome, Outcome::Solved);
        second.grow_to(20.0);
        let most = second.pin.iter().fold(0.0_f64, |most, push| most.max(*push));
        println!(
            "{construction:?}, largest pin sum: second derivation {most:.4}, kernel {:.4}, printed {printed}",
            solution.pin_force_n[0]
        );
        assert_alike("pin force", &solution.pin_force_n, &second.pin);
        assert_alike("face force", &solution.face_force_n, &second.face);
        assert!((most / printed - 1.0).abs() > SMALL_ANGLE, "{most}");
    }
}
