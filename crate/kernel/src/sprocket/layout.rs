//! Where the wheels and the chain of a two-wheel drive stand, as plain data for a drawing.
//!
//! From the side: first axis x from the driver's shaft to the driven one, second z up; the tight
//! strand is the upper one and runs from the driver to the driven wheel. From above: x the same, y
//! across. Both strands are drawn straight: the slack one sags in truth.

use super::wheel::Wheel;
use crate::plane::Point;
use core::f64::consts::{FRAC_PI_2, PI};

/// Two wheels and how they stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layout {
    /// The wheel that pulls.
    pub driver: Wheel,
    /// The wheel that is pulled.
    pub driven: Wheel,
    /// Between the shafts, mm; greater than the sum of the pitch radii.
    pub centre_distance_mm: f64,
    /// The driven wheel aside from the driver, mm.
    pub offset_mm: f64,
}

/// A wheel in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WheelPlace {
    /// Its shaft from the side, mm.
    pub centre: Point,
    /// Its middle plane from above, mm.
    pub aside_mm: f64,
    /// Radius of the pitch circle, mm.
    pub pitch_radius_mm: f64,
    /// Where the tight strand leaves the pitch circle, from the side, mm.
    pub tight: Point,
    /// Where the slack strand does, mm.
    pub slack: Point,
}

impl Layout {
    /// How much larger the driver's pitch radius is, mm.
    fn radius_step_mm(&self) -> f64 {
        self.driver.pitch_radius_mm() - self.driven.pitch_radius_mm()
    }

    /// Length of the straight strand between the pitch circles, mm: sqrt(C^2 - (R1 - R2)^2), C the
    /// centre distance, R1 and R2 the pitch radii.
    pub fn tangent_length_mm(&self) -> f64 {
        let (centres, step) = (self.centre_distance_mm, self.radius_step_mm());
        (centres * centres - step * step).max(0.0).sqrt()
    }

    /// Whole joints n of a free strand: the tangent's length in pitches, rounded down. Link 0, held
    /// by the driver, ends at joint 1; link n, held by the driven wheel, begins at joint n.
    pub fn joints(&self) -> u32 {
        libm::floor(self.tangent_length_mm() / self.driver.pitch_mm) as u32
    }

    /// How far the tight strand slopes down from the driver to the driven wheel, rad:
    /// asin((R1 - R2)/C).
    pub fn slope_rad(&self) -> f64 {
        libm::asin((self.radius_step_mm() / self.centre_distance_mm).clamp(-1.0, 1.0))
    }

    /// Length of the whole chain in pitches: 2 L/p + z1 (pi + 2 b)/(2 pi) + z2 (pi - 2 b)/(2 pi), L
    /// the tangent's length, b the slope. Derived; a chain has the next whole, as a rule even,
    /// number.
    pub fn chain_pitches(&self) -> f64 {
        let [tight, driven, slack, driver] = self.stretches();
        tight + driven + slack + driver
    }

    /// The even number of pitches nearest to [`Layout::chain_pitches`].
    pub fn whole_pitches(&self) -> u32 {
        2 * libm::round(0.5 * self.chain_pitches()) as u32
    }

    /// Tight strand, driven wheel, slack strand, driver, in pitches.
    fn stretches(&self) -> [f64; 4] {
        let tangent = self.tangent_length_mm() / self.driver.pitch_mm;
        let slope = self.slope_rad();
        let driven = self.driven.z() * (0.5 - slope / PI);
        let driver = self.driver.z() * (0.5 + slope / PI);
        [tangent, driven, tangent, driver]
    }

    /// The driver and the driven wheel.
    pub fn places(&self) -> [WheelPlace; 2] {
        let tight = direction(FRAC_PI_2 - self.slope_rad());
        let place = |wheel: &Wheel, centre: Point, aside_mm: f64| {
            let pitch_radius_mm = wheel.pitch_radius_mm();
            WheelPlace {
                centre,
                aside_mm,
                pitch_radius_mm,
                tight: centre + pitch_radius_mm * tight,
                slack: centre + pitch_radius_mm * Point::new(tight.x, -tight.y),
            }
        };
        let driven = Point::new(self.centre_distance_mm, 0.0);
        [place(&self.driver, Point::ZERO, 0.0), place(&self.driven, driven, self.offset_mm)]
    }

    /// The joints 1 to n of the tight strand, from the side, centred on the tangent.
    pub fn tight_joints(&self) -> Vec<Point> {
        let [driver, driven] = self.places();
        let along = (driven.tight - driver.tight).normalize_or_zero();
        let (joints, pitch_mm) = (self.joints(), self.driver.pitch_mm);
        let first_mm = 0.5 * (self.tangent_length_mm() - (f64::from(joints) - 1.0) * pitch_mm);
        let at = |joint: u32| driver.tight + along * (first_mm + f64::from(joint) * pitch_mm);
        (0..joints).map(at).collect()
    }

    /// All joints of the chain from the side, `phase` pitches on: the whole number of pitches shares
    /// the length out evenly, so that a drawn pitch may be a little long or short.
    pub fn all_joints(&self, phase: f64) -> Vec<Point> {
        let count = self.whole_pitches();
        let step = self.chain_pitches() / f64::from(count);
        (0..count).map(|joint| self.around((f64::from(joint) + phase) * step)).collect()
    }

    /// The point so many pitches along the chain, from where the tight strand leaves the driver.
    fn around(&self, pitches: f64) -> Point {
        let whole = self.chain_pitches();
        let mut along = pitches - whole * libm::floor(pitches / whole);
        let [driver, driven] = self.places();
        let [tight, on_driven, slack, on_driver] = self.stretches();
        if along < tight {
            return driver.tight.lerp(driven.tight, along / tight);
        }
        along -= tight;
        let start_rad = FRAC_PI_2 - self.slope_rad();
        if along < on_driven {
            return on_wheel(&driven, start_rad - along * self.driven.articulation_rad());
        }
        along -= on_driven;
        if along < slack {
            return driven.slack.lerp(driver.slack, along / slack);
        }
        let left = (slack + on_driver - along).max(0.0);
        on_wheel(&driver, start_rad + left * self.driver.articulation_rad())
    }
}

fn direction(angle_rad: f64) -> Point {
    let (sin, cos) = libm::sincos(angle_rad);
    Point::new(cos, sin)
}

fn on_wheel(wheel: &WheelPlace, angle_rad: f64) -> Point {
    wheel.centre + wheel.pitch_radius_mm * direction(angle_rad)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of lengths of the order of 1,000 mm.
    const ROUNDING_MM: f64 = 1e-9;

    fn layout(driver: u32, driven: u32, centre_distance_mm: f64) -> Layout {
        let wheel = |teeth| Wheel { teeth, pitch_mm: 12.7, roller_diameter_mm: 7.75 };
        let (driver, driven) = (wheel(driver), wheel(driven));
        Layout { driver, driven, centre_distance_mm, offset_mm: 12.0 }
    }

    #[test]
    fn equal_wheels_stand_on_parallel_strands() {
        let layout = layout(20, 20, 254.0);
        assert_eq!(layout.joints(), 20);
        assert!((layout.tangent_length_mm() - 254.0).abs() < ROUNDING_MM);
        assert!((layout.chain_pitches() - 60.0).abs() < ROUNDING_MM);
        assert_eq!(layout.whole_pitches(), 60);
    }

    #[test]
    fn the_strands_touch_the_pitch_circles_and_no_more() {
        for (driver, driven) in [(44, 16), (16, 44), (11, 11), (5, 40)] {
            let layout = layout(driver, driven, 430.0);
            let [first, second] = layout.places();
            for (from, to) in [(first.tight, second.tight), (first.slack, second.slack)] {
                assert!(((to - from).length() - layout.tangent_length_mm()).abs() < ROUNDING_MM);
                for (wheel, at) in [(first, from), (second, to)] {
                    assert!((at - wheel.centre).dot(to - from).abs() < 1e-6);
                }
            }
        }
    }

    #[test]
    fn the_tight_strand_stands_a_pitch_apart_and_half_a_rest_from_each_wheel() {
        let layout = layout(44, 16, 430.0);
        let joints = layout.tight_joints();
        assert_eq!(joints.len(), layout.joints() as usize);
        assert!(
            joints.windows(2).all(|two| ((two[1] - two[0]).length() - 12.7).abs() < ROUNDING_MM)
        );
        let [driver, driven] = layout.places();
        let (before, after) = (joints[0] - driver.tight, driven.tight - joints[joints.len() - 1]);
        assert!((before - after).length() < ROUNDING_MM && before.length() < 12.7);
    }

    #[test]
    fn the_joints_close_round_both_wheels() {
        let layout = layout(44, 16, 430.0);
        let joints = layout.all_joints(0.25);
        assert_eq!(joints.len() as u32, layout.whole_pitches());
        for (i, joint) in joints.iter().enumerate() {
            let step_mm = (joints[(i + 1) % joints.len()] - *joint).length();
            assert!((step_mm - 12.7).abs() < 0.2, "{i} {step_mm}");
        }
        let moved = layout.all_joints(1.25);
        assert!((moved[0] - joints[1]).length() < ROUNDING_MM);
    }
}
