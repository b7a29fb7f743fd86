//! The form of a tooth gap: where a roller sits, and the flanks beside it.
//!
//! A seat is an arc about the seated roller's centre, a little larger than the roller; at each end
//! of it a flank goes on as an arc that bulges out of the tooth. A wheel may have any form between
//! the two of the standard: the least (smallest seat radius) and the most.
//!
//! Source of every formula here: ISO 606, 5.3, from memory.

use super::wheel::{DEGREE, Wheel};
use crate::plane::{Pen, Point};
use core::f64::consts::{FRAC_PI_2, PI};

/// One end of what the standard allows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Smallest seat radius, largest seat angle, largest flank radius, lowest tip.
    Least,
    /// Largest seat radius, smallest seat angle, smallest flank radius, highest tip.
    Most,
}

/// The form of a tooth gap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seat {
    /// Radius of the seat, mm.
    pub seat_radius_mm: f64,
    /// Angle of the seat, both sides together, rad.
    pub seat_angle_rad: f64,
    /// Radius of the flanks, mm.
    pub flank_radius_mm: f64,
    /// Diameter at the bottom of the gaps, mm.
    pub root_diameter_mm: f64,
    /// Diameter over the tips, mm.
    pub tip_diameter_mm: f64,
}

impl Seat {
    /// The form for a wheel.
    ///
    /// With roller d1, teeth z, pitch p, pitch diameter d: seat radius 0.505 d1 to
    /// 0.505 d1 + 0.069 cbrt(d1); seat angle 140 - 90/z to 120 - 90/z degrees; flank radius
    /// 0.12 d1 (z + 2) to 0.008 d1 (z^2 + 180), the smaller with the larger seat; root d - d1; tip
    /// d + p (1 - 1.6/z) - d1 to d + 1.25 p - d1.
    pub fn of(wheel: &Wheel, form: Form) -> Self {
        let (z, p, d1) = (wheel.z(), wheel.pitch_mm, wheel.roller_diameter_mm);
        let root_diameter_mm = wheel.pitch_diameter_mm() - d1;
        match form {
            Form::Least => Self {
                seat_radius_mm: SEAT * d1,
                seat_angle_rad: DEGREE * (WIDE_DEG - FALL_DEG / z),
                flank_radius_mm: FLANK_ROUND * d1 * (z * z + FLANK_MORE),
                root_diameter_mm,
                tip_diameter_mm: root_diameter_mm + p * (1.0 - TIP_FALL / z),
            },
            Form::Most => Self {
                seat_radius_mm: SEAT * d1 + SEAT_MORE * libm::cbrt(d1),
                seat_angle_rad: DEGREE * (NARROW_DEG - FALL_DEG / z),
                flank_radius_mm: FLANK_SHARP * d1 * (z + 2.0),
                root_diameter_mm,
                tip_diameter_mm: root_diameter_mm + TIP_MOST * p,
            },
        }
    }

    /// The outline of a whole wheel, its centre at the origin, the first gap on the first axis.
    ///
    /// Each tooth ends at the tip circle, or where its two flanks meet below it.
    pub fn outline(&self, wheel: &Wheel) -> Pen {
        let mut pen = Pen::new();
        let gap = Gap::of(self, wheel);
        for tooth in 0..wheel.teeth {
            gap.write(&mut pen, f64::from(tooth) * wheel.articulation_rad(), tooth == 0);
        }
        pen.close();
        pen
    }
}

impl Seat {
    /// So many gaps to either side of one, which points in a direction, as one closed outline that
    /// ends half-way in to the shaft.
    pub fn stretch(&self, wheel: &Wheel, gaps: u32, middle_rad: f64) -> Pen {
        let (mut pen, gap) = (Pen::new(), Gap::of(self, wheel));
        let (alpha, whole) = (wheel.articulation_rad(), 2 * gaps + 1);
        let first_rad = middle_rad - f64::from(gaps) * alpha;
        for place in 0..whole {
            gap.write(&mut pen, first_rad + f64::from(place) * alpha, place == 0);
        }
        let (hub_mm, half) = (self.hub_mm(wheel), 0.5 * f64::from(whole) * alpha);
        let end = hub_mm * Point::new(libm::cos(middle_rad + half), libm::sin(middle_rad + half));
        pen.line(end.x, end.y);
        pen.arc((0.0, 0.0), hub_mm, middle_rad + half, -2.0 * half).close();
        pen
    }

    /// Where a stretch of teeth ends inward: a pitch below the roots, no nearer than half-way to the
    /// shaft.
    fn hub_mm(&self, wheel: &Wheel) -> f64 {
        let root_mm = 0.5 * self.root_diameter_mm;
        (root_mm - wheel.pitch_mm).max(0.5 * root_mm)
    }
}

/// Seat radius in roller diameters.
const SEAT: f64 = 0.505;
/// By how many cube roots of the roller diameter, both in mm, the largest seat radius exceeds it.
const SEAT_MORE: f64 = 0.069;
/// Seat angles of a wheel with many teeth, degrees.
const WIDE_DEG: f64 = 140.0;
const NARROW_DEG: f64 = 120.0;
/// What the seat angle loses over the teeth, degrees.
const FALL_DEG: f64 = 90.0;
/// Tips: pitches above the root.
const TIP_FALL: f64 = 1.6;
const TIP_MOST: f64 = 1.25;

/// Flank radii in roller diameters.
const FLANK_SHARP: f64 = 0.12;
const FLANK_ROUND: f64 = 0.008;
const FLANK_MORE: f64 = 180.0;

/// One gap in axes whose first points outward through the seated roller.
pub(super) struct Gap {
    pub(super) roller_mm: f64,
    pub(super) seat_mm: f64,
    pub(super) half_seat_rad: f64,
    pub(super) flank_mm: f64,
    /// How far each flank goes round its own centre, rad.
    pub(super) flank_rad: f64,
}

impl Gap {
    pub(super) fn of(seat: &Seat, wheel: &Wheel) -> Self {
        let mut gap = Self {
            roller_mm: wheel.pitch_radius_mm(),
            seat_mm: seat.seat_radius_mm,
            half_seat_rad: 0.5 * seat.seat_angle_rad,
            flank_mm: seat.flank_radius_mm,
            flank_rad: 0.0,
        };
        gap.flank_rad = gap.flank_to(0.5 * seat.tip_diameter_mm, PI / wheel.z());
        gap
    }

    /// Centre of the flank on the side of positive angles.
    pub(super) fn flank_centre(&self) -> Point {
        let reach = self.seat_mm + self.flank_mm;
        let (sin, cos) = libm::sincos(PI - self.half_seat_rad);
        Point::new(self.roller_mm + reach * cos, reach * sin)
    }

    /// The point of that flank after an angle round its centre.
    fn flank_at(&self, angle_rad: f64) -> Point {
        let (sin, cos) = libm::sincos(-self.half_seat_rad + angle_rad);
        self.flank_centre() + self.flank_mm * Point::new(cos, sin)
    }

    /// How far the flank goes: to the tip circle or to the middle of the tooth, whichever is first.
    fn flank_to(&self, tip_mm: f64, half_tooth_rad: f64) -> f64 {
        let ends = |angle_rad: f64| {
            let at = self.flank_at(angle_rad);
            (at.length() - tip_mm).max(libm::atan2(at.y, at.x) - half_tooth_rad)
        };
        let (mut inside, mut outside) = (0.0, FRAC_PI_2);
        if ends(inside) >= 0.0 {
            return 0.0;
        }
        for _ in 0..f64::MANTISSA_DIGITS {
            let middle = 0.5 * (inside + outside);
            if ends(middle) < 0.0 { inside = middle } else { outside = middle }
        }
        inside
    }

    /// Writes the gap turned by an angle: down one flank, round the seat, up the other.
    fn write(&self, pen: &mut Pen, turn_rad: f64, first: bool) {
        let turned = |p: Point| {
            let (sin, cos) = libm::sincos(turn_rad);
            (cos * p.x - sin * p.y, sin * p.x + cos * p.y)
        };
        let mirrored = |p: Point| Point::new(p.x, -p.y);
        let begin = turned(mirrored(self.flank_at(self.flank_rad)));
        let (half, flank) = (self.half_seat_rad, self.flank_rad);
        if first {
            pen.go(begin.0, begin.1)
        } else {
            pen.line(begin.0, begin.1)
        };
        let low = turned(mirrored(self.flank_centre()));
        pen.arc(low, self.flank_mm, turn_rad + half - flank, flank);
        let roller = turned(Point::new(self.roller_mm, 0.0));
        pen.arc(roller, self.seat_mm, turn_rad + PI + half, -2.0 * half);
        pen.arc(turned(self.flank_centre()), self.flank_mm, turn_rad - half, flank);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plane::Step;

    /// Rounding of lengths of the order of 100 mm.
    const ROUNDING_MM: f64 = 1e-9;

    fn wheel(teeth: u32) -> Wheel {
        Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 8.51 }
    }

    #[test]
    fn the_outline_is_one_unbroken_loop_between_root_and_tip() {
        for teeth in [9, 11, 16, 17, 44, 104] {
            for form in [Form::Least, Form::Most] {
                let (wheel, seat) = (wheel(teeth), Seat::of(&wheel(teeth), form));
                let steps = seat.outline(&wheel).steps;
                assert_eq!(steps.len(), 4 * teeth as usize + 1);
                let mut at = Point::ZERO;
                for step in steps {
                    match step {
                        Step::Move(p) | Step::Line(p) => at = p,
                        Step::Arc(arc) => {
                            assert!((arc.start() - at).length() < ROUNDING_MM, "{teeth} {form:?}");
                            at = arc.end();
                            let diameter_mm = 2.0 * at.length();
                            assert!(diameter_mm < seat.tip_diameter_mm + ROUNDING_MM);
                            assert!(diameter_mm > seat.root_diameter_mm);
                        }
                        Step::Close => {}
                    }
                }
            }
        }
    }

    #[test]
    fn a_seat_has_room_for_the_roller_and_no_more_than_it_needs() {
        let wheel = wheel(17);
        let (least, most) = (Seat::of(&wheel, Form::Least), Seat::of(&wheel, Form::Most));
        assert!(least.seat_radius_mm > 0.5 * wheel.roller_diameter_mm);
        assert!(most.seat_radius_mm > least.seat_radius_mm);
        assert!(most.seat_angle_rad < least.seat_angle_rad);
        assert!(most.tip_diameter_mm > least.tip_diameter_mm);
    }
}
