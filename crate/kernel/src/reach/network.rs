//! The gaps of one joint as a network of passages.
//!
//! ```text
//! outside near - side gap - mouth near - pin/bore near - pin's middle - pin/bore far - mouth far - side gap - outside far
//! outside near - roller side - end near - barrel near - roller's middle - barrel far - end far - roller side - outside far
//! collared: pin's middle - slot between the collars - roller's middle
//! ```
//!
//! At every dash the way turns a corner, but for the middles of the bores and the outside.

use super::face::{Face, Gap};
use super::joint::{bearing, bore, collar_end_mm, inner_body, outer_body, roller_body};
use super::passage::{Passage, annulus, radial_slot};
use crate::chain::{Construction, Sizes};
use crate::contact::{End, Joint, Pose};
use crate::plane::{Placement, Point};

/// A place where passages meet; the two outsides come first.
pub(super) const NODES: usize = 8;
pub(super) const OUTSIDES: usize = 2;
const PIN_MIDDLE: usize = 6;
const ROLLER_MIDDLE: usize = 7;

/// A passage between two places.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edge {
    /// The face whose gap it is.
    pub face: Face,
    /// From the place that is nearer to the outside.
    pub from: usize,
    /// To the other.
    pub to: usize,
    /// The gap.
    pub passage: Passage,
}

/// The passages of one joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Network {
    /// Every passage.
    pub edges: Vec<Edge>,
}

impl Network {
    /// The gaps of a joint in its pose.
    pub fn of(sizes: &Sizes, pose: &Pose, joint: Joint) -> Self {
        let gaps = Gaps { s: sizes, pose, joint };
        let mut edges = Vec::new();
        let mut add = |gap, end, from, to, passage| {
            edges.push(Edge { face: Face { joint, gap, end }, from, to, passage });
        };
        for (i, end) in [End::Near, End::Far].into_iter().enumerate() {
            let (mouth, roller_end) = (OUTSIDES + i, 2 * OUTSIDES + i);
            add(Gap::Side, end, i, mouth, gaps.side(end));
            add(Gap::PinBore, end, mouth, PIN_MIDDLE, gaps.pin(end));
            add(Gap::RollerSide, end, i, roller_end, gaps.roller_side(end));
            add(Gap::RollerBarrel, end, roller_end, ROLLER_MIDDLE, gaps.barrel(end));
        }
        if sizes.construction == Construction::Collared {
            add(Gap::CollarSlot, End::Whole, PIN_MIDDLE, ROLLER_MIDDLE, gaps.collar_slot());
        }
        Self { edges }
    }

    /// Flow through every passage, mm^3/s, away from the near side positive, when the near openings
    /// stand under a pressure, Pa, and the far ones under none. Inside, what flows in flows out
    /// (linear equations of the places' pressures).
    pub fn flows_mm3_per_s(&self, pressure_pa: f64, viscosity_pa_s: f64) -> Vec<f64> {
        let conductance = |edge: &Edge| edge.passage.conductance(viscosity_pa_s);
        let mut rows = [[0.0; NODES + 1]; NODES];
        rows[0][NODES] = pressure_pa;
        for edge in &self.edges {
            let g = conductance(edge);
            for (here, there) in [(edge.from, edge.to), (edge.to, edge.from)] {
                rows[here][here] += g;
                rows[here][there] -= g;
            }
        }
        for (i, row) in rows.iter_mut().enumerate().take(OUTSIDES) {
            let pressure_pa = row[NODES];
            *row = [0.0; NODES + 1];
            row[i] = 1.0;
            row[NODES] = pressure_pa;
        }
        let at = pressures(rows);
        self.edges.iter().map(|edge| conductance(edge) * (at[edge.from] - at[edge.to])).collect()
    }
}

/// Solves the places' balances by elimination. The matrix has a heavy diagonal, so no row needs
/// swapping; a place that nothing leads to keeps no pressure.
fn pressures(mut rows: [[f64; NODES + 1]; NODES]) -> [f64; NODES] {
    for pivot in 0..NODES {
        let row = rows[pivot];
        if row[pivot] <= 0.0 {
            continue;
        }
        for other in rows.iter_mut().skip(pivot + 1) {
            let share = other[pivot] / row[pivot];
            other.iter_mut().zip(row).for_each(|(to, from)| *to -= share * from);
        }
    }
    let mut at = [0.0; NODES];
    for i in (0..NODES).rev() {
        let row = rows[i];
        let known: f64 = (i + 1..NODES).map(|j| row[j] * at[j]).sum();
        at[i] = if row[i] > 0.0 { (row[NODES] - known) / row[i] } else { 0.0 };
    }
    at
}

/// The gaps of one joint, measured.
struct Gaps<'a> {
    s: &'a Sizes,
    pose: &'a Pose,
    joint: Joint,
}

impl Gaps<'_> {
    /// An inner plate as seen from the pin, its bore for origin.
    fn plate_from_pin(&self, end: End) -> Placement {
        let inner = self.pose.of(inner_body(end));
        let at = inner.outward(bore(self.s, self.joint));
        let there = Placement::new(at.x, at.y, inner.yaw_rad);
        there.seen_from(self.pose.of(outer_body(self.joint)))
    }

    /// The roller as seen from the bore of an inner plate.
    fn roller_from_plate(&self, end: End) -> Placement {
        let roller = self.pose.of(roller_body(self.joint));
        let seen = roller.seen_from(self.pose.of(inner_body(end)));
        let at = seen.origin() - bore(self.s, self.joint);
        Placement::new(at.x, at.y, seen.yaw_rad)
    }

    fn side(&self, end: End) -> Passage {
        let (s, plate) = (self.s, self.plate_from_pin(end));
        let height_mm = 0.5 * s.side_gap_mm() - end.sign() * plate.y_mm;
        let rim_mm = 0.5 * (s.inner_reach_mm() + s.outer_reach_mm());
        radial_slot(rim_mm, 0.5 * s.bore_mm + s.mouth_radius_mm, height_mm, plate.yaw_rad)
    }

    fn pin(&self, end: End) -> Passage {
        let (s, plate, (from, to)) = (self.s, self.plate_from_pin(end), bearing(self.s));
        let middle = plate.outward(Point::new(0.0, end.sign() * 0.5 * (from + to)));
        around(to - from, 0.5 * s.pin_diameter_mm, s.pin_clearance_mm(), middle.x)
    }

    fn roller_side(&self, end: End) -> Passage {
        let (s, roller) = (self.s, self.roller_from_plate(end));
        let height_mm = 0.5 * s.roller_side_clearance_mm() - end.sign() * roller.y_mm;
        radial_slot(0.5 * s.roller_diameter_mm, 0.5 * s.roller_bore_mm, height_mm, roller.yaw_rad)
    }

    fn barrel(&self, end: End) -> Passage {
        let (s, roller) = (self.s, self.roller_from_plate(end));
        let half = 0.5 * s.roller_length_mm;
        let length_mm = half - collar_end_mm(s).min(half);
        let middle = roller.outward(Point::new(0.0, end.sign() * 0.5 * half));
        around(length_mm, 0.5 * s.barrel_mm, s.roller_clearance_mm(), middle.x)
    }

    fn collar_slot(&self) -> Passage {
        let s = self.s;
        let (far, near) = (self.plate_from_pin(End::Far), self.plate_from_pin(End::Near));
        let height_mm = 2.0 * collar_end_mm(s) + far.y_mm - near.y_mm;
        let tilt_rad = far.yaw_rad - near.yaw_rad;
        radial_slot(0.5 * s.barrel_mm, 0.5 * s.bore_mm, height_mm, tilt_rad)
    }
}

/// The gap round a cylinder, its clearance on the diameter, out of the middle by `aside_mm`.
fn around(length_mm: f64, radius_mm: f64, clearance_mm: f64, aside_mm: f64) -> Passage {
    let radial_mm = 0.5 * clearance_mm;
    let eccentricity = if radial_mm > 0.0 { aside_mm / radial_mm } else { 0.0 };
    annulus(length_mm, radius_mm, radial_mm, eccentricity)
}
