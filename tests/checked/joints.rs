//! One joint, a bow and a gap filled with oil against closed forms that were worked out by hand.

use super::{Check, Sheet, check};
use lightgap::bow::SideBow;
use lightgap::chain::{Construction, Dimension, Sizes};
use lightgap::contact::Play;
use lightgap::reach::annulus;

const BY_HAND: &str = "closed form, worked out by hand (docs/method.md)";
const GAP: &str = "textbook problem of an eccentric annular gap; its integral 1 + 1.5 e^2";
const MRAD_PER_RAD: f64 = 1e3;

/// The chain of the worked figures: p 12.7, c 0.03, B 5.0, a 0.4, g 4.2, its mouths rounded.
pub(super) fn reference(construction: Construction, mouth_mm: f64) -> Sizes {
    let bearing_mm = if construction == Construction::Bushed { 5.0 } else { 1.5 };
    let stated = [
        (Dimension::Pitch, 12.7),
        (Dimension::RollerDiameter, 7.75),
        (Dimension::InnerWidth, 3.0 + 2.0 * mouth_mm),
        (Dimension::InnerPlate, 1.0),
        (Dimension::PinDiameter, 3.6),
        (Dimension::Bore, 3.63),
        (Dimension::OuterSpacing, 5.4 + 2.0 * mouth_mm),
        (Dimension::BearingLength, bearing_mm + 2.0 * mouth_mm),
        (Dimension::InnerOverhang, 4.2),
        (Dimension::OuterOverhang, 4.2),
        (Dimension::MouthRadius, mouth_mm),
    ];
    Sizes::from_stated(construction, &stated)
}

fn tilt(mouth_mm: f64, expected_mrad: f64) -> Check {
    let yaw_rad = Play::of(&reference(Construction::Bushed, mouth_mm)).yaw.angle_rad;
    let what = format!("yaw limit by the pin, d2 3.6 d3 3.63 B 5, mouths {mouth_mm} mm");
    check(BY_HAND, &what, (expected_mrad, MRAD_PER_RAD * yaw_rad), 5e-6, "mrad")
}

/// Flow through a gap around a pin that is so far off its middle, over the flow of one in the middle.
fn flow(eccentricity: f64, expected: f64) -> Check {
    let through = |eccentricity| annulus(5.0, 1.8, 0.015, eccentricity).conductance(0.1);
    let what = format!("flow through an annular gap, eccentricity {eccentricity}");
    check(GAP, &what, (expected, through(eccentricity) / through(0.0)), 1e-12, "times")
}

pub(super) fn sheet() -> Sheet {
    let bow = SideBow { links: 80, pitch_mm: 12.7, turn_rad: 0.006, slide_mm: 0.2 - 0.006 * 4.2 };
    let (yaw_mm, play_mm) = (bow.yaw_mm(), bow.with_play_mm());
    let checks = vec![
        tilt(0.0, 5.98702),
        tilt(0.5, 5.98346),
        check(BY_HAND, "side bow of 80 links, by yaw", (60.96, yaw_mm), 0.005, "mm"),
        check(BY_HAND, "side bow of 80 links, with play", (67.86, play_mm), 0.005, "mm"),
        flow(0.0, 1.0),
        flow(1.0, 2.5),
    ];
    Sheet { title: "One joint, a bow, a gap with oil", checks }
}
