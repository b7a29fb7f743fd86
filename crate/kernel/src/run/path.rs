//! The way of a chain round its two wheels, from the side.
//!
//! Along it s counts pitches from where the tight strand would leave the driver's pitch circle,
//! through the tight strand, round the driven wheel, through the slack strand and round the driver.
//! A roller sits in its gap from half a pitch before the tangent point on, so that links on a wheel
//! are its chords; between the last seated rollers a strand is straight, its links equally long: a
//! few thousandths of a millimetre from p, since the driven wheel is taken to turn evenly.

use crate::plane::Point;
use crate::solve::{RootStatus, root_between};
use crate::sprocket::{Layout, Wheel, WheelPlace};
use core::f64::consts::{FRAC_PI_2, PI};

/// The way round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Path {
    pub layout: Layout,
    places: [WheelPlace; 2],
    /// Tight strand, driven wheel, slack strand, driver, in pitches.
    pub stretches: [f64; 4],
    /// Pitches of the whole chain: even.
    pub pitches: u32,
}

/// The angle on the pitch circle at which the tight strand leaves both wheels, rad.
fn tight_rad(layout: &Layout) -> f64 {
    FRAC_PI_2 - layout.slope_rad()
}

/// The same drive with its shafts so far apart that an even number of pitches closes.
fn closed(layout: &Layout) -> (Layout, u32) {
    const WITHIN_MM: f64 = 1e-10;
    let at = |centre_distance_mm: f64| Layout { centre_distance_mm, ..*layout };
    let least_mm = layout.driver.pitch_radius_mm() + layout.driven.pitch_radius_mm();
    let (near_mm, far_mm) = (
        least_mm.max(layout.centre_distance_mm - layout.driver.pitch_mm),
        layout.centre_distance_mm + 2.0 * layout.driver.pitch_mm,
    );
    let mut pitches = layout.whole_pitches();
    if at(near_mm).chain_pitches() > f64::from(pitches) {
        pitches += 2;
    }
    let more = |mm: f64| at(mm).chain_pitches() - f64::from(pitches);
    let root = root_between(more, near_mm, far_mm, WITHIN_MM);
    let found = root.status == RootStatus::Found;
    (at(if found { root.at } else { layout.centre_distance_mm }), pitches)
}

impl Path {
    /// The way of a drive, its shafts moved so that the chain closes.
    pub fn of(layout: &Layout) -> Self {
        let (layout, pitches) = closed(layout);
        let tangent = layout.tangent_length_mm() / layout.driver.pitch_mm;
        let slope = layout.slope_rad() / PI;
        let driven = layout.driven.z() * (0.5 - slope);
        let driver = layout.driver.z() * (0.5 + slope);
        let stretches = [tangent, driven, tangent, driver];
        Self { layout, places: layout.places(), stretches, pitches }
    }

    /// Turns of both wheels, rad, anticlockwise, when a joint stands at s: the angle of the gap that
    /// would hold it.
    pub fn turns_rad(&self, s: f64) -> [f64; 2] {
        let along = s - self.stretches[0];
        let start = tight_rad(&self.layout);
        [
            start - s * self.layout.driver.articulation_rad(),
            start - along * self.layout.driven.articulation_rad(),
        ]
    }

    /// The shafts and radii.
    pub fn places(&self) -> &[WheelPlace; 2] {
        &self.places
    }

    /// s brought to the half-open turn that begins half a pitch round the driver.
    fn within(&self, s: f64) -> f64 {
        let whole = f64::from(self.pitches);
        s - whole * libm::floor((s + 0.5) / whole)
    }

    /// Where a joint at s stands.
    pub fn point(&self, s: f64) -> Point {
        let [tight, driven, slack, _] = self.stretches;
        let s = self.within(s);
        let back = tight + driven;
        if s < 0.5 {
            self.on_driver(s)
        } else if s <= tight - 0.5 {
            self.between(s, [0.0, tight])
        } else if s < back + 0.5 {
            self.on_driven(s)
        } else if s <= back + slack - 0.5 {
            self.between(s, [back, back + slack])
        } else {
            self.on_driver(s)
        }
    }

    /// On a strand between the tangent points at `from` and `to`: between the nearest seated joints.
    fn between(&self, s: f64, [from, to]: [f64; 2]) -> Point {
        let before = s - libm::floor(s - from + 0.5);
        let after = s + libm::floor(to - s + 0.5);
        let seat = |s: f64, at_driver: bool| {
            if at_driver { self.on_driver(s) } else { self.on_driven(s) }
        };
        let (first, last) = (seat(before, from == 0.0), seat(after, from != 0.0));
        let whole = after - before;
        if whole > 0.0 { first.lerp(last, (s - before) / whole) } else { first }
    }

    fn on_driver(&self, s: f64) -> Point {
        let whole = f64::from(self.pitches);
        let back = if s > 0.5 * whole { s - whole } else { s };
        self.seat(0, &self.layout.driver, back)
    }

    fn on_driven(&self, s: f64) -> Point {
        self.seat(1, &self.layout.driven, s - self.stretches[0])
    }

    /// In a gap of a wheel, `back` pitches round from where the tight strand leaves it.
    fn seat(&self, which: usize, wheel: &Wheel, back: f64) -> Point {
        let angle_rad = tight_rad(&self.layout) - back * wheel.articulation_rad();
        let (sin, cos) = libm::sincos(angle_rad);
        let place = &self.places[which];
        place.centre + place.pitch_radius_mm * Point::new(cos, sin)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(driver: u32, driven: u32, centre_distance_mm: f64) -> Path {
        let wheel = |teeth| Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
        let (driver, driven) = (wheel(driver), wheel(driven));
        Path::of(&Layout { driver, driven, centre_distance_mm, offset_mm: 0.0 })
    }

    #[test]
    fn the_chain_closes_with_an_even_number_of_pitches() {
        for (driver, driven, mm) in
            [(44, 16, 430.0), (16, 44, 447.3), (9, 9, 80.0), (30, 11, 140.0)]
        {
            let path = path(driver, driven, mm);
            let whole: f64 = path.stretches.iter().sum();
            assert!(path.pitches.is_multiple_of(2));
            assert!((whole - f64::from(path.pitches)).abs() < 1e-9, "{whole}");
            assert!((path.layout.centre_distance_mm - mm).abs() < 2.0 * 12.7);
        }
    }

    /// On a wheel links are its chords, exactly p; on a strand they are p but for what an even turn
    /// of both wheels leaves.
    #[test]
    fn every_link_is_a_pitch_long() {
        for (driver, driven, mm) in [(44, 16, 430.0), (16, 44, 447.3), (30, 11, 240.0)] {
            let path = path(driver, driven, mm);
            for travel in [0.0, 0.13, 0.5, 0.77] {
                let at = |joint: u32| path.point(f64::from(joint) - travel);
                for joint in 0..path.pitches {
                    let link_mm = at(joint + 1).distance(at(joint));
                    assert!((link_mm - 12.7).abs() < 0.02, "{driver} {joint} {link_mm}");
                }
            }
        }
    }

    #[test]
    fn no_joint_jumps() {
        let path = path(44, 11, 430.0);
        let steps = 100 * path.pitches;
        for step in 0..=steps {
            let at = |step: u32| path.point(f64::from(step) / 100.0 - 3.0);
            assert!(at(step + 1).distance(at(step)) < 1.1 * 0.127, "{step}");
        }
    }

    #[test]
    fn seated_joints_stand_in_the_gaps_of_their_wheel() {
        let path = path(44, 16, 430.0);
        for s in [-0.4, -3.0, path.stretches[0] + 0.2, path.stretches[0] + 2.7] {
            let (turns, at) = (path.turns_rad(s), path.point(s));
            let which = usize::from(s > 1.0);
            let arm = at - path.places()[which].centre;
            let gap = Point::new(libm::cos(turns[which]), libm::sin(turns[which]));
            assert!(arm.perp_dot(gap).abs() < 1e-9 && arm.dot(gap) > 0.0, "{s}");
        }
    }
}
