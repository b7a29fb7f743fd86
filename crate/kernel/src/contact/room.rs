//! The room to move of one joint: every offset and yaw that its metal allows.

use super::name::{Contact, End, Joint, Kind, Side};
use super::play::{Bearing, Limiter};
use crate::chain::{Sizes, WornBore};

/// A point of the outline of the room to move.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoomPoint {
    /// Offset of the inner link across the chain, mm.
    pub offset_mm: f64,
    /// Yaw of the inner link, rad.
    pub yaw_rad: f64,
    /// The contact that makes the edge from this point to the next.
    pub by: Contact,
}

/// The room to move of the first joint: the outline, anticlockwise, of every (offset, yaw) that some
/// x allows. Curved edges are sampled.
pub fn room(sizes: &Sizes) -> Vec<RoomPoint> {
    worn_room(sizes, &sizes.worn)
}

/// The same room of a joint that has worn on its loaded side.
pub fn worn_room(sizes: &Sizes, worn: &WornBore) -> Vec<RoomPoint> {
    const STEPS: u32 = 12;
    let plan = &worn.plan_sizes(sizes);
    let bearing = Bearing::one(plan).shifted(worn);
    let limit = bearing.limit();
    let top = limit.angle_rad;
    let by = |kind, end, side| Contact { kind, joint: Joint::First, end, side, inner: false };
    let at = |yaw_rad: f64, high: bool, by| RoomPoint {
        offset_mm: if high {
            bearing.offset_high_mm(yaw_rad)
        } else {
            bearing.offset_low_mm(yaw_rad)
        },
        yaw_rad,
        by,
    };
    let steps = |from: f64, to: f64| {
        (0..STEPS).map(move |i| from + (to - from) * f64::from(i) / f64::from(STEPS))
    };
    let face = |end, side| by(Kind::PlateFace, end, side);
    let mut outline = Vec::new();
    outline.extend(steps(-top, 0.0).map(|yaw| at(yaw, true, face(End::Far, Side::Left))));
    outline.extend(steps(0.0, top).map(|yaw| at(yaw, true, face(End::Far, Side::Right))));
    if limit.by == Limiter::Pin {
        outline.push(at(top, true, by(Kind::PinBore, End::Far, Side::Right)));
    }
    outline.extend(steps(top, 0.0).map(|yaw| at(yaw, false, face(End::Near, Side::Left))));
    outline.extend(steps(0.0, -top).map(|yaw| at(yaw, false, face(End::Near, Side::Right))));
    if limit.by == Limiter::Pin {
        outline.push(at(-top, false, by(Kind::PinBore, End::Far, Side::Left)));
    }
    outline
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::contact::play::tests::worked;

    #[test]
    fn the_outline_closes_and_is_the_same_turned_by_half() {
        let outline = room(&worked(0.2));
        let half = outline.len() / 2;
        for (i, point) in outline.iter().enumerate() {
            let other = outline[(i + half) % outline.len()];
            assert!((point.offset_mm + other.offset_mm).abs() < 1e-12);
            assert!((point.yaw_rad + other.yaw_rad).abs() < 1e-12);
        }
    }
}
