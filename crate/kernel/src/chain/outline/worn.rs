//! Worn pin and worn bore seen along the pin.
//!
//! The load runs along the first axis; the bore wears at its negative side, which lies away from its
//! link's middle when that is at positive x, and the pin at its own negative side. Both wear to the
//! same circle, of the pin's radius.

use crate::chain::{Sizes, WornBore};
use crate::plane::{Pen, Step};
use core::f64::consts::{PI, TAU};

/// The bore, its centre at the pen's origin: the old circle together with the pin's circle pushed in by
/// the bore's depth.
pub(super) fn bore(pen: &mut Pen, sizes: &Sizes, worn: &WornBore) {
    let (bore, pin) = (0.5 * sizes.bore_mm, 0.5 * sizes.pin_diameter_mm);
    let off = 0.5 * sizes.pin_clearance_mm() + worn.bore_mm;
    let Some((x, y)) = crossing(bore, pin, off).filter(|_| worn.bore_mm > 0.0) else {
        pen.circle((0.0, 0.0), bore);
        return;
    };
    let (old_rad, new_rad) = (libm::atan2(y, x), libm::atan2(y, x + off));
    pen.go(x, -y);
    pen.arc((0.0, 0.0), bore, -old_rad, 2.0 * old_rad);
    pen.arc((-off, 0.0), pin, new_rad, TAU - 2.0 * new_rad).close();
}

/// The pin, its centre at the pen's origin: the old circle where it lies in the same circle pushed in by
/// the pin's depth.
pub(super) fn pin(pen: &mut Pen, sizes: &Sizes, worn: &WornBore) {
    let (pin, x) = (0.5 * sizes.pin_diameter_mm, 0.5 * worn.pin_mm);
    if worn.pin_mm <= 0.0 || x >= pin {
        pen.circle((0.0, 0.0), pin);
        return;
    }
    let y = (pin * pin - x * x).sqrt();
    let (old_rad, new_rad) = (libm::atan2(y, x), libm::atan2(y, x - worn.pin_mm));
    pen.go(x, -y);
    pen.arc((0.0, 0.0), pin, -old_rad, 2.0 * old_rad);
    pen.arc((worn.pin_mm, 0.0), pin, new_rad, 2.0 * (PI - new_rad)).close();
}

/// The bore, its centre at the origin, worn at its negative side.
pub fn bore_outline(sizes: &Sizes, worn: &WornBore) -> Vec<Step> {
    let mut pen = Pen::new();
    bore(&mut pen, sizes, worn);
    pen.steps
}

/// The pin, its centre at the origin, worn at its negative side.
pub fn pin_outline(sizes: &Sizes, worn: &WornBore) -> Vec<Step> {
    let mut pen = Pen::new();
    pin(&mut pen, sizes, worn);
    pen.steps
}

/// The upper point where a circle about the origin meets a smaller one that is moved to the left.
fn crossing(radius: f64, other: f64, off: f64) -> Option<(f64, f64)> {
    let x = -(radius * radius - other * other + off * off) / (2.0 * off);
    let square = radius * radius - x * x;
    (off > 0.0 && square > 0.0).then(|| (x, square.sqrt()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plane::Point;

    fn sizes() -> Sizes {
        Sizes { pin_diameter_mm: 3.6, bore_mm: 3.7, ..Sizes::default() }
    }

    /// Points along the arcs of an outline.
    fn points(steps: &[Step]) -> Vec<Point> {
        let arcs = steps.iter().filter_map(|step| match step {
            Step::Arc(arc) => Some(arc),
            _ => None,
        });
        arcs.flat_map(|arc| {
            (0..=64).map(|i| arc.at(arc.start_rad + arc.sweep_rad * f64::from(i) / 64.0))
        })
        .collect()
    }

    #[test]
    fn arcs_join_and_the_worn_side_is_as_deep_as_it_is_said() {
        let worn = WornBore { pin_mm: 0.07, bore_mm: 0.05 };
        for (steps, reach, width) in [
            (bore_outline(&sizes(), &worn), -(1.85 + 0.05), 3.7),
            (pin_outline(&sizes(), &worn), -(1.8 - 0.07), 3.6),
        ] {
            let [Step::Move(from), Step::Arc(one), Step::Arc(two), Step::Close] = steps[..] else {
                panic!("{steps:?}")
            };
            assert!((one.start() - from).length() < 1e-12);
            assert!((one.end() - two.start()).length() < 1e-12);
            assert!((two.end() - from).length() < 1e-12);
            let points = points(&steps);
            let least = points.iter().map(|p| p.x).fold(f64::MAX, f64::min);
            let most = points.iter().map(|p| p.y).fold(f64::MIN, f64::max);
            assert!((least - reach).abs() < 1e-3, "{least}");
            assert!((2.0 * most - width).abs() < 2e-3, "{most}");
        }
    }

    #[test]
    fn a_loaded_pin_lies_in_its_groove_and_nowhere_in_the_metal() {
        let worn = WornBore { pin_mm: 0.07, bore_mm: 0.05 };
        let (bore, pin, off) = (1.85, 1.8, 0.05 + 0.05);
        let seated = -(0.05 + worn.depth_mm());
        for point in points(&pin_outline(&sizes(), &worn)) {
            let at = point + Point::new(seated, 0.0);
            let free =
                at.length() <= bore + 1e-9 || (at + Point::new(off, 0.0)).length() <= pin + 1e-9;
            assert!(free, "{at:?}");
        }
    }

    #[test]
    fn a_new_joint_is_round() {
        let worn = WornBore::NONE;
        assert_eq!(bore_outline(&sizes(), &worn).len(), 3);
        assert_eq!(pin_outline(&sizes(), &worn).len(), 3);
    }
}
