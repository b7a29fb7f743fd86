//! One joint worked out from the corners of its parts alone: what each yaw leaves of the room to
//! move, and the yaw at which nothing is left, by bisection. Nothing of the kernel but its sizes.

use lightgap::chain::{Construction, Sizes};

type Point = (f64, f64);

fn turn((x, y): Point, yaw: f64) -> Point {
    let (sin, cos) = yaw.sin_cos();
    (cos * x - sin * y, sin * x + cos * y)
}

/// What is left at a yaw: intervals, empty where the low end is above the high one.
#[derive(Debug, Clone, Copy)]
pub struct Left {
    /// Room of a bore's centre along the chain, the tightest cylinder's, mm: high less low.
    pub pin_mm: f64,
    /// The smallest offset across, mm.
    pub low_mm: f64,
    /// The largest.
    pub high_mm: f64,
}

/// Which cylinders hold the inner link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Held {
    /// The whole link is one body that bears at its outermost mouths.
    Whole,
    /// Each plate is free along the chain by itself; with a bush the link is one body.
    EachPlate,
}

/// The inner link, right of a held pin at the origin, at a yaw.
pub fn left(s: &Sizes, held: Held, yaw: f64) -> Left {
    let b2 = s.inner_width_mm + 2.0 * s.inner_plate_mm;
    let r = s.mouth_radius_mm;
    let mut out = Left { pin_mm: f64::INFINITY, low_mm: f64::NEG_INFINITY, high_mm: f64::INFINITY };
    let mut far_near = [(0.0, 0.0); 2];
    for (side, sign) in [1.0, -1.0].into_iter().enumerate() {
        let mouths: Vec<f64> = match (s.construction, held) {
            (Construction::Bushed, _) => {
                vec![0.5 * s.bearing_length_mm - r, -0.5 * s.bearing_length_mm + r]
            }
            (Construction::Collared, Held::Whole) => vec![0.5 * b2 - r, -0.5 * b2 + r],
            (Construction::Collared, Held::EachPlate) => {
                vec![sign * (0.5 * b2 - r), sign * (0.5 * b2 - s.bearing_length_mm + r)]
            }
        };
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        for mouth in mouths {
            let across = 0.5 * s.bore_mm + r;
            // The rounded corner keeps its distance from the pin's side.
            let clear = 0.5 * s.pin_diameter_mm + r;
            low = f64::max(low, clear - turn((across, mouth), yaw).0);
            high = f64::min(high, -clear - turn((-across, mouth), yaw).0);
        }
        far_near[side] = (low, high);
        out.pin_mm = out.pin_mm.min(high - low);
    }
    for ((low, high), sign) in far_near.into_iter().zip([1.0, -1.0]) {
        // The inner plate's corner under the outer plate's face: any x.
        let corner = turn((-(s.inner_overhang_mm - s.edge_chamfer_mm), sign * 0.5 * b2), yaw);
        bound(&mut out, sign, 0.5 * s.outer_spacing_mm - sign * corner.1);
        // The outer plate's corner over the inner plate's face, at the better end of x.
        let corner = (s.outer_overhang_mm - s.edge_chamfer_mm, sign * 0.5 * s.outer_spacing_mm);
        let best = [low, high]
            .map(|x| {
                let (along, across) = (corner.0 - x, corner.1);
                // In the inner link's axes: across the face, with y still to be taken off.
                let over = sign * turn((along, across), -yaw).1 - 0.5 * b2;
                over / yaw.cos()
            })
            .into_iter()
            .fold(f64::NEG_INFINITY, f64::max);
        bound(&mut out, sign, best);
    }
    out
}

/// The offset towards one end is at most `most`.
fn bound(out: &mut Left, sign: f64, most: f64) {
    if sign > 0.0 {
        out.high_mm = out.high_mm.min(most);
    } else {
        out.low_mm = out.low_mm.max(-most);
    }
}

/// The largest yaw with room for the pin, and the largest with room for the faces.
pub fn limits(s: &Sizes, held: Held) -> (f64, f64) {
    let pin = last(|yaw| left(s, held, yaw).pin_mm >= 0.0);
    let face = last(|yaw| {
        // Past the pin's limit the pin leaves no x to choose: its middle then.
        let left = left(s, held, yaw);
        left.high_mm >= left.low_mm
    });
    (pin, face)
}

/// The twist at which the pin stops and the one at which the faces do, in the end section.
pub fn twists(s: &Sizes) -> (f64, f64) {
    let b2 = s.inner_width_mm + 2.0 * s.inner_plate_mm;
    let (h2, h3) = (
        0.5 * s.inner_plate_height_mm - s.edge_chamfer_mm,
        0.5 * s.outer_plate_height_mm - s.edge_chamfer_mm,
    );
    let faces = last(|twist| {
        if h2 <= h3 {
            // The inner plates' corners between the outer faces.
            let reach = turn((0.5 * b2, -h2), twist).0;
            2.0 * reach <= s.outer_spacing_mm
        } else {
            // The outer plates' corners, seen from the inner link.
            let reach = turn((0.5 * s.outer_spacing_mm, h3), twist).0;
            2.0 * reach >= b2
        }
    });
    (limits(s, Held::EachPlate).0, faces)
}

/// The last angle up to a steep one at which `fits` holds, by bisection down to rounding.
fn last(fits: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.0, 1.5);
    if !fits(low) {
        return 0.0;
    }
    while 0.5 * (low + high) > low && 0.5 * (low + high) < high {
        let middle = 0.5 * (low + high);
        if fits(middle) { low = middle } else { high = middle }
    }
    low
}
