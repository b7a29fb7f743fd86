//! One joint of a posed pitch as a section: its metal and its hidden walls.
//!
//! Everything is said in the axes of the body that it belongs to, x along the chain, y across it, and
//! carried by the body's pose. Neighbouring links are left out: the space between their plates is open
//! from above and below, so it counts as outside.

use super::face::{Face, Gap};
use super::hull::Hull;
use super::section::{Section, Wall};
use crate::chain::{Construction, Sizes};
use crate::contact::{Body, End, Joint, Pose};
use crate::plane::{Placement, Point};

/// Both ways along or across.
const BOTH: [f64; 2] = [1.0, -1.0];

/// A joint of a pitch in its pose, cut through its pin.
pub fn section(sizes: &Sizes, pose: &Pose, joint: Joint) -> Section {
    let mut cut = Cut { sizes, pose, joint, section: Section::default() };
    cut.outer_link();
    for end in [End::Far, End::Near] {
        cut.inner_plate(end);
        if sizes.construction == Construction::Collared {
            cut.collar(end);
        }
    }
    if sizes.construction == Construction::Bushed {
        cut.bush();
    }
    cut.roller();
    cut.section
}

/// The outer link's body at a joint.
pub(super) fn outer_body(joint: Joint) -> Body {
    match joint {
        Joint::First => Body::HeldOuter,
        Joint::Second => Body::NextOuter,
    }
}

/// The inner plate's body at an end.
pub(super) fn inner_body(end: End) -> Body {
    if end == End::Near { Body::InnerNear } else { Body::InnerFar }
}

/// The roller at a joint.
pub(super) fn roller_body(joint: Joint) -> Body {
    match joint {
        Joint::First => Body::FirstRoller,
        Joint::Second => Body::SecondRoller,
    }
}

/// The bore's centre in an inner body's axes.
pub(super) fn bore(sizes: &Sizes, joint: Joint) -> Point {
    match joint {
        Joint::First => Point::ZERO,
        Joint::Second => Point::new(sizes.pitch_mm, 0.0),
    }
}

/// The way from a joint's pin towards the rest of its inner link: 1 or -1.
fn inward(joint: Joint) -> f64 {
    match joint {
        Joint::First => 1.0,
        Joint::Second => -1.0,
    }
}

/// A section that is being put together.
struct Cut<'a> {
    sizes: &'a Sizes,
    pose: &'a Pose,
    joint: Joint,
    section: Section,
}

/// Where a body stands, and where in its axes the joint's pin or bore has its centre.
#[derive(Clone, Copy)]
struct Seat<'a> {
    place: &'a Placement,
    centre: Point,
}

impl Seat<'_> {
    fn point(&self, x: f64, y: f64) -> Point {
        self.place.outward(self.centre + Point::new(x, y))
    }
}

impl<'a> Cut<'a> {
    fn outer_seat(&self) -> Seat<'a> {
        Seat { place: self.pose.of(outer_body(self.joint)), centre: Point::ZERO }
    }

    fn inner_seat(&self, end: End) -> Seat<'a> {
        let centre = bore(self.sizes, self.joint);
        Seat { place: self.pose.of(inner_body(end)), centre }
    }

    fn piece(&mut self, seat: Seat, corners: &[(f64, f64)], radius_mm: f64) {
        let points = corners.iter().map(|&(x, y)| seat.point(x, y)).collect();
        self.section.hulls.push(Hull::new(points, radius_mm));
    }

    fn rectangle(&mut self, seat: Seat, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) {
        self.piece(seat, &[(x0, y0), (x1, y0), (x1, y1), (x0, y1)], 0.0);
    }

    /// A plate from one x to its rounded end at another; `low` and `high` are its faces.
    fn plate(&mut self, seat: Seat, (from, end): (f64, f64), (low, high): (f64, f64)) {
        let c = self.sizes.edge_chamfer_mm;
        let inside = end - c * (end - from).signum();
        let (y0, y1) = (low + c * (high - low).signum(), high - c * (high - low).signum());
        let corners =
            [(from, low), (inside, low), (end, y0), (end, y1), (inside, high), (from, high)];
        self.piece(seat, &corners, 0.0);
    }

    /// A wall between two points, air towards a direction, all in the body's axes.
    fn wall(&mut self, seat: Seat, (gap, end): (Gap, End), ends: [(f64, f64); 2], air: (f64, f64)) {
        let [from, to] = ends.map(|(x, y)| seat.point(x, y));
        let normal = seat.place.direction(Point::new(air.0, air.1));
        let face = Face { joint: self.joint, gap, end };
        self.section.walls.push(Wall { face, from, to, normal });
    }

    /// The end of the inner plate past the pin, or of the outer one: how far the side gap reaches.
    fn rim_mm(&self, along: f64) -> f64 {
        let s = self.sizes;
        if along * inward(self.joint) > 0.0 { s.outer_overhang_mm } else { s.inner_overhang_mm }
    }

    fn outer_link(&mut self) {
        let (s, seat, way) = (self.sizes, self.outer_seat(), inward(self.joint));
        let (low, high) = (0.5 * s.outer_spacing_mm, 0.5 * s.outer_spacing_mm + s.outer_plate_mm);
        let (pin, half) = (0.5 * s.pin_diameter_mm, 0.5 * s.pin_length_mm);
        self.rectangle(seat, (-pin, -half), (pin, half));
        for (end, sign) in [(End::Far, 1.0), (End::Near, -1.0)] {
            let past = (-way * s.pitch_mm, way * s.outer_overhang_mm);
            self.plate(seat, past, (sign * low, sign * high));
            for along in BOTH {
                let flat = if along * way > 0.0 { s.outer_reach_mm() } else { self.rim_mm(along) };
                let ends = [pin, flat].map(|x| (along * x, sign * low));
                self.wall(seat, (Gap::Side, end), ends, (0.0, -sign));
                let (inner, outer) = bearing(s);
                let ends = [inner, outer].map(|y| (along * pin, sign * y));
                self.wall(seat, (Gap::PinBore, end), ends, (along, 0.0));
            }
        }
    }

    fn inner_plate(&mut self, end: End) {
        let (s, seat, way) = (self.sizes, self.inner_seat(end), inward(self.joint));
        let (sign, hole) = (end.sign(), 0.5 * s.barrel_mm);
        let (low, high) = (0.5 * s.inner_width_mm, 0.5 * s.inner_link_width_mm());
        let mouth = match s.construction {
            Construction::Bushed => hole,
            Construction::Collared => 0.5 * s.bore_mm + s.mouth_radius_mm,
        };
        for along in BOTH {
            if along * way > 0.0 {
                let far = way * (s.pitch_mm - hole);
                self.rectangle(seat, (way * mouth, sign * low), (far, sign * high));
            } else {
                let past = (along * mouth, along * s.inner_overhang_mm);
                self.plate(seat, past, (sign * low, sign * high));
            }
            let flat = if along * way > 0.0 { self.rim_mm(along) } else { s.inner_reach_mm() };
            let ends = [mouth, flat].map(|x| (along * x, sign * high));
            self.wall(seat, (Gap::Side, end), ends, (0.0, sign));
            let ends = [hole, 0.5 * s.roller_diameter_mm].map(|x| (along * x, sign * low));
            self.wall(seat, (Gap::RollerSide, end), ends, (0.0, -sign));
        }
    }

    /// Both walls of a tube from one y to another: straight outside, rounded inside at both ends.
    fn tube(&mut self, seat: Seat, (y0, y1): (f64, f64)) {
        let s = self.sizes;
        let (r, sense) = (s.mouth_radius_mm, (y1 - y0).signum());
        let (inside, outside) = (0.5 * s.bore_mm + r, 0.5 * s.barrel_mm);
        for along in BOTH {
            self.rectangle(seat, (along * inside, y0), (along * outside, y1));
            if r > 0.0 {
                let rounded = [(along * inside, y0 + sense * r), (along * inside, y1 - sense * r)];
                self.piece(seat, &rounded, r);
            }
        }
    }

    /// The walls of a tube at one end of the joint: bore, barrel.
    fn tube_walls(&mut self, seat: Seat, end: End) {
        let (s, sign) = (self.sizes, end.sign());
        let (inner, outer) = bearing(s);
        let half = 0.5 * s.roller_length_mm;
        let from = collar_end_mm(s).min(half);
        for along in BOTH {
            let ends = [inner, outer].map(|y| (along * 0.5 * s.bore_mm, sign * y));
            self.wall(seat, (Gap::PinBore, end), ends, (-along, 0.0));
            let ends = [from, half].map(|y| (along * 0.5 * s.barrel_mm, sign * y));
            self.wall(seat, (Gap::RollerBarrel, end), ends, (along, 0.0));
        }
    }

    fn bush(&mut self) {
        let seat = self.inner_seat(End::Far);
        let half = 0.5 * self.sizes.bearing_length_mm;
        self.tube(seat, (-half, half));
        self.tube_walls(seat, End::Far);
        self.tube_walls(seat, End::Near);
    }

    fn collar(&mut self, end: End) {
        let (s, seat, sign) = (self.sizes, self.inner_seat(end), end.sign());
        let inner = collar_end_mm(s);
        self.tube(seat, (sign * inner, sign * 0.5 * s.inner_link_width_mm()));
        self.tube_walls(seat, end);
        for along in BOTH {
            let across = [0.5 * s.bore_mm + s.mouth_radius_mm, 0.5 * s.barrel_mm];
            let ends = across.map(|x| (along * x, sign * inner));
            self.wall(seat, (Gap::CollarSlot, End::Whole), ends, (0.0, -sign));
        }
    }

    fn roller(&mut self) {
        let s = self.sizes;
        let seat = Seat { place: self.pose.of(roller_body(self.joint)), centre: Point::ZERO };
        let (hole, outside) = (0.5 * s.roller_bore_mm, 0.5 * s.roller_diameter_mm);
        let half = 0.5 * s.roller_length_mm;
        for along in BOTH {
            self.rectangle(seat, (along * hole, -half), (along * outside, half));
            for (end, sign) in [(End::Far, 1.0), (End::Near, -1.0)] {
                let ends = [hole, outside].map(|x| (along * x, sign * half));
                self.wall(seat, (Gap::RollerSide, end), ends, (0.0, sign));
                let ends = [collar_end_mm(s).min(half), half].map(|y| (along * hole, sign * y));
                self.wall(seat, (Gap::RollerBarrel, end), ends, (-along, 0.0));
            }
        }
    }
}

/// Where the metal that bears on the pin begins and ends at one end of the joint, mm from the chain's
/// middle.
pub(super) fn bearing(s: &Sizes) -> (f64, f64) {
    let r = s.mouth_radius_mm;
    match s.construction {
        Construction::Bushed => (0.0, 0.5 * s.bearing_length_mm - r),
        Construction::Collared => (collar_end_mm(s) + r, 0.5 * s.inner_link_width_mm() - r),
    }
}

/// Where a collar ends, mm from the chain's middle; a bush goes through.
pub(super) fn collar_end_mm(s: &Sizes) -> f64 {
    match s.construction {
        Construction::Bushed => 0.0,
        Construction::Collared => 0.5 * s.inner_link_width_mm() - s.bearing_length_mm,
    }
}
